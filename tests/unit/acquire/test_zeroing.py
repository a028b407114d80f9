"""A zero is taken only of what can be one, and told with what it was made of."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import numpy as np
import pytest

from meterlog.acquire import ZeroTaking, bounds_when_asked
from meterlog.acquire.clock import Clock
from meterlog.acquire.scaling import Scaling
from meterlog.acquire.zeroing import MOST_OFFSET_A, ZeroBounds, Zeroing
from meterlog.instruments import Readings
from meterlog.model import Accuracy, Channel, EventKind, Flag, Quantity, Range, Role
from meterlog.model.zero_text import parse_zero

FINE = Accuracy(1.0, 2.0, 0.01)
AMPS = Channel("current", Quantity.CURRENT, Role.MOTOR_CURRENT, offset=0.5, accuracy=FINE)
STARTED = datetime(2030, 1, 2, tzinfo=UTC)


class Hand(Clock):
    """A clock that stands where it is put."""

    at_ns = 0

    def now_ns(self):
        return Hand.at_ns


class Bench:
    """A channel under test: raw values in, a zero or a refusal out."""

    def __init__(self, channel=AMPS, seconds=3.0, bounds=None):
        Hand.at_ns = 0
        self.scaling = Scaling("m", (channel,))
        self.zeroing = Zeroing("m", self.scaling, Hand(0, STARTED, 0))
        self.taking = ZeroTaking("m", 0, channel, seconds, bounds)
        assert self.zeroing.ask(self.taking)

    def hear(self, values, flags=None):
        table = np.asarray(values, float).reshape(-1, 1)
        marks = np.zeros(table.shape, np.uint8)
        if flags is not None:
            marks[:, 0] = flags
        raw = Readings(np.asfortranarray(table), np.asfortranarray(marks))
        block = self.scaling.block(raw, np.zeros(len(table), np.int64))
        self.zeroing.heard(block)
        return block

    def run(self, *lots, flags=None):
        self.zeroing.tick()
        for lot in lots:
            self.hear(lot, flags)
        Hand.at_ns = round(self.taking.seconds * 1e9)
        return self.zeroing.tick()


def test_the_mean_scatter_and_count_of_what_was_read_become_the_zero():
    bench = Bench()
    event = bench.run([0.1, 0.2], [0.3, 0.2])
    zero = bench.taking.zero
    assert zero.offset == pytest.approx(0.2)
    # sample standard deviation by hand: sqrt((0.01 + 0 + 0.01 + 0) / 3)
    assert zero.scatter == pytest.approx((0.02 / 3) ** 0.5)
    assert zero.count == 4
    assert zero.taken_utc == STARTED + timedelta(seconds=3)
    assert (event.kind, event.source, event.t_ns) == (EventKind.ZERO, "m", 3_000_000_000)
    assert parse_zero(event.value) == ("current", replace(zero, taken_utc=None))


def test_it_is_in_all_and_not_beside_the_offset_before_and_holds_from_the_next_block_on():
    bench = Bench()
    bench.run([0.2, 0.2, 0.2])
    block = bench.hear([0.2, 5.2])
    assert block.values[:, 0].tolist() == pytest.approx([0.0, 5.0])
    assert block.flags[:, 0].tolist() == [int(Flag.ZEROED)] * 2


def test_nothing_is_decided_before_its_time():
    bench = Bench()
    bench.zeroing.tick()
    bench.hear([0.1, 0.1, 0.1])
    Hand.at_ns = 2_900_000_000
    assert bench.zeroing.tick() is None
    assert not bench.taking.done


@pytest.mark.parametrize(
    ("lots", "flags", "words"),
    [
        ([], None, "Is the meter on"),
        ([[0.1, 0.1]], None, "3 are needed"),
        ([[np.nan] * 9], int(Flag.NO_DATA), "0 readings"),
        ([[np.nan] * 9], int(Flag.OVERLOAD), "overload"),
        ([[0.1] * 9], int(Flag.RANGE_CHANGED), "0 readings"),
        ([[0.0, 0.0, 4.0, 0.0]], None, "is the fan running"),
        ([[2.1] * 9], None, "a current is flowing"),
        ([[-2.1] * 9], None, "a current is flowing"),
    ],
)
def test_what_is_no_zero_is_refused_and_nothing_changes(lots, flags, words):
    bench = Bench()
    assert bench.run(*lots, flags=flags) is None
    assert bench.taking.done
    assert bench.taking.zero is None
    assert words in bench.taking.refused
    assert words in str(bench.taking)
    assert bench.scaling.offset(0) == 0.5
    assert bench.zeroing.ask(ZeroTaking("m", 0, AMPS, 3.0)), "it may be tried again at once"


def test_a_noisy_clamp_at_rest_is_still_a_zero():
    noise = np.random.default_rng(1).normal(0.4, 0.2, 60)
    bench = Bench()
    assert bench.run(noise) is not None


def test_a_second_one_waits_for_the_first():
    bench = Bench()
    assert not bench.zeroing.ask(ZeroTaking("m", 0, AMPS, 3.0))


def test_a_recording_that_ends_first_says_so():
    bench = Bench()
    bench.zeroing.tick()
    bench.zeroing.stop()
    assert bench.taking.wait(0.0)
    assert "ended first" in bench.taking.refused


def test_the_range_it_was_taken_on_is_the_narrowest_that_shows_it():
    ranges = (Range(0.1, FINE), Range(60.0, FINE), Range(600.0, FINE))
    bench = Bench(replace(AMPS, ranges=ranges))
    bench.run([0.2, 0.2, 0.2])
    assert bench.taking.zero.range_top == 60.0


def test_the_widest_range_bounds_it_too():
    narrow = replace(AMPS, ranges=(Range(10.0, FINE),))
    assert ZeroBounds.of(narrow).offset == pytest.approx(0.5)
    wide = replace(AMPS, ranges=(Range(600.0, FINE),))
    assert ZeroBounds.of(wide).offset == MOST_OFFSET_A


def test_while_a_speed_is_commanded_a_small_current_is_none():
    assert bounds_when_asked(AMPS, 0, 0.3).offset == MOST_OFFSET_A
    bounds = bounds_when_asked(AMPS, 2, 0.3)
    bench = Bench(bounds=bounds)
    assert bench.run([0.9, 0.9, 0.9]) is None
    assert "speed 2 is commanded" in bench.taking.refused
    assert Bench(bounds=bounds).run([0.2, 0.2, 0.2]) is not None


def test_leads_put_together_have_a_zero_in_volts():
    volts = Channel("drop", Quantity.VOLTAGE, Role.DROP, accuracy=Accuracy(0.5, 2, 0.001))
    assert Bench(volts).run([0.003, 0.002, 0.003]) is not None
    refused = Bench(volts)
    refused.run([1.2, 1.2, 1.2])
    assert "leads are on something" in refused.taking.refused
