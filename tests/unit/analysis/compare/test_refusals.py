"""What can't be compared, and why, and what to do."""

from dataclasses import replace

import pytest

from meterlog.analysis.compare import Ask, compare
from meterlog.model import Conditions, Doubt, DoubtKind, Limits, Origin, Role


def _refused(old, new, words):
    comparison = compare([old], new, Ask()).comparison
    assert words in comparison.refusal
    assert comparison.steps == ()
    assert comparison.summary.startswith("These recordings can't be compared.")
    return comparison


def test_another_nominal_voltage(side, healthy):
    heavy = side("new", healthy, 26.0, limits=Limits(nominal_v=24.0))
    _refused(side("old", healthy), heavy, "24 V nominal")


def test_another_supply_under_one_nominal_voltage(side, healthy):
    """Somebody left the limits at 12 V; the voltages tell."""
    _refused(side("old", healthy, 13.0), side("new", healthy, 26.0), "different supplies")


def test_a_simulated_fan_beside_a_measured_one(side, healthy):
    _refused(
        side("old", healthy, origin=Origin.SIMULATED), side("new", healthy), "old is simulated"
    )


def test_two_simulated_ones_are_compared_and_it_is_said(side, healthy):
    sides = [side(name, healthy, origin=Origin.SIMULATED) for name in ("old", "new")]
    comparison = compare(sides[:1], sides[1], Ask()).comparison
    assert comparison.refusal == ""
    assert "Both are simulated." in comparison.summary


def test_no_current_channel(side, healthy):
    blind = side("new", healthy, roles=(Role.MOTOR_FEED, Role.MOTOR_RETURN))
    _refused(side("old", healthy), blind, "no channel read the motor current")


def test_a_clamp_off_by_ten(side, healthy):
    doubt = Doubt(DoubtKind.DECADE, "The clamp may be on another range.", factor=10.0)
    old = side("old", healthy, review={"doubts": (doubt,)})
    _refused(old, side("new", healthy), "factor of ten")


def test_bench_beside_vehicle(side, healthy):
    old = side("old", healthy, conditions=Conditions(place="vehicle"))
    new = side("new", healthy, conditions=Conditions(place="bench"))
    comparison = _refused(old, new, "The place was vehicle for the old and bench for the new")
    assert [one.weight for one in comparison.conditions if one.name == "place"] == ["forbids"]


def test_no_common_speed(side, healthy):
    whole = side("old", healthy)
    low = side("old", healthy, steps=whole.review.steps[:2])
    high = side("new", healthy, steps=whole.review.steps[2:])
    _refused(low, high, "no commanded speed")


def test_speeds_nobody_recorded(side, healthy):
    whole = side("old", healthy)
    bare = side("new", healthy, steps=[replace(one, speed=None) for one in whole.review.steps])
    _refused(whole, bare, "--speed-by-current")


def test_a_doubt_that_leaves_nothing_to_compare_is_told(side, healthy):
    doubt = Doubt(DoubtKind.BATTERY, "The meter's battery is low.", role=Role.MOTOR_CURRENT)
    old = side("old", healthy, review={"doubts": (doubt,)})
    comparison = _refused(old, side("new", healthy), "no commanded speed")
    assert comparison.notes == ("old: The meter's battery is low.",)


def test_a_doubted_voltage_leaves_the_current_as_measured(side, healthy):
    doubt = Doubt(DoubtKind.STUCK, "It stood still.", 42 * 10**9, 44 * 10**9, role=Role.MOTOR_FEED)
    old = side("old", healthy, 12.4, review={"doubts": (doubt,)})
    *others, top = compare([old], side("new", healthy, 13.9), Ask()).comparison.steps
    assert top.reference_v is None
    assert top.old_v is None
    assert all(one.reference_v is not None for one in others)


@pytest.mark.parametrize("kind", [DoubtKind.STUCK, DoubtKind.BATTERY, DoubtKind.CLAMP_QUIET])
def test_a_doubt_over_one_speed_leaves_that_speed_out(side, healthy, kind):
    doubt = Doubt(kind, "Something was wrong.", start_ns=12 * 10**9, end_ns=13 * 10**9)
    old = side("old", healthy, review={"doubts": (doubt,)})
    comparison = compare([old], side("new", healthy), Ask()).comparison
    assert [one.speed for one in comparison.steps] == [2, 3, 4]
    assert any("Something was wrong." in note for note in comparison.notes)
