"""Trace: the true current and voltages of a story at any instant."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from circuit import Circuit, Line, State
from pulses import averages, mean_line, within_period

OFF_TAU_S = 1e-4
"""A contact that opens under current arcs about so long."""
_ALWAYS_OPEN = (State.MOTOR_OPEN, State.FEED_OPEN, State.GROUND_OPEN)


@dataclass(frozen=True)
class Segment:
    """A stretch in which nothing is switched: from ``start`` with motor speed ``w0`` (rad/s)."""

    start: float
    state: State
    speed: int
    battery: float
    line: Line | None
    mean: Line | None
    w0: float
    fresh: bool
    """No current flowed before: it has to rise first."""
    left_a: float = 0.0
    """What still flowed when the circuit opened."""


@dataclass(frozen=True)
class Switch:
    """From ``at`` seconds on: commanded speed, state of the contacts, battery volts, warmth."""

    at: float
    speed: int
    state: State
    battery: float
    warmth: float


def _segments(circuit: Circuit, switches: list[Switch], end: float) -> list[Segment]:
    fan, w, flowing, left = circuit.fan, 0.0, False, 0.0
    result: list[Segment] = []
    # A fan that already runs when the recording begins has run for a while.
    if switches[0].speed and switches[0].state is State.DRIVEN:
        first = switches[0]
        line = circuit.line(first.speed, first.battery, first.warmth)
        mean = mean_line(circuit, line) if line.duty < 1.0 else line
        w, flowing = float(fan.driven(0.0, mean.volts, mean.ohms, np.array(60.0))), True
    for index, switch in enumerate(switches):
        until = switches[index + 1].at if index + 1 < len(switches) else end
        at = switch.at
        if switch.speed and switch.state is State.DRIVEN:
            line = circuit.line(switch.speed, switch.battery, switch.warmth)
            mean = mean_line(circuit, line) if line.duty < 1.0 else line
            if fan.emf * w > mean.volts:
                wait = fan.coast_s(w, mean.volts / fan.emf)
                free = Segment(
                    at,
                    State.FREE,
                    switch.speed,
                    switch.battery,
                    None,
                    None,
                    w,
                    fresh=False,
                    left_a=left,
                )
                result.append(free)
                w = float(fan.coasting(w, np.array(min(wait, until - at))))
                at, flowing, left = at + wait, False, 0.0
                if at >= until:
                    continue
            result.append(
                Segment(
                    at, State.DRIVEN, switch.speed, switch.battery, line, mean, w, fresh=not flowing
                )
            )
            w = float(fan.driven(w, mean.volts, mean.ohms, np.array(until - at)))
            flowing, left = True, (mean.volts - fan.emf * w) / mean.ohms
            continue
        state = switch.state if switch.speed else State.FREE
        result.append(
            Segment(
                at, state, switch.speed, switch.battery, None, None, w, fresh=False, left_a=left
            )
        )
        w = float(fan.coasting(w, np.array(until - at)))
        flowing, left = False, 0.0
    return result


class Trace:
    """What really flowed.

    Parameters
    ----------
    circuit : Circuit
    switches : list of Switch
        In time order, the first at 0.
    end : float, seconds
    bars, ripple : int, float
        Commutator ripple: humps a turn and size as a part of the current.
    """

    def __init__(
        self,
        circuit: Circuit,
        switches: list[Switch],
        end: float,
        bars: int = 0,
        ripple: float = 0.0,
    ) -> None:
        self.circuit = circuit
        self.segments = _segments(circuit, switches, end)
        self.starts = np.array([one.start for one in self.segments])
        self.bars, self.ripple = bars, ripple

    def longest_coast_s(self) -> float:
        """Give the longest time a turning motor was asked to run and drew nothing yet."""
        longest = since = 0.0
        for one, later in pairwise(self.segments):
            since = (
                since + later.start - one.start if one.state is State.FREE and one.speed else 0.0
            )
            longest = max(longest, since)
        return longest

    def peak_a(self) -> float:
        """Give the highest current at the beginning of any stretch."""
        return float(self.at(self.starts + 0.01, instant=False)[0].max())

    def at(self, t: np.ndarray, *, instant: bool) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
        """Give amps, feed and return volts at ``t`` (any shape, seconds).

        ``instant``: with pulses and commutator ripple; otherwise their means.
        """
        shape, flat = t.shape, t.ravel()
        order = None
        if len(flat) and (np.diff(flat) < 0.0).any():
            order = np.argsort(flat, kind="stable")
            flat = flat[order]
        cuts = np.append(np.searchsorted(flat, self.starts), len(flat))
        cuts[0] = 0
        out = np.empty((3, len(flat)))
        for segment, a, b in zip(self.segments, cuts[:-1], cuts[1:], strict=True):
            if b > a:
                out[:, a:b] = self._within(segment, flat[a:b], instant=instant)
        if order is not None:
            back = np.empty_like(out)
            back[:, order] = out
            out = back
        return out[0].reshape(shape), out[1].reshape(shape), out[2].reshape(shape)

    def _within(
        self, segment: Segment, t: np.ndarray, *, instant: bool
    ) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
        fan, since = self.circuit.fan, np.maximum(t - segment.start, 0.0)
        if segment.line is None or segment.mean is None:
            own = fan.emf * fan.coasting(segment.w0, since)
            amps = segment.left_a * np.exp(-since / OFF_TAU_S)
            feed, back = self.circuit.terminals(
                segment.state, segment.speed, segment.battery, amps, own, own
            )
            return amps, feed, back
        mean = segment.mean
        w = fan.driven(segment.w0, mean.volts, mean.ohms, since)
        own = fan.emf * w
        if segment.line.duty < 1.0:
            amps, motor = self._pulsed(segment.line, own, t, instant=instant)
            feed_amps = amps * segment.line.duty
        else:
            amps = np.maximum((mean.volts - own) / mean.ohms, 0.0)
            feed_amps = amps
            motor = own + fan.brush + amps * self._armature(segment)
        if segment.fresh:
            amps = amps * (1.0 - np.exp(-since / (fan.henry / mean.ohms)))
        if instant and self.bars:
            amps = amps * (1.0 + self.ripple * np.sin(self.bars * w * t))
        feed, back = self.circuit.terminals(
            State.DRIVEN, segment.speed, segment.battery, feed_amps, motor, own
        )
        if segment.line.duty < 1.0:
            back = feed - motor
        return amps, feed, back

    def _armature(self, segment: Segment) -> float:
        return (
            self.circuit.fan.armature
            if segment.line is None
            else min(self.circuit.fan.armature * 1.1, segment.line.ohms)
        )

    def _pulsed(
        self, line: Line, own: np.ndarray, t: np.ndarray, *, instant: bool
    ) -> tuple[np.ndarray, np.ndarray]:
        if instant:
            return within_period(self.circuit, line, own, (t * self.circuit.hertz) % 1.0)
        grid = np.linspace(0.0, line.volts * 1.05, 24)
        amps, motor = averages(self.circuit, line, grid)
        return np.interp(own, grid, amps), np.interp(own, grid, motor)
