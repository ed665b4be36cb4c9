"""Everything a study says is on paper: for each child what its level is told, and somewhere every word of it."""

from __future__ import annotations

import functools
from collections.abc import Iterable, Iterator
from itertools import pairwise

import pytest
from built import QUENBY, Maker, Packs, Sheet
from paper import PaperPage

from packgen.faults import Said
from packgen.page.lettering import all_said
from packgen.reading.models import Challenge, Child, Model, Study, Work


def bare(text: str) -> str:
    """A text without white space, as the reader gives it."""
    return "".join(text.split())


def on(pages: Iterable[PaperPage], text: str) -> bool:
    """True if a text stands on a page, or begins on one and ends on the next."""
    wanted = bare(text)
    texts = [page.text for page in pages]
    if any(wanted in text for text in texts):
        return True
    return any(
        wanted[:cut] in one and wanted[cut:] in other
        for one, other in pairwise(texts) for cut in range(8, len(wanted) - 8)
    )  # fmt: skip


def missing(pages: Iterable[PaperPage], texts: Iterable[str]) -> list[str]:
    shown = list(pages)
    return [text for text in texts if not on(shown, text)]


def pages_of(sheets: Iterable[Sheet]) -> list[PaperPage]:
    return [page for sheet in sheets for page in sheet.pages]


LEVELS = {
    "example": ("older", "younger", "first"),
    "letter": ("upper", "older", "younger", "first"),
    "one_sided": ("older", "younger", "first"),
    "short_edge": ("upper", "older", "younger"),
}


@pytest.fixture(params=[(name, level) for name, levels in LEVELS.items() for level in levels], ids="-".join)
def whose(request: pytest.FixtureRequest) -> tuple[Packs, Child]:
    """Each child of each of the built packs."""
    packs: Packs = request.getfixturevalue(request.param[0])
    return packs, next(child for child in packs.family.children if child.pack == request.param[1])


def test_the_life_is_told_as_written_for_the_level(whose: tuple[Packs, Child]) -> None:
    packs, child = whose
    told = dict(packs.study.life)[child.pack]
    sentences = [part for line in told.split("\n") for part in line.replace(". ", ".\0").split("\0") if part.strip()]
    assert not missing(pages_of(packs.sheets("biography", child=child.name)), sentences)


def test_every_chapter_has_its_title_on_a_strip(whose: tuple[Packs, Child]) -> None:
    packs, child = whose
    assert packs.study.book
    titles = [chapter.title for chapter in packs.study.book.chapters]
    assert not missing(pages_of(packs.sheets("telling", child=child.name)), [*titles, packs.study.book.title])


def test_words_have_their_meanings(whose: tuple[Packs, Child]) -> None:
    packs, child = whose
    words = [word for word in packs.study.words if not word.levels or child.pack in word.levels]
    if child.pack == "first":  # the four shortest, see packs/first.yaml
        words = sorted(words, key=lambda word: len(word.word))[:4]
    texts = [text for word in words for text in (word.word, word.means)]
    assert not missing(pages_of(packs.sheets("words", child=child.name)), texts)


def test_events_are_on_the_timeline(whose: tuple[Packs, Child]) -> None:
    packs, child = whose
    events = packs.study.timeline
    sheets = packs.sheets("timeline", child=child.name)
    texts = [str(e.what if child.pack in ("older", "upper") else e.short or e.what) for e in events]
    absent = missing(pages_of(sheets), texts)
    assert len(events) - len(absent) == {"first": 3, "younger": 8}.get(child.pack, len(events))
    assert texts[0] not in absent
    assert (texts[-1] in absent) == (child.pack == "first")  # a death is not for the youngest


def works_for(packs: Packs, level: str) -> list[Work]:
    works = [work for work in packs.study.works if work.image]
    if level != "first":
        return works
    drawn = [work for work in works if work.drawing]  # the youngest look at four, pictures rather than charts
    chosen = [*drawn, *(work for work in works if not work.drawing)][:4]
    return [work for work in works if work in chosen]


def test_works_have_their_titles_and_questions(whose: tuple[Packs, Child]) -> None:
    packs, child = whose
    asked = {"younger": 1, "older": 2, "upper": 3}.get(child.pack, 0)
    for work in works_for(packs, child.pack):
        sheets = [s for s in packs.sheets("picture-study", child=child.name) if s.title.endswith(work.title)]
        texts = [work.title, *(work.look[:asked] if asked else work.look_first)]
        texts += [] if child.pack == "first" else [work.held or ""]
        texts.append(work.medium or "")
        assert not missing(pages_of(sheets), texts), work.title


def test_the_guide_gives_the_answer_after_each_question_on_a_picture(packs: Packs) -> None:
    guide = [page for e in packs.manifest["files"] if not e["child"] for page in packs.file(e["path"]).pages]
    asked = [pair for work in packs.study.works for pair in zip(work.look, work.answers, strict=False)]
    if any(child.pack == "first" for child in packs.family.children):
        asked += [pair for work in packs.study.works for pair in zip(work.look_first, work.answers_first, strict=False)]
    assert len(asked) >= 10
    absent = missing(guide, [f"{ask} → {answer}" if answer != "-" else ask for ask, answer in asked])
    assert not absent, "\n".join(absent)


def challenge_texts(challenge: Challenge, level: str) -> Iterator[str]:
    yield challenge.title
    if level == "first":
        yield challenge.brief_first or challenge.brief
        return
    yield challenge.brief
    yield from challenge.steps
    yield from (material.item for material in challenge.materials)
    if level in ("older", "upper"):
        yield from challenge.keep_same
        yield from [challenge.extension] if challenge.extension else []


