"""The one fault of the nets: a sentence saying what is wrong with a solid, and what to write instead."""

from __future__ import annotations

from collections.abc import Sequence


class NetError(ValueError):
    """A solid that cannot be built, unfolded or laid out. The caller adds the place in the parent's file.

    `about` says which of the things asked for is at fault, if it is one of them: `solid`, `scale`, `mesh`, `hole 1`
    (the first of the holes), or the name of something given, as it was written. `more` are others found with it.
    """

    def __init__(self, message: str, instead: str = "", about: str = "") -> None:
        self.message = message
        self.instead = instead
        self.about = about
        self.more: tuple[NetError, ...] = ()
        super().__init__(f"{message} {instead}".strip())

    @property
    def all(self) -> tuple[NetError, ...]:
        """This one and all that were found with it."""
        return (self, *(each for other in self.more for each in other.all))


def raise_all(errors: Sequence[NetError]) -> None:
    """Raise the first of some errors, with the others in its `more`; nothing if there is none."""
    if errors:
        errors[0].more = (*errors[0].more, *errors[1:])
        raise errors[0]


class TooSmall(NetError):
    """A tab would be narrower than 4 mm; `factor` is about how many times larger the solid has to be."""

    def __init__(self, message: str, instead: str, factor: float) -> None:
        super().__init__(message, instead)
        self.factor = factor
