from page_marks import box, drawn, kit, of_role, words_of

from packgen.page.marks import Text
from packgen.page.rhythm import Panel, Rhythm

KIT = kit("parent")
PANELS = tuple(Panel(name, "5 min", "Told back in order, and nobody corrects.") for name in ("Read", "Tell", "Look"))


def test_each_part_has_a_panel_and_its_words_stay_inside() -> None:
    pen = drawn(KIT, Rhythm(PANELS), 140.0)
    panels = [box(mark) for mark in of_role(pen.marks, "rhythm")]
    assert len(panels) == 3 and words_of(pen.marks).count("min") == 3
    for mark in pen.marks:
        if isinstance(mark, Text):
            place = box(mark)
            assert any(p[0] < place[0] and place[2] < p[2] and p[1] < place[1] and place[3] < p[3] for p in panels)


def test_panels_join_like_folded_paper() -> None:
    panels = [box(mark) for mark in of_role(drawn(KIT, Rhythm(PANELS), 120.0).marks, "rhythm")]
    assert [round(p[0], 6) for p in panels] == [0.0, 40.0, 80.0]
    assert {round(p[3] - p[1], 6) for p in panels} == {round(panels[0][3] - panels[0][1], 6)}
