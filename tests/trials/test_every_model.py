"""What must hold for every challenge model, whatever a parent gives it inside its ranges."""

import importlib
import math
import re

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from packgen.trials.frame import WORD, ChallengeModel, Input, TrialError
from packgen.trials.given import CUSTOMARY, unit_for
from packgen.trials.models import models
from packgen.trials.plan import plan_trial, trial_faults
from packgen.units import BASE, UNITS, Quantity, quantity, unit

MODELS = models()
LEVELS = ("first", "younger", "older", "upper")
every_model = pytest.mark.parametrize("model", MODELS.values(), ids=list(MODELS))


def _value(item: Input, units: str) -> st.SearchStrategy[Quantity | str]:
    if item.dimension == WORD:
        return st.sampled_from(item.words)
    name = unit_for(item.shown_unit, units)
    if item.whole:
        return st.integers(math.ceil(item.low), math.floor(item.high)).map(lambda n: quantity(n))
    return st.floats(item.low, item.high).map(lambda v: Quantity(v, item.dimension, name))


@st.composite
def _challenges(draw, model: ChallengeModel):
    """A change, a measure and given values that a parent could write for the model."""
    units = draw(st.sampled_from(("metric", "customary")))
    item = draw(st.sampled_from(model.inputs))
    result = draw(st.sampled_from(model.results))
    left_out = {name for group in model.one_of for name in group}
    left_out -= {draw(st.sampled_from(group)) for group in model.one_of}
    if item.name in {n for g in model.one_of for n in g}:
        left_out = {n for g in model.one_of for n in g if item.name in g and n != item.name} | (
            left_out - {n for g in model.one_of if item.name in g for n in g}
        )
    given_values = {}
    for other in model.inputs:
        if other is item or other.name in left_out:
            continue
        if (other.optional or other.default is not None) and draw(st.booleans()):
            continue
        given_values[other.name] = draw(_value(other, units))
    values = draw(st.lists(_value(item, units), min_size=1, max_size=4, unique=True))
    return given_values, (item.name, values), (result.name, None), units


@every_model
@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(data=st.data())
def test_axes_hold_every_expected_result_and_value_over_the_allowed_range(model, data):
    given_values, change, measure, units = data.draw(_challenges(model))
    plan = plan_trial(model.key, given_values, change, measure, units=units, latitude=50.0)
    for row in plan.rows:
        if row.expected is None:
            assert row.note
            continue
        assert all(math.isfinite(x) for x in (row.expected.value, row.expected.low, row.expected.high))
        assert row.expected.low <= row.expected.value <= row.expected.high
        assert plan.y_axis.low <= row.expected.low
        assert row.expected.high <= plan.y_axis.high
        assert plan.y_axis.high >= 1.3 * row.expected.high * (1 - 1e-9)
    _is_readable(plan.y_axis)
    _is_readable(plan.x_axis)
    if plan.x_axis.words:
        assert list(plan.x_axis.labels) == [row.label for row in plan.rows]
    else:
        for row in plan.rows:
            number = row.value.to(plan.changed.unit)
            slack = 1e-9 * max(1.0, abs(number))
            assert plan.x_axis.low - slack <= number <= plan.x_axis.high + slack
    assert plan.pictures.boxes <= 10
    assert plan.pictures.each * plan.pictures.boxes >= plan.y_axis.high * (1 - 1e-9) or plan.y_axis.blank
    for figure in plan.figures:
        assert math.isfinite(figure.value.value)


def _is_readable(axis):
    assert len(axis.labels) == len(axis.ticks)
    assert axis.words or 2 <= len(axis.ticks) <= 17
    if not axis.blank:
        assert len(set(axis.labels)) == len(axis.labels)


