"""The one fault of the nets: a sentence saying what is wrong with a solid, and what to write instead."""

from __future__ import annotations


class NetError(ValueError):
    """A solid that cannot be built, unfolded or laid out. The caller adds the place in the parent's file.

    `about` says which of the things asked for is at fault, if it is one of them: `solid`, `scale`, `mesh`, `hole 1`
    (the first of the holes), or the name of something given, as it was written.
    """

    def __init__(self, message: str, instead: str = "", about: str = "") -> None:
        self.message = message
        self.instead = instead
        self.about = about
        super().__init__(f"{message} {instead}".strip())


class TooSmall(NetError):
    """A tab would be narrower than 4 mm; `factor` is about how many times larger the solid has to be."""

    def __init__(self, message: str, instead: str, factor: float) -> None:
        super().__init__(message, instead)
        self.factor = factor
