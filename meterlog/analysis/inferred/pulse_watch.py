"""PulseWatch: stretches in which the motor's voltage is switched on and off fast."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np

from meterlog.analysis.inferred.pulses import (
    FEWEST_PERIODS,
    LEAST_SWING_PART,
    LEAST_SWING_V,
    Pulses,
    pulses,
)
from meterlog.analysis.inferred.voltage_pages import VoltagePages
from meterlog.analysis.judged import Judged
from meterlog.analysis.labels import Stretch
from meterlog.analysis.rounding import with_uncertainty
from meterlog.analysis.rows import Rows
from meterlog.model import (
    Block,
    Channel,
    Event,
    Instrument,
    PulsedFeed,
    Role,
    Step,
)

PAGE_S = 1.2
_ROWS = (64, 65_536)
MOST_KEPT = 10_000
"""Stretches that are kept."""
_FEWEST_PERIODS = 16
"""Fewer, in one stretch, may be chatter that happens to be even."""
_BEAT_S = 2.0
"""Where a pulsing controller is stated and readings without averaging jump about, losses up to this
long may be their beat with the pulses."""
_SAME = 0.1
"""Frequencies that differ by no more than this part are one stretch."""
_BUZZ_HZ = 100.0
"""Below this a relay can follow."""
_STATED = "pulsed"


class PulseWatch:
    """Follows the voltage across the motor, or the one voltage that is read there.

    Parameters
    ----------
    instruments : sequence of Instrument
    open_a : float, amperes
        Below this no current flows.
    """

    def __init__(self, instruments: Sequence[Instrument], open_a: float = 0.0) -> None:
        self._open_a = open_a
        self._volts = _volts(instruments)
        interval_s = self._volts.interval_s if self._volts else 1.0
        rows = int(np.clip(round(PAGE_S / interval_s), *_ROWS))
        self._pages = VoltagePages(rows)
        self._kept: list[Pulses] = []

    def take(self, item: Block | Event) -> None:
        """Take the next Block or Event; nothing is needed of them."""

    def take_rows(self, rows: Rows, stretches: Sequence[Stretch]) -> None:
        """Take rows; see :class:`meterlog.analysis.judged.Follower`."""
        if self._volts is None:
            return
        for page in self._pages.take(rows, stretches):
            found = pulses(page, open_a=self._open_a)
            if found is not None and len(self._kept) < MOST_KEPT:
                self._kept = _with(self._kept, found)

    def stretches(self) -> list[Pulses]:
        """Give the stretches seen so far."""
        rest = self._pages.rest()
        every = list(self._kept)
        last = None if rest is None else pulses(rest, 1, self._open_a)
        if last is not None:
            joined = _with(list(every), last)
            if len(joined) == len(every) or last.periods >= FEWEST_PERIODS:
                every = joined
        return [one for one in every if one.periods >= _FEWEST_PERIODS]

    def pulsed(self, judged: Judged) -> tuple[PulsedFeed, ...]:
        """Give the pulsed stretches in time order.

        Where the limits say that the controller pulses, and the readings don't show it, there is
        one for each step that ran: its readings are averages.

        Parameters
        ----------
        judged : Judged
        """
        seen = [_told(one) for one in self.stretches()]
        if judged.limits.controller.kind != _STATED:
            return tuple(seen)
        hidden = [
            _averaged(step, self._volts)
            for step in judged.steps
            if step.speed != 0
            and (step.steady_n or (step.n and _jumps(step, self._volts)))
            and not any(one.start_ns < step.end_ns and step.start_ns < one.end_ns for one in seen)
        ]
        return tuple(sorted([*seen, *hidden], key=lambda one: one.start_ns))


def _volts(instruments: Sequence[Instrument]) -> Channel | None:
    for role in (Role.MOTOR_RETURN, Role.MOTOR_FEED):
        for instrument in instruments:
            column = instrument.column(role)
            if column is not None and not instrument.typed:
                return instrument.channels[column]
    return None


def _with(kept: list[Pulses], found: Pulses) -> list[Pulses]:
    """Join pulses to those right before, where they are the same."""
    if kept:
        last = kept[-1]
        room_s = 3.0 * (last.period_s + last.interval_s)
        near = (found.start_ns - last.end_ns) / 1e9 <= room_s
        alike = last.resolved == found.resolved and last.speed == found.speed
        steady = abs(last.period_s / found.period_s - 1.0) <= _SAME or not found.resolved
        if near and alike and steady:
            kept[-1] = last.joined(found)
            return kept
    kept.append(found)
    return kept


def _told(one: Pulses) -> PulsedFeed:
    speed = None if one.speed < 0.0 else round(one.speed)
    average_v = one.sum_v / one.n if one.n else None
    average_a = one.sum_a / one.n_a if one.n_a else None
    on_v = one.sum_on_v / one.n_on if one.n_on else None
    frequency = u_frequency = duty = None
    within_s = 3.0 * one.period_s + 2.0 * one.interval_s
    if one.resolved:
        frequency, duty = one.periods / one.time_s, one.on_s / one.time_s
        # Each page is counted from edge to edge, both known within an interval.
        ends_s = one.interval_s * math.sqrt(2.0 * one.pages / 12.0)
        u_frequency = 2.0 * frequency * ends_s / one.time_s
    return PulsedFeed(
        start_ns=one.start_ns,
        end_ns=one.end_ns,
        speed=speed,
        frequency_hz=frequency,
        frequency_u_hz=u_frequency,
        duty=duty,
        on_v=on_v,
        average_v=average_v,
        average_a=average_a,
        statement=_words(one, speed, (frequency, u_frequency, duty), average_v, on_v),
        within_s=within_s,
        chopped=one.resolved and one.apart_s <= within_s,
    )


def _words(
    one: Pulses,
    speed: int | None,
    pulse: tuple[float | None, float | None, float | None],
    average_v: float | None,
    on_v: float | None,
) -> str:
    at = "" if speed is None else f" at speed {speed}"
    stretch = f"{at} from {one.start_ns / 1e9:.2f} s to {one.end_ns / 1e9:.2f} s"
    frequency, u_frequency, duty = pulse
    if frequency is None or duty is None:
        return (
            f"The motor's voltage goes to and fro in a regular beat{stretch}: consistent with a"
            f" pulsed feed that is too fast for readings every {one.interval_s * 1e3:.3g} ms."
            f" Frequency and duty can't be told; only averages mean anything."
        )
    buzz = (
        " If nothing is meant to pulse it, a buzzing relay or contact looks the same."
        if one.by_feed and frequency < _BUZZ_HZ
        else ""
    )
    return (
        f"The motor's voltage is pulsed{stretch}: {with_uncertainty(frequency, u_frequency, 'Hz')},"
        f" on for {duty * 100.0:.0f} % of the time, {average_v:.2f} V on average of {on_v:.2f} V."
        f" A slow meter shows the average only.{buzz}"
    )


def _averaged(step: Step, channel: Channel | None) -> PulsedFeed:
    """Tell of a step whose readings don't show the pulses that the limits speak of."""
    jumps = _jumps(step, channel)
    volts = step.mean_v if jumps else step.steady_mean_v
    amps = step.mean_a if jumps else step.steady_mean_a
    return PulsedFeed(
        start_ns=step.start_ns,
        end_ns=step.end_ns,
        speed=step.speed,
        frequency_hz=None,
        frequency_u_hz=None,
        duty=None,
        on_v=None,
        average_v=volts,
        average_a=None if amps is None else abs(amps),
        statement=_average_words(step, channel, volts, amps, jumps=jumps),
        within_s=_BEAT_S if jumps else 0.0,
    )


def _average_words(
    step: Step, channel: Channel | None, volts: float | None, amps: float | None, *, jumps: bool
) -> str:
    at = "" if step.speed is None else f" at speed {step.speed}"
    pace = "" if channel is None else f", one reading every {channel.interval_s:.3g} s,"
    known = [
        *([] if volts is None else [f"{volts:.2f} V"]),
        *([] if amps is None else [f"{abs(amps):.2f} A"]),
    ]
    words = (
        f"The controller is said to pulse the motor's voltage{at}; this meter{pace} can tell the"
        f" average only ({', '.join(known) or 'nothing read'}). Whether it pulses as it should, a"
        f" fast channel across the motor would tell."
    )
    if jumps:
        words += (
            f" Single readings catch on or off by chance: losses of up to {_BEAT_S:g} s can't be"
            f" told from that and are not held against anything."
        )
    return words


def _jumps(step: Step, channel: Channel | None) -> bool:
    """Tell whether readings that are not averaged catch the pulses at random."""
    if channel is None or channel.integration_s > 0.0 or step.sd_v is None or step.mean_v is None:
        return False
    return step.sd_v >= max(LEAST_SWING_V, LEAST_SWING_PART * abs(step.mean_v)) / 2.0
