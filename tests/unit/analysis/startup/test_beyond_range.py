"""A current beyond the meter's range passes no fuse, and is told as the reason."""

import numpy as np
import pytest

from meterlog.analysis.absence import OVERLOAD
from meterlog.analysis.budgets import budget
from meterlog.analysis.startup import StartWatch, TimeAbove, fuse_check, why_low
from meterlog.model import (
    Finding,
    FindingKind,
    Fuse,
    Limits,
    Source,
    SpanKind,
    SpeedLimits,
    Step,
    Verdict,
)


def over(start_s, end_s, why=OVERLOAD, speed=4):
    return Finding(
        kind=FindingKind.NO_DATA,
        verdict=Verdict.CANT_TELL,
        start_ns=round(start_s * 1e9),
        end_ns=round(end_s * 1e9),
        edge_ns=20_000_000,
        value=None,
        unit="",
        expanded_uncertainty=None,
        limit=None,
        speed=speed,
        statement=f"No data: {why}.",
    )


def limits(rating, kind="blade-medium"):
    fuse = Fuse(rating, kind=kind)
    return Limits(inrush_window_s=1.0, fuse=fuse, speeds={4: SpeedLimits(10.0, 18.0)})


@pytest.fixture
def fan(read, motor):
    def made(missing, spans, fuse=(30.0,), findings=None, steady=True):
        current = budget("motor current", 13.6, "A", (Source("meter", 0.1, "A"),))
        step = Step(
            speed=4,
            current=current,
            start_ns=2_000_000_000,
            end_ns=10_000_000_000,
            steady_n=500,
            steady_mean_a=13.6,
        )
        return read(
            lambda t: motor(t, 2.0, 13.6, 40.0),
            spans=spans,
            limits=limits(*fuse),
            steps=(step,) if steady else (),
            missing=(missing,),
            findings=(over(*missing),) if findings is None else findings,
        )

    return made


def checked(one):
    starts = one.show(StartWatch(one.limits)).startups(one.judged())
    above = one.show(TimeAbove([one.instrument], one.limits)).exceedances()
    return starts, *fuse_check(one.judged(), starts, above)


LATER = (
    (SpanKind.OFF, 0.0, 2.0),
    (SpanKind.RUNNING, 2.0, 8.3),
    (SpanKind.NO_DATA, 8.3, 9.5),
    (SpanKind.RUNNING, 9.5, 10.0),
)
AT_START = ((SpanKind.OFF, 0.0, 1.95), (SpanKind.NO_DATA, 1.95, 2.3), (SpanKind.RUNNING, 2.3, 10.0))
NEVER_BACK = ((SpanKind.OFF, 0.0, 1.95), (SpanKind.NO_DATA, 1.95, 10.0))


def test_what_was_beyond_the_range_for_seconds_passes_neither_load_nor_opening(fan):
    _, check, (load, opening) = checked(fan((8.3, 9.5), LATER))
    for one in (load, opening):
        assert one.verdict is Verdict.CANT_TELL, one.statement
        assert "beyond the meter's range (overload) for 1.2 s" in one.statement
    assert "higher range would settle it" in opening.statement
    assert check.load_verdict is check.nuisance is Verdict.CANT_TELL


def test_readings_missing_for_another_reason_are_no_overload(fan):
    silent = fan((8.3, 9.5), LATER, findings=(over(8.3, 9.5, "it sent nothing"),))
    _, check, _ = checked(silent)
    assert check.load_verdict is check.nuisance is Verdict.PASS, check.words


def test_a_current_that_never_came_back_into_the_range_has_the_overload_as_its_reason(fan):
    _, check, (opening,) = checked(fan((1.95, 10.0), NEVER_BACK, steady=False))
    assert opening.verdict is Verdict.CANT_TELL
    assert "never reached" not in opening.statement
    assert "overload" in check.words.partition("What was read")[0]
    everywhere = fan((0.0, 10.0), ((SpanKind.NO_DATA, 0.0, 10.0),), steady=False)
    assert "no current was read" not in checked(everywhere)[1].words


def test_a_peak_beyond_the_range_is_not_blamed_on_slow_readings(fan):
    (start,), check, (load, opening) = checked(fan((1.95, 2.3), AT_START))
    assert start.peak_over
    assert start.peak_floor
    assert "overload" in why_low(start)
    assert load.verdict is Verdict.PASS, load.statement  # it ran steadily for long, all of it read
    assert opening.verdict is Verdict.CANT_TELL
    assert "start-up peak was beyond the meter's range (overload)" in opening.statement
    assert "too slow" not in check.words
    assert "higher range would settle it" in opening.statement


def test_a_fuse_that_bears_any_such_peak_passes_beside_the_overload(fan):
    (start,), check, _ = checked(fan((1.95, 2.3), AT_START, fuse=(80.0, "blade-large")))
    assert start.peak_over
    assert check.nuisance is Verdict.PASS, check.words


def test_an_overload_that_proves_nothing_takes_no_failure_back(read):
    held = read(
        lambda t: np.where(t < 2.0, 0.0, 62.0),
        end_s=20.0,
        spans=((SpanKind.OFF, 0.0, 2.0), (SpanKind.LOCKED, 2.0, 20.0)),
        limits=limits(30.0),
        missing=((15.0, 18.0),),
        findings=(over(15.0, 18.0),),
    )
    assert checked(held)[1].nuisance is Verdict.FAIL
