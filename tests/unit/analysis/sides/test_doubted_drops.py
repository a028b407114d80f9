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


NAN = float("nan")


def blank(panel, drops_of, *names, **how):
    """Give the drops where some channels read nothing on full speed."""
    return drops_of(panel.HIGH | dict.fromkeys(names, NAN), **how)[0]


@pytest.mark.parametrize(
    ("names", "kind", "words"),
    [
        (("battery",), FindingKind.RESISTIVE_FEED, "battery not read while it ran steadily"),
        (("return",), FindingKind.RESISTIVE_GROUND, "motor return not read while it ran steadily"),
    ],
)
def test_a_limit_that_was_held_against_nothing_is_told_as_open(panel, drops_of, names, kind, words):
    found = blank(panel, drops_of, *names)
    assert set(found) == {FindingKind.RESISTIVE_FEED, FindingKind.RESISTIVE_GROUND}
    assert (found[kind].verdict, found[kind].value) == (Verdict.CANT_TELL, None)
    assert words in found[kind].statement
    assert sum(one.value is None for one in found.values()) == 1


def test_another_channel_that_holds_the_limit_leaves_nothing_open(panel, drops_of):
    channels = (*CHANNELS, "ground")
    found = blank(panel, drops_of, "return", channels=channels)
    assert found[FindingKind.RESISTIVE_GROUND].verdict is Verdict.PASS
    found = blank(panel, drops_of, "battery", channels=(*CHANNELS, "drop"))
    assert found[FindingKind.RESISTIVE_FEED].value is not None
    # Without a channel for it, that is said of the whole recording.
    found = blank(panel, drops_of, channels=("feed", "return", "current"))
    assert FindingKind.RESISTIVE_FEED not in found


def test_where_no_current_flowed_no_limit_was_missed(panel, drops_of):
    dead = panel.HIGH | {"current": 0.0, "return": 12.4, "feed": 12.4}
    assert not any(one.limit for one in drops_of(dead)[0].values())


def test_swapped_leads_tell_no_drop(panel, drops_of):
    """What reads as the return is the feed: 12 V behind the motor are no bad ground."""
    found, doubts = drops_of(panel.HIGH | {"feed": 0.16, "return": 12.0})
    assert "sign" in {one.kind.value for one in doubts}
    assert {one.verdict for one in found.values()} == {Verdict.CANT_TELL}
    assert len(found) == 2
    assert all(one.value is None for one in found.values())
