"""The keys of a study file, each described once: from this table come its reading and its JSON Schema."""

from __future__ import annotations

from typing import Any

from packgen.faults import Place, Said
from packgen.reading import messages
from packgen.reading.challenge_keys import CAUTION, CHALLENGE, MATERIALS, STEPS
from packgen.reading.fields import Key, Many, Notes, Pairs, Record, making
from packgen.reading.models import (
    COMPOSITIONS,
    KINDS,
    LEVELS,
    Book,
    Chapter,
    Detail,
    Event,
    FaceArt,
    Hole,
    Meeting,
    Model,
    Spot,
    Study,
    Word,
    Work,
)
from packgen.reading.names import slug
from packgen.reading.study_shapes import GivenValues, Life, is_date, scale
from packgen.reading.values import (
    choice,
    date,
    degrees,
    fraction,
    identifier,
    inside,
    isbn,
    language,
    link,
    measure,
    name,
    prose,
    size,
    yes_no,
)

MAX_EVENTS, MAX_WORKS, MAX_CHAPTERS, MAX_WORDS = 2000, 500, 200, 500
MAX_MAKINGS, MAX_TEXTS = 100, 200
STRING_HOLE = 3.0  # mm across, for thread or string; common practice, no source


def _place(values: dict[str, Any], notes: Notes) -> Spot:
    if ("lat" in values) != ("lon" in values) and not notes.spoilt:
        missing = "lon" if "lat" in values else "lat"
        notes.add(messages.LAT_LON, values["at"], missing=missing)
    return Spot(**values)


PLACE: Record[Spot] = Record(
    "a place",
    "A place on the Earth, for maps and for the sun's height.",
    (
        Key("name", name(), "The place's name as it should be printed.", "Saltmere", required=True),
        Key("lat", degrees("NS"), "Degrees north; south is negative, or followed by S.", 50.4, aliases=("latitude",)),
        Key("lon", degrees("EW"), "Degrees east; west is negative, or followed by W.", -4.9, aliases=("longitude",)),
    ),
    _place,
    alone="name",
)

CHAPTER: Record[Chapter] = Record(
    "a chapter",
    "A chapter of the book, read in one sitting.",
    (
        Key("title", name(), "The chapter's title.", "The first lamp", required=True),
        Key("pages", name(), "Where it stands in the book.", "11-19"),
        Key("works", Many(identifier(), 50), "Ids of works the chapter speaks of.", ["harbour-at-dusk"]),
    ),
    making(Chapter),
    alone="title",
)

BOOK: Record[Book] = Record(
    "a book",
    "The book that is read aloud, a chapter a week.",
    (
        Key("title", name(), "The book's title.", "The Lamp on the Quay", required=True),
        Key("author", name(), "Who wrote it.", "Tamsin Orre"),
        Key("edition", name(), "Which edition or publisher, if the pages depend on it.", "second edition, 2019"),
        Key("isbn", isbn(), "Its number, to ask for it by.", "978-0-306-40615-7"),
        Key("chapters", Many(CHAPTER, MAX_CHAPTERS), "Its chapters in order: a title each, or title, pages and works."),
    ),
    making(Book),
    alone="title",
)

EVENT: Record[Event] = Record(
    "an event",
    "Something that happened, for the timeline.",
    (
        Key("when", date(), "A date: 1834, 3 May 1834, c. 1851, 1862-1865, 1860s, 44 BC, or ISO 8601-2.", 1834, True),
        Key("what", prose(500), "What happened, in a sentence.", "Born above the chandler's shop", required=True),
        Key("short", name(120), "A few words, for the younger and for narrow places.", "Isaure is born"),
    ),
    making(Event),
)

DETAIL: Record[Detail] = Record(
    "a detail",
    "A part of a picture worth a close look, measured from its upper left corner as fractions or percentages.",
    (
        Key("name", name(), "What is to be seen there.", "the smallest boat", required=True),
        Key("left", fraction(), "From the picture's left edge, 0 to 1.", 0.2, required=True),
        Key("top", fraction(), "From the picture's upper edge, 0 to 1.", 0.4, required=True),
        Key("width", fraction(), "The part's width, 0 to 1.", 0.15, required=True),
        Key("height", fraction(), "The part's height, 0 to 1.", 0.1, required=True),
    ),
    making(Detail),
)


MEETING: Record[Meeting] = Record(
    "a meeting point",
    "A point of a picture, measured from its upper left corner as fractions or percentages.",
    (
        Key("left", fraction(), "From the picture's left edge, 0 to 1.", 0.5, required=True),
        Key("top", fraction(), "From the picture's upper edge, 0 to 1.", 0.4, required=True),
    ),
    making(Meeting),
)


