"""Difficult studies and families: very long, very short, in other scripts, with parts missing, for odd papers."""

from __future__ import annotations

from dataclasses import dataclass

HEAD = "kind: inventor\nin_short: Lamp-maker who measured the tides.\n"
SMALL = "study: Isaure Quenby\n" + HEAD + "timeline:\n  - {when: 1851, what: Makes her first lamp}\n"
CHILDREN = "family: Ferrar\nchildren:\n  - {name: Juno, age: 11, pack: older}\n  - {name: Wilf, age: 4, pack: first}\n"
WORK = SMALL + "works:\n  - {id: harbour, title: The Harbour, when: 1861, image: harbour.png}\n"


@dataclass(frozen=True)
class Case:
    """A study, perhaps a family, and what must be in the message if it is refused; empty if it builds."""

    name: str
    study: str = SMALL
    family: str = ""
    refused: str = ""
    only: tuple[str, ...] = ()


def words(count: int, word: str = "tide") -> str:
    """A text of so many words, in sentences of ten."""
    return " ".join(f"{word}." if k % 10 == 9 else word for k in range(count))


def items(key: str, count: int, item: str) -> str:
    """A list under a key; # in an item is its number."""
    return f"{key}:\n" + "".join(f"  - {item.replace('#', str(k))}\n" for k in range(count))


def named(name: str) -> str:
    return f'study: "{name}"\n{HEAD}born: 1834\n'


def with_link(link: str) -> str:
    return WORK.replace("image:", f'link: "{link}", image:')


def given(family: str) -> str:
    return CHILDREN.replace("family: Ferrar\n", "family: Ferrar\n" + family)


