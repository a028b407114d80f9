"""Conditions side by side: what differs, what was not said, what forbids a comparison."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.analysis.compare.condition_checks import density_change, weigh
from meterlog.model import Conditions

SAME = Conditions(
    engine="off", filter="new", air="face", intake="fresh", housing="closed", place="vehicle",
    windows="closed", control="manual", ambient_c=20.0, running_min=5.0,
)  # fmt: skip


def _of(old, new, name, *, voltage_known=True):
    return next(
        one for one in weigh(old, new, voltage_known=voltage_known) if one.check.name == name
    )


def test_the_same_on_both_sides_is_the_same_and_does_nothing():
    told = weigh(SAME, SAME, voltage_known=True)
    assert {one.check.weight for one in told} == {"same"}
    assert {one.effect for one in told} == {0.0}


def test_what_nobody_said_is_not_stated():
    told = weigh(Conditions(), Conditions(), voltage_known=True)
    assert {one.check.weight for one in told} == {"not stated"}
    assert all(one.check.words for one in told)


@pytest.mark.parametrize(
    ("name", "other", "weight"),
    [
        ("filter", "used", "differs"),
        ("filter", "clogged", "forbids"),
        ("filter", "none", "forbids"),
        ("housing", "open", "forbids"),
        ("place", "bench", "forbids"),
        ("place", "bench, no wheel", "forbids"),
        ("air", "defrost", "differs"),
        ("intake", "recirculated", "differs"),
        ("windows", "open", "differs"),
        ("control", "automatic", "differs"),
        ("engine", "running", "differs"),
    ],
)
def test_each_difference_has_its_weight_both_ways_round(name, other, weight):
    changed = replace(SAME, **{name: other})
    for pair in ((SAME, changed), (changed, SAME)):
        told = _of(*pair, name)
        assert told.check.weight == weight
        assert told.check.words


def test_upper_case_and_blanks_make_no_difference():
    told = _of(SAME, replace(SAME, filter="  New "), "filter")
    assert told.check.weight == "same"


def test_engine_running_against_off_forbids_where_no_voltage_was_read():
    running = replace(SAME, engine="running")
    assert _of(SAME, running, "engine").check.weight == "differs"
    bare = _of(SAME, running, "engine", voltage_known=False)
    assert bare.check.weight == "forbids"
    assert "20 %" in bare.check.words


def test_thirty_kelvin_colder_makes_about_ten_per_cent_more():
    told = _of(SAME, replace(SAME, ambient_c=-10.0), "ambient")
    assert told.check.weight == "differs"
    assert told.effect == pytest.approx(0.114, abs=0.001)
    assert "+11 %" in told.check.words
    back = _of(replace(SAME, ambient_c=-10.0), SAME, "ambient")
    assert "-10 %" in back.check.words
    assert _of(SAME, replace(SAME, ambient_c=23.0), "ambient").check.weight == "same"


@given(st.floats(-40.0, 60.0), st.floats(-40.0, 60.0))
def test_colder_is_denser_and_there_and_back_is_nothing(one, other):
    there, back = density_change(one, other), density_change(other, one)
    assert (there > 0.0) == (other < one) or there == 0.0
    assert (1.0 + there) * (1.0 + back) == pytest.approx(1.0)


def test_a_motor_that_had_not_warmed_up_differs_from_one_that_had():
    assert _of(replace(SAME, running_min=0.5), SAME, "warm-up").check.weight == "differs"
    assert _of(replace(SAME, running_min=4.0), SAME, "warm-up").check.weight == "same"
    assert _of(replace(SAME, running_min=20.0), SAME, "warm-up").check.weight == "same"
    assert _of(replace(SAME, running_min=0.5), SAME, "warm-up").effect == 0.05
