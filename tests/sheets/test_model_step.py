from dataclasses import replace

from parent_desks import BOX, CHILDREN, desk, family, squeezed, study

from packgen.faults import Said
from packgen.nets import NetError, NetSheets
from packgen.nets.tabs import TabRule
from packgen.page.marks import Text
from packgen.page.model_step import model_care, model_step, model_things
from packgen.page.net_made import CARD, made_net
from packgen.page.parents import persons
from packgen.reading.models import Hole, Material, Model


def words(model: Model, close: bool = False) -> str:
    on = desk("guide", study(models=(model,)))
    step = model_step(on, model, persons(on), ("40 min",), close)
    pen = on.kit.pen()
    step.draw(on.kit, pen, 0.0, 0.0, on.live_width, step.measure(on.kit, on.live_width).least)
    return squeezed("".join(mark.text for mark in pen.marks if isinstance(mark, Text)))


def test_scale_sizes_and_cautions_are_told() -> None:
    said = words(BOX)
    assert "truesize,on1sheetofcardforeachchild" in said
    assert "length:80mm" in said and "Scoreeveryfoldfirst" in said


def test_holes_and_threads_are_warned_of_once() -> None:
    on = desk("guide")
    hung = replace(BOX, holes=(Hole(Said("top"), 3.0),), materials=(Material(Said("thread"), 0.5, Said("m")),))
    care = " ".join(model_care(on, hung, persons(on)))
    assert care.count("roundaneck") + care.count("round a neck") == 1 and "makes the holes" in care
    assert "neck" not in " ".join(model_care(on, BOX, persons(on)))


def test_what_is_needed_is_told_for_all_who_make_it() -> None:
    threaded = replace(BOX, materials=(Material(Said("thread"), 0.5, Said("m")), Material(Said("tape"), 1, None, True)))
    on = desk("guide", study(models=(threaded,)))
    things = model_things(on, 0, persons(on))
    # two older makers take half a metre each and a tenth to spare; the youngest works beside them
    assert things[:2] == ("thread (1.1 m)", "tape")
    assert "the printed card, from the folder" in things and not any("mm thick" in thing for thing in things)


def test_set_close_it_leaves_out_what_the_childs_steps_say() -> None:
    assert "Scoreeveryfoldfirst" not in words(BOX, close=True)


def test_what_cannot_be_made_is_said() -> None:
    assert "packgencheck" in words(replace(BOX, solid=Said("teapot")))


def test_a_net_is_made_once_for_guide_and_sheet() -> None:
    on = desk("guide", study(models=(BOX,)))
    first = made_net(on, BOX, "older")
    assert isinstance(first, NetSheets) and made_net(on, BOX, "older") is first
    assert isinstance(made_net(on, replace(BOX, solid=Said("teapot")), "older"), NetError)


def test_the_youngest_get_the_net_for_the_youngest() -> None:
    on = desk("guide", study(models=(BOX,)), family(CHILDREN[2:]))
    assert model_step(on, BOX, persons(on), (), False).blocks
    assert ("net", BOX, TabRule(CARD, youngest=True)) in on.kept
