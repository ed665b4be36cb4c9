"""Where packgen's own data lies: fixed wording, pack recipes and fonts, in a wheel and in a checkout alike."""

from __future__ import annotations

from pathlib import Path

_HERE = Path(__file__).resolve().parent


def folder(kind: str) -> Path:
    """The folder of packgen's own `templates`, `packs` or `fonts`. Raises FileNotFoundError if it is not there.

    An editable install does not copy the top-level folders, so a checkout's own are used when the package has none.
    """
    inside = _HERE / kind
    if inside.is_dir():
        return inside
    beside = _HERE.parent / kind
    if beside.is_dir() and (_HERE.parent / "pyproject.toml").is_file():
        return beside
    raise FileNotFoundError(f"packgen's own {kind} are missing: install packgen again")
