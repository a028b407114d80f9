"""A start's peak beyond what the clamp is stated for is a floor, and passes no fuse."""

from dataclasses import replace

import numpy as np
import pytest

from meterlog.analysis.budgets import budget
from meterlog.analysis.past_range_watch import PastRangeWatch
from meterlog.analysis.startup import StartWatch, TimeAbove, fuse_check, peak_words, why_low
from meterlog.model import (
    Block,
    Doubt,
    DoubtKind,
    Fuse,
    Limits,
    Role,
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


def steady():
    """Give the step that follows the start: 13.6 A."""
    current = budget("motor current", 13.6, "A", (Source("meter", 0.1, "A"),))
    return Step(
        speed=4,
        current=current,
        start_ns=2_000_000_000,
        end_ns=10_000_000_000,
        steady_n=7000,
        steady_mean_a=13.6,
    )


@pytest.fixture
def started(read, motor, off_then_on):
    """Give a start that settles at 13.6 A, behind a clamp of some range: starts, fuse check."""

    def made(top, fuse=(30.0, "blade-medium")):
        one = read(
            lambda t: motor(t, 2.0, peak=52.0),
            spans=off_then_on,
            steps=(steady(),),
            limits=limits(*fuse),
            sensor=clamp(top),
        )
        return checked(beyond(one))

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


def beyond(one):
    """Give the readings with the doubt that a review has of them."""
    watch = PastRangeWatch([one.instrument])
    values = one.values.reshape(-1, 1)
    watch.take(Block("meter", one.t_ns, values, np.zeros(values.shape, np.uint8)))
    return replace(one, doubts=tuple(watch.doubts()))


@pytest.mark.parametrize(("top", "verdict"), [(40.0, Verdict.PASS), (22.0, Verdict.CANT_TELL)])
def test_a_motor_held_at_more_than_the_clamp_shows_passes_no_fuse(read, top, verdict):
    """26 A through 80 A of fuse open nothing; of a clamp of 22 A nobody knows what 26 A are."""
    one = beyond(
        read(
            lambda t: np.where(t < 2.0, 0.0, 26.0),
            spans=HELD,
            limits=limits(80.0, "blade-large"),
            sensor=clamp(top),
        )
    )
    _, check, _ = checked(one)
    assert check.nuisance is verdict, check.words
    assert ("stated for" in check.words) is (verdict is Verdict.CANT_TELL)


@pytest.mark.parametrize(("surge_a", "verdict"), [(38.0, Verdict.PASS), (58.0, Verdict.CANT_TELL)])
def test_a_surge_beyond_the_clamp_long_after_the_start_passes_no_fuse(
    read, motor, off_then_on, surge_a, verdict
):
    """Of 50 ms neither a mean nor a finding knows."""
    one = beyond(
        read(
            lambda t: np.where((t > 7.0) & (t < 7.05), surge_a, motor(t, 2.0, peak=30.0)),
            spans=off_then_on,
            steps=(steady(),),
            limits=limits(80.0, "blade-large"),
            sensor=clamp(40.0),
        )
    )
    assert checked(one)[1].nuisance is verdict


def test_a_start_of_which_nobody_saw_how_it_went_on_passes_no_fuse(read, motor):
    one = beyond(
        read(
            lambda t: motor(t, 2.0, peak=52.0),
            end_s=2.25,
            spans=((SpanKind.OFF, 0.0, 2.0), (SpanKind.RUNNING, 2.0, 2.25)),
            limits=limits(40.0, "blade-medium"),
            sensor=clamp(40.0),
        )
    )
    (start,), check, _ = checked(one)
    assert start.peak_past
    assert start.steady_a is None
    assert check.nuisance is Verdict.CANT_TELL, check.words


@pytest.mark.parametrize(("top", "verdict"), [(100.0, Verdict.FAIL), (40.0, Verdict.CANT_TELL)])
def test_a_fuse_must_have_opened_only_at_a_current_that_flowed_for_sure(read, top, verdict):
    """75 A for 3 s open 20 A for sure; where the clamp ends at 40 A perhaps 41 A flowed."""
    one = beyond(
        read(
            lambda t: np.where((t < 2.0) | (t > 5.0), 0.0, 75.0),
            spans=(
                (SpanKind.OFF, 0.0, 2.0),
                (SpanKind.LOCKED, 2.0, 5.0),
                (SpanKind.OFF, 5.0, 10.0),
            ),
            limits=limits(20.0, "blade-medium"),
            sensor=clamp(top),
        )
    )
    assert checked(one)[1].nuisance is verdict


@pytest.mark.parametrize(("rating", "verdict"), [(10.0, Verdict.FAIL), (15.0, Verdict.CANT_TELL)])
def test_a_fuse_loaded_more_than_it_may_be_by_what_surely_flows_fails(
    read, motor, off_then_on, rating, verdict
):
    """12 A of clamp, 13.6 A read: above the 8 A for sure, and above the 12 A perhaps not."""
    one = beyond(
        read(
            lambda t: motor(t, 2.0, peak=13.7),
            spans=off_then_on,
            steps=(steady(),),
            limits=Limits(inrush_window_s=1.0, fuse=Fuse(rating, kind="blade-medium")),
            sensor=clamp(12.0),
        )
    )
    _, check, _ = checked(one)
    assert check.load_verdict is verdict, check.words


def test_a_doubt_about_a_voltage_takes_no_fuses_failure_back(read):
    one = read(
        lambda t: np.where((t < 2.0) | (t > 5.0), 0.0, 75.0),
        spans=(*HELD[:1], (SpanKind.LOCKED, 2.0, 5.0), (SpanKind.OFF, 5.0, 10.0)),
        limits=limits(20.0, "blade-medium"),
    )
    volts = Doubt(
        DoubtKind.PAST_RANGE, "Volts.", 0, 10**9, "m", Role.MOTOR_FEED, parts=((0, 10**9),)
    )
    assert checked(replace(one, doubts=(volts,)))[1].nuisance is Verdict.FAIL


@pytest.mark.parametrize(("top", "verdict"), [(60.0, Verdict.PASS), (40.0, Verdict.CANT_TELL)])
def test_a_long_peak_beyond_the_clamp_may_last_as_long_as_it_was_seen(
    read, off_then_on, top, verdict
):
    """41 A for 0.9 s: perhaps 50 A, which open a fuse of 20 A from 0.8 s on by its table."""
    one = beyond(
        read(
            lambda t: np.where(t < 2.0, 0.0, np.where(t < 2.9, 41.0, 10.0)),
            spans=off_then_on,
            steps=(replace(steady(), steady_mean_a=10.0),),
            limits=limits(20.0, "blade-large"),
            sensor=clamp(top),
        )
    )
    (start,), check, _ = checked(one)
    assert start.peak_past is (verdict is Verdict.CANT_TELL)
    assert check.nuisance is verdict, check.words