def _work(values: dict[str, Any], notes: Notes) -> Work:
    width, height = values.pop("size", (None, None))
    values["width"], values["height"] = values.get("width", width), values.get("height", height)
    image = values.pop("image", None)
    if image:
        values["image"], values["image_said"] = image
    drawing = values.pop("drawing", None)
    if drawing:
        values["drawing"], values["drawing_said"] = drawing
    if "leave_out" in values:
        values["leave_out"] = tuple(Said(slug(kind, "sheet"), kind.at) for kind in values["leave_out"])
    title: Said = values["title"]
    values.setdefault("id", Said(slug(title, "work"), title.at))
    return Work(**values)


_SIDE = measure("length", 0.1, 1e6)
WORK: Record[Work] = Record(
    "a work",
    "A painting, drawing, building or invention.",
    (
        Key(
            "id", identifier(), "A short name other parts of the study use; made from the title if left out.", "harbour"
        ),
        Key("title", name(), "The work's title.", "The Harbour at Dusk", required=True),
        Key("when", date(), "When it was made.", 1861),
        Key("medium", name(), "What it is made of.", "oil on panel"),
        Key("size", size(), "Width and height, width first.", "420 x 310 mm"),
        Key("width", _SIDE, "The width, if `size` is not given.", "420 mm"),
        Key("height", _SIDE, "The height, if `size` is not given.", "310 mm"),
        Key("image", inside("a picture"), "The picture's path, below the study's own folder.", "pictures/harbour.png"),
        Key("held", name(), "The collection or place that keeps it.", "Saltmere Town Collection"),
        Key("held_at", PLACE, "Where that is, for the map.", {"name": "Saltmere", "lat": 50.4, "lon": -4.9}),
        Key("link", link(), "A web page about it, printed as a QR code.", "https://example.org/harbour"),
        Key("look", Many(prose(500), 40), "Questions to look closely by.", ["Where does the light come from?"]),
        Key(
            "look_first", Many(prose(200), 10), "Simple questions for the youngest.", ["Find the dog. What does it do?"]
        ),
        Key(
            "answers",
            Many(prose(300), 40),
            "What to hear, for the guide: an answer to each question in `look`, in order; a dash where all are good.",
            ["Seven; three were lit by people."],
        ),
        Key("answers_first", Many(prose(200), 10), "The same for `look_first`.", ["Three lamps."]),
        Key("tell", prose(4000), "What to tell about it.", "She painted it from the same window for a month."),
        Key("details", Many(DETAIL, 12), "Parts of the picture for the find-it strip."),
        Key(
            "drawing",
            inside("a drawing"),
            "A line drawing of the picture and as wide to high; sheets to colour and to carry on use its lines.",
            "pictures/harbour-lines.svg",
        ),
        Key(
            "composition",
            Many(choice(COMPOSITIONS), 4),
            "The lines it is built on, for looking closer; looked for in the picture if left out.",
            ["diagonals"],
        ),
        Key("vanishing", MEETING, "Where lines that run into depth meet.", {"left": 0.5, "top": 0.4}),
        Key(
            "leave_out",
            Many(identifier(), 30),
            "Sheets not to make of it, as of a chart or a page of writing.",
            ["colour-by-number"],
        ),
    ),
    _work,
    alone="title",
)

WORD: Record[Word] = Record(
    "a word",
    "A word to learn.",
    (
        Key("word", name(60), "The word.", "ebb", required=True),
        Key("means", prose(300), "What it means.", "the tide going out", required=True, aliases=("meaning",)),
        Key("for", Many(choice(LEVELS), 4), "The levels it is for; all if left out.", ["older", "upper"], to="levels"),
    ),
    making(Word),
)


def _hole(values: dict[str, Any], notes: Notes) -> Hole:
    return Hole(**{"across": STRING_HOLE, **values})


HOLE: Record[Hole] = Record(
    "a hole",
    "Holes or marks on a model, for string or an axle.",
    (
        Key("where", choice(("corners", "base", "apex"), {"corner": "corners"}), "Where they are.", "corners", True),
        Key("across", measure("length", 0.5, 50), "How wide; 3 mm, for string, if left out.", "3 mm"),
        Key("mark only", yes_no(), "Yes to print a mark and cut nothing.", True),
    ),
    _hole,
    alone="where",
)


def _face(values: dict[str, Any], notes: Notes) -> FaceArt:
    image = values.pop("image", None)
    return FaceArt(**values, image=image[0], image_said=image[1]) if image else FaceArt(**values)


