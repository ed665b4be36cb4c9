"""Every fault the readers can find, in one table: what is wrong in plain words, and what to write instead.

A test walks this table: each entry has a broken example that causes it, and goes away when the example is mended.
"""

from __future__ import annotations

from dataclasses import dataclass

from packgen.faults import Fault, Place, Severity


@dataclass(frozen=True, slots=True)
class Message:
    """A kind of fault. Braces in the two texts are filled with the words of the case."""

    text: str
    instead: str
    severity: Severity = Severity.FAULT

    def fault(self, at: Place, **words: object) -> Fault:
        """The fault at a place of the parent's file."""
        return Fault(at, self.text.format(**words), self.instead.format(**words), self.severity)


class Misread(ValueError):
    """A text that a parser of this layer cannot read; the caller knows the place and makes the fault."""

    def __init__(self, message: Message, **words: object) -> None:
        self.message = message
        self.words = words
        super().__init__(message.text.format(**words))

    @property
    def instead(self) -> str:
        """What to write instead."""
        return self.message.instead.format(**self.words)

    def fault(self, at: Place) -> Fault:
        """The fault at a place of the parent's file."""
        return self.message.fault(at, **self.words)


def _warns(text: str, instead: str) -> Message:
    return Message(text, instead, Severity.WARNING)


# The file itself
NO_FILE = Message("There is no file of this name.", "Give the path of the file as it is spelt on the disk.{hint}")
NOT_A_FILE = Message("This is a folder, not a file.", "Give the path of the file inside it, such as {name}/study.yaml.")
CANNOT_OPEN = Message(
    "The file cannot be opened: {reason}.", "See that you may read it and that no other program holds it."
)
TOO_LARGE = Message(
    "The file is larger than {most} MB, which no file written by hand is.",
    "Pictures stay in their own files; name their paths.",
)
NOT_TEXT = Message(
    "This is a {what}, not a plain text file.", "Save it as plain text (.yaml) in UTF-8 from a text editor."
)
NOT_UTF8 = Message("A letter here is not written in UTF-8{guess}.", "Save the file again with the encoding UTF-8.")
CONTROL = Message("There is a character here that no page can show ({code}).", "Delete it and type the letter again.")
EMPTY = Message("The file is empty.", "It needs at least these lines:\n{lines}")
NOT_KEYS = Message(
    "The file must be lines of `key: value`; this is a {what}.", "It needs at least these lines:\n{lines}"
)

# YAML, where it does not read
TAB = Message(
    "A tab stands before the text{also}; YAML only allows spaces there.", "Use two spaces for each step to the right."
)
COLON_IN_VALUE = Message(
    "A second colon stands inside a value, which YAML cannot read.", "Put the value in quotes: {line}"
)
COLON_NO_SPACE = Message("No space stands after the colon.", "Write: {line}")
NO_COLON = Message(
    "This line has no `key:`.",
    "Write `key: value`; or, if it carries on the text above, begin it further right than the key above.",
)
BAD_START = Message("A value may not begin with {mark} unless it is in quotes.", "Write: {line}")
BLOCK_START = Message(
    "After {mark} the text must begin on the next line, further right.", "Put the value in quotes: {line}"
)
BRACKET_START = Message(
    "A value that begins with {mark} must end where the bracket closes.", "Put the value in quotes: {line}"
)
BACKSLASH = Message(
    "Inside double quotes a \\ has a meaning of its own.", "Use single quotes or / in its place: {line}"
)
QUOTE_OPEN = Message("The quote that opens here is not closed again.", "Close it: {line}")
QUOTE_INSIDE = Message("The text goes on after its closing quote.", "Put the whole of it in quotes: {line}")
CURLY_QUOTES = Message("These are curly quotes, which YAML takes for letters.", "Use straight quotes: {line}")
FLOW_OPEN = Message(
    "The bracket {mark} that opens here is not closed.", "Close it with {close} at the end of its list."
)
INDENT = Message(
    "This line starts at column {column}, where no line above it starts.", "Line it up with its neighbours: {line}"
)
INDENT_VALUE = Message(
    "This line is further right than the line above, which already has its value.",
    "Start it at column {column}, or write the key it belongs to, such as `book:`, on a line above it.",
)
DASH_MISSING = Message(
    "This line stands below a `-` but belongs to no item.",
    "Line it up with the text of the item above: {line}\n    Or begin a new item with `- `.",
)
DASH_MISSING_ITEM = Message("This line stands among the items of a list but has no dash.", "Write: {line}")
DASH_AFTER_VALUE = Message(
    "This line begins a list, but the key above already has a value.",
    "Write every item on a line of its own below `key:`, each with a dash.",
)
DASH_SWALLOWED = _warns(
    "This line begins with a dash, but YAML takes it for more of the text above.",
    "If it is an item of a list, line its dash up with the dash of the other items.",
)
DASH_NO_SPACE = Message(
    "No space stands after the dash.", "Begin each item of a list with a dash and a space: - {text}"
)
SEVERAL = Message(
    "A second document begins here.", "Take the line with --- or ... out: one file holds one study, family or recipe."
)
ANCHOR_TWICE = Message("The mark {mark} is used twice.", "If it is meant as text, put the value in quotes.")
NOT_YAML = Message(
    "packgen cannot follow the file from here on.",
    "See that each line is `key: value` or `- item`, that brackets and quotes close, and that values with signs in "
    "them are in quotes.",
)

