"""When a reading was taken, told from when it arrived."""

import itertools

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.acquire.times.stamping import Sending, Stamped, Stamper
from meterlog.instruments import Readings

MS = 1_000_000
S = 1_000_000_000


def rows(count: int, own: list[float] | None = None) -> Readings:
    time = None if own is None else np.array(own)
    return Readings(np.zeros((count, 1)), np.zeros((count, 1), np.uint8), time)


def times(stamped: list[Stamped]) -> list[int]:
    return [int(t) for one in stamped if one.readings is not None for t in one.t_ns]


def nothings(stamped: list[Stamped]) -> list[int]:
    return [int(t) for one in stamped if one.readings is None for t in one.t_ns]


def take(how: Sending, count: int, arrived_ns: int, asked_ns: int | None = None) -> list[int]:
    return times(Stamper(how).take(rows(count), arrived_ns, asked_ns))


def test_a_reading_is_the_middle_of_its_integration_time():
    assert take(Sending(0.02, 0.01), 1, 100 * MS) == [95 * MS]


def test_the_time_its_own_bytes_took_on_the_line_is_subtracted():
    """14 bytes at 2400 Bd, 10 bits each: 58.3 ms; a comment in between makes it no longer."""
    stamper = Stamper(Sending(0.4, byte_s=10 / 2400))
    arrived, stamps = 0, []
    for turn in range(5):
        arrived = (1000 + 400 * turn) * MS
        if turn == 3:
            stamper.heard(b"x" * 14)
        stamper.heard(b"x" * 5)
        stamper.heard(b"x" * 9)
        stamps += times(stamper.take(rows(1), arrived))
    assert [1000 * MS - stamps[0], 1400 * MS - stamps[1]] == [58_333_333] * 2
    assert 2200 * MS - stamps[3] == 2 * 58_333_333 + 1  # at most twice the usual


def test_an_answer_was_measured_before_its_first_byte_left():
    stamper = Stamper(Sending(0.2, 0.1, unasked=False, byte_s=0.001))
    stamper.heard(b"x" * 40)
    assert times(stamper.take(rows(2), 1000 * MS, 700 * MS))[-1] == 910 * MS


def test_an_answer_is_never_older_than_its_question():
    assert take(Sending(0.2, 0.1, unasked=False), 1, 120 * MS, 100 * MS) == [100 * MS]


def test_a_measured_skew_is_subtracted():
    assert take(Sending(0.2, 0.1, skew_s=0.03), 1, 300 * MS) == [220 * MS]
    assert take(Sending(0.2, unasked=False, skew_s=0.03), 1, 300 * MS, 100 * MS) == [170 * MS]


def test_a_typed_reading_has_the_time_it_was_typed_at():
    assert take(Sending(5.0, typed=True), 1, 300 * MS) == [300 * MS]


def test_a_lump_is_spread_backwards_at_the_interval():
    assert take(Sending(0.02), 3, 100 * MS) == [60 * MS, 80 * MS, 100 * MS]


def test_a_lump_too_long_for_the_time_since_the_last_is_spread_over_that_time():
    stamper = Stamper(Sending(0.02))
    stamper.take(rows(1), 100 * MS)
    assert times(stamper.take(rows(4), 120 * MS)) == [105 * MS, 110 * MS, 115 * MS, 120 * MS]


def test_nothing_is_before_the_zero():
    assert take(Sending(0.02, 0.1), 2, 10 * MS) == [0, 0]


def test_an_answer_lies_between_query_and_arrival_when_the_integration_is_unknown():
    assert take(Sending(0.2, unasked=False), 1, 300 * MS, 100 * MS) == [200 * MS]
    assert take(Sending(0.2, 0.1, unasked=False), 1, 300 * MS, 100 * MS) == [250 * MS]


def test_own_times_keep_their_distances_whatever_the_arrival():
    stamper = Stamper(Sending(0.02))
    first = stamper.take(rows(2, [5.00, 5.02]), 100 * MS)
    later = stamper.take(rows(2, [5.04, 5.06]), 190 * MS)
    assert times(first + later) == [80 * MS, 100 * MS, 120 * MS, 140 * MS]


