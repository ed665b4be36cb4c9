"""What the pages of one challenge are made from, and the parts that several levels share."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from packgen.page.blocks import Block, Boxed, Break, Bullets, Lines, Prose, Stack, heading
from packgen.page.desk import Desk, Section
from packgen.page.look import HAIR, RULE
from packgen.page.pen import Pen
from packgen.page.preparing import care, cautions, for_upper
from packgen.page.sketching import squared_paper
from packgen.page.stage_line import StageLine
from packgen.page.template_nets import Template, building_blocks, template_care
from packgen.page.text import wrap
from packgen.page.trial_table import counted, empty_lines, trial_table
from packgen.reading.models import Challenge
from packgen.trials.comparing import the_more
from packgen.trials.stages import Stage, stages
from packgen.trials.trial import TrialPlan

_TALLIED = 60  # more than this nobody counts in strokes


@dataclass(frozen=True, slots=True)
class ChallengeSet:
    """What the pages of one set are made from. `job` is "design" or "find out"."""

    desk: Desk
    challenge: Challenge
    plan: TrialPlan
    templates: tuple[Template, ...]
    job: str

    @property
    def finds_out(self) -> bool:
        """True if something is to be found out, and nothing to be designed."""
        return self.job == "find out"

    @property
    def own(self) -> str:
        """What the child's own design is called where it is tried with those on card; "" where there is none."""
        return self.desk.say("own") if designs_own(self.plan, self.job, self.templates) else ""

    @property
    def values(self) -> dict[str, object]:
        """What the wordings know besides the study: the plan, how often is tried, what is changed and measured."""
        plan = self.plan
        changed = plan.changed.name if plan.changed else self.desk.say("design")
        tally = counted(plan) and (plan.y_axis.blank or plan.y_axis.high <= _TALLIED)
        return {"plan": plan, "repeats": plan.repeats(self.desk.level), "changed": changed, "tally": tally,
                "clock": plan.model is not None and plan.model.key == "shadow-clock", "words": plan.x_axis.words,
                "what": plan.measured.what, "finds_out": self.finds_out, "own": self.own != "",
                "ready": [plan.named(row) for row in plan.rows], "goal": str(plan.goal.wanted) if plan.goal else "",
                "question": plan.question(self.desk.level), "unit": plan.measured.unit,
                "phrase": plan.changed.phrase if plan.changed else "",
                "changed_unit": plan.changed.unit if plan.changed else "",
                "the_more": the_more(plan.changed.phrase) if plan.changed else ""}  # fmt: skip

    def say(self, key: str) -> str:
        """A wording that may speak of the plan."""
        return self.desk.say(key, **self.values)

    def say_lines(self, key: str) -> tuple[str, ...]:
        """A wording of several lines that may speak of the plan."""
        return self.desk.say_lines(key, **self.values)

    @property
    def stages(self) -> tuple[Stage, ...]:
        """The stages of the level for the job."""
        return stages(self.desk.level, self.job)

    def line(self, now: str) -> StageLine:
        """The line of the level's stages, at one of them."""
        return StageLine(self.stages, (now,))

    def section(self, now: str, blocks: Sequence[Block]) -> Section:
        """The part of the set for a stage: it has the stage's name."""
        title = next(stage.title for stage in self.stages if stage.key == now)
        head = self.desk.head(title, str(self.challenge.title), "dart")
        return Section(head, (self.line(now), *blocks))

    def length(self, part: Section) -> int:
        """How many pages a part takes."""
        return len(self.desk.pages(part.head, part.blocks))

    def roomy(self, now: str, blocks: Sequence[Block], *more: Block) -> Section:
        """The same with as many more blocks, in order, as take no more pages."""
        part = self.section(now, blocks)
        for count in range(len(more), 0, -1):
            fuller = self.section(now, (*blocks, *more[:count]))
            if self.length(fuller) == self.length(part):
                return fuller
        return part


def older_child(desk: Desk) -> tuple[str, str] | None:
    """The name and the level of the next older child whose pack has the same challenge, or None."""
    for level in ("younger", "older", "upper"):
        for pack in desk.packs:
            there = (item for item in pack.items if item.sheet == "challenge" and item.subject == desk.item.subject)
            if pack.child and str(pack.recipe.level) == level and any(there):
                return str(pack.child.name), level
    return None


def designs_own(plan: TrialPlan, job: str, templates: Sequence[object]) -> bool:
    """True if the planned things come ready on card, so that what is left to design is one more, of the child's own."""
    return job == "design" and bool(templates) and plan.changed is not None


