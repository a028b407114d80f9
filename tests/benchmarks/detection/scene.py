"""Scene: one run put together - meters, limits, what the program gets in which order, the truth."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from enum import StrEnum

import numpy as np
from circuit import Circuit, draw_circuit
from fan import draw_fan
from meter import Meter, Read, read
from outfit import Wish, draw_meters
from story import LAG_S, LENGTHS_S, Dropout, Story, any_lengths, draw_story
from true_trace import Trace

from meterlog.model import Block, Event, EventKind, Limits, SpeedLimits

INRUSH_S = 2.5
GOLDEN = (5.0**0.5 - 1.0) / 2.0
ROWS = 150_000
"""A run of a fast meter is cut short to about so many readings."""


@dataclass(frozen=True)
class Scene:
    """Everything about one run.

    ``near``: its current limits were laid close to the true currents, to see whether the stated
    probability holds; otherwise they are honest, and a sound fan is within them.
    """

    seed: int
    circuit: Circuit
    story: Story
    trace: Trace
    meters: tuple[Meter, ...]
    reads: tuple[Read, ...]
    limits: Limits
    commanded: bool
    near: bool
    chunk_s: float

    @property
    def amps(self) -> tuple[Meter, Read]:
        """The meter that reads the current, and its readings."""
        return self.meters[0], self.reads[0]

    @property
    def dropouts(self) -> list[Dropout]:
        """What really happened."""
        return self.story.dropouts

    def columns(self) -> set[str]:
        """Give the names of all that is read."""
        return {name for meter in self.meters for name in meter.columns}

    def events(self) -> list[Event]:
        """Give the technician's marks."""
        marks = [Event(round(at * 1e9), EventKind.TAP) for at in self.story.taps]
        if self.commanded:
            marks += [
                Event(round(one.marked * 1e9), EventKind.SPEED, str(one.speed))
                for one in self.story.commands
            ]
        return sorted(marks, key=lambda event: event.t_ns)

    def items(self) -> Iterator[Block | Event]:
        """Give Blocks and Events as they would come: cut by time, events a little late."""
        rng = np.random.default_rng((self.seed, 7))
        waiting: list[tuple[float, int, Block | Event]] = [
            (event.t_ns / 1e9 + float(rng.uniform(0.0, 0.2)), 0, event) for event in self.events()
        ]
        for order, one in enumerate(self.reads, 1):
            cuts = np.arange(0.0, self.story.length + self.chunk_s, self.chunk_s)
            rows = np.searchsorted(one.block.t_ns, np.round(cuts * 1e9)).tolist()
            rows[-1] = len(one.block)
            for at, a, b in zip(cuts[1:].tolist(), rows[:-1], rows[1:], strict=True):
                if b > a:
                    waiting.append((at, order, one.block.rows(a, b)))
        for _, _, item in sorted(waiting, key=lambda entry: entry[:2]):
            yield item


def _length(rng: np.random.Generator, meters_hz: float) -> float:
    """Give how long a run lasts: 10 to 90 s, less where there would be too many readings."""
    drawn = float(rng.uniform(12.0, 90.0))
    return max(min(drawn, ROWS / meters_hz), 10.0)


def steady_ranges(trace: Trace, story: Story) -> dict[int, tuple[float, float]]:
    """Give the least and most current that truly flowed at each speed while it is judged."""
    grid = np.arange(0.0, story.length, 0.02)
    amps = trace.at(grid, instant=False)[0]
    judged = np.ones(len(grid), np.bool_)
    for one in story.dropouts:
        judged &= (grid < one.start - 0.02) | (grid > one.end + INRUSH_S)
    found: dict[int, tuple[float, float]] = {}
    for index, command in enumerate(story.commands):
        later = story.commands[index + 1 :]
        until = min(later[0].at, later[0].marked) if later else story.length
        part = amps[judged & (grid >= command.marked + INRUSH_S) & (grid < until)]
        if len(part) > 3 and command.speed:
            low, high = found.get(command.speed, (np.inf, -np.inf))
            found[command.speed] = (min(low, float(part.min())), max(high, float(part.max())))
    return found