def test_challenges_have_brief_materials_and_steps(whose: tuple[Packs, Child]) -> None:
    packs, child = whose
    for challenge in packs.study.challenges:
        sheets = [s for s in packs.sheets("challenge", child=child.name) if s.title.endswith(challenge.title)]
        assert sheets, challenge.title
        texts = list(challenge_texts(challenge, child.pack))
        if child.pack == "upper":  # of thirteen and more: a grown-up is an adult to them
            swaps = [("A grown-up", "An adult"), ("a grown-up", "an adult"), ("grown-up", "adult")]
            texts = [functools.reduce(lambda text, swap: text.replace(*swap), swaps, str(text)) for text in texts]
        assert not missing(pages_of(sheets), texts), challenge.title


def test_the_grown_up_has_each_step_on_the_youngests_page_or_is_sent_to_an_older_childs(packs: Packs) -> None:
    elders = [child.name for child in packs.family.children if child.pack != "first"]
    for sheet in packs.sheets("challenge"):
        if sheet.pack != "first" or sheet.part:
            continue
        (challenge,) = [c for c in packs.study.challenges if sheet.title.endswith(c.title)]
        if missing(sheet.pages, challenge.steps):
            (named,) = [name for name in elders if on(sheet.pages, name)]
            theirs = [s for s in packs.sheets("challenge", child=named) if s.title.endswith(challenge.title)]
            assert not missing(pages_of(theirs), challenge.steps), challenge.title


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_a_family_of_one_small_child_has_every_step_of_a_challenge(maker: Maker, paper: str) -> None:
    packs = maker(QUENBY, f"family: Elm\npaper: {paper}\nchildren:\n  - {{name: Di, age: 4, pack: first}}\n")
    made = packs.sheets("challenge", child="Di")
    for challenge in packs.study.challenges:
        pages = pages_of(sheet for sheet in made if sheet.title.endswith(challenge.title))
        assert pages and not missing(pages, challenge.steps), challenge.title


def model_texts(model: Model) -> Iterator[str]:
    yield model.title
    if model.about:
        yield model.about
    yield from model.steps
    yield from (material.item for material in model.materials)
    yield from (words for words in model.caution if " " in words)


def test_models_have_their_steps_materials_and_cautions(whose: tuple[Packs, Child]) -> None:
    packs, child = whose
    if child.pack == "first":
        assert not packs.sheets("model", child=child.name)
        return
    for model in packs.study.models:
        sheets = [s for s in packs.sheets("model", child=child.name) if s.title.endswith(model.title)]
        assert {s.part for s in sheets} == {"", "steps"}
        assert not missing(pages_of(sheets), model_texts(model)), model.title


def silent(study: Study) -> set[str]:
    """What a study says to packgen, not to the reader: keys, files, addresses (they become QR codes) and measures."""
    texts: list[str | None] = [study.kind, study.portrait_said, study.note]
    for work in study.works:
        texts += [work.id, work.image_said, work.drawing_said, work.link, *work.leave_out]
    for chapter in study.book.chapters if study.book else ():
        texts += [chapter.pages, *chapter.works]
    for one in (*study.challenges, *study.models):
        texts += [text for given in one.given for text in all_said(given)]
    for challenge in study.challenges:
        texts += [challenge.model, challenge.job, *all_said(challenge.change), *all_said(challenge.measure)]
        texts += [material.unit for material in challenge.materials]
        texts += [words for words in challenge.caution if " " not in words]
    texts += [level for word in study.words for level in word.levels]
    for model in study.models:
        texts += [model.solid, model.scale, *all_said(model.holes), *all_said(model.faces)]
        texts += [material.unit for material in model.materials]
        texts += [words for words in model.caution if " " not in words]
    texts += [when.said for when in all_dates(study)]
    return {str(text) for text in texts if text}


def not_chosen(packs: Packs) -> set[str]:
    """What is only told where a child of a level is there to hear it, or a recipe asks for it.

    The youngest's own questions and the answers to them, words for some ages, and the parts to find in a work.
    """
    texts: set[str] = set()
    if not any(sheet.pack == "first" for sheet in packs.sheets("challenge")):
        texts |= {str(challenge.brief_first) for challenge in packs.study.challenges}
    for work in packs.study.works:
        if not any(s.pack == "first" and s.title.endswith(work.title) for s in packs.sheets("picture-study")):
            texts |= {*work.look_first, *work.answers_first}
        closer = [s for s in packs.sheets("look-closer") if s.title.endswith(work.title)]
        if not any(sheet.pack in ("first", "younger") for sheet in closer):
            texts |= {detail.name for detail in work.details}
    levels = {child.pack for child in packs.family.children}
    for_them = [word for word in packs.study.words if not word.levels or levels & set(word.levels)]
    others = [word for word in packs.study.words if word not in for_them]
    texts |= {text for word in others for text in (word.word, word.means)}
    return texts - {text for word in for_them for text in (word.word, word.means)}


def all_dates(study: Study) -> list[object]:
    found = [study.born, study.died, *(event.when for event in study.timeline), *(work.when for work in study.works)]
    return [when for when in found if when]


def test_every_word_of_a_study_is_on_somebodys_paper(packs: Packs) -> None:
    quiet = silent(packs.study) | not_chosen(packs)
    levels = {str(child.pack) for child in packs.family.children}
    told = {text for name, text in packs.study.life if name not in levels}
    texts = [said for said in all_said(packs.study) if str(said) not in quiet and said not in told]
    sentences = [Said(part) for said in dict.fromkeys(texts) for part in str(said).replace(". ", ".\0").split("\0")]
    absent = missing(packs.pages, [part for line in sentences for part in line.split("\n") if part.strip()])
    assert not absent, "\n".join(absent)
