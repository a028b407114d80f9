"""A live review that was asked for all the time says what one says that is asked for once."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.analysis.lost_load import LostLoad
from meterlog.analysis.pieces import Piece
from meterlog.analysis.settled_runs import SettledRun, SettledRuns
from meterlog.analysis.timeline import SpeedChange
from meterlog.model import DoubtKind, Instrument, SpanKind

SOURCE_OHM = 0.05
LEVELS = {1: (6.7, 3.6), 4: (0.16, 13.6)}
"""Return and current of a speed."""
kinds = st.sampled_from(["run", "run", "open", "quiet clamp", "no answer"])
plans = st.lists(
    st.tuples(kinds, st.sampled_from([1, 4]), st.floats(0.6, 4.0)), min_size=4, max_size=9
)


def readings(plan, interval):
    """Give rows of feed, return and current, and the commands, of a fan behind 50 milliohm."""
    rows, commands, now = [], [], None
    for kind, speed, length in plan:
        if speed != now:
            commands.append((len(rows) * interval, speed))
            now = speed
        back, amps = LEVELS[speed]
        feed = 12.6 - SOURCE_OHM * amps
        row = {
            "run": (feed, back, amps),
            "open": (12.6, 0.02, 0.0),
            "quiet clamp": (feed, back, 0.0),
            "no answer": (np.nan, np.nan, np.nan),
        }[kind]
        rows += [row] * max(round(length / interval), 1)
    noise = np.random.default_rng(3).normal(0.0, 0.004, (len(rows), 3))
    return np.array(rows) + noise, commands


def fed(trace, plan, interval, look_every):
    """Give the last live review, and how many times it was asked for."""
    values, commands = readings(plan, interval)
    t_ns = (np.arange(len(values)) * round(interval * 1e9)).astype(np.int64)
    meter = Instrument("meter", "test", "-", trace.channels(interval))
    reviewer = trace.Reviewer([meter], trace.limits())
    block, waiting = trace.block_of(t_ns, values), list(commands)
    for count, start in enumerate(range(0, len(values), 4)):
        part = block.rows(start, min(start + 4, len(values)))
        while waiting and waiting[0][0] * 1e9 <= part.t_ns[-1]:
            reviewer.feed(trace.speed(*waiting.pop(0)))
        reviewer.feed(part)
        if look_every and count % look_every == 0:
            reviewer.live()
    return reviewer.live()


def without_probes(review):
    """Leave out what a live review looks for once a second only."""
    slipped = [one for one in review.doubts if one.kind is DoubtKind.PROBE]
    doubts = tuple(one for one in review.doubts if one not in slipped)
    notes = tuple(one for one in review.notes if one not in [doubt.text for doubt in slipped])
    return replace(review, doubts=doubts, notes=notes)


@settings(max_examples=8, deadline=None)
@given(plan=plans, look_every=st.sampled_from([1, 2, 7]))
def test_looking_often_gives_what_looking_once_gives(trace, plan, look_every):
    """Catches an answer kept although a later command taught another resistance of the source."""
    often = fed(trace, plan, 0.05, look_every)
    assert without_probes(often) == without_probes(fed(trace, plan, 0.05, 0))


def test_a_clamp_that_went_quiet_is_still_told_after_later_commands(trace):
    """Catches a run that is left out as soon as the resistance is known a little better."""
    plan = [("run", 1, 4.0), ("run", 4, 4.0), ("quiet clamp", 4, 2.0)]
    plan += [("run", 4, 3.0), ("run", 1, 4.0), ("run", 4, 4.0)]
    review = fed(trace, plan, 0.05, 1)
    assert DoubtKind.CLAMP_QUIET in [doubt.kind for doubt in review.doubts]
    assert SpanKind.DEAD not in [span.kind for span in review.spans]


def piece(start, end, kind=SpanKind.DEAD):
    return Piece(kind, start, end, 0, 0, 4)


def test_only_runs_that_a_resistance_makes_a_difference_to_are_asked_again():
    pieces = [piece(at, at + 1) for at in range(6)]
    known: SettledRuns[str] = SettledRuns()
    known.resume(pieces, [], "first", 0.01)
    known.settle(pieces, [], [SettledRun(0, 1, 0.02), SettledRun(2, 3, 0.5)], {0: "why"})
    assert known.resume(pieces, [], "first", 0.01) == (3, {0: "why"}, [])
    assert known.resume(pieces, [], "second", 0.03) == (3, {}, [SettledRun(0, 1, 0.02)])


def test_a_command_among_what_is_settled_makes_all_to_be_asked_afresh():
    pieces = [piece(at, at + 1) for at in range(6)]
    known: SettledRuns[str] = SettledRuns()
    known.resume(pieces, [], "first", 0.01)
    known.settle(pieces, [], [SettledRun(2, 3, 0.5)], {})
    assert known.resume(pieces, [SpeedChange(9, 1)], "first", 0.01)[0] == 3
    assert known.resume(pieces, [SpeedChange(2, 1)], "first", 0.01)[0] == 0


def test_a_run_at_the_end_of_the_pieces_is_not_settled():
    pieces = [piece(at, at + 1) for at in range(3)]
    known: SettledRuns[str] = SettledRuns()
    known.settle(pieces, [], [SettledRun(2, 3, 0.5)], {})
    assert known.resume([*pieces, piece(3, 4)], [], None, 0.01)[0] == 0


@given(
    lost=st.floats(0.5, 60.0),
    rise=st.floats(-2.0, 2.0),
    error=st.floats(0.0, 0.1),
    ohm=st.floats(0.0005, 0.5),
)
def test_a_lost_load_is_denied_from_one_resistance_on(lost, rise, error, ohm):
    """Catches a threshold on the wrong side: a run would not be asked when it must be."""
    edge = LostLoad(lost, rise, error)
    threshold = edge.from_ohm(0.03)
    if ohm != pytest.approx(threshold, rel=1e-9):
        assert edge.denied(ohm, 0.03) == (ohm >= threshold)
