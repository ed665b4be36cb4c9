"""The net chosen: few pieces, room for tabs, and tidy."""

import pytest
from netcommon import EXAMPLES, hull_text

from packgen.nets import build, unfold
from packgen.nets.choosing import any_gap, fit_hull, fit_of, ranked, room_for_tab
from packgen.nets.develop import develop, overlaps, path, separate
from packgen.nets.forests import candidates, graph_of


@pytest.mark.parametrize("name", [n for n in EXAMPLES if n not in ("truncated-icosahedron", "lidded-box")])
def test_common_solids_come_in_one_piece_with_all_their_faces(name):
    net = unfold(build(name, EXAMPLES[name]))
    round_ends = sum(1 for c in net.solid.curved if type(c).__name__ == "Disc")
    assert len(net.parts) == 1 + round_ends


def test_a_prism_is_a_belt_of_upright_walls():
    """All eight walls stand side by side on paper, one way up, the ends above and below them."""
    net = unfold(build("prism", EXAMPLES["prism"]))
    walls = [f for f in net.parts[0].faces if f.name.startswith("side")]
    assert {round(f.up_deg, 6) for f in walls} == {90}
    assert len({round(min(y for _, y in f.points), 6) for f in walls}) == 1


def test_a_low_pyramid_is_a_star():
    net = unfold(build("pyramid", EXAMPLES["pyramid"]))
    base = next(i for i, f in enumerate(net.solid.faces) if f.name == "base")
    assert all(base in (h.parent, h.child) for h in net.hinges)


def test_every_candidate_is_a_forest_tried_once():
    graph = graph_of(build("icosahedron", {"edge": 30}))
    seen = [c.kept for c in candidates(graph, any_gap)]
    assert len(seen) == len(set(seen)) > 20
    assert all(len(kept) == 19 for kept in seen)


def test_tight_corners_keep_two_cuts_when_tabs_are_small():
    """12 degrees between the edges of a ball of 15 mm edges leave no tab; with 60 mm edges they do."""
    small = graph_of(build("truncated-icosahedron", {"edge": 15}))
    large = graph_of(build("truncated-icosahedron", {"edge": 60}))
    assert not room_for_tab(small, 0, small.around[0][0])
    assert room_for_tab(large, 0, large.around[0][0])


def test_overlapping_faces_are_found_and_parted():
    """A chain of all faces of a random hull, in order of number, soon runs over itself."""
    graph = graph_of(build("mesh", {"text": hull_text(24, 2)}))
    clashing = None
    for candidate in candidates(graph, lambda g, v, i: True, effort=60):
        flat = develop(graph, candidate.kept)
        if overlaps(graph, flat):
            clashing = flat
            break
    assert clashing is not None
    f, g = overlaps(graph, clashing)[0]
    fewer = separate(graph, clashing, [(f, g)])
    assert len(fewer) == len(clashing.kept) - 1 and not path(graph, fewer, f, g)


def test_the_first_choice_fits_the_sheet_if_any_does():
    graph = graph_of(build("cuboid", {"length": 90, "width": 60, "height": 40}))
    assert fit_of(ranked(graph, any_gap, (190.0, 277.0))[0], (190.0, 277.0)) > 1


def test_fit_of_a_square_is_the_shorter_side_of_the_sheet():
    square = ((0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0))
    assert fit_hull(square, (190.0, 277.0))[0] == pytest.approx(19)