# YAML, where it reads but not as meant
TOO_DEEP = Message(
    "Values lie inside each other more than {most} deep.",
    "A study needs at most five levels; take brackets and indents out.",
)
TOO_MUCH = Message(
    "The file holds more than {most} values, counting every repeat of a `*mark`.", "Write each thing once."
)
CYCLE = Message("This value contains itself.", "Take the * out, or put the value in quotes.")
TWICE = Message("`{key}` is given twice: first on line {first}, and again here.", "Keep one of the two lines.")
KEY_NOT_TEXT = Message(
    "A key must be a word; this is a {what}.", "If brackets are meant as text, put the value in quotes: '{{ ... }}'."
)
KEY_EMPTY = Message("There is no word before the colon.", "Write `key: value`, or put the text in quotes.")
TAGGED = Message("A value that begins with ! must be in quotes, or its first word is lost.", "Write: '{text}'.")
ANCHORED = Message("A value that begins with & must be in quotes, or its first word is lost.", "Write: '{text}'.")
HASH_CUT = _warns(
    "Everything from the # on is left out, as a note to yourself.",
    "If it belongs to the text, put the whole value in quotes; if it is a note, put a space after the #.",
)
BAD_MERGE = Message("`<<` must name other keys to take over.", "Leave it out and write the keys.")

# Keys and shapes
UNKNOWN_KEY = Message("{record} has no key `{key}`.", "{hint}")
FOREIGN_KEYS = Message(
    "{record} has no keys {keys}: these look like part of something else.",
    "See whether a line such as `works:` is missing above, or starts too far right. The keys here are: {known}.",
)
COMMA_CUT = Message(
    "The comma before `{key}` ends the value in front of it, because it stands inside {{ }}.",
    "Put a text with commas in quotes.",
)
MISSING = Message("{record} has no `{key}`.", "Add a line such as `{example}`.")
NOTHING = Message("Nothing is written after `{key}:`.", "Write something such as `{example}`.")
LIST_FOR_TEXT = Message(
    "Here stands a list; {wants} is expected.", "Write one value without - or [ ], or put the text in quotes."
)
KEYS_FOR_TEXT = Message("Here stand keys with values; {wants} is expected.", "Write one value, without keys.")
ACCIDENT = Message(
    "The colon after `{word}` makes this a key with a value; {wants} is expected.", "Put the text in quotes: {line}"
)
TEXT_FOR_KEYS = Message(
    "{record} needs keys of its own, not the single value `{text}`.",
    "Write the keys below it, further right: {example}",
)
EMPTY_ITEM = Message("This item of the list is empty.", "Write something after the dash, or take the line out.")
LIST_FOR_KEYS = Message("Here stands a list; {record} with keys is expected.", "Take the - or [ ] away.")
TOO_MANY = Message("There are {count} of these; packgen can work with at most {most}.", "Keep the most telling ones.")
TOO_LONG = Message("This text has {count} letters; at most {most} fit here.", "Shorten it.")

