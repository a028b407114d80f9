"""A start's peak beyond what the clamp is stated for is a floor, and passes no fuse."""

import numpy as np
import pytest

from meterlog.analysis.budgets import budget
from meterlog.analysis.startup import StartWatch, TimeAbove, fuse_check, peak_words, why_low
from meterlog.model import (
    Finding,
    FindingKind,
    Fuse,
    Limits,
    Sensor,
    Source,
    SpanKind,
    SpeedLimits,
    Step,
    Verdict,
)

HELD = ((SpanKind.OFF, 0.0, 2.0), (SpanKind.LOCKED, 2.0, 10.0))


def clamp(top):
    """Give a clamp meter that shows amperes: one on a voltage input would need a zero, too."""
    return Sensor(own_percent=1.0, own_floor=0.1, own_top=top)


def limits(rating, kind):
    fuse = Fuse(rating, kind=kind)
    return Limits(inrush_window_s=1.0, fuse=fuse, speeds={4: SpeedLimits(10.0, 18.0)})


@pytest.fixture
def started(read, motor, off_then_on):
    """Give a start that settles at 13.6 A, behind a clamp of some range: starts, fuse check."""

    def made(top, fuse=(30.0, "blade-medium")):
        current = budget("motor current", 13.6, "A", (Source("meter", 0.1, "A"),))
        step = Step(
            speed=4,
            current=current,
            start_ns=2_000_000_000,
            end_ns=10_000_000_000,
            steady_n=7000,
            steady_mean_a=13.6,
        )
        one = read(
            lambda t: motor(t, 2.0, peak=52.0),
            spans=off_then_on,
            steps=(step,),
            limits=limits(*fuse),
            sensor=clamp(top),
        )
        return checked(one)

    return made


def checked(one):
    starts = one.show(StartWatch(one.limits)).startups(one.judged())
    above = one.show(TimeAbove([one.instrument], one.limits)).exceedances()
    return starts, *fuse_check(one.judged(), starts, above)


def test_a_peak_within_the_clamp_is_known_with_its_uncertainty(started):
    (start,), _, _ = started(60.0)
    assert not start.peak_past
    assert not start.peak_floor
    assert start.peak_u_a


def test_a_peak_beyond_the_clamp_is_at_least_that_and_not_known_any_better(started):
    (start,), _, _ = started(40.0)
    assert start.peak_past
    assert start.peak_floor
    assert start.peak_u_a is None
    assert "uncertainty not known" in peak_words(start)
    assert "more than the meter or the clamp is stated for" in why_low(start)
    assert start.at_end_of_range


def test_such_a_peak_may_open_a_fuse_that_what_was_read_can_not(started):
    _, check, (_, opening) = started(40.0)
    assert opening.verdict is Verdict.CANT_TELL
    assert "start-up peak is more than the meter or the clamp is stated for" in opening.statement
    assert "higher range would settle it" in opening.statement
    assert "too slow" not in check.words
    assert started(60.0)[1].nuisance is Verdict.PASS


def test_a_fuse_that_bears_any_such_peak_passes_beside_it(started):
    assert started(40.0, fuse=(80.0, "blade-large"))[1].nuisance is Verdict.PASS


@pytest.mark.parametrize(("top", "verdict"), [(40.0, Verdict.PASS), (22.0, Verdict.CANT_TELL)])
def test_a_motor_held_at_more_than_the_clamp_shows_passes_no_fuse(read, top, verdict):
    """26 A through 80 A of fuse open nothing; of a clamp of 22 A nobody knows what 26 A are."""
    held = Finding(
        kind=FindingKind.LOCKED,
        verdict=Verdict.FAIL,
        start_ns=2_000_000_000,
        end_ns=10_000_000_000,
        edge_ns=20_000_000,
        value=26.0,
        unit="A",
        expanded_uncertainty=None,
        limit=None,
        speed=4,
        statement="A rotor held.",
    )
    one = read(
        lambda t: np.where(t < 2.0, 0.0, 26.0),
        spans=HELD,
        limits=limits(80.0, "blade-large"),
        findings=(held,),
        sensor=clamp(top),
    )
    _, check, _ = checked(one)
    assert check.nuisance is verdict, check.words
    assert ("stated for" in check.words) is (verdict is Verdict.CANT_TELL)
