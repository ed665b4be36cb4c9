"""What a child of each pack is to read, and which sentences of it are too hard for the pack."""

from __future__ import annotations

from collections.abc import Iterable

from packgen.faults import Fault, Said
from packgen.planning.plan import PackPlan, life_at
from packgen.planning.reading_level import HardSentence, as_warnings, hard_sentences, known_words
from packgen.reading.models import Study


def texts_for(study: Study, level: str) -> tuple[Said, ...]:
    """The study's texts that a child of a level reads by itself, in the order of the sheets.

    For `first` that is only the life: everything else there is read aloud by an adult.
    """
    life = life_at(study, level)
    texts: list[Said] = [life] if life else []
    if level == "first":
        return tuple(texts)
    short = level == "younger"
    texts += [event.short if short and event.short else event.what for event in study.timeline]
    texts += [question for work in study.works for question in work.look]
    texts += [word.means for word in study.words if not word.levels or level in word.levels]
    for challenge in study.challenges:
        texts += [challenge.brief, *challenge.steps]
    for model in study.models:
        texts += [*([model.about] if model.about else []), *model.steps]
    return tuple(texts)


def reading_warnings(study: Study, packs: Iterable[PackPlan]) -> tuple[Fault, ...]:
    """A warning for each sentence above the grade of a pack that is to read it, told for the lowest grade only."""
    known = known_words(study)
    grades: dict[str, float] = {}
    for pack in packs:
        if pack.child is not None and pack.recipe.grade is not None:
            grades[pack.recipe.level] = min(pack.recipe.grade, grades.get(pack.recipe.level, 99.0))
    told: set[tuple[object, str]] = set()
    warnings: list[Fault] = []
    for level, grade in sorted(grades.items(), key=lambda item: item[1]):
        found: list[HardSentence] = []
        for hard in hard_sentences(texts_for(study, level), grade, known, study.language):
            if (hard.place, hard.sentence) not in told:
                told.add((hard.place, hard.sentence))
                found.append(hard)
        warnings += as_warnings(found, grade)
    return tuple(warnings)
