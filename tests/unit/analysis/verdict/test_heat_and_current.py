"""Heat in the controller is the motor's doing only where the motor draws too much."""

import pytest


def parts_of(told):
    return sorted(one.part for one in told.ranked)


@pytest.mark.parametrize(
    ("kind", "value", "limit"), [("over", 21.0, 18.0), ("drag", 21.0, 18.0), ("locked", 52.0, 40.0)]
)
def test_heat_at_a_speed_whose_current_is_right_is_not_laid_on_the_motor(
    verdict_of, kit, kind, value, limit
):
    """The most heat is made on a middle speed, the most current flows on high."""
    motor = kit.finding(kind, start=40.0, value=value, limit=limit)
    heat = kit.finding("controller-heat", start=20.0, value=38.0, limit=35.0, unit="W", speed=2)
    told = verdict_of(motor, heat)
    assert parts_of(told) == ["controller", "motor"]
    assert not any("kills it" in one.what for one in told.ranked)
    # At its own speed it is the motor's, in another run of that speed too.
    again = kit.replace(heat, speed=4)
    assert ["kills it" in one.what for one in verdict_of(motor, again).ranked] == [True]


def test_heat_goes_with_a_current_of_which_nobody_recorded_the_speed(verdict_of, kit):
    motor = kit.finding("locked", start=40.0, value=52.0, limit=40.0, speed=None)
    heat = kit.finding("controller-heat", start=39.0, value=38.0, limit=35.0, unit="W", speed=2)
    assert parts_of(verdict_of(motor, heat)) == ["motor"]
    before = kit.replace(heat, start_ns=20_000_000_000, end_ns=30_000_000_000)
    assert parts_of(verdict_of(motor, before)) == ["controller", "motor"]
