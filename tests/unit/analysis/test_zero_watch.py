"""A zero is to be trusted while it is young, on its range, and says the same afterwards."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from meterlog.model import DoubtKind, Event, EventKind, Sensor, SensorKind, Zero
from meterlog.model.zero_text import zero_text

STARTED = datetime(2030, 1, 2, tzinfo=UTC)


def doubts(review, kind):
    return [doubt for doubt in review.doubts if doubt.kind is kind]


@pytest.fixture
def fan(trace):
    return trace.Fan()


def said(kind, at_s, text):
    return Event(round(at_s * 1e9), kind, text, "meter")


CLAMP = Sensor(SensorKind.CLAMP, 100.0, words="10 mV/A", own_percent=1.5, own_floor=0.3)


def clamped(fan, zero=None, sensor=CLAMP):
    amps = replace(fan.channels[2], sensor=sensor, zero=zero)
    fan.channels = (*fan.channels[:2], amps)
    return fan


def zero_event(at_s, offset, top=None):
    text = zero_text("current", "A", Zero(offset, 0.01, 30, range_top=top))
    return said(EventKind.ZERO, at_s, text)


def test_a_clamp_without_a_zero_is_told_and_a_plain_channel_is_not(fan):
    assert not fan.review().doubts
    (doubt,) = clamped(fan).review().doubts
    assert doubt.kind is DoubtKind.ZERO_MISSING
    assert "--take-zero motor-current" in doubt.text


def test_a_zero_taken_in_the_recording_is_enough(fan):
    review = clamped(fan).review([zero_event(2.0, 0.1), *fan.items()], STARTED)
    assert review.doubts == ()


@pytest.mark.parametrize(("minutes", "old"), [(9.0, False), (11.0, True)])
def test_a_kept_zero_ages(fan, minutes, old):
    zero = Zero(0.1, 0.01, 30, STARTED - timedelta(minutes=minutes))
    found = doubts(clamped(fan, zero).review(started=STARTED), DoubtKind.ZERO_OLD)
    assert bool(found) is old
    if old:
        assert "It was taken 11 min before the start" in found[0].text


def test_a_zero_grows_old_while_the_recording_goes_on(fan):
    fan.t_ns = fan.t_ns * 40  # 24 s become 16 min
    review = clamped(fan).review([zero_event(2.0, 0.1), *fan.items()], STARTED)
    (doubt,) = doubts(review, DoubtKind.ZERO_OLD)
    assert "from 602 s on" in doubt.text


def test_a_typed_zero_has_no_age(fan):
    (doubt,) = doubts(clamped(fan, Zero(0.1)).review(started=STARTED), DoubtKind.ZERO_OLD)
    assert "typed" in doubt.text


def test_zeros_before_and_after_are_compared(fan):
    def both(after):
        return clamped(fan).review([zero_event(2.0, 0.1), *fan.items(), zero_event(23.0, after)])

    agreed = both(0.25)
    assert not agreed.doubts
    assert any("agree within 0.15 A" in note for note in agreed.notes)
    (doubt,) = doubts(both(0.35), DoubtKind.ZERO_DRIFT)
    assert "drifted by +0.25 A" in doubt.text


def test_a_meter_that_ranges_away_from_its_zero_is_told(fan):
    (doubt,) = doubts(
        clamped(fan).review([zero_event(2.0, 0.1, 6.0), *fan.items()]), DoubtKind.ZERO_RANGE
    )
    assert "since 4.0 s" in doubt.text
    assert not clamped(fan).review([zero_event(2.0, 0.1, 60.0), *fan.items()]).doubts
    moved = [zero_event(2.0, 0.1), said(EventKind.RANGE, 6.0, "range 60 A"), *fan.items()]
    assert doubts(clamped(fan).review(moved), DoubtKind.ZERO_RANGE)
    before = [said(EventKind.RANGE, 1.0, "range 60 A"), zero_event(2.0, 0.1), *fan.items()]
    assert not doubts(clamped(fan).review(before), DoubtKind.ZERO_RANGE)


def test_a_clamp_of_unstated_accuracy_is_told(fan):
    bare = replace(CLAMP, own_percent=None, own_floor=None)
    kinds = [d.kind for d in clamped(fan, sensor=bare).review().doubts]
    assert kinds == [DoubtKind.ZERO_MISSING, DoubtKind.ACCURACY]
