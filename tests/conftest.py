"""What holds for all tests: things kept from build to build go into a folder of the test run's own."""

from __future__ import annotations

import os
import tempfile
from collections.abc import Iterator

import pytest


@pytest.fixture(scope="session", autouse=True)
def _own_cache() -> Iterator[None]:
    with tempfile.TemporaryDirectory(prefix="packgen-tests-", ignore_cleanup_errors=True) as folder:
        before = os.environ.get("PACKGEN_CACHE")
        os.environ["PACKGEN_CACHE"] = folder
        yield
        if before is None:
            del os.environ["PACKGEN_CACHE"]
        else:
            os.environ["PACKGEN_CACHE"] = before
