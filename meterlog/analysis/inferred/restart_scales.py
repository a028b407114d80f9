"""RestartScales: which motors a short open is held to be of, by the run's own start-up if seen."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from meterlog.analysis.inferred.open_model import RestartScale
from meterlog.model import StartUp

RATIOS = (1.5, 2.2, 3.0, 4.0, 5.5, 7.0)
"""Start-up over running current of cabin fans: behind a resistor pack 1.5, on full voltage 2.5 to
5, on low voltage from a controller more (measured examples 2.9 to 5; the rest by calculation)."""
COASTS_PER_S = (0.7, 1.0, 1.5, 2.1, 3.0)
"""A cabin fan of medium size loses 1.5 parts a second at first (by calculation)."""
SOFT = RestartScale(1.0, 1.5)
"""No restart peak at all: a soft start or a current limit."""
_SPREAD = (0.85, 1.0, 1.2)
"""How well one start-up tells another's."""
_SETTLED = 0.1
"""A start-up counts as settled within this part of the steady current."""
_NO_PEAK = 1.2


@dataclass(frozen=True, slots=True)
class RestartScales:
    """The motors that are thought possible.

    Attributes
    ----------
    scales : tuple of RestartScale
    basis : str
        Where they come from, as the rest of a sentence.
    """

    scales: tuple[RestartScale, ...]
    basis: str


def restart_scales(startups: Sequence[StartUp], speed: int | None) -> RestartScales:
    """Give the motors that a restart at ``speed`` may be of.

    Parameters
    ----------
    startups : sequence of StartUp
        Of the recording. Only commanded ones at the same speed count; of several the one with
        the highest ratio, as a start from a standstill is the highest there is.
    speed : int or None

    Source
    ------
    A start settles within a part a of steady after T ln((S - 1) / a) for a first-order decay with
    time constant T from S times steady; T gives the coasting rate by the motor's equations (see
    :class:`RestartScale`). Textbook dynamics.
    """
    own = [one for one in startups if one.speed == speed and one.ratio and one.cause == "command"]
    if not own:
        usual = tuple(RestartScale(s, r) for s in RATIOS for r in COASTS_PER_S)
        return RestartScales((SOFT, *usual), "start-ups of cabin fans in general, as none was seen")
    best = max(own, key=lambda one: one.ratio or 0.0)
    ratio = best.ratio or 1.0
    at = f"the start-up seen at {best.t_ns / 1e9:.1f} s"
    if ratio < _NO_PEAK and not best.peak_floor:
        return RestartScales((SOFT,), f"{at}, which had no peak")
    ratios = [ratio * part for part in _SPREAD if ratio * part > 1.05]
    if best.peak_floor:
        ratios = [max(ratio, 1.1), *(one for one in RATIOS if one > ratio)]
        at += ", whose true peak was higher"
    coasts: tuple[float, ...] = COASTS_PER_S
    if best.settle_s and not best.peak_floor and ratio > 1.0 + 2.0 * _SETTLED:
        settling_s = best.settle_s / math.log((ratio - 1.0) / _SETTLED)
        rate = 1.0 / (settling_s * (ratio + 1.0 - 0.2))
        coasts = (rate * _SPREAD[0], rate, rate * _SPREAD[2])
    scales = tuple(RestartScale(s, r) for s in ratios for r in coasts)
    return RestartScales((SOFT, *scales), at)