def asks(made: ChallengeSet, key: str, more: int = 2) -> list[Block]:
    """Questions with lines to answer on. A wording's line is `2 | Question`: how many lines it needs at least.

    Where a page has room, a question that needs two or more grows by up to `more`.
    """
    found: list[Block] = []
    for said in made.say_lines(key):
        count, _, words = said.rpartition("|")
        least = int(count) if count.strip().isdigit() else 2
        lines = Lines(least, least + (more if least > 1 else 0), gap=0.5)
        found.append(Stack((Prose(words.strip(), "strong", tight=True), lines)))
    return found


def drafts(made: ChallengeSet) -> list[Section]:
    """A page to draw the design on, and one more for each copy the child's `extra` asks for, each with its purpose."""
    count = made.desk.copies_of("design-draft")
    uses = [made.say("draft_first"), made.say("draft_better"), made.say("draft_spare")]
    own = made.say("draft_own") if made.own else ""
    if count == 1:
        return [_draft(made, own)]
    return [_draft(made, " ".join(part for part in (uses[min(k, 2)], own if k == 0 else "") if part))
            for k in range(count)]  # fmt: skip


def _draft(made: ChallengeSet, use: str) -> Section:
    """A page of squared paper for the design, with places for sizes and parts; `use` says what it is for."""
    desk, questions = made.desk, made.say_lines("draft_asks")
    line, style, told = made.line("draft"), desk.look.label, desk.look.strong

    def paint(pen: Pen, x: float, y: float, width: float, height: float) -> None:
        over = line.measure(desk.kit, width).least
        line.draw(desk.kit, pen, x, y + height, width, over)
        over += desk.look.gap * 0.6
        said = wrap(desk.faces, use, told, width) if use else ()
        pen.lines(x, y + height - over, said, told, role="draft-use")
        over += len(said) * told.leading + (1.5 if said else 0.0)
        cell = width / len(questions)
        deep = max(len(wrap(desk.faces, ask, style, cell - 6.0)) for ask in questions) * style.leading
        foot = squared_paper(pen, x, y + height - over, width, height - over - deep - 30.0) - 4.0
        for k, ask in enumerate(questions):
            left = x + k * cell
            pen.lines(left, foot, wrap(desk.faces, ask, style, cell - 6.0), style)
            base = foot - deep - 7.0
            while base > y + 1.0:
                pen.line(left, base, left + cell - 6.0, base, HAIR, RULE, role="baseline")
                base -= 8.0

    head = made.section("draft", ()).head
    return Section(head, paint=paint)


def table(made: ChallengeSet) -> Block:
    """The empty table of the trial."""
    kinds = [column.kind for column in made.plan.columns(made.desk.level)]
    return trial_table(made.desk, made.plan, empty_lines(made.plan, made.desk.level, made.own), kinds)


def goal_line(made: ChallengeSet) -> list[Block]:
    """What is to be found besides the answer to the question, if the challenge has a goal."""
    return [Prose(made.say("goal_ask"), "body", gap=1.0)] if made.plan.goal else []


def read_off(made: ChallengeSet) -> list[Block]:
    """A place for what the chart says of the goal, to be tried; nothing without one."""
    return [Boxed(Prose(made.say("goal_read"), "body"), "note")] if made.plan.goal else []


def steps(made: ChallengeSet) -> list[Block]:
    """The study's steps; for a thing to design they are one way to build it, beside the child's own."""
    said = tuple(for_upper(made.desk, str(words)) for words in made.challenge.steps)
    if not said:
        return []
    listed = Bullets(said, "number", gap=1.5)
    title = heading(made.say("steps") if made.finds_out else made.say("one_way"))
    if made.finds_out:
        return [Stack((title, listed))]
    return [Stack((title, Prose(made.say("one_way_how"), "small", gap=1.0), listed))]


def building(made: ChallengeSet, most: int, apart: bool = False) -> list[Block]:
    """How it is made: from templates if there are any, else by the steps, and the cautions once.

    `apart` gives the steps a page of their own, after all there is to know before.
    """
    desk, challenge = made.desk, made.challenge
    said = " ".join(cautions(desk, challenge, made.plan)[:most])
    careful = care(desk, challenge, made.plan, most, template_care(desk, made.templates, said))
    if made.templates:
        designed = made.say("own_build") if made.own else ""
        own = tuple(for_upper(desk, str(words)) for words in challenge.steps)
        if apart:
            return building_blocks(desk, made.templates, own, designed, (*careful, Break()))
        return [*building_blocks(desk, made.templates, own, designed), *careful]
    return [*careful, Break(), *steps(made)] if apart else [*steps(made), *careful]
