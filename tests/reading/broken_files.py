"""For every message of the readers: a file that causes it, and the same file mended.

Names of the table in packgen/reading/messages.py -> (kind of file, broken text, mended text). A broken text gives
exactly one line; the mended one gives none.
"""

from __future__ import annotations

from reading_files import CHILD, FAMILY, RECIPE, STUDY

Case = tuple[str, str | bytes, str | bytes]


def study(broken: str, mended: str) -> Case:
    return "study", STUDY + broken, STUDY + mended


def family(broken: str, mended: str) -> Case:
    return "family", CHILD + broken, CHILD + mended


def children(broken: str, mended: str) -> Case:
    return "family", f"{FAMILY}children: [{broken}]\n", f"{FAMILY}children: [{mended}]\n"


def work(broken: str, mended: str) -> Case:
    return study(f"works:\n  - title: The Harbour\n    {broken}\n", f"works:\n  - title: The Harbour\n    {mended}\n")


def challenge(broken: str, mended: str) -> Case:
    start = "challenges:\n  - title: A wheel\n    brief: Build a wheel.\n    "
    return study(f"{start}{broken}\n", f"{start}{mended}\n")


def model(broken: str, mended: str) -> Case:
    start = "models:\n  - title: The lamp house\n    "
    return study(f"{start}{broken}\n", f"{start}{mended}\n")


_DEEP = "facts: " + "[" * 30 + "x" + "]" * 30 + "\n"
_BOMB = "a: &a [x,x,x,x,x,x,x,x,x,x]\n" + "".join(
    f"{chr(98 + i)}: &{chr(98 + i)} [{','.join(['*' + chr(97 + i)] * 10)}]\n" for i in range(6)
)

_WORK = "  - title: The Harbour\n    medium: oil\n    size: 1 x 1 m\n    held: Saltmere\n"