@every_model
@settings(max_examples=6, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(data=st.data())
def test_every_level_has_a_question_and_columns(model, data):
    given_values, change, measure, units = data.draw(_challenges(model))
    plan = plan_trial(model.key, given_values, change, measure, units=units, latitude=50.0)
    for level in LEVELS:
        text = plan.question(level)
        assert text[0].isupper()
        assert text.endswith("?")
        assert not set("{}[]") & set(text)
        columns = plan.columns(level)
        tries = [c for c in columns if c.kind == "trial"]
        assert level == "first" or (len(tries) == plan.repeats(level) and columns[0].kind == "value")


@every_model
def test_it_names_itself_by_its_file_and_says_where_its_formula_comes_from(model):
    assert model.key in MODELS
    assert len(model.title) > 3
    assert model.about.endswith(".")
    assert len(model.source) > 15
    assert len(model.formula) > 5
    assert 0 < model.spread < 1


@every_model
def test_it_has_cautions_faults_reasons_and_an_extension(model):
    assert model.cautions
    assert len(model.faults_of_build) >= 2
    assert all(f.symptom and f.cause and f.remedy for f in model.faults_of_build)
    assert model.why_higher
    assert model.why_lower
    assert model.why_different == model.why_higher + model.why_lower
    assert model.extension
    texts = (*model.cautions, *model.why_different, *model.tips, model.extension)
    assert all(re.search(r"[.?!)]$", t) and t[0].isupper() for t in texts)


@every_model
def test_every_name_means_one_thing(model):
    names = [n for i in model.inputs for n in (i.name, *i.also)]
    assert len(names) == len(set(names))
    results = [n for r in model.results for n in (r.name, *r.also)]
    assert len(results) == len(set(results))
    assert all(n == " ".join(n.lower().replace("-", " ").split()) for n in (*names, *results))
    assert model.input(model.vary) is not None


@every_model
def test_defaults_and_values_to_try_lie_in_range(model):
    for item in model.inputs:
        if item.dimension == WORD:
            assert item.default in item.words
            assert set(item.tries) <= set(item.words)
            continue
        assert item.low < item.high
        assert item.dimension in BASE
        assert unit(item.shown_unit).dimension == item.dimension
        for value in (*item.tries, *([] if item.default is None else [item.default])):
            assert item.low <= value <= item.high
        assert item.help


@every_model
def test_each_input_and_result_can_be_said_in_a_question(model):
    for item in model.inputs:
        assert item.said.startswith("the ")
        assert not item.ask or item.ask.endswith("?")
    assert all(r.phrase.startswith("the ") for r in model.results)
    assert model.input(model.vary).ask


@every_model
def test_what_is_changed_is_not_also_kept_the_same(model):
    for item in model.inputs:
        needed = _needed(model)
        needed.pop(item.name, None)
        plan = plan_trial(model.key, needed, (item.name, []), latitude=50.0)
        assert item.said not in plan.keep_same
        assert plan.keep_same


def _needed(model: ChallengeModel) -> dict:
    grouped = {n for g in model.one_of for n in g[1:]}
    return {
        i.name: Quantity(float(i.tries[0]), i.dimension, i.shown_unit)
        for i in model.inputs
        if i.needed and i.name not in grouped and i.name != "latitude"
    }


@every_model
def test_a_wrong_unit_is_an_error_that_shows_a_right_one(model):
    for item in model.inputs:
        wrong = quantity(1, "kg") if item.dimension != "mass" else quantity(1, "s")
        with pytest.raises(TrialError) as caught:
            plan_trial(model.key, {item.name: wrong}, latitude=50.0)
        assert item.name in caught.value.message
        assert caught.value.about == f"given:{item.name}"
        if item.dimension != WORD:
            assert "such as" in caught.value.message
            assert item.name in caught.value.instead


@every_model
def test_a_value_outside_its_range_is_an_error_that_states_the_range(model):
    for item in model.inputs:
        if item.dimension == WORD:
            continue
        high = Quantity(item.high * 2 + 1, item.dimension, item.shown_unit)
        with pytest.raises(TrialError, match="outside") as caught:
            plan_trial(model.key, {item.name: high}, latitude=50.0)
        assert " to " in caught.value.instead


@every_model
def test_a_measure_in_a_wrong_unit_is_an_error(model):
    for result in model.results:
        wrong = "kg" if result.dimension != "mass" else "s"
        with pytest.raises(TrialError) as caught:
            plan_trial(model.key, _needed(model), None, (result.name, wrong), latitude=50.0)
        assert caught.value.about == "measure"


@every_model
def test_what_is_needed_and_missing_is_told_all_at_once(model):
    needed = [n for n in _needed(model) if n not in {m for g in model.one_of for m in g if model.vary in g}]
    faults = trial_faults(model.key, {}, latitude=50.0)
    told = " ".join(f.message for f in faults)
    assert all(name in told for name in needed if name != model.vary)
    assert all(f.instead.startswith("write `") for f in faults)


@every_model
def test_customary_units_expect_the_same_thing(model):
    needed = _needed(model)
    metric = plan_trial(model.key, needed, latitude=50.0)
    item = model.input(metric.changed.name)
    given_values = {**dict(metric.given), **needed}
    there = {n: v if isinstance(v, str) else _in_customary(v) for n, v in given_values.items() if n != item.name}
    values = [row.value if isinstance(row.value, str) else _in_customary(row.value) for row in metric.rows]
    customary = plan_trial(model.key, there, (item.name, values), units="customary", latitude=50.0)
    for one, other in zip(metric.rows, customary.rows, strict=True):
        if one.expected is None or other.expected is None:
            assert one.expected is other.expected
            continue
        base = metric.measured, customary.measured
        first, second = (
            UNITS[m.symbol].factor * e.value for m, e in zip(base, (one.expected, other.expected), strict=True)
        )
        assert first == pytest.approx(second, rel=1e-9)


def _in_customary(value: Quantity) -> Quantity:
    return Quantity(value.value, value.dimension, CUSTOMARY.get(value.unit, value.unit))


@every_model
def test_its_nets_are_solids_of_the_catalogue_with_their_own_names(model):
    if model.model_solid is None:
        return
    plans = [plan_trial(model.key, _needed(model), latitude=50.0)]
    for item in model.inputs:
        if item.dimension == WORD:
            plans.append(plan_trial(model.key, _needed(model), (item.name, item.words), latitude=50.0))
    nets = [net for plan in plans for net in plan.nets if net]
    assert nets
    for net in nets:
        module = importlib.import_module(f"packgen.nets.solids.{net.solid.replace('-', '_')}")
        known = {p.name: p.dimension for p in module.PARAMETERS}
        assert all(known[name] == value.dimension for name, value in net.given)


@every_model
def test_three_sensible_values_are_taken_if_none_are_planned(model):
    for units in ("metric", "customary"):
        plan = plan_trial(model.key, _needed(model), units=units, latitude=50.0)
        assert 2 <= len(plan.rows) <= 7
        assert any(row.expected for row in plan.rows)
        labels = [row.label for row in plan.rows]
        assert len(set(labels)) == len(labels)
        assert all(len(row.number) <= 6 for row in plan.rows if not plan.changed.words)