def test_own_times_never_reach_into_the_future():
    stamper = Stamper(Sending(0.02))
    stamper.take(rows(1, [0.0]), 100 * MS)
    assert times(stamper.take(rows(1, [1.0]), 200 * MS)) == [200 * MS]


def test_an_own_clock_that_runs_over_within_a_lump_is_tied_anew():
    stamper = Stamper(Sending(0.02))
    stamped = stamper.take(rows(3, [9.98, 0.0, 0.02]), 500 * MS)
    assert times(stamped) == [460 * MS, 480 * MS, 500 * MS]
    assert times(stamper.take(rows(1, [0.05]), 600 * MS)) == [600 * MS]


# A meter that sends steadily, without a clock: 50 readings/s unless said otherwise.
PACE_MS = 20


class Steady:
    """A meter that sends every 20 ms, and what becomes of its readings."""

    def __init__(self, sending: Sending | None = None) -> None:
        self.stamper = Stamper(sending or Sending(0.02))
        self.out: list[Stamped] = []
        self.count = 0

    def arrive(self, arrived_ns: int, count: int = 1) -> list[Stamped]:
        got = self.stamper.check(arrived_ns)
        got += self.stamper.take(rows(count), arrived_ns)
        self.out += got
        self.count += count
        return got

    def punctual(self, until: int) -> None:
        """Let readings up to number ``until`` (exclusive) arrive when they were taken."""
        for number in range(self.count, until):
            self.arrive(true_ns(number))

    def finish(self) -> list[int]:
        self.out += self.stamper.gone()
        return times(self.out)


def true_ns(number: int) -> int:
    return S + number * PACE_MS * MS


