"""Folding a net up again gives the solid: for random convex hulls and for non-convex meshes."""

import math

import pytest
from netcommon import hollow_text, hull_text, is_convex, tab_faults, worst_miss, worst_overlap

from packgen.nets import build, unfold
from packgen.nets.fold_back import fold_back
from packgen.nets.fold_back import worst_miss as package_miss


@pytest.mark.parametrize("batch", range(10))
def test_two_hundred_random_convex_hulls_fold_back(batch):
    for seed in range(20 * batch, 20 * batch + 20):
        net = unfold(build("mesh", {"text": hull_text(5 + seed % 8, seed), "longest": 70}), tabs=False)
        assert worst_miss(net) < 1e-6
        assert worst_overlap(net) < 1e-6
        assert len(net.parts) == 1


@pytest.mark.parametrize("seed", range(20))
def test_twenty_hollow_meshes_fold_back(seed):
    solid = build("mesh", {"text": hollow_text(seed), "longest": 200})
    net = unfold(solid)
    assert not is_convex(solid)
    assert worst_miss(net) < 1e-6
    assert worst_overlap(net) < 1e-3
    assert tab_faults(net) == []
    assert {f.kind for p in net.parts for f in p.folds} == {"mountain", "valley"}


@pytest.mark.parametrize("seed", range(300, 312))
def test_random_hulls_get_tabs_that_meet_their_edges(seed):
    net = unfold(build("mesh", {"text": hull_text(8 + seed % 5, seed), "longest": 400}))
    assert worst_miss(net) < 1e-6
    assert worst_overlap(net) < 1e-3
    assert tab_faults(net) == []


def test_a_fold_half_done_is_half_the_angle():
    net = unfold(build("cube", {"edge": 30}), tabs=False)
    half = fold_back(net, 0, share=0.5)
    hinge = net.hinges[0]
    heights = [p[2] for p in half[hinge.child]]
    assert min(heights) == pytest.approx(-30 * math.sin(math.pi / 4))


def test_the_printed_side_is_outside():
    """A convex solid folds away from the printed side: everything comes to lie below the paper."""
    folded = fold_back(unfold(build("dodecahedron", {"edge": 20}), tabs=False), 0)
    assert max(p[2] for corners in folded.values() for p in corners) < 1e-9


def test_the_package_can_prove_its_own_net():
    assert package_miss(unfold(build("gabled-house", {"length": 70, "width": 50, "height": 40, "roof": 25}))) < 1e-9
