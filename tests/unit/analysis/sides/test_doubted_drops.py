"""Voltage drops that can't be held against their limit: said, with what stands against it."""

from dataclasses import replace

import pytest

from meterlog.model import FindingKind, Verdict

CHANNELS = ("feed", "return", "battery", "current")


@pytest.fixture
def lim(trace):
    return replace(trace.limits(), max_feed_drop_v=0.5, max_ground_drop_v=0.3)


@pytest.fixture
def drops_of(panel, lim):
    """Give the drops of a fan on full speed, by kind, and the doubts."""

    def of(on, channels=CHANNELS, then=None):
        legs = [(2.0, panel.OFF), (10.0, on), (18.0, on if then is None else then)]
        events = [panel.trace.speed(0.0, 0), panel.trace.speed(2.0, 4)]
        _, _, found, review = panel.told(channels, legs, events, lim)
        return {one.kind: one for one in found}, review.doubts

    return of


@pytest.mark.parametrize(
    ("back_v", "verdict", "limit"),
    [(0.16, Verdict.PASS, 0.3), (1.5, Verdict.CANT_TELL, 0.3), (4.0, Verdict.FAIL, 2.27)],
)
def test_a_current_that_may_be_ten_times_off_widens_no_limit(
    panel, drops_of, back_v, verdict, limit
):
    """136 A or 13.6 A? 1.5 V behind the motor are too much for the one, and not for the other."""
    found, doubts = drops_of(panel.HIGH | {"current": 136.0, "return": back_v})
    assert "decade" in {one.kind.value for one in doubts}
    ground = found[FindingKind.RESISTIVE_GROUND]
    assert (ground.verdict, ground.limit) == (verdict, pytest.approx(limit, abs=0.01))
    doubted = "can't tell, as the current may be off by a factor of ten" in ground.statement
    assert doubted is (verdict is Verdict.CANT_TELL)
