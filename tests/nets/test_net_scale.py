"""Scales as ISO 5455:1979, 5.1, recommends them (clause quoted on a teaching site; EN ISO 5455:1994 contents)."""

from itertools import islice, takewhile

import pytest

from packgen.nets import NetError
from packgen.nets.scale import (
    fitting_scales,
    larger_scales,
    next_down,
    read_scale,
    real_length,
    scale_words,
    standard_scales,
)


def test_standard_scales_are_those_of_the_standard():
    words = [scale_words(r) for r in takewhile(lambda r: r > 0.99e-4, standard_scales())]
    larger, smaller = words[:5], words[6:]
    assert larger == ["50:1", "20:1", "10:1", "5:1", "2:1"]
    assert words[5] == "true size"
    assert " ".join(smaller) == "1:2 1:5 1:10 1:20 1:50 1:100 1:200 1:500 1:1000 1:2000 1:5000 1:10000"


def test_larger_scales_climb_the_same_steps():
    assert [scale_words(r) for r in islice(larger_scales(0.02), 4)] == ["1:20", "1:10", "1:5", "1:2"]
    assert next_down(0.027) == pytest.approx(0.02)
    assert next_down(0.02) == pytest.approx(0.02)


@pytest.mark.parametrize(
    ("text", "ratio"),
    [("1:100", 0.01), ("1 : 50", 0.02), ("1/72", 1 / 72), ("2:1", 2), ("true", 1), ("full size", 1), ("1:10,000", 1e-4),
     ("auto", "auto"), ("Fit", "fit"), ("", "auto")],
)  # fmt: skip
def test_scales_are_read_as_parents_write_them(text, ratio):
    assert read_scale(text) == (pytest.approx(ratio) if isinstance(ratio, float | int) else ratio)


@pytest.mark.parametrize("text", ["large", "1:0", "0:1", "100", "1:-5", "1:"])
def test_what_is_no_scale_is_refused(text):
    with pytest.raises(NetError) as caught:
        read_scale(text)
    assert "1:50" in caught.value.instead


def test_fitting_scales_have_two_figures_and_fall():
    assert [scale_words(r, fit=True) for r in islice(fitting_scales(0.2755), 3)] == [
        "fit (1:3.7)", "fit (1:3.8)", "fit (1:3.9)"]  # fmt: skip
    assert [scale_words(r, fit=True) for r in islice(fitting_scales(2.44), 2)] == ["fit (2.4:1)", "fit (2.3:1)"]
    falling = list(islice(fitting_scales(12.34), 300))
    assert falling == sorted(falling, reverse=True) and falling[0] <= 12.34
    assert "fit (true size)" in [scale_words(r, fit=True) for r in falling]


def test_very_small_scales_are_written_out():
    assert scale_words(5e-8) == "1:20000000"


def test_real_lengths_are_told_in_their_own_size():
    assert [real_length(x) for x in (60, 5200, 1.2e6)] == ["60 mm", "5.2 m", "1.2 km"]
