"""Between the hand on the knob and its late mark the motor gathers speed or slows down.

What it draws then is no fault: V = I R + Ke w (textbook, permanent-magnet motor), so that until it
has the new speed it draws more than it will at a higher one, and less than it will at a lower one.
"""

import numpy as np
import pytest

from meterlog.model import SpanKind, SpeedLimits

HAND = {"command_lag_s": 1.0}
GONE = (np.nan, np.nan, np.nan)
LOW, MIDDLE, HIGH = 3.6, 5.7, 13.6
NARROW = {"inrush_window_s": 2.5, "speeds": {1: SpeedLimits(2.0, 4.2), 2: SpeedLimits(5.0, 8.0)}}
OFF_LIMITS = (SpanKind.OVER, SpanKind.UNDER, SpanKind.LOCKED)


def kinds(result):
    return [span.kind for span in result.spans]


def faulty(result):
    return [kind for kind in kinds(result) if kind in OFF_LIMITS]


class Current:
    """A trace of the current alone, read every 10 ms, built from what happens in it."""

    def __init__(self, amps, end=12.0, interval_s=0.01):
        self.interval_s = interval_s
        self.t = np.arange(0.0, end, interval_s)
        self.amps = np.full(len(self.t), amps)

    def set(self, start, end, amps, peak=1.0, tau_s=0.2):
        """Let a level follow, reached from ``peak`` times itself by a time constant."""
        inside = (self.t >= start) & (self.t < end)
        course = 1.0 + (peak - 1.0) * np.exp(-(self.t[inside] - start) / tau_s)
        self.amps[inside] = amps * course
        return self

    def unread(self, start, end):
        self.amps[(self.t >= start) & (self.t < end)] = np.nan
        return self

    def review(self, trace, marks, chunk_s=60.0, look=False, **changes):
        lim = trace.limits(**(HAND | changes))
        meter = trace.Instrument("meter", "t", "-", trace.channels(self.interval_s, ("current",)))
        reviewer = trace.Reviewer([meter], lim)
        block = trace.block_of(
            np.round(self.t * 1e9).astype(np.int64), self.amps[:, None], "meter", (0,)
        )
        waiting = [trace.speed(at, step) for at, step in marks]
        rows = max(round(chunk_s / self.interval_s), 1)
        for start in range(0, len(block), rows):
            part = block.rows(start, min(start + rows, len(block)))
            while waiting and waiting[0].t_ns <= int(part.t_ns[-1]):
                reviewer.feed(waiting.pop(0))
            reviewer.feed(part)
            if look:
                reviewer.live()
        for event in waiting:
            reviewer.feed(event)
        return reviewer.finish()


def restarted(up, level, low=LOW):
    """Give low, lost from 2 s to 3 s, back with a peak, and turned up at ``up``."""
    lost = Current(low).set(2.0, 3.0, 0.0).set(3.0, up, low, peak=5.0)
    return lost.set(up, 12.0, level, peak=1.6)


def test_a_knob_turned_while_judging_waits_is_no_excess_though_the_restart_has_a_peak(trace):
    # Judging waits 2.5 s after a restart: until 5.5 s. The knob is turned at 5.1 s, marked 5.7 s.
    marks = [(0.0, 1), (5.7, 2)]
    assert not faulty(restarted(5.1, MIDDLE).review(trace, marks, **NARROW))


def test_a_motor_that_draws_the_next_speeds_current_ever_since_a_restart_drags(trace):
    # The same mark, but never within its limits since the current came back.
    drags = Current(LOW).set(2.0, 3.0, 0.0).set(3.0, 12.0, MIDDLE, peak=3.0)
    found = faulty(drags.review(trace, [(0.0, 1), (5.7, 2)], **NARROW))
    assert found == [SpanKind.OVER]


@pytest.mark.parametrize("marked", [8.0, None])
def test_an_excess_with_no_mark_within_the_lag_is_told(trace, marked):
    marks = [(0.0, 1), *([(marked, 4)] if marked else [])]
    assert SpanKind.OVER in faulty(restarted(5.1, HIGH).review(trace, marks, inrush_window_s=2.5))


def test_all_that_was_seen_since_missing_readings_may_be_the_next_speeds(trace):
    # Turned up in the pause, at 5.2 s; judging waits until 5.5 s, the mark comes at 5.6 s.
    marks = [(0.0, 1), (5.6, 2)]
    seen = restarted(5.2, MIDDLE).unread(5.1, 5.35)
    assert not faulty(seen.review(trace, marks, **NARROW))
    drags = restarted(5.2, 11.0).unread(5.1, 5.35)  # more than the next speed may draw
    spans = drags.review(trace, marks, **NARROW).spans
    first = next(span for span in spans if span.kind is SpanKind.OVER)
    assert first.start_ns / 1e9 == pytest.approx(5.5, abs=0.02)


