"""Where packgen's own data lies: fixed wording, pack recipes and fonts, in a wheel and in a checkout alike."""

from __future__ import annotations

import os
import sys
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


def cache_folder() -> Path | None:
    """The folder for what is slow to make and safe to lose, made if need be; None if there can be none.

    PACKGEN_CACHE names another folder, or is `off`. Otherwise it is where the system keeps such things: XDG_CACHE_HOME
    (XDG Base Directory Specification 0.8), Library/Caches on macOS, LOCALAPPDATA on Windows.
    """
    said = os.environ.get("PACKGEN_CACHE", "")
    if said.lower() == "off":
        return None
    try:
        place = Path(said) if said else _cache_home() / "packgen"
        place.mkdir(mode=0o700, parents=True, exist_ok=True)
    except (OSError, RuntimeError):  # no home, or one that cannot be written
        return None
    return place if os.access(place, os.W_OK) else None


def _cache_home() -> Path:
    if sys.platform == "win32":
        return Path(os.environ.get("LOCALAPPDATA") or Path.home() / "AppData" / "Local")
    if sys.platform == "darwin":
        return Path.home() / "Library" / "Caches"
    return Path(os.environ.get("XDG_CACHE_HOME") or Path.home() / ".cache")


def code_stamp(package: Path, ending: str = ".py") -> str:
    """A text that changes when a package's code does: what was made by other code must not be used again."""
    from packgen import __version__

    with os.scandir(package) as entries:
        states = sorted((e.name, e.stat()) for e in entries if e.name.endswith(ending) and e.is_file())
    return f"{__version__} " + " ".join(f"{name}:{s.st_size}:{s.st_mtime_ns}" for name, s in states)
