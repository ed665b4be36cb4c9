"""Aims of design-and-make and of picture study by age band, in packgen's own words, for a family that lists no goals.

The design aims are in the spirit of the Next Generation Science Standards, Engineering Design (K-2-ETS1, 3-5-ETS1,
MS-ETS1); the picture and telling aims follow the home-school tradition of picture study and telling back (common
practice). They are no standard's text and claim no agreement with one.
"""

from __future__ import annotations

from dataclasses import dataclass

NGSS_K2 = "NGSS K-2-ETS1"
NGSS_35 = "NGSS 3-5-ETS1"
NGSS_MS = "NGSS MS-ETS1"
TRADITION = "picture study and telling back (common practice)"
BANDS = {"first": "3-5", "younger": "6-8", "older": "9-12", "upper": "13+"}


# What meets an aim besides a kind of sheet: a challenge to design something, and the talk of a sitting.
DESIGN = "design"
AT_TABLE_LOOK = "look"
AT_TABLE_TELL = "tell"
AT_TABLE = frozenset({AT_TABLE_LOOK, AT_TABLE_TELL})


@dataclass(frozen=True, slots=True)
class Aim:
    """An aim for one level: what meets it, and the framework it is in the spirit of.

    `met_by` has kinds of sheet whose page asks for just that, and DESIGN or the talk at the table.
    """

    id: str
    level: str
    text: str
    met_by: tuple[str, ...]
    spirit: str


_TRIES = ("challenge",)
_DESIGNS = (DESIGN,)
_FOLDS = ("model", "fold-book")
_TELLS = ("telling", "biography", AT_TABLE_TELL)

AIMS = (
    Aim("first-ask", "first", "Looks at how a thing works and says what it is for", _TRIES, NGSS_K2),
    Aim("first-make", "first", "Draws a thing first, then makes it with help", _TRIES, NGSS_K2),
    Aim("first-try", "first", "Tries what was made and says whether it does its job", _TRIES, NGSS_K2),
    Aim("first-look", "first", "Looks quietly at a picture and names what is in it",
        ("picture-study", "look-closer", AT_TABLE_LOOK), TRADITION),
    Aim("first-tell", "first", "Tells back a part of what was read", _TELLS, TRADITION),
    Aim("younger-problem", "younger", "Says what the problem is and what the made thing has to do", _DESIGNS, NGSS_K2),
    Aim("younger-draw", "younger", "Makes a simple drawing or model that shows how the shape helps",
        (*_DESIGNS, "model"), NGSS_K2),
    Aim("younger-compare", "younger", "Tests two of a kind and says what each does well and badly", _TRIES, NGSS_K2),
    Aim("younger-craft", "younger", "Cuts, folds and glues to a line", _FOLDS, "design and making (common practice)"),
    Aim("younger-look", "younger", "Describes a picture from memory after one long look",
        ("picture-study", AT_TABLE_LOOK), TRADITION),
    Aim("younger-tell", "younger", "Tells back in order what was read once", _TELLS, TRADITION),
    Aim("younger-time", "younger", "Puts events of a life in order", ("timeline",), TRADITION),
    Aim("older-criteria", "older", "States what counts as success and the limits of materials, time and cost", _DESIGNS,
        NGSS_35),
    Aim("older-ideas", "older", "Draws several designs and chooses one for a reason", _DESIGNS, NGSS_35),
    Aim("older-fair", "older", "Changes one thing, measures one, keeps the rest, and repeats", _TRIES, NGSS_35),
    Aim("older-better", "older", "Finds where a design fails and mends it", _DESIGNS, NGSS_35),
    Aim("older-scale", "older", "Builds a model from a flat plan and works with its scale", ("model",),
        "design and making (common practice)"),
    Aim("older-look", "older", "Says how a picture is put together: light, lines, near and far",
        ("picture-study", "look-closer"), TRADITION),
    Aim("older-tell", "older", "Writes back what was read, in its own words", ("telling", "biography"), TRADITION),
    Aim("older-time", "older", "Reads intervals and ages off a timeline", ("timeline",), TRADITION),
    Aim("upper-criteria", "upper", "Sets exact criteria and limits, from what is known and who is affected", _DESIGNS,
        NGSS_MS),
    Aim("upper-weigh", "upper", "Weighs designs against the criteria in an orderly way", _DESIGNS, NGSS_MS),
    Aim("upper-data", "upper", "Compares the data of several designs and joins their best features", _DESIGNS, NGSS_MS),
    Aim("upper-model", "upper", "Uses a model or formula to predict, and tests it", _TRIES, NGSS_MS),
    Aim("upper-look", "upper", "Argues from what is seen in a picture how and why it was made",
        ("picture-study", "look-closer"), TRADITION),
    Aim("upper-tell", "upper", "Writes back what was read, shortly and in order", ("telling",), TRADITION),
    Aim("upper-account", "upper", "Writes an account that weighs what helped and hindered a life", ("biography",),
        TRADITION),
)  # fmt: skip


def aims_for(level: str) -> tuple[Aim, ...]:
    """The aims of one level, in their order; empty for an unknown level."""
    return tuple(aim for aim in AIMS if aim.level == level)
