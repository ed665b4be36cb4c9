"""The one fault of the nets: a sentence saying what is wrong with a solid, and what to write instead."""

from __future__ import annotations


class NetError(ValueError):
    """A solid that cannot be built, unfolded or laid out. The caller adds the place in the parent's file."""

    def __init__(self, message: str, instead: str = "") -> None:
        self.message = message
        self.instead = instead
        super().__init__(f"{message} {instead}".strip())


class TooSmall(NetError):
    """A tab would be narrower than 4 mm; `factor` is about how many times larger the solid has to be."""

    def __init__(self, message: str, instead: str, factor: float) -> None:
        super().__init__(message, instead)
        self.factor = factor
