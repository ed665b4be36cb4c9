import itertools
from dataclasses import replace

from art_desks import picture
from parent_desks import CHILDREN, desk, family, squeezed, study, work

from packgen.faults import Said
from packgen.page.desk import Desk
from packgen.page.looking import look_step
from packgen.page.marks import Path_, Text
from packgen.page.parents import persons
from packgen.page.pen import Pen
from packgen.reading.models import Study


def drawn(about: Study, on: Desk) -> Pen:
    """The looking of the first week with a work."""
    week = next(week for week in on.term.weeks if week.works)
    (step,) = look_step(on, week, persons(on))
    pen = on.kit.pen()
    step.draw(on.kit, pen, 0.0, 0.0, on.live_width, step.measure(on.kit, on.live_width).least)
    return pen


def said(pen: Pen) -> str:
    return squeezed("".join(mark.text for mark in pen.marks if isinstance(mark, Text)))


def test_a_link_is_printed_as_a_code_of_at_least_half_a_millimetre_a_module() -> None:
    about = study(works=[work(0)])
    pen = drawn(about, desk("guide", about))
    (code,) = [mark for mark in pen.marks if isinstance(mark, Path_) and mark.role == "qr"]
    xs = sorted({float(step[1]) for step in code.steps if len(step) > 1})
    assert min(b - a for a, b in itertools.pairwise(xs) if b - a > 1e-6) >= 0.499


def test_a_work_without_anything_but_a_title_is_still_talked_about() -> None:
    bare = replace(work(0), when=None, medium=None, width=None, height=None, held=None, link=None, look=(), tell=None)
    about = study(works=[bare])
    words = said(drawn(about, desk("guide", about)))
    assert "Picture0" in words and words.count("?") >= 4
    assert "None" not in words


def test_works_that_follow_each_other_get_other_questions() -> None:
    about = study(works=[replace(work(k), look=()) for k in range(2)], chapters=0)
    on = desk("guide", about)
    asked = []
    for week in [week for week in on.term.weeks if week.works]:
        (step,) = look_step(on, week, persons(on))
        pen = on.kit.pen()
        step.draw(on.kit, pen, 0.0, 0.0, on.live_width, step.measure(on.kit, on.live_width).least)
        asked.append({m.text for m in pen.marks if isinstance(m, Text) and m.text.endswith("?")})
    assert len(asked) == 2 and not asked[0] & asked[1]


def test_one_age_alone_has_one_list() -> None:
    about = study(works=[work(0)])
    words = said(drawn(about, desk("guide", about, family(CHILDREN[:1]))))
    assert "Juno" not in words and words.count("Whatisnearestinpicture0?") == 1


def test_the_youngest_are_asked_what_their_own_sheet_asks() -> None:
    asked = replace(work(0), look_first=(Said("Find the cat."),))
    words = said(drawn(study(works=[asked]), desk("guide", study(works=[asked]))))
    assert words.index("Wilf") < words.index("Findthecat.") < words.index("Bram")
    alone = family(CHILDREN[2:])
    words = said(drawn(study(works=[asked]), desk("guide", study(works=[asked]), alone)))
    assert "Findthecat." in words and "Whatisnearestinpicture0?" in words


def test_an_answer_of_the_study_stands_behind_its_question_and_a_dash_is_none() -> None:
    asked = replace(work(0, look=("How many boats?", "What next?")), answers=(Said("Seven."), Said("-")))
    words = said(drawn(study(works=[asked]), desk("guide", study(works=[asked]))))
    assert "Howmanyboats?→Seven." in words and "Whatnext?→" not in words
    assert "Listenfor:" in words


def test_an_answer_to_no_question_is_told() -> None:
    asked = replace(work(0, look=("How many boats?",)), answers=(Said("Seven."), Said("Two.")))
    on = desk("guide", study(works=[asked]))
    drawn(study(works=[asked]), on)
    assert {fault.message for fault in on.faults} == {'"Picture 0" has more answers than questions in `look`.'}


def test_a_code_says_what_it_opens() -> None:
    about = study(works=[work(0)])
    assert "Scantoseeitontheweb" in said(drawn(about, desk("guide", about)))


def test_a_long_story_stands_under_the_questions_and_is_whole() -> None:
    story = " ".join(f"Then she painted wave {k}." for k in range(40))
    about = study(works=[replace(work(0), tell=Said(story))])
    assert squeezed(story) in said(drawn(about, desk("guide", about)))


def test_sizes_are_in_the_units_of_the_family() -> None:
    about = study(works=[work(0)])
    # 420 x 310 mm; 1 in is 25.4 mm
    assert "42×31cm" in said(drawn(about, desk("guide", about)))
    assert "16.5×12.2in" in said(drawn(about, desk("guide", about, family(units="customary"))))


def test_each_child_is_asked_what_its_own_sheet_asks_and_a_shared_question_once() -> None:
    look = ("Who is that by the far wall, do you think?", "What is red?", "Where is the sun now?", "Is it cold?")
    first, second, third, fourth = map(squeezed, look)
    shown = replace(work(0, look=look), look_first=(Said("Find the cat."),), image=picture(), image_said=Said("boats"))
    about = study(works=[shown])
    words = said(drawn(about, desk("guide", about)))
    # The first stands on the sheets of Bram (younger) and Juno (older), the second on Juno's alone.
    both = words.index("BramandJuno")
    assert words.count(first) == 1 and both < words.index(first) < words.index(second)
    juno = words.index("Juno", words.index(first))
    assert juno < words.index(second)
    # What stands on no sheet is shared out, the easier to the younger.
    assert words.index(first) < words.index(fourth) < juno < words.index(third)