def _limits(
    rng: np.random.Generator,
    trace: Trace,
    story: Story,
    meter: Meter,
    *,
    near: bool,
    commanded: bool,
    dwell: float,
) -> Limits:
    stated = meter.accuracy["current"]
    fixed = stated.digits * stated.resolution + stated.floor
    shaky = meter.noise["current"] + meter.slow_noise["current"]
    drift = abs(meter.drift_a_per_s) * story.length
    speeds: dict[int, SpeedLimits] = {}
    top = 0.0
    for speed, (low, high) in steady_ranges(trace, story).items():
        top = max(top, high)
        if near:
            middle = (low + high) / 2.0
            limit = middle + float(rng.uniform(-1.5, 1.5)) * stated.half_width(middle)
            speeds[speed] = (
                SpeedLimits(None, limit) if rng.random() < 0.5 else SpeedLimits(limit, None)
            )
        else:
            margin = float(rng.uniform(0.08, 0.3))
            speeds[speed] = SpeedLimits(low * (1.0 - margin), high * (1.0 + margin))
    return Limits(
        name="invented",
        supply_present_v=9.5,
        open_current_a=max(0.3, round(fixed + drift + 5.0 * shaky + 0.03, 2)),
        locked_current_a=max(40.0, 2.2 * top, 0.0 if commanded else 1.1 * trace.peak_a()),
        inrush_window_s=INRUSH_S,
        min_dwell_s=dwell,
        command_lag_s=LAG_S,
        coast_s=max(2.0, 1.2 * trace.longest_coast_s()),
        speeds=speeds,
    )


def _dwell(rng: np.random.Generator, rate: float, pulse_hz: float) -> float:
    """Give the dwell: the usual one, or a shorter one for a fast meter on an unchopped feed."""
    if rate < 500.0 or pulse_hz > 0.0 or rng.random() < 0.5:
        return 0.04
    return float(rng.choice((0.01, 0.002) if rate > 4000.0 else (0.02, 0.01)))


class Sort(StrEnum):
    """What a run is for."""

    MIXED = "everything"
    SOUND = "a sound fan and a slow meter, to count false alarms"
    CLOSE = (
        "limits close to the true currents and dropouts hardly to be seen, to hold probabilities"
    )


def _dropout_lengths(
    rng: np.random.Generator, sort: Sort, meter: Meter, dwell: float
) -> list[float]:
    if sort is Sort.SOUND:
        return []
    if sort is Sort.MIXED:
        return [] if rng.random() < 0.3 else any_lengths(rng, int(rng.integers(1, 7)))
    low = meter.window + dwell - meter.interval
    high = meter.window + dwell + 2.0 * meter.interval
    some = [one for one in LENGTHS_S if low < one < high]
    return rng.choice(some, 5).tolist() if some else []


_WISHES = {
    Sort.MIXED: Wish(),
    Sort.SOUND: Wish(slowest=2.0, fastest=10.0),
    Sort.CLOSE: Wish(slowest=2.0, fastest=500.0, hazards=False),
}


def _spread_evenly(meters: tuple[Meter, ...], seed: int) -> tuple[Meter, ...]:
    """Give the current's error of run after run evenly over the statement.

    All steps of a run share it, so that drawn at random it alone makes the part of steps within U
    vary by some per cent from one hundred runs to the next. Source: additive recurrence by the
    golden ratio, a low-discrepancy sequence; from memory.
    """
    error = meters[0].error | {"current": 2.0 * (seed * GOLDEN % 1.0) - 1.0}
    return replace(meters[0], error=error), *meters[1:]


def make(seed: int, sort: Sort = Sort.MIXED) -> Scene:
    """Draw the run of ``seed``."""
    # A stream for each, so that one more draw here does not change everything there.
    who, with_what, what, limit, told = (np.random.default_rng((seed, k)) for k in range(5))
    fan = draw_fan(who)
    circuit = draw_circuit(who, fan)
    pulse_hz = circuit.hertz if circuit.pulsed else 0.0
    meters = draw_meters(with_what, _WISHES[sort], 60.0, pulse_hz)
    fastest = 1.0 / min(meter.interval for meter in meters)
    length = _length(what, fastest) if sort is Sort.MIXED else 120.0
    dwell = _dwell(limit, 1.0 / meters[0].interval, pulse_hz)
    # Closer together than this they are one to such a meter.
    apart = 3.0 * max(meter.interval for meter in meters) + meters[0].window + dwell + 0.1
    near = sort is Sort.CLOSE
    if near:
        meters = _spread_evenly(meters, seed)
    lengths = _dropout_lengths(what, sort, meters[0], dwell)
    story = draw_story(what, length, lengths, apart, calm=near)
    bars = 0 if who.random() < 0.3 else int(who.choice((8, 10, 12, 14, 21)))
    trace = Trace(circuit, story.switches(), length, bars, float(who.uniform(0.01, 0.05)))
    commanded = near or bool(told.random() > 0.08)
    limits = _limits(limit, trace, story, meters[0], near=near, commanded=commanded, dwell=dwell)
    return Scene(
        seed=seed,
        circuit=circuit,
        story=story,
        trace=trace,
        meters=meters,
        reads=tuple(
            read(np.random.default_rng((seed, 10 + k)), meter, trace, length)
            for k, meter in enumerate(meters)
        ),
        limits=limits,
        commanded=commanded,
        near=near,
        chunk_s=float(np.exp(told.uniform(np.log(0.15), np.log(8.0)))),
    )
