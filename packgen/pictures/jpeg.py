"""JPEG files passed through: the picture data untouched, everything else left behind.

A camera writes where and when a photo was taken, a small copy of it, even a short film, into the same file. A study is
given away and a printer needs none of that. Marker numbers: ITU-T T.81 (1992), table B.1.
"""

from __future__ import annotations

_SOS, _EOI = 0xDA, 0xD9
_KEPT_APPS = (0xE0, 0xEE)  # JFIF, and the segment that says which colours the numbers mean
_COMMENT = 0xFE


def picture_only(data: bytes) -> bytes | None:
    """The JPEG file with only what is needed to show it, or None if its segments cannot be followed to the end."""
    if data[:2] != b"\xff\xd8":
        return None
    kept, at = [b"\xff\xd8"], 2
    while at + 4 <= len(data):
        if data[at] != 0xFF:
            return None
        marker = data[at + 1]
        if marker == 0xFF:  # a fill byte
            at += 1
            continue
        if marker == _EOI:
            return b"".join([*kept, b"\xff\xd9"])
        end = at + 2 + int.from_bytes(data[at + 2 : at + 4], "big")
        if marker == _SOS:
            end = _scan_end(data, end)
        if not (0xE0 <= marker <= 0xEF and marker not in _KEPT_APPS) and marker != _COMMENT:
            kept.append(data[at:end])
        at = end
    return b"".join([*kept, b"\xff\xd9"]) if data[at : at + 2] == b"\xff\xd9" else None


def _scan_end(data: bytes, at: int) -> int:
    """Where the coded pixels starting at `at` end: the next marker that is neither a restart nor a stuffed zero."""
    while True:
        at = data.find(b"\xff", at)
        if at < 0 or at + 1 >= len(data):
            return len(data)
        if data[at + 1] == 0 or 0xD0 <= data[at + 1] <= 0xD7:
            at += 2
        elif data[at + 1] == 0xFF:
            at += 1
        else:
            return at