FACE: Record[FaceArt] = Record(
    "a face",
    "A drawing on a face of a model.",
    (
        Key("face", identifier(), "The face's name in the solid.", "side 1", required=True),
        Key("image", inside("a picture"), "A picture below the study's own folder.", "pictures/window.svg"),
        Key(
            "texture",
            name(40),
            "A texture in its place: boards, bricks, lines, planks, slates, stones, tiles.",
            "planks",
        ),
    ),
    _face,
)


def _model(values: dict[str, Any], notes: Notes) -> Model | None:
    mesh = values.pop("mesh", None)
    at: Place = values["at"]
    if mesh:
        values.setdefault("solid", Said("mesh", at))
        values["mesh"], values["mesh_said"] = mesh
    if "solid" not in values:
        if not notes.spoilt:
            notes.add(messages.EMPTY_MESH, at)
        return None
    return Model(**values)


MODEL: Record[Model] = Record(
    "a model",
    "A thing to cut out, fold and glue.",
    (
        Key("title", name(), "The model's title.", "The lamp house", required=True),
        Key("solid", identifier(), "A solid of the catalogue.", "prism"),
        Key(
            "given",
            GivenValues(),
            "Its measures; those of the real thing if it is printed to scale.",
            {"height": "6 m"},
        ),
        Key("scale", scale(), "auto (the largest standard scale that fits), fit, true, or a ratio.", "1:100"),
        Key("mesh", inside("an OBJ or OFF file"), "A closed solid from a file in the study's folder.", "boat.obj"),
        Key("holes", Many(HOLE, 20), "String holes or marks: corners, base or apex.", "corners"),
        Key("faces", Many(FACE, 100), "Drawings on single faces."),
        Key(
            "steps",
            STEPS,
            "Steps of your own, after the printed ones; 'Before you close it ...' comes before that.",
            ["Hang it by a thread."],
        ),
        Key("materials", MATERIALS, "What is needed besides card and glue.", ["a thread"]),
        Key("caution", CAUTION, "What to be careful of.", ["scissors"], aliases=("cautions",)),
        Key("about", prose(2000), "A word about the real thing.", "The first lamp house stood on the quay."),
    ),
    _model,
)


def _study(values: dict[str, Any], notes: Notes) -> Study:
    portrait = values.pop("portrait", None)
    if portrait:
        values["portrait"], values["portrait_said"] = portrait
    return Study(**values, folder=notes.folder)


_KIND = choice(KINDS, like={"painter": "artist", "sculptor": "artist", "scientist": "inventor", "engineer": "inventor"})
STUDY: Record[Study] = Record(
    "the study",
    "A study of one artist or inventor. It holds nothing private and can be given away.",
    (
        Key("study", name(120), "The name of the artist or inventor.", "Isaure Quenby", True, stand_in=Said("?")),
        Key("kind", _KIND, "artist, inventor or both.", "inventor", required=True, stand_in=Said("both")),
        Key(
            "in_short",
            prose(300),
            "Who that was, in one sentence.",
            "Lamp-maker who measured the tides.",
            True,
            stand_in=Said("?"),
        ),
        Key("born", date(), "When they were born.", 1834),
        Key("died", date(), "When they died.", 1902),
        Key("place", PLACE, "Where they lived or were born.", {"name": "Saltmere", "lat": 50.4, "lon": -4.9}),
        Key("portrait", inside("a picture"), "A picture of them, below the study's folder.", "pictures/isaure.png"),
        Key("book", BOOK, "The book that is read aloud."),
        Key("life", Life(), "Their life: one text, or one for each of first, younger, older, upper."),
        Key("timeline", Pairs(EVENT, "when", "what", is_date, MAX_EVENTS), "What happened when."),
        Key("works", Many(WORK, MAX_WORKS), "Their works."),
        Key("obstacles", Many(prose(1000), MAX_TEXTS), "What stood in their way.", ["Her lamps cracked in the cold."]),
        Key("facts", Many(prose(1000), MAX_TEXTS), "Things worth knowing.", ["She kept bees."]),
        Key("words", Pairs(WORD, "word", "means", bool, MAX_WORDS), "Words to learn."),
        Key("challenges", Many(CHALLENGE, MAX_MAKINGS), "Things to design, build and try out."),
        Key("models", Many(MODEL, MAX_MAKINGS), "Things to cut out, fold and glue."),
        Key("note", prose(2000), "A note of yours, such as who drew the pictures.", "All of it is invented."),
        Key("language", language(), "The language of the study's text, as a code.", "en"),
    ),
    _study,
)
