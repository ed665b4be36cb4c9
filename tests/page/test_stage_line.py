"""The line of stages: every stage is named on one line within the page, those of the page in bold."""

import pytest
from page_marks import box, drawn, kit, of_role, words_of

from packgen.page.stage_line import StageLine
from packgen.trials.stages import stages


@pytest.mark.parametrize("level", ["first", "younger", "older", "upper"])
@pytest.mark.parametrize("width", [120.0, 170.0])
def test_every_stage_is_named_on_one_line_and_keeps_inside(level: str, width: float) -> None:
    on = kit(level)
    keys = [stage.key for stage in stages(level)]
    line = StageLine(stages(level), (keys[1],))
    marks = drawn(on, line, width).marks
    said = "".join(words_of(marks)).replace("›", "")
    assert said == "".join(stage.title for stage in stages(level)).replace(" ", "")
    assert len({round(mark.y, 6) for mark in marks}) == 1  # type: ignore[union-attr]
    assert min(box(m)[0] for m in marks) >= -0.1 and max(box(m)[2] for m in marks) <= width + 0.1


def test_only_the_stages_of_the_page_stand_out() -> None:
    on = kit("older")
    marks = drawn(on, StageLine(stages("older"), ("predict", "make")), 170.0).marks
    assert [mark.text for mark in of_role(marks, "stage-now")] == ["Predict", "Make it"]  # type: ignore[union-attr]
    assert {mark.face for mark in of_role(marks, "stage-now")} == {on.look.label.face}  # type: ignore[union-attr]
    assert len(of_role(marks, "stage")) == len(stages("older")) - 2
