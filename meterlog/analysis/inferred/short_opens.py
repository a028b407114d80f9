"""ShortOpens: opens too short for the meter, by the dips and restart peaks they leave."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from meterlog.analysis.alarm import FASTEST_S, alarm_deviations
from meterlog.analysis.findings import TAP_REACH_NS
from meterlog.analysis.inferred.known_moments import KnownMoments
from meterlog.analysis.inferred.open_length import open_length_s
from meterlog.analysis.inferred.open_words import opened, opened_finding
from meterlog.analysis.inferred.page import Pages
from meterlog.analysis.inferred.restart_scales import restart_scales
from meterlog.analysis.inferred.standing_out import (
    NEAR,
    SETTLING_S,
    Departure,
    SlowMeter,
    departures,
)
from meterlog.analysis.inferred.tails import Tails
from meterlog.analysis.judged import Judged
from meterlog.analysis.labels import Stretch
from meterlog.analysis.rows import Rows
from meterlog.model import (
    Block,
    Channel,
    Event,
    EventKind,
    Finding,
    Inferred,
    InferredKind,
    Instrument,
    Limits,
    PulsedFeed,
    Role,
    StartUp,
)

SLOWEST_S = 2.0
"""A slower meter leaves no base line to speak of."""
PAGE = 2048
MOST_KEPT = 2000
"""Departures that are kept; a trace with more has another trouble than a short open at times."""
_SUPPLY_PER_PART = 12.0
"""A sudden change of the supply by one part changes the current by up to so many: the start-up
ratio times V / (V - brush drop)."""
_LEVEL_SIGMA = 1.2533 * math.sqrt(2.0 / NEAR)
"""Deviation of the difference of two medians of so many readings, in those of one reading."""
_GLITCHES_S = 0.05
"""Below this interval a restart is in more readings than one; one alone is a glitch."""


@dataclass(frozen=True, slots=True)
class ShortOpensFound:
    """What was made of the departures.

    Attributes
    ----------
    inferred : tuple of Inferred
    findings : tuple of Finding
        One each, verdict can't tell.
    notes : tuple of str
        What was passed over, and why.
    """

    inferred: tuple[Inferred, ...] = ()
    findings: tuple[Finding, ...] = ()
    notes: tuple[str, ...] = ()


def slow_meter(instruments: Sequence[Instrument], limits: Limits) -> SlowMeter | None:
    """Give the meter of the motor current; None where its rate leaves nothing to infer."""
    channel, key = _found(instruments, Role.MOTOR_CURRENT)
    if channel is None or not _suits(channel):
        return None
    volts, volts_key = _found(instruments, Role.MOTOR_FEED)
    back, back_key = _found(instruments, Role.MOTOR_RETURN)
    late_s = 0.0
    for other, other_key in ((volts, volts_key), (back, back_key)):
        if other is not None and other_key != key:
            late_s = max(late_s, other.interval_s + other.integration_s)
    digits = [one.accuracy.resolution for one in (volts, back) if one and one.accuracy]
    return SlowMeter(
        interval_s=channel.interval_s,
        averaging_s=channel.integration_s,
        digit_a=_digit(channel),
        digit_v=max(digits, default=0.0),
        least_a=limits.open_current_a,
        volts_late_s=late_s,
    )


def _suits(channel: Channel) -> bool:
    slowest = max(channel.interval_s, channel.integration_s)
    return slowest >= FASTEST_S and channel.interval_s <= SLOWEST_S


def _digit(channel: Channel) -> float:
    digits = [one.accuracy.resolution for one in channel.ranges]
    if channel.accuracy is not None:
        digits.append(channel.accuracy.resolution)
    return max(digits, default=0.0)


def _found(instruments: Sequence[Instrument], role: Role) -> tuple[Channel | None, str]:
    for instrument in instruments:
        column = instrument.column(role)
        if column is not None and not instrument.typed:
            return instrument.channels[column], instrument.key
    return None, ""


class ShortOpens:
    """Follows the current of a slow or averaging meter. Faster ones are left alone.

    Parameters
    ----------
    instruments : sequence of Instrument
    limits : Limits
    """

    def __init__(self, instruments: Sequence[Instrument], limits: Limits) -> None:
        self.channel, self._key = _found(instruments, Role.MOTOR_CURRENT)
        self.meter = slow_meter(instruments, limits)
        self._pages = Pages(PAGE, self.meter.beside if self.meter else 0)
        self._kept: list[Departure] = []
        self._tails = Tails()
        self.more = 0

    def take(self, item: Block | Event) -> None:
        """Take the next Block or Event; nothing is needed of them."""

    def take_rows(self, rows: Rows, stretches: Sequence[Stretch]) -> None:
        """Take rows; see :class:`meterlog.analysis.judged.Follower`."""
        if self.meter is None:
            return
        for page in self._pages.take(rows, stretches):
            for one in departures(page, self.meter, self._tails):
                if len(self._kept) < MOST_KEPT:
                    self._kept.append(one)
                else:
                    self.more += 1

    def found(
        self,
        judged: Judged,
        pulsed: Sequence[PulsedFeed] = (),
        startups: Sequence[StartUp] = (),
    ) -> ShortOpensFound:
        """Give the opens that were not seen.

        Parameters
        ----------
        judged : Judged
            Departures beside commands, seen losses and changes of range are no news.
        pulsed : sequence of PulsedFeed
            Nothing is inferred inside.
        startups : sequence of StartUp
            The scale for restart peaks; without any, that of cabin fans in general.
        """
        if self.meter is None:
            return ShortOpensFound()
        rest, tails = self._pages.rest(), Tails()
        last = [] if rest is None else list(departures(rest, self.meter, tails))
        degrees = self._tails.joined(tails).degrees()
        known = KnownMoments(judged, pulsed, self._key, self.meter)
        inferred: list[Inferred] = []
        supply = unexplained = noisy = 0
        for one in _apart([*self._kept, *last]):
            if known.explains(one.t_ns):
                continue
            if _by_supply(one):
                supply += 1
                continue
            if abs(one.sigmas) < alarm_deviations(self.meter.interval_s, min(one.degrees, degrees)):
                noisy += 1
                continue
            told = self._explained(one, judged, startups)
            if told is None:
                unexplained += 1
            else:
                inferred.append(told)
        return ShortOpensFound(
            tuple(inferred),
            tuple(opened_finding(one, self.meter) for one in inferred),
            _notes(supply, unexplained, noisy, self.more),
        )

    def _explained(
        self, one: Departure, judged: Judged, startups: Sequence[StartUp]
    ) -> Inferred | None:
        meter = self.meter
        assert meter is not None  # noqa: S101 - departures come of a meter
        peak = one.seen_a > one.base_a
        if peak and meter.interval_s < _GLITCHES_S and not _lasts(one):
            return None
        scales = restart_scales(startups, one.speed)
        noise = one.sigma_a / one.base_a
        pace = (meter.interval_s, meter.averaging_s)
        length = open_length_s(one.at_s, one.parts, noise, pace, scales.scales)
        if length is None:
            return None
        kind = InferredKind.RESTART_PEAK if peak else InferredKind.DIP
        return opened(one, kind, length, scales.basis, _since_tap(one, judged))


def _lasts(one: Departure) -> bool:
    """Tell whether a reading right after or before the highest is above the base line too."""
    beside = np.flatnonzero(one.at_s == 0.0)[0]
    room = 3.0 * one.sigma_a / one.base_a
    return bool((one.parts[beside + 1 : beside + 2] > room).any())


def _by_supply(one: Departure) -> bool:
    """Tell whether the feed moved the same way, and enough to explain it.

    It may have moved for a moment, or for good: a motor whose supply rises by a step draws more
    until it has gathered speed, which looks like a restart.
    """
    if math.isnan(one.feed_v) or not one.feed_level_v:
        return False
    part = (one.seen_a - one.base_a) / one.base_a
    for moved_v, sigma_v in (
        (one.feed_v, one.feed_sigma_v),
        (one.feed_change_v, _LEVEL_SIGMA * one.feed_sigma_v),
    ):
        enough = abs(part) <= _SUPPLY_PER_PART * abs(moved_v / one.feed_level_v)
        if abs(moved_v) >= 3.0 * sigma_v and part * moved_v > 0.0 and enough:
            return True
    return False


def _since_tap(one: Departure, judged: Judged) -> float | None:
    taps = [event.t_ns for event in judged.events if event.kind is EventKind.TAP]
    before = [t for t in taps if 0 <= one.last_ns - t <= TAP_REACH_NS]
    return (one.t_ns - before[-1]) / 1e9 if before else None


def _apart(departures_: Sequence[Departure]) -> list[Departure]:
    """Give one departure for each moment: the lowest, or else the highest."""
    result: list[Departure] = []
    for one in sorted(departures_, key=lambda each: each.t_ns):
        if result and one.t_ns - result[-1].t_ns < SETTLING_S * 1e9:
            if _weight(one) > _weight(result[-1]):
                result[-1] = one
        else:
            result.append(one)
    return result


def _weight(one: Departure) -> tuple[bool, float]:
    return one.sigmas < 0.0, abs(one.sigmas)


def _notes(supply: int, unexplained: int, noisy: int, more: int) -> tuple[str, ...]:
    told = []
    if supply:
        told.append(
            f"{supply} short change(s) of the current came with the feed moving the same way: the"
            f" supply side (battery, fuse, relay, connector), not the motor."
        )
    if noisy:
        told.append(
            f"{noisy} reading(s) left the base line no further than the noise of this meter does"
            f" at times, which has many outliers; nothing is inferred of them."
        )
    if unexplained:
        told.append(
            f"{unexplained} reading(s) left the base line in a way that no short open explains."
        )
    if more:
        told.append(f"{more} more reading(s) left the base line and were not looked into.")
    return tuple(told)
