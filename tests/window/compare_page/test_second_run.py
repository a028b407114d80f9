"""A second run behind the one on show: laid on it, and what is drawn of it."""

import numpy as np
import pytest

from meterlog.evidence.across_motor import AcrossMotor
from meterlog.evidence.trace_store import TraceStore
from meterlog.model import Block, Channel, Event, EventKind, Instrument, Quantity, Role
from meterlog.recording import Recording
from meterlog.window.long_work import LongWork
from meterlog.window.second_run import SecondRun
from meterlog.window.shown import Shown

SECOND = 1_000_000_000


@pytest.fixture(scope="module")
def second(worn):
    return SecondRun.load(worn)


def _shown(folder):
    recording = Recording.open(folder)
    traces = TraceStore(recording.about.instruments)
    for one in recording.about.instruments:
        for block in recording.blocks(one.key):
            traces.take(block)
    return Shown(recording.about, traces, events=recording.events)


def test_it_is_read_in_a_thread_with_its_progress(worn):
    work = LongWork("second")
    assert work.begin(lambda progress: SecondRun.load(worn, progress))
    work.wait()
    made, trouble = work.fetch()
    assert trouble == ""
    assert work.part == 1.0
    assert made.mark == "SIMULATED"
    assert made.speeds() == (1, 2)
    assert made.end_ns == pytest.approx(13.95 * SECOND, abs=0.1 * SECOND)


def test_what_holds_no_recording_is_told(tmp_path):
    work = LongWork("second")
    work.begin(lambda progress: SecondRun.load(tmp_path, progress))
    work.wait()
    made, trouble = work.fetch()
    assert made is None
    assert str(tmp_path) in trouble


@pytest.mark.parametrize(("speed", "own_s", "on_s"), [(None, 2, 1), (1, 2, 1), (2, 8, 7)])
def test_the_same_command_of_both_lies_at_one_instant(second, healthy, speed, own_s, on_s):
    laid = second.laid_on(_shown(healthy), speed)
    assert laid.shift_ns == (on_s - own_s) * SECOND
    t_ns, amps = laid.curve(Quantity.CURRENT, 0, 20 * SECOND, 4000)
    running = t_ns[np.flatnonzero(np.abs(amps) > 1.0)[0]]
    assert running == pytest.approx((2 + on_s - own_s) * SECOND, abs=0.06 * SECOND)


def test_a_speed_that_one_of_them_never_ran_lays_nothing(second, healthy):
    assert second.laid_on(_shown(healthy), 5) is None


def test_without_commands_the_first_rise_of_the_current_counts(second, recorded, tmp_path):
    bare = _shown(recorded(tmp_path / "bare", commanded=False))
    laid = second.laid_on(bare)
    assert laid.shift_ns == pytest.approx(0, abs=0.06 * SECOND)
    assert second.laid_on(bare, 1) is None
    other = SecondRun.load(tmp_path / "bare")
    assert other.start_ns() == pytest.approx(2 * SECOND, abs=0.06 * SECOND)


def test_a_command_that_was_withdrawn_lays_nothing(second, healthy):
    shown = _shown(healthy)
    speed = next(e for e in shown.events if e.kind is EventKind.SPEED and e.value == "1")
    from meterlog.model import withdrawal

    shown.events = (*shown.events, withdrawal(speed, shown.end_ns))
    assert second.laid_on(shown, 1) is None


def test_the_curve_holds_every_peak_and_the_gap(second):
    t_ns, amps = second.curve(Quantity.CURRENT, 0, 14 * SECOND, 60)
    assert t_ns.shape[0] <= 2 * 60 + 4
    assert np.nanmax(amps) == pytest.approx(2 * 1.33 * 9.0, rel=0.01)
    gap = (t_ns > 4.2 * SECOND) & (t_ns < 4.8 * SECOND)
    assert not np.isfinite(amps[gap]).any()
    assert second.curve(Role.BATTERY, 0, SECOND, 60) is None


def test_a_clamp_the_other_way_round_is_turned_and_no_voltage_is(second):
    from dataclasses import replace

    turned = replace(second, sign=-1.0)
    for quantity, factor in ((Quantity.CURRENT, -1.0), (Quantity.VOLTAGE, 1.0)):
        _, plain = second.curve(quantity, 0, 14 * SECOND, 4000)
        _, other = turned.curve(quantity, 0, 14 * SECOND, 4000)
        assert np.array_equal(other, factor * plain, equal_nan=True)


def _meter(key, name, role, *, typed=False):
    channel = Channel(name, Quantity.VOLTAGE, role, interval_s=0.1)
    return Instrument(key, key, "invented", (channel,), typed=typed)


def _block(key, t_s, volts):
    t_ns = np.round(np.asarray(t_s) * 1e9).astype(np.int64)
    values = np.asarray(volts, dtype=np.float64)[:, None]
    return Block(key, t_ns, values, np.zeros(values.shape, np.uint8))


def test_feed_and_return_of_two_meters_are_joined_but_never_across_a_silence():
    feed = _meter("up", "feed", Role.MOTOR_FEED)
    back = _meter("down", "return", Role.MOTOR_RETURN)
    across = AcrossMotor((feed, back))
    assert [one.key for one in across.in_order] == ["down", "up"]
    across.take(_block("down", [0.05, 0.15, 0.25, 1.25, 1.35], [4.0, 5.0, 6.0, 6.0, 6.0]))
    across.take(_block("up", [0.0, 0.1, 0.2, 0.8, 1.3], [12.0, 12.0, 12.0, 12.0, 12.0]))
    t_ns, volts = across.line.shown(0, 2 * SECOND, 400)
    at = dict(zip(np.round(t_ns / 1e9, 3).tolist(), volts.tolist(), strict=True))
    assert np.isnan(at[0.0])
    assert at[0.1] == pytest.approx(7.5)
    assert at[0.2] == pytest.approx(6.5)
    assert np.isnan(at[0.8])
    assert at[1.3] == pytest.approx(6.0)


def test_what_is_typed_at_one_of_two_meters_is_not_joined():
    feed = _meter("up", "feed", Role.MOTOR_FEED, typed=True)
    assert AcrossMotor((feed, _meter("down", "return", Role.MOTOR_RETURN))).line is None
    assert AcrossMotor((feed,)).line is None
    assert Event(0, EventKind.SPEED, "1").speed == 1