# Values
NOT_CHOICE = Message("`{text}` is none of the words known here.", "Write one of: {words}.{hint}")
NOT_YES_NO = Message("`{text}` is neither yes nor no.", "Write yes or no.")
NOT_WHOLE = Message("`{text}` is not a whole number.", "Write a number such as {example}.")
OUT_OF_RANGE = Message(
    "`{text}` is out of range: {least} to {most} is possible.", "Write a value between {least} and {most}."
)
NOT_LINK = Message("`{text}` is not a link packgen may print.", "Write a whole web address: {example}")
NOT_ISBN = _warns(
    "`{text}` is no ISBN as it stands: it needs 10 or 13 digits, and its last digit checks the others.",
    "Copy it again from the back of the book, such as 978-0-306-40615-7.",
)
NOT_LANGUAGE = Message("`{text}` is not a language code.", "Write a code such as en, fr or pt-BR.")
NOT_PAIR = Message("Two lengths are expected here.", "Write two lengths such as [0.5 mm, -1 mm].")
NOT_SCALE = Message("`{text}` is not a scale.", "Write auto, fit, true, or a ratio such as 1:100.")
LAT_LON = Message("A place needs both `lat` and `lon`, or neither.", "Add `{missing}`, in degrees such as 50.4.")
QUOTES_PRINTED = _warns(
    "The quotes {quotes} are curly, so they will be printed as part of the name.",
    "Leave them out, or use straight quotes.",
)

# Numbers and measures
NOT_NUMBER = Message("`{text}` is not a number.", "Write a number such as 12, 1.5 or 3 1/4.")
NOT_MEASURE = Message("`{text}` is not {wants}.", "Write {wants} such as {example}.")
NO_UNIT = Message("`{text}` has no unit, and {wants} is expected.", "Write it with a unit: {example}.")
UNKNOWN_UNIT = Message("packgen does not know the unit `{unit}`.", "{hint}")
WRONG_DIMENSION = Message("`{text}` is {found}; {wants} is expected.", "Write {wants} such as {example}.")
TOO_BIG = Message("`{text}` is beyond any size packgen can work with.", "Look for a digit too many.")
NOT_SIZE = Message("`{text}` is not a width and a height.", "Write both with their unit, width first: 420 x 310 mm.")
NOT_DEGREES = Message(
    "`{text}` is not a position on the Earth.", "Write degrees such as 50.4, -4.9, 50.4 N or 50° 24' N."
)

# Dates
NOT_DATE = Message(
    "`{text}` is not a date packgen can read.{hint}",
    "Write it such as 1834, 3 May 1834, c. 1851, 1862-1865, 1860s, 44 BC, or in the ISO form 1834-05-03.",
)
NO_SUCH_DAY = Message("There is no such day as {text}.", "{month} {year} has {days} days: see which day is meant.")
NO_SUCH_MONTH = Message(
    "There is no month {month} (in `{text}`).",
    "Months run from 01 to 12. For years, write both in full, such as 1862-1865.",
)
NO_YEAR_ZERO = Message("There is no year 0: 1 BC is followed by AD 1.", "Write 1 BC or AD 1.")
SHORT_YEAR = Message(
    "The year `{text}` could be in any century.",
    "Write the year in full, such as 18{two}, or AD {number} or {number} BC for the old times.",
)
LONG_YEAR = Message(
    "The year `{text}` has too many digits.", "Write four digits; for times long ago write {number} BC."
)
MINUS_YEAR = Message(
    "`{text}` could mean two different years before 1.",
    "Write {number} BC, or the four digits of the ISO form: -{iso:04d} is {number} BC.",
)
DAY_OR_MONTH = Message(
    "`{text}` can be read in two ways: {one} or {two}.", "Write {one} or {two}, with the month as a word."
)
YEARS_OR_MONTH = Message(
    "`{text}` can be read in two ways: {one} or {two}.",
    "Write the years in full ({two}) or the month as a word ({one}).",
)
BACKWARDS = Message("The end, {end}, comes before the start, {start}.", "Write the earlier date first.")
NOT_FULL_DATE = Message(
    "`{text}` is not one day.", "Write the day, month and year, such as 2027-02-03 or 3 February 2027."
)
SAID_TWO_WAYS = _warns("`{text}` was read as {one}, as in ISO 8601-2.", "If the years are meant, write {two}.")