CASES: dict[str, Case] = {
    # The file itself; NO_FILE, NOT_A_FILE and CANNOT_OPEN have tests of their own, as no text causes them.
    "TOO_LARGE": ("study", STUDY + "#" * 2_000_001, STUDY),
    "NOT_TEXT": ("study", b"PK\x03\x04" + b"x" * 100, STUDY),
    "NOT_UTF8": ("study", (STUDY + "note: caf").encode() + b"\xe9\n", STUDY + "note: café\n"),
    "CONTROL": study("note: a bell \x07 here\n", "note: a bell here\n"),
    "EMPTY": ("study", "# nothing yet\n", STUDY),
    "NOT_KEYS": ("study", "- Isaure Quenby\n- inventor\n", STUDY),
    # YAML that cannot be read
    "TAB": study("facts:\n\t- She kept bees.\n", "facts:\n  - She kept bees.\n"),
    "COLON_IN_VALUE": study("note: He said: hello\n", 'note: "He said: hello"\n'),
    "COLON_NO_SPACE": study("born:1834\n", "born: 1834\n"),
    "NO_COLON": study("born 1834\n", "born: 1834\n"),
    "BAD_START": study("note: @home\n", 'note: "@home"\n'),
    "BLOCK_START": study("note: > than before\n", 'note: "> than before"\n'),
    "BRACKET_START": study("note: [sic] as written\n", 'note: "[sic] as written"\n'),
    "BACKSLASH": work('image: "pictures\\harbour.png"', "image: 'pictures\\harbour.png'"),
    "QUOTE_OPEN": study('note: "All invented\nborn: 1834\n', 'note: "All invented"\nborn: 1834\n'),
    "QUOTE_INSIDE": study("note: 'It's late'\n", 'note: "It\'s late"\n'),
    "CURLY_QUOTES": study("note: “The Wave: a study”\n", 'note: "The Wave: a study"\n'),
    "FLOW_OPEN": study("facts: [one, two\nborn: 1834\n", "facts: [one, two]\nborn: 1834\n"),
    "INDENT": study(
        "place:\n    name: Saltmere\n  lat: 50\n    lon: -4\n", "place: {name: Saltmere, lat: 50, lon: -4}\n"
    ),
    "INDENT_VALUE": study("born: 1834\n  died: 1902\n", "born: 1834\ndied: 1902\n"),
    "DASH_MISSING": work("look: Why?\n  held: The Collection", "look: Why?\n    held: The Collection"),
    "DASH_MISSING_ITEM": study("facts:\n  - one\n  two: three\n", "facts:\n  - one\n  - 'two: three'\n"),
    "DASH_AFTER_VALUE": study("note: one\n- two\n", "facts:\n- one\n- two\n"),
    "DASH_SWALLOWED": study("facts:\n  - one\n    - two\n", "facts:\n  - one\n  - two\n"),
    "DASH_NO_SPACE": study("facts:\n  -one\n  -two\n", "facts:\n  - one\n  - two\n"),
    "SEVERAL": study("---\nborn: 1834\n", "born: 1834\n"),
    "ANCHOR_TWICE": study("born: &a 1834\ndied: &a 1902\nnote: *a\n", "born: 1834\ndied: 1902\nnote: '*a'\n"),
    "NOT_YAML": study("? :\n", "note: x\n"),
    # YAML that reads, but not as meant
    "TOO_DEEP": study(_DEEP, "facts: [x]\n"),
    "TOO_MUCH": study(_BOMB, "facts: [x]\n"),
    "CYCLE": study("facts: &a [*a]\n", "facts: ['*a']\n"),
    "TWICE": study("born: 1834\nborn: 1835\n", "born: 1834\n"),
    "KEY_NOT_TEXT": study("note: {{ name }}\n", "note: '{{ name }}'\n"),
    "KEY_EMPTY": study("'': x\n", "note: x\n"),
    "TAGGED": study("note: !Look out\n", "note: '!Look out'\n"),
    "ANCHORED": study("note: &Sons moved\n", "note: '&Sons moved'\n"),
    "HASH_CUT": study("note: Lamp no #3\n", "note: 'Lamp no #3'  # a note to myself\n"),
    "BAD_MERGE": study("<<: x\n", "note: x\n"),
    # Keys and shapes
    "UNKNOWN_KEY": study("timelin: [{when: 1834, what: Born}]\n", "timeline: [{when: 1834, what: Born}]\n"),
    "FOREIGN_KEYS": study(f"timeline:\n{_WORK}", f"works:\n{_WORK}"),
    "COMMA_CUT": study("place: {name: Saltmere, Cornwall}\n", "place: {name: 'Saltmere, Cornwall'}\n"),
    "MISSING": study("timeline: [{when: 1834}]\n", "timeline: [{when: 1834, what: Born}]\n"),
    "NOTHING": study("timeline: [{when: 1834, what: }]\n", "timeline: [{when: 1834, what: Born}]\n"),
    "LIST_FOR_TEXT": study("note: [sic]\n", "note: '[sic]'\n"),
    "KEYS_FOR_TEXT": study("note: {one: 1, two: 2}\n", "note: 'one: 1, two: 2'\n"),
    "ACCIDENT": study("facts:\n  - Her rule: measure twice.\n", "facts:\n  - 'Her rule: measure twice.'\n"),
    "TEXT_FOR_KEYS": study("timeline: [Born]\n", "timeline: [{when: 1834, what: Born}]\n"),
    "LIST_FOR_KEYS": study("place: [Saltmere]\n", "place: Saltmere\n"),
    "EMPTY_ITEM": study("facts:\n  - one\n  -\n", "facts:\n  - one\n"),
    "TOO_MANY": study("facts: [" + "x, " * 200 + "x]\n", "facts: [" + "x, " * 199 + "x]\n"),
    "TOO_LONG": study(f"works: [{'x' * 201}]\n", f"works: [{'x' * 200}]\n"),
    # Values
    "NOT_CHOICE": ("study", STUDY.replace("inventor", "painter"), STUDY.replace("inventor", "artist")),
    "NOT_YES_NO": children("{name: Juno, age: 11, tint: perhaps}", "{name: Juno, age: 11, tint: ja}"),
    "NOT_WHOLE": challenge("trials: 2.5", "trials: 3"),
    "OUT_OF_RANGE": challenge("trials: 99", "trials: 4"),
    "NOT_LINK": work("link: javascript:alert(1)", "link: https://example.org/harbour"),
    "NOT_ISBN": study(
        "book: {title: The Lamp, isbn: 978-0-306-40615-8}\n", "book: {title: The Lamp, isbn: 978-0-306-40615-7}\n"
    ),
    "NOT_LANGUAGE": study("language: English please\n", "language: en\n"),
    "NOT_PAIR": family("printer: {duplex shift: 1 mm}\n", "printer: {duplex shift: [1 mm, 0]}\n"),
    "NOT_SCALE": model("solid: prism\n    scale: big", "solid: prism\n    scale: 1:100"),
    "LAT_LON": study("place: {name: Saltmere, lat: 50.4}\n", "place: {name: Saltmere, lat: 50.4, lon: -4.9}\n"),
    "QUOTES_PRINTED": study("works: [“The Wave”]\n", 'works: ["The Wave"]\n'),
    "NOT_NUMBER": challenge("materials: [{item: card, amount: some}]", "materials: [{item: card, amount: 2}]"),
    "NOT_MEASURE": work("width: wide", "width: 42 cm"),
    "NO_UNIT": work("width: 420", "width: 420 mm"),
    "UNKNOWN_UNIT": work("width: 420 mmm", "width: 420 mm"),
    "WRONG_DIMENSION": work("width: 250 g", "width: 250 mm"),
    "TOO_BIG": challenge("given: {load: 1e99 g}", "given: {load: 19 g}"),
    "NOT_SIZE": work("size: 420 x 310", "size: 420 x 310 mm"),
    "NOT_DEGREES": study("place: {name: S, lat: north, lon: 4}\n", "place: {name: S, lat: 50 N, lon: 4}\n"),
    # Dates
    "NOT_DATE": study("born: long ago\n", "born: 1834\n"),
    "NO_SUCH_DAY": study("born: 31 February 1834\n", "born: 28 February 1834\n"),
    "NO_SUCH_MONTH": study("born: 1862-13\n", "born: 1862-12\n"),
    "NO_YEAR_ZERO": study("born: 0 BC\n", "born: 1 BC\n"),
    "SHORT_YEAR": study("born: 34\n", "born: 1834\n"),
    "LONG_YEAR": study("born: 18344\n", "born: 1834\n"),
    "MINUS_YEAR": study("born: -44\n", "born: 44 BC\n"),
    "DAY_OR_MONTH": study("born: 03/05/1834\n", "born: 3 May 1834\n"),
    "YEARS_OR_MONTH": study("born: 1862-5\n", "born: 1862-1865\n"),
    "BACKWARDS": study("timeline: [{when: 1865-1862, what: x}]\n", "timeline: [{when: 1862-1865, what: x}]\n"),
    "NOT_FULL_DATE": family("term: {starts: 2027-02, weeks: 9}\n", "term: {starts: 2027-02-03, weeks: 9}\n"),
    "SAID_TWO_WAYS": study("born: 1901-02\n", "born: 1901-1902\n"),
    # Files named in the study
    "PATH_OUTSIDE": work("image: ../harbour.png", "image: pictures/harbour.png"),
    "PATH_WEB": work("image: https://example.org/harbour.png", "image: pictures/harbour.png"),
    "PATH_MISSING": work("image: pictures/harbor.png", "image: pictures/harbour.png"),
    "PATH_FOLDER": work("image: pictures", "image: pictures/harbour.png"),
    "FONT_KIND": family("fonts: Own.woff\n", ""),
    "FONT_MISSING": family("fonts: Own.ttf\n", ""),
    # Study
    "ID_TWICE": study(
        "works:\n  - {id: wave, title: One}\n  - {id: wave, title: Two}\n",
        "works:\n  - {id: wave, title: One}\n  - {id: tide, title: Two}\n",
    ),
    "NAMES_WANTED": challenge("given: 60 mm", "given: {radius: 60 mm}"),
    "NO_SUCH_WORK": study(
        "works: [The Harbour]\nbook: {title: B, chapters: [{title: C, works: the-harbor}]}\n",
        "works: [The Harbour]\nbook: {title: B, chapters: [{title: C, works: the-harbour}]}\n",
    ),
    "DIED_FIRST": study("born: 1834\ndied: 1802\n", "born: 1834\ndied: 1902\n"),
    "CHANGE_ONE": challenge("change: {blades: [4, 6], radius: [5 cm]}", "change: {blades: [4, 6]}"),
    "EMPTY_MESH": model("scale: fit", "solid: prism"),
    # Family
    "NAME_TWICE": children("{name: Juno, age: 3}, {name: juno, age: 4}", "{name: Juno, age: 3}, {name: Wilf, age: 4}"),
    "FOLDER_TWICE": children("{name: Zoë, age: 3}, {name: Zoe, age: 4}", "{name: Zoë, age: 3}, {name: Zoe B, age: 4}"),
    "NO_LETTERS": children("{name: '?!', age: 3}", "{name: Wilf, age: 3}"),
    "NO_AGE": children("Juno", "{name: Juno, age: 11}"),
    "AGE_AND_PACK": children("{name: Wilf, age: 4, pack: upper}", "{name: Wilf, age: 4, pack: younger}"),
    "UNKNOWN_PACK": children("{name: Juno, pack: elder}", "{name: Juno, pack: older}"),
    "UNKNOWN_SHEET": children(
        "{name: Juno, age: 9, leave_out: grid}", "{name: Juno, age: 9, leave_out: enlarging grid}"
    ),
    "NOT_DAY": family(
        "term: {starts: 2027-02-03, weeks: 9, on: Wotansday}\n", "term: {starts: 2027-02-03, weeks: 9, on: Wed}\n"
    ),
    "AWAY_OUTSIDE": family(
        "term: {starts: 2027-02-03, weeks: 9, away: 2026-03-17}\n",
        "term: {starts: 2027-02-03, weeks: 9, away: 2027-03-17}\n",
    ),
    "EXTRA_WANTED": children("{name: Juno, age: 9, extra: 3}", "{name: Juno, age: 9, extra: {design-draft: 3}}"),
    "RESULTS_MISSING": family(
        "results: resluts.yaml\n", "results: [{challenge: A wheel, child: Juno, trials: {6: [7.1, -]}}]\n"
    ),
    "ROWS_WANTED": family(
        "results: [{challenge: A wheel, child: Juno, trials: [7.1, 7.4]}]\n",
        "results: [{challenge: A wheel, child: Juno, trials: {6: [7.1, 7.4]}}]\n",
    ),
    "NO_SUCH_CHILD": family(
        "results: [{challenge: A wheel, child: Jnuo, trials: {6: 7.1}}]\n",
        "results: [{challenge: A wheel, child: juno, trials: {6: 7.1}}]\n",
    ),
    "RESULTS_TWICE": family(
        "results: [{challenge: Wheel, child: Juno, trials: {6: 7}}, {challenge: wheel, child: juno, trials: {3: 9}}]\n",
        "results: [{challenge: Wheel, child: Juno, trials: {6: 7, 3: 9}}]\n",
    ),
    "NO_CHILDREN": ("family", FAMILY + "children: []\n", CHILD),
    # Recipe
    "PACK_NAME": ("recipe", RECIPE.replace("pack: recipe", "pack: older"), RECIPE),
    "NO_SHEET": ("recipe", RECIPE.replace("[biography]", "[{trials: 3}]"), RECIPE),
}
