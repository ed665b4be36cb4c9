"""OpenCV, fetched when it is first needed: a build that makes no line art does not wait for it."""

from __future__ import annotations

from functools import cache
from typing import Any


@cache
def cv() -> Any:
    """The library, held to one thread, so that the same picture gives the same art on every machine."""
    import cv2

    cv2.setNumThreads(1)
    return cv2
