"""Whatever a file may hold, a review ends in words and strict JSON, never in a traceback."""

import json
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.analysis.impossible import LARGEST, Impossible
from meterlog.evidence import judgement_text, review_to_dict
from meterlog.model import (
    Accuracy,
    Block,
    Channel,
    Controller,
    DecisionRule,
    Event,
    EventKind,
    Flag,
    Fuse,
    Instrument,
    Limits,
    Quantity,
    Range,
    Role,
    SpeedLimits,
    Zero,
)

ODD = (0.0, -0.0, 5e-324, 1e-300, 1e150, 1e300, -1e308, np.nan, np.inf, -np.inf, 13.6, -13.6, 0.3)
WORDS = ("", "x", "nan", "-5", "9" * 30, "60 A", "current nan A scatter inf n -1", "\x00", "é∞")
ACCURACIES = (None, Accuracy(0.5, 2, 0.01, basis="x"), Accuracy(0, 0, 0), Accuracy(100, 1e6, 1e6))
FUSES = (None, Fuse(1.0), Fuse(2.0, "blade-miniature", 1.0), Fuse(20.0, "blade-large", 100.0))


def strictly(review) -> str:
    """Both answers of a review; raises if one can't be given."""
    json.dumps(review_to_dict(review), allow_nan=False)
    return judgement_text(review, 80, budgets=True)