# Files named in the study
PATH_OUTSIDE = Message(
    "`{text}` lies outside the folder of the study.",
    "Copy it into that folder and write the path from there, such as pictures/{name}.",
)
PATH_WEB = Message(
    "`{text}` is a place on the web; packgen fetches nothing.",
    "Save the picture into the folder of the study and write its path, such as pictures/{name}.",
)
PATH_MISSING = Message("There is no file `{text}` in the folder of the study.", "{hint}")
PATH_FOLDER = Message("`{text}` is not a file.", "Name the file inside it.")
FONT_KIND = Message("`{text}` is not a font packgen can read.", "Name a .ttf or .otf file.")
FONT_MISSING = Message(
    "There is no font file `{text}`.", "Write its path from the folder of the family file, or in full."
)

# Study
ID_TWICE = Message("The id `{id}` is used twice: first on line {first}, and again here.", "Give this one another id.")
NAMES_WANTED = Message("Names with values are expected here.", "Write such as {{wheel radius: 60 mm, blades: 6}}.")
NO_SUCH_WORK = Message("No work has the id `{text}`.", "{hint}")
DIED_FIRST = Message("`died` ({died}) comes before `born` ({born}).", "Look at both dates.")
CHANGE_ONE = Message("A fair test changes one thing only; here are {count}.", "Keep one of: {names}.")
EMPTY_MESH = Message(
    "A model needs a `solid` from the catalogue, or a `mesh` file.", "Add a line such as `solid: prism`."
)

# Family
NAME_TWICE = Message(
    "Two children are called `{name}`: first on line {first}, and again here.",
    "Give one of them a second name or a number.",
)
FOLDER_TWICE = Message(
    "`{name}` and `{other}` on line {first} would get the same folder, `{folder}`.", "Change one of the names a little."
)
NO_LETTERS = Message("The name `{name}` has no letters.", "Write the child's name.")
NO_AGE = _warns("`{name}` has neither age nor pack, and gets the pack `{pack}`.", "Add `age: 8`, or `pack: older`.")
AGE_AND_PACK = _warns(
    "`{name}` is {age}; the pack `{pack}` is made for {ages}.", "If that is not meant, write `pack: {better}`."
)
UNKNOWN_PACK = Message("There is no pack `{text}`.", "Write one of: {words}.{hint}")
UNKNOWN_SHEET = Message("There is no sheet `{text}`.", "Write one of: {words}.{hint}")
NOT_DAY = Message("`{text}` is not a day of the week.", "Write days such as Wednesday, or [Monday, Thursday].")
AWAY_OUTSIDE = _warns(
    "{day} lies outside the term, which starts on {starts} and has {weeks} weeks.",
    "Look at the date, or take it out.",
)
EXTRA_WANTED = Message("Names with a number of copies are expected here.", "Write such as {{design-draft: 3}}.")
NO_CHILDREN = Message("The family has no children.", "Add at least one: `children: [{{name: Juno, age: 11}}]`.")
RESULTS_MISSING = Message(
    "There is no file `{text}` with results.",
    "Write its path from the folder of the family file, such as results.yaml.",
)
ROWS_WANTED = Message(
    "The rows of a trial table with their numbers are expected here.", "Write such as {{120 mm: [1.4, 1.5, -]}}."
)
NO_SUCH_CHILD = Message("The family has no child called `{text}`.", "Write one of: {words}.{hint}")
RESULTS_TWICE = Message(
    "Results of `{name}` for this challenge stand on line {first} and again here.", "Write all rows under one of them."
)

# Recipe
PACK_NAME = Message(
    "This file is named `{stem}` but holds the pack `{pack}`.", "Give the file and the pack the same name."
)
NO_SHEET = Message("This item names no sheet.", "Write `- biography`, or `- {{sheet: timeline, events: 8}}`.")
