"""However the readings are cut, what no single one shows is the same."""

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from meterlog.analysis.inferred import Unseen, pulse_watch, short_opens
from meterlog.model import EventKind

few = settings(
    max_examples=6,
    deadline=None,
    suppress_health_check=[HealthCheck.function_scoped_fixture],
)


def told(bench, instruments, events, blocks, judged):
    follower = bench.follow(Unseen(instruments, bench.limits()), instruments, [*events, *blocks])
    return follower.found(judged)


def dips_and_blanks():
    """300 readings with dips, a restart, a zero while ranging and a real dropout."""
    rng = np.random.default_rng(8)
    amps = np.round((10.0 + rng.normal(0.0, 0.03, 300)) / 0.01) * 0.01
    amps[150:] += 3.0
    amps[[40, 75, 110, 230]] = [8.0, 7.0, 11.5, 9.0]
    amps[149] = 0.0
    amps[260:264] = 0.0
    volts = np.full(300, 12.2) + rng.normal(0.0, 0.01, 300)
    return 0.4 * (1.0 + np.arange(300)), [amps, volts]


@few
@given(cuts=st.lists(st.integers(1, 299), max_size=12))
def test_dips_blanks_and_rhythm_do_not_depend_on_the_cuts(bench, cuts):
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(short_opens, "PAGE", 64)
        t, columns = dips_and_blanks()
        instruments = [bench.instrument(0.4, 0.3, ("current", "feed"))]
        events = [bench.speed(0.0, 4), bench.event(60.2, EventKind.RANGE, "range 60 A", "meter")]
        whole = bench.block(t, columns)
        judged = bench.judged(instruments, [*events, whole])
        one = told(bench, instruments, events, [whole], judged)
        assert len(one.inferred) >= 3
        assert any("measuring range" in note for note in one.notes)
        assert told(bench, instruments, events, bench.parts_of(whole, cuts), judged) == one


@few
@given(cuts=st.lists(st.integers(1, 2399), max_size=12))
def test_pulses_do_not_depend_on_the_cuts(bench, cuts):
    t = np.arange(2400) * 0.002
    on = (t * 21.7) % 1.0 < 0.4
    on[1000:1300] = True
    columns = [np.where(on, 10.0, 0.0), np.where(on, 12.0, 0.0)]
    instruments = [bench.instrument(0.002, 0.0, ("current", "feed"))]
    whole, events = bench.block(t, columns), [bench.speed(0.0, 2)]
    judged = bench.judged(instruments, [*events, whole])
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(pulse_watch, "PAGE_S", 0.8)
        one = told(bench, instruments, events, [whole], judged)
        assert one.pulsed
        assert told(bench, instruments, events, bench.parts_of(whole, cuts), judged) == one


@few
@given(cuts=st.lists(st.integers(1, 299), max_size=8), late=st.integers(0, 40))
def test_two_meters_may_come_in_any_sizes(bench, cuts, late):
    t, columns = dips_and_blanks()
    current, volts = (bench.instrument(0.4, 0.3, (role,)) for role in ("current", "feed"))
    volts = type(volts)("volts", "test", "-", volts.channels)
    amps_block = bench.block(t, columns[:1])
    volts_block = bench.block(t + 0.05, columns[1:], "volts")
    events, instruments = [bench.speed(0.0, 4)], [current, volts]
    judged = bench.judged(instruments, [*events, amps_block, volts_block])
    one = told(bench, instruments, events, [amps_block, volts_block], judged)
    assert len(one.inferred) >= 3
    mixed = [*bench.parts_of(amps_block, cuts), *bench.parts_of(volts_block, [late * 5, *cuts])]
    assert told(bench, instruments, events, mixed, judged) == one