def column(rng, rows):
    """Readings of one channel, of one of five kinds."""
    kind = rng.integers(5)
    if kind == 0:
        return np.full(rows, ODD[rng.integers(len(ODD))])
    if kind == 1:
        return np.array([ODD[one] for one in rng.integers(0, len(ODD), rows)])
    if kind == 2:
        return np.where(rng.random(rows) < 0.3, np.nan, rng.normal(8.0, 4.0, rows))
    if kind == 3:
        return rng.normal(0.0, 1.0, rows) * 10.0 ** rng.integers(-300, 300, rows)
    held = np.repeat(rng.choice([0.0, 3.6, 13.6, 55.0, -13.6], rows // 20 + 1), 20)[:rows]
    return held + rng.normal(0.0, 0.01, rows)


def times(rng, rows, interval_s):
    """Times that are even, all equal, or run backwards a little."""
    t_ns = np.arange(rows) * round(interval_s * 1e9)
    kind = rng.integers(3)
    if kind == 1:
        return np.zeros(rows, np.int64)
    if kind == 2:
        return t_ns + rng.integers(-round(interval_s * 2e9) - 1, round(interval_s * 2e9) + 1, rows)
    return t_ns


def meter(rng, key, interval_s):
    """An instrument of up to four channels with any role, its readings cut anywhere."""
    channels = []
    for index in range(rng.integers(0, 5)):
        role = list(Role)[rng.integers(len(Role))]
        role = Role.MOTOR_CURRENT if rng.random() < 0.3 else role
        accuracy = ACCURACIES[rng.integers(len(ACCURACIES))]
        ranges = (Range(1.0, accuracy), Range(60.0, accuracy)) if accuracy else ()
        channels.append(
            Channel(
                f"c{index}",
                role.quantity or Quantity.VOLTAGE,
                role,
                interval_s=interval_s,
                integration_s=interval_s * rng.choice([0.0, 0.5, 10.0]),
                accuracy=accuracy,
                ranges=ranges if rng.random() < 0.5 else (),
                zero=Zero(0.1, 0.01, 10) if rng.random() < 0.3 else None,
            )
        )
    rows = int(rng.choice([0, 1, 2, 3, 10, 300]))
    values = np.empty((rows, len(channels)))
    for index in range(len(channels)):
        values[:, index] = column(rng, rows)
    flags = np.where(np.isnan(values), int(Flag.NO_DATA), 0).astype(np.uint8)
    if rng.random() < 0.2:
        flags = rng.integers(0, 32, values.shape).astype(np.uint8)
    block = Block(key, times(rng, rows, interval_s), values, flags)
    places = sorted({0, rows, *rng.integers(0, rows + 1, 4).tolist()})
    instrument = Instrument(key, "p", "-", tuple(channels), typed=bool(rng.random() < 0.1))
    return instrument, [block.rows(a, b) for a, b in pairwise(places)]


def events(rng, end_ns):
    """Events of any kind and text, some before the first reading and after the last."""
    told = []
    for _ in range(int(rng.choice([0, 3, 40]))):
        kind = list(EventKind)[rng.integers(len(EventKind))]
        value = WORDS[rng.integers(len(WORDS))]
        if kind is EventKind.SPEED:
            value = str(rng.choice([0, 1, 2, 4, 10**9]))
        at_ns = int(rng.integers(-end_ns // 5 - 5, end_ns + end_ns // 5 + 5))
        told.append(Event(at_ns, kind, value, str(rng.choice(["", "m0", "zz"]))))
    return sorted(told, key=lambda event: event.t_ns)


def absurd_limits(rng):
    """Limits that a file may hold, each at an end of what is allowed."""

    def one(*of):
        return of[rng.integers(len(of))]

    return Limits(
        nominal_v=one(1.0, 12.0, 60.0),
        supply_present_v=one(0.0, 9.0, 60.0),
        driven_v=one(0.0, 2.0, 60.0),
        open_current_a=one(0.0, 0.3),
        locked_current_a=one(0.5, 40.0, 1e4),
        inrush_window_s=one(0.0, 0.5, 3600.0),
        min_dwell_s=one(0.0, 0.05, 3600.0),
        command_lag_s=one(0.0, 1.0, 60.0),
        coast_s=one(0.0, 2.0, 600.0),
        hysteresis=one(0.0, 0.05, 0.5),
        decision=one(*DecisionRule),
        guard_factor=one(0.0, 1.0, 3.0),
        reference_v=one(None, 0.1, 60.0),
        at_reference=one(True, False),
        brush_v=one(0.0, 1.2, 5.0),
        fuse=one(*FUSES),
        controller=Controller(one("", "linear", "resistors", "pulsed"), one(None, 0.0, 10.0)),
        max_feed_drop_v=one(None, 0.0, 60.0),
        max_ground_drop_v=one(None, 0.0, 60.0),
        speeds={
            0: SpeedLimits(None, 0.0),
            4: one(SpeedLimits(), SpeedLimits(-1e6, 1e6), SpeedLimits(0.0, 0.0)),
            10**9: SpeedLimits(1.0, 2.0),
        },
    )


@settings(max_examples=50, deadline=None)
@given(seed=st.integers(0, 2**32 - 1))
def test_no_readings_events_or_limits_can_break_a_review(trace, seed):
    rng = np.random.default_rng(seed)
    interval_s = float(rng.choice([1e-6, 1e-3, 0.02, 1.0, 100.0]))
    made = [meter(rng, f"m{place}", interval_s) for place in range(rng.integers(0, 4))]
    parts = [part for _, blocks in made for part in blocks]
    end_ns = max((int(part.t_ns.max()) for part in parts if len(part)), default=1)
    limits = absurd_limits(rng)
    reviewer = trace.Reviewer([instrument for instrument, _ in made], limits)
    for item in [*events(rng, max(end_ns, 1)), *parts]:
        reviewer.feed(item)
    strictly(reviewer.live())
    assert "Verdict" in strictly(reviewer.finish())
    if reviewer.found:
        again = trace.Reviewer([one for one, _ in made], limits, found=reviewer.found)
        for part in parts:
            again.feed(part)
        strictly(again.finish())


def test_one_impossible_reading_changes_no_verdict_but_is_told(trace):
    """Catches a sum that one infinite reading spoils, and silence about what was left out."""
    fan = trace.Fan()
    sound = fan.review()
    fan.values[100, 2] = 1e300
    told = fan.review()
    assert [(f.kind, f.verdict) for f in told.findings] == [
        (f.kind, f.verdict) for f in sound.findings
    ]
    (note,) = (note for note in told.notes if "thousand million" in note)
    assert note.startswith("1 reading(s) of meter current")


def test_what_the_largest_limit_allows_is_kept():
    channel = Channel("amps", Quantity.CURRENT, Role.MOTOR_CURRENT)
    gate = Impossible([Instrument("m", "p", "-", (channel,))])
    values = np.array([[LARGEST], [-LARGEST], [np.nan]])
    block = Block("m", np.arange(3), values, np.zeros((3, 1), np.uint8))
    assert gate.without(block) is block
    assert gate.notes() == []


@pytest.mark.parametrize("cut", [1, 2, 3])
def test_times_that_run_backwards_stand_still_instead_however_cut(cut):
    gate = Impossible([])
    t_ns = np.array([10, 20, 15, 18, 30])
    block = Block("m", t_ns, np.zeros((5, 1)), np.zeros((5, 1), np.uint8))
    parts = [gate.without(part) for part in (block.rows(0, cut), block.rows(cut, 5))]
    assert np.concatenate([part.t_ns for part in parts]).tolist() == [10, 20, 20, 20, 30]
    (note,) = gate.notes()
    assert note.startswith("2 reading(s) of m bear a time before")


def test_thousands_of_taps_and_commands_are_judged_in_moments(trace):
    """Catches what grows with the square of the marks: it took minutes."""
    fan = trace.Fan()
    marks = [trace.tap(at / 200.0) for at in range(4000)]
    marks += [trace.speed(at / 200.0, 1 + at % 2) for at in range(4000)]
    review = fan.review([*marks, *fan.items()])
    assert len(review.taps.taps) == 4000
    strictly(review)