@pytest.mark.parametrize("apart_ns", [0, 400_000, 3 * MS])
def test_lines_a_stalled_sender_held_back_get_their_times_back(apart_ns):
    """Half a second of lines comes at once, in one lump or one after the other."""
    meter = Steady()
    meter.punctual(100)
    burst = true_ns(125) + 3 * MS
    for number in range(100, 126):
        meter.arrive(burst + (number - 100) * apart_ns // 8)
    for number in range(126, 160):
        meter.arrive(max(true_ns(number), burst + 26 * apart_ns // 8))
    stamps = meter.finish()
    assert np.abs(np.array(stamps) - [true_ns(n) for n in range(160)]).max() <= PACE_MS * MS // 2
    assert meter.stamper.lost == 0
    assert meter.stamper.counts.mended >= 22


def test_a_reading_that_never_came_stays_a_gap():
    meter = Steady()
    meter.punctual(100)
    meter.count += 1
    waits = meter.arrive(true_ns(101))
    assert waits == []  # is it the hundredth, late, or the one after it?
    assert meter.stamper.wait_s(true_ns(101), 0.05) == pytest.approx(0.04, abs=0.001)
    told = meter.stamper.check(true_ns(101) + 41 * MS)
    assert times(told) == [true_ns(101)]
    assert meter.stamper.lost == 1


def test_after_a_gap_the_count_goes_on_without_drifting():
    meter = Steady()
    kept = [n for n in range(400) if n not in {100, 180, 181, 182, 290}]
    for number in kept:
        meter.arrive(true_ns(number))
    stamps = meter.finish()
    assert np.abs(np.array(stamps) - [true_ns(n) for n in kept]).max() <= MS
    assert meter.stamper.lost == 5


def test_readings_given_up_that_come_all_the_same_are_no_longer_counted_as_missing():
    meter = Steady()
    meter.punctual(100)
    meter.arrive(true_ns(103))
    meter.out += meter.stamper.check(true_ns(103) + 121 * MS)
    assert meter.stamper.lost == 3
    burst = true_ns(103) + 122 * MS
    for number in range(101, 200):
        meter.arrive(max(true_ns(number), burst))
    stamps = meter.finish()
    assert meter.stamper.lost == 0
    assert meter.stamper.counts.after_all > 0
    assert np.abs(np.array(stamps[110:]) - [true_ns(n) for n in range(110, 200)]).max() <= MS


def test_an_adapter_that_saves_up_half_a_second_gives_even_times():
    stamper, out, taken = Stamper(Sending(0.02)), [], 0
    true = S + np.arange(1000) * 20_300_000
    for lump in range(1, 40):
        arrived = S + lump * 500 * MS
        count = int(np.searchsorted(true, arrived)) - taken
        out += stamper.check(arrived)
        out += stamper.take(rows(count), arrived)
        taken += count
    error = np.array(times(out)) - true[:taken]
    assert np.abs(error).max() <= 30 * MS
    assert np.abs(error[500:]).max() <= 10 * MS
    assert stamper.lost == 0
    assert stamper.counts.mended == 0


def test_a_meter_that_changes_its_pace_is_followed():
    stamper, out, true = Stamper(Sending(0.25)), [], []
    now = S
    for number in range(150):
        now += (250 if number < 60 else 300) * MS
        true.append(now)
        out += stamper.check(now)
        out += stamper.take(rows(1), now)
    out += stamper.gone()
    error = np.abs(np.array(times(out)) - true)
    assert error.max() <= 250 * MS
    assert np.count_nonzero(error > 5 * MS) <= 6
    assert np.abs(np.array(times(out)[100:]) - true[100:]).max() <= 5 * MS
    assert stamper.lost <= 1


def test_in_the_usual_case_a_reading_is_given_at_once():
    meter = Steady()
    rng = np.random.default_rng(4)
    for number in range(300):
        given_now = meter.arrive(true_ns(number) + round(rng.exponential(1.0) * MS))
        assert len(times(given_now)) == 1


def test_rows_without_data_wait_and_are_dropped_when_all_came_late():
    meter = Steady()
    meter.punctual(100)
    for ms in range(250, 500, 100):
        meter.out += meter.stamper.nothing(true_ns(99) + ms * MS)
    assert nothings(meter.out) == []
    for _ in range(25):
        meter.arrive(true_ns(124) + MS)
    meter.punctual(130)
    stamps = meter.finish()
    assert nothings(meter.out) == []
    assert max(b - a for a, b in itertools.pairwise(stamps)) < 30 * MS


def test_rows_without_data_are_kept_in_order_where_readings_are_missing():
    meter = Steady()
    meter.punctual(100)
    for ms in (250, 350, 450):
        meter.out += meter.stamper.nothing(true_ns(99) + ms * MS)
    meter.count = 125
    meter.punctual(150)
    stamps = meter.finish()
    assert nothings(meter.out) == [true_ns(99) + ms * MS for ms in (250, 350, 450)]
    assert len(stamps) == 125
    assert meter.stamper.lost == 25
    everything = [int(t) for one in meter.out for t in one.t_ns]
    assert everything == sorted(everything)


def test_after_a_second_rows_without_data_are_written_and_what_comes_then_is_counted():
    meter = Steady()
    meter.punctual(100)
    for ms in range(250, 2000, 100):
        meter.out += meter.stamper.nothing(true_ns(99) + ms * MS)
    written = nothings(meter.out)
    assert written == [true_ns(99) + ms * MS for ms in range(250, 2000, 100)]
    meter.arrive(true_ns(200), 101)
    stamps = meter.finish()
    assert 90 <= meter.stamper.crowded <= 101  # the last few come just in time
    assert stamps[100] >= written[-1]
    assert stamps[-1] <= true_ns(200)


def test_a_lost_port_waits_for_nothing():
    meter = Steady()
    meter.punctual(100)
    meter.out += meter.stamper.gone()
    assert nothings(meter.stamper.nothing(true_ns(100))) == [true_ns(100)]


def test_rows_of_an_instrument_that_is_asked_give_way_to_a_slow_answer():
    """Its reading was taken before them: written first, they would push it out of its place."""
    stamper = Stamper(Sending(0.2, unasked=False))
    stamper.take(rows(1), S, S - 100 * MS)
    assert nothings(stamper.nothing(S + 700 * MS)) == []
    (slow,) = stamper.take(rows(1), S + 900 * MS, S + 100 * MS)
    assert slow.t_ns.tolist() == [S + 500 * MS]
    assert stamper.crowded == 0
    assert nothings(stamper.nothing(S + 1_901 * MS)) == [S + 1_901 * MS]


@st.composite
def journeys(draw):
    """Give arrivals of 60 to 120 steady readings after 60 punctual ones: late, lumped, lost."""
    count = draw(st.integers(60, 120))
    lost = draw(st.sets(st.integers(70, 59 + count), max_size=6))
    lengths = st.integers(1, 20)
    stalls = [(70 + 40 * place, draw(lengths)) for place in draw(st.sets(st.integers(0, 2)))]
    stalls = [(first, length) for first, length in stalls if first + length < 60 + count]
    jitter = draw(st.lists(st.integers(0, 2 * MS), min_size=60 + count, max_size=60 + count))
    arrivals = [true_ns(n) + jitter[n] for n in range(60 + count)]
    for first, length in stalls:
        for number in range(first, min(first + length, 60 + count)):
            arrivals[number] = true_ns(first + length) + jitter[first]
    arrivals = np.maximum.accumulate(arrivals).tolist()
    return [(n, arrivals[n]) for n in range(60 + count) if n not in lost], lost, stalls


def run(arrivals: list[tuple[int, int]], cut: int = 1) -> tuple[Stamper, list[Stamped]]:
    """Let readings arrive; those of one instant together, in parts of at most ``cut``."""
    stamper, out = Stamper(Sending(0.02)), []
    for arrived, group in itertools.groupby(arrivals, key=lambda one: one[1]):
        out += stamper.check(arrived)
        count = len(list(group))
        while count:
            part = min(count, cut)
            out += stamper.take(rows(part), arrived)
            count -= part
    return stamper, out + stamper.gone()


@settings(max_examples=30)
@given(journeys())
def test_whatever_happens_times_are_in_order_and_never_after_the_arrival(journey):
    arrivals, lost, stalls = journey
    stamper, out = run(arrivals)
    stamps = times(out)
    assert len(stamps) == len(arrivals)
    assert stamps == sorted(stamps)
    assert all(t <= arrived for t, (_, arrived) in zip(stamps, arrivals, strict=True))
    assert stamper.lost >= 0
    if not lost:
        # The count tells it all.
        error = [abs(t - true_ns(n)) for t, (n, _) in zip(stamps, arrivals, strict=True)]
        assert max(error[30:]) <= PACE_MS * MS // 2
        assert stamper.lost == 0
    elif not stalls:
        error = [abs(t - true_ns(n)) for t, (n, _) in zip(stamps, arrivals, strict=True)]
        assert max(error[30:]) <= PACE_MS * MS // 2
        # Those lost at the very end leave no gap.
        inside = [n for n in lost if n < arrivals[-1][0]]
        assert stamper.lost == len(inside)


@settings(max_examples=25)
@given(journeys(), st.integers(1, 7))
def test_however_a_lump_is_cut_within_its_instant_the_times_are_the_same(journey, cut):
    arrivals, _, _ = journey
    whole = run(arrivals, 1_000)
    parts = run(arrivals, cut)
    assert times(whole[1]) == times(parts[1])
    assert whole[0].lost == parts[0].lost


@given(
    lumps=st.lists(st.tuples(st.integers(0, 10**9), st.integers(1, 50)), min_size=1, max_size=20),
    interval_s=st.floats(1e-6, 10.0),
    integration_s=st.floats(0.0, 1.0),
    sample_s=st.sampled_from([0.0, 0.0, 1e-4, 1e-2]),
    unasked=st.booleans(),
    silent=st.sets(st.integers(0, 20), max_size=5),
    own=st.none() | st.lists(st.floats(-1e6, 1e6), min_size=1, max_size=60),
)
def test_time_never_runs_backwards_and_never_beyond_the_arrival(
    lumps, interval_s, integration_s, sample_s, unasked, silent, own
):
    sending = Sending(interval_s, integration_s, unasked=unasked, sample_s=sample_s)
    stamper, out = Stamper(sending), []
    arrived, used, arrivals = 0, 0, []
    for number, (gap, count) in enumerate(lumps):
        arrived += gap
        if number in silent:
            out += stamper.nothing(arrived)
        out += stamper.check(arrived)
        own_s = None if own is None else [own[(used + row) % len(own)] for row in range(count)]
        used += count
        arrivals += [arrived] * count
        out += stamper.take(rows(count, own_s), arrived)
    out += stamper.gone()
    stamps = times(out)
    assert len(stamps) == len(arrivals)
    assert all(t <= at for t, at in zip(stamps, arrivals, strict=True))
    everything = [int(t) for one in out for t in one.t_ns]
    assert everything == sorted(everything)
    assert everything[0] >= 0