LENGTHS = (
    Case("nothing but what must be there", "study: Isaure Quenby\n" + HEAD),
    Case("a name of one letter", named("X")),
    Case("a name of eighty letters without a space", named("Q" * 80)),
    Case("a name of sixty words", named(words(60, "Quenby")), refused="letters; at most"),
    Case(
        "a summary of five hundred words",
        SMALL.replace("Lamp-maker who measured the tides.", words(500)),
        refused="letters; at most",
    ),
    Case("a life of one word", SMALL + "life: Tides.\n"),
    Case("a life of three thousand words", SMALL + f"life: {{younger: Short., older: '{words(3000)}'}}\n"),
    Case("a life of one word of two thousand letters", SMALL + f"life: {{older: {'a' * 2000}}}\n"),
    Case(
        "six hundred events",
        named("A B")
        + "timeline:\n"
        + "".join(f"  - {{when: {1300 + k}, what: Thing {k} is done}}\n" for k in range(600)),
    ),
    Case(
        "two hundred events in one year", named("A B") + items("timeline", 200, "{when: 1851, what: Thing # is done}")
    ),
    Case(
        "events four thousand years apart", SMALL + "  - {when: 2600 BC, what: A pyramid}\n  - {when: 1990, what: Us}\n"
    ),
    Case(
        "years before the first", named("A B") + "timeline:\n  - {when: 44 BC, what: A}\n  - {when: AD 14, what: B}\n"
    ),
    Case(
        "an event of six hundred words",
        SMALL + f"  - {{when: 1862, what: '{words(600)}'}}\n",
        refused="letters; at most",
    ),
    Case(
        "a hundred chapters",
        SMALL + "book:\n  title: T\n  " + items("chapters", 100, "Chapter #").replace("\n", "\n  "),
    ),
    Case("a chapter's title of forty words", SMALL + f"book: {{title: T, chapters: ['{words(38)}', B]}}\n"),
    Case(
        "eighty words to learn", SMALL + items("words", 80, "{word: tide#, means: the sea #}").replace("tide", "tide")
    ),
    Case("a word of sixty letters", SMALL + f"words: [{{word: {'tidewaters' * 6}, means: long}}]\n"),
    Case(
        "a meaning of four hundred words",
        SMALL + f"words: [{{word: ebb, means: '{words(400)}'}}]\n",
        refused="letters; at most",
    ),
    Case("a hundred facts", SMALL + items("facts", 100, "Fact number # of this life")),
    Case("a fact of nearly two hundred words", SMALL + f"facts: ['{words(190)}']\n"),
    Case("fifty obstacles", SMALL + items("obstacles", 50, "Her lamp # cracked in the cold")),
    Case("thirty works without pictures", SMALL + items("works", 30, "{id: w#, title: Work #, when: 1860}")),
    Case("a dozen challenges", SMALL + items("challenges", 12, "{title: Challenge #, brief: Build it.}")),
    Case(
        "sixty materials",
        SMALL
        + "challenges:\n  - title: A\n    brief: B.\n    "
        + items("materials", 60, "{item: thing #, amount: 1, unit: m}").replace("\n", "\n    "),
        refused="is 306 mm high",
    ),
    Case("a brief of nearly four hundred words", SMALL + f"challenges: [{{title: A, brief: '{words(380)}'}}]\n"),
    Case(
        "nine models",
        SMALL + items("models", 9, "{title: Box #, solid: cuboid, given: {length: 5 cm, width: 4 cm, height: 3 cm}}"),
    ),
    Case("a file of two million letters", SMALL + f"facts: ['{'tide ' * 420_000}']\n", refused="study.yaml"),
)
SCRIPTS = (
    Case("Greek", named("Ἰσαύρα Κουένβη")),
    Case("Cyrillic", named("Изора Квенби")),
    Case("Vietnamese", named("Nguyễn Thị Hải Đường")),
    Case("Chinese", named("潮水灯匠")),
    Case("Japanese", named("灯台守のイゾール")),
    Case("Arabic", named("إيزور كوينبي"), refused="right to left"),
    Case("Hebrew", named("איזור קוונבי"), refused="right to left"),
    Case("Thai", named("อิซอร์"), refused="No face has the letters"),
    Case("a picture letter", named("Isaure \U0001f30a"), refused="No face has the letters"),
    Case("accents put on afterwards", named("Isaure\u0301 Que\u0308nby")),
    Case("letters that show nothing", named("Isau\u00adre\u200bQuen\u2060by \ufeff")),
    Case("a text turned round by a control letter", named("Isaure \u202eyrebne\u202c")),
    Case("fractions, arrows and signs", SMALL + 'facts: ["⅓ of ½ → ≈ √2 × 3 € £ µ °C"]\n'),
    Case("control letters", SMALL + 'facts: ["a\\u0007b"]\n', refused="study.yaml:"),
)
MARKUP = (
    Case("a template", named("{{ 7 * 7 }} {% for x in y %}")),
    Case("markup of pages", SMALL + "facts: ['<b>bold</b> <font color=\"red\">R&D</font> <br/> a<b and b>c']\n"),
    Case("a file as a picture in a text", SMALL + "facts: ['<img src=\"/etc/passwd\"/> file:///etc/passwd']\n"),
    Case(
        "operators of a page",
        SMALL + "facts: [') Tj ET Q (', '\\\\) \\\\( \\\\n \\\\000', '%PDF-1.7 %%EOF', 'endstream endobj']\n",
    ),
    Case("a script as a link", with_link("javascript:alert(1)"), refused="study.yaml:"),
    Case("a file as a link", with_link("file:///etc/passwd"), refused="study.yaml:"),
    Case("a link with brackets and quotes", with_link("https://example.org/a_(b)?q='x'&y=%20z")),
    Case("a link in another script", with_link("https://example.org/гавань")),
    Case("a link of nine hundred letters", with_link("https://example.org/" + "a" * 900)),
)
PARTS = (
    Case("a book without chapters", SMALL + "book: {title: The Lamp}\n"),
    Case("a picture that is not there", WORK.replace("harbour.png", "nowhere.png"), refused="study.yaml:"),
    Case("a picture outside the folder", WORK.replace("harbour.png", "../outside.png"), refused="study.yaml:"),
    Case("a link to a picture outside the folder", WORK.replace("harbour.png", "leads-out.png"), refused="study.yaml:"),
    Case("a picture of one dot", WORK.replace("harbour.png", "dot.png")),
    Case("a picture as wide as a ribbon", WORK.replace("harbour.png", "wide.png")),
    Case("a picture as high as a mast", WORK.replace("harbour.png", "high.png")),
    Case("a picture in printers' inks", WORK.replace("harbour.png", "inks.jpg")),
    Case("half a picture", WORK.replace("harbour.png", "half.jpg"), refused="half.jpg"),
    Case("a text that says it is a picture", WORK.replace("harbour.png", "text.png"), refused="text.png"),
    Case("a picture all of one colour", WORK.replace("harbour.png", "plain.png")),
    Case("the same picture for six works", SMALL + items("works", 6, "{id: w#, title: Work #, image: harbour.png}")),
    Case(
        "a solid of nothing",
        SMALL + "models: [{title: A, solid: cuboid, given: {length: 0 mm, width: 1 mm, height: 1 mm}}]\n",
        refused="study.yaml:",
    ),
    Case(
        "a house at true size",
        SMALL + "models: [{title: A, solid: cuboid, given: {length: 9 m, width: 9 m, height: 9 m}, scale: 1:1}]\n",
        refused="study.yaml:",
    ),
    Case(
        "a prism of a thousand sides",
        SMALL + "models: [{title: A, solid: prism, given: {sides: 1000, across: 9 cm, height: 9 cm}}]\n",
        refused="study.yaml:",
    ),
    Case(
        "a challenge of an unknown model",
        SMALL + "challenges: [{title: A, brief: B., model: flying carpet}]\n",
        refused="study.yaml:",
    ),
)
FAMILIES = (
    Case("Letter paper", WORK, given("paper: Letter\n")),
    Case("a paper packgen has not", SMALL, given("paper: A3\n"), refused="family.yaml:"),
    Case("a printer with wide margins", WORK, given("printer: {margin: 25 mm}\n")),
    Case("a printer with hardly any paper left", SMALL, given("printer: {margin: 90 mm}\n"), refused="family.yaml:"),
    Case(
        "backs far beside their fronts",
        SMALL,
        given("printer: {duplex shift: [80 mm, 80 mm]}\n"),
        refused="family.yaml:",
    ),
    Case("one child without a name", SMALL, "family: F\nchildren: [{age: 7, pack: younger}]\n", refused="family.yaml:"),
    Case(
        "two children of one name",
        SMALL,
        CHILDREN + "  - {name: Juno, age: 8, pack: younger}\n",
        refused="family.yaml:",
    ),
    Case("a child called parent", SMALL, CHILDREN + "  - {name: Parent, age: 8, pack: younger}\n"),
    Case("a child whose name is a path", SMALL, CHILDREN + "  - {name: ../../Eve, age: 8, pack: younger}\n"),
    Case(
        "a child whose name no folder can have",
        SMALL,
        CHILDREN + '  - {name: "...", age: 8, pack: younger}\n',
        refused="no letters",
    ),
    Case(
        "a child of a hundred letters", SMALL, CHILDREN + f"  - {{name: {'Maximiliane' * 9}, age: 8, pack: younger}}\n"
    ),
    Case("a child of no age at all", SMALL, CHILDREN + "  - {name: Eve, age: 0, pack: first}\n"),
    Case(
        "forty children",
        SMALL,
        "family: F\n" + items("children", 40, "{name: Child #, age: 8, pack: younger}"),
        only=("biography",),
    ),
    Case("a term of one week", WORK, CHILDREN + "term: {starts: 2027-02-03, weeks: 1, on: Wednesday}\n"),
    Case("a term of fifty weeks", WORK, CHILDREN + "term: {starts: 2027-02-03, weeks: 50, on: Wednesday}\n"),
    Case("one minute a week", WORK, CHILDREN + "term: {starts: 2027-02-03, weeks: 9, on: Wednesday, minutes: 1}\n"),
    Case(
        "a term that is all away",
        SMALL,
        CHILDREN + "term: {starts: 2027-02-03, weeks: 1, on: Wednesday, away: [2027-02-03]}\n",
    ),
    Case("thirty copies of a sheet", SMALL, CHILDREN.replace("pack: older", "pack: older, extra: {timeline: 30}")),
    Case(
        "a million copies of a sheet",
        SMALL,
        CHILDREN.replace("pack: older", "pack: older, extra: {timeline: 1000000}"),
        refused="family.yaml:",
    ),
    Case("a child at the pole", WORK, CHILDREN + "place: {name: Pole, lat: 90, lon: 0}\n"),
    Case("a family of nobody", SMALL, "family: F\nchildren: []\n", refused="family.yaml:"),
)
CASES = (*LENGTHS, *SCRIPTS, *MARKUP, *PARTS, *FAMILIES)