UNSTATED = {1: SpeedLimits(2.0, 5.0), 4: SpeedLimits(10.0, 18.0)}


def slowed(until, amps=1.2):
    """Give high, a notch of 50 ms, and less than high draws from 5.1 s on."""
    course = Current(HIGH).set(5.0, 5.05, 0.0).set(5.05, until, amps)
    return course.set(until, 12.0, MIDDLE)


def test_a_lower_speed_without_limits_draws_less_than_a_higher_one(trace):
    # Judging waits half a second after the notch; then 5.7 A is less than high may draw, and the
    # next speed says nothing of itself.
    down = slowed(5.4).review(trace, [(0.0, 4), (5.8, 2)], speeds=UNSTATED)
    assert not faulty(down)
    never = slowed(5.4).review(trace, [(0.0, 4), (9.0, 2)], speeds=UNSTATED)
    assert faulty(never) == [SpanKind.UNDER]
    up = slowed(5.4).review(trace, [(0.0, 4), (5.8, 5)], speeds=UNSTATED)
    assert faulty(up) == [SpanKind.UNDER]


OVERLAP = {1: SpeedLimits(2.0, 5.0), 2: SpeedLimits(4.0, 8.0)}


@pytest.mark.parametrize("chunk_s", [0.05, 60.0])
@pytest.mark.parametrize("look", [False, True])
def test_a_start_peak_that_is_over_before_a_late_mark_is_no_excess(trace, chunk_s, look):
    # From low to a middle speed whose level is within the limits of both; marked 0.8 s late.
    peak = Current(LOW).set(5.0, 12.0, 4.6, peak=2.0)
    result = peak.review(trace, [(0.0, 1), (5.8, 2)], chunk_s, look, speeds=OVERLAP)
    assert kinds(result) == [SpanKind.RUNNING]
    late = peak.review(trace, [(0.0, 1), (6.4, 2)], chunk_s, look, speeds=OVERLAP)
    assert faulty(late) == [SpanKind.OVER]  # for longer than a hand is late
    burst = Current(4.2).set(5.0, 12.0, 4.6, peak=2.0)
    down = burst.review(trace, [(0.0, 2), (5.8, 1)], chunk_s, look, speeds=OVERLAP)
    assert faulty(down) == [SpanKind.OVER]


def test_an_excess_that_stays_level_and_ends_before_the_mark_is_told(trace):
    level = Current(LOW).set(5.0, 5.4, 6.5).set(5.8, 12.0, 4.6)
    found = faulty(level.review(trace, [(0.0, 1), (5.8, 2)], speeds=OVERLAP))
    assert found == [SpanKind.OVER]


@pytest.mark.parametrize("chunk_s", [0.05, 60.0])
@pytest.mark.parametrize("look", [False, True])
@pytest.mark.parametrize("peak", [1.0, 1.8])
@pytest.mark.parametrize("read_on_s", [0.02, 0.15])
def test_missing_readings_before_a_late_mark_do_not_make_an_excess_of_it(
    trace, chunk_s, look, peak, read_on_s
):
    course = Current(LOW).set(5.0, 12.0, HIGH, peak=peak).unread(5.3, 5.42)
    marks = [(0.0, 1), (5.42 + read_on_s, 4)]
    result = course.review(trace, marks, chunk_s, look)
    assert set(kinds(result)) == {SpanKind.RUNNING, SpanKind.NO_DATA}


def test_an_excess_that_missing_readings_end_is_told_where_it_is_gone_after_them(trace):
    course = Current(LOW).set(5.0, 5.35, HIGH).unread(5.3, 5.42).set(5.9, 12.0, HIGH)
    assert faulty(course.review(trace, [(0.0, 1), (5.9, 4)])) == [SpanKind.OVER]


@pytest.mark.parametrize("after", [18.0, 41.0])
def test_one_reading_of_a_start_peak_shows_no_fall_but_what_follows_it_does(trace, after):
    # A slow meter: turned up at 5.1 s, one reading above what a held rotor draws, marked 5.9 s.
    course = Current(LOW, interval_s=0.25)
    course.amps[course.t >= 5.2] = HIGH
    course.amps[(course.t >= 5.2) & (course.t < 5.6)] = [41.0, after]
    found = faulty(course.review(trace, [(0.0, 1), (5.9, 4)]))
    assert (SpanKind.LOCKED in found) is (after > 40.0)
