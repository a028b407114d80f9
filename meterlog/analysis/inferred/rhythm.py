"""Rhythm: whether the dropouts follow a controller, a thermal switch, the taps, or nothing."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.findings import TAP_REACH_NS
from meterlog.analysis.inferred.spacings import (
    chance_of_no_short_one,
    chance_of_regularity,
    chance_of_so_many,
)
from meterlog.analysis.judged import Judged
from meterlog.analysis.taps.gone_stretches import LATE_NS, GoneStretch, gone_stretches
from meterlog.analysis.timeline import SpeedTimeline
from meterlog.model import EventKind, Rhythm, RhythmKind, SpanKind

FEWEST = 3
"""Dropouts below which no rhythm is looked for."""
UNLIKELY = 0.01
"""A pattern that chance makes less often than this is one."""
_UNLIKELY_CUT_OUT = 0.05
"""The long pauses speak as well, so that less is asked of the runs."""
EVEN = 0.2
"""Standard deviation over mean of the period of a controller that tries again."""
RETRY_S = (0.1, 60.0)
PAUSE_S, RUN_S = 8.0, 30.0
"""A thermal switch cools for ten seconds to minutes, and takes at least so long to heat up."""
_WEIGH = "To be weighed before the motor is blamed."


@dataclass(frozen=True, slots=True)
class _Times:
    """Dropouts of a recording, in seconds.

    ``met`` has for each the taps that were made while the current was gone.
    """

    starts: NDArray[np.float64]
    ends: NDArray[np.float64]
    runs: NDArray[np.float64]
    met: tuple[NDArray[np.float64], ...]
    returned: tuple[bool, ...]
    dead: bool

    @property
    def pauses(self) -> NDArray[np.float64]:
        return self.ends - self.starts


def rhythm(judged: Judged) -> Rhythm | None:
    """Give how the dropouts follow each other; None below three.

    A retry or a cut-out is the controller's doing, which takes the voltage away. Where the
    voltage stood across the motor in most dropouts, regular or not, neither is told.

    Parameters
    ----------
    judged : Judged
        After what is no dropout was taken out.

    Source
    ------
    See ``spacings.py`` for the tests. Times of retries and thermal cut-outs: common practice, no
    source.
    """
    timeline = SpeedTimeline()
    for event in judged.events:
        timeline.add(event)
    gone = gone_stretches(judged.spans, timeline)
    if len(gone) < FEWEST:
        return None
    times = _times(gone, judged)
    bound, by_taps = _tap_bound(times)
    periods = np.diff(times.starts)
    figures = _Figures(
        len(gone), float(np.median(periods)), float(np.std(periods, ddof=1)),
        float(np.median(times.runs)) if len(times.runs) else None,
        float(np.median(times.pauses)),
    )  # fmt: skip
    if bound and by_taps <= UNLIKELY:
        words = (
            f"The current came back within {TAP_REACH_NS / 1e9:.0f} s of a tap in {bound} of"
            f" {len(gone)} dropouts; taps at other moments would do as well with a chance of"
            f" {_chance(by_taps)}."
        )
        return figures.told(RhythmKind.TAPS, by_taps, words)
    even = chance_of_regularity(periods)
    if _evenly(periods) and even <= UNLIKELY:
        return _regular(figures, even, dead=times.dead)
    cut = _cut_out(times, figures)
    if cut is not None:
        return cut
    words = (
        f"{len(gone)} dropouts without a rhythm: times thrown at random would be as even with a"
        f" chance of {_chance(even)}."
    )
    return figures.told(RhythmKind.RANDOM, even, words)


@dataclass(frozen=True, slots=True)
class _Figures:
    count: int
    period_s: float
    period_sd_s: float
    on_s: float | None
    off_s: float

    def told(self, kind: RhythmKind, chance: float, words: str) -> Rhythm:
        return Rhythm(
            kind, self.count, self.period_s, self.period_sd_s, self.on_s, self.off_s, chance, words
        )


def _times(gone: Sequence[GoneStretch], judged: Judged) -> _Times:
    starts = np.array([span.start_ns for span in gone]) / 1e9
    ends = np.array([span.end_ns for span in gone]) / 1e9
    runs = starts[1:] - ends[:-1]
    # The first run counts from when the fan was last off, or from the beginning.
    since = [span.end_ns for span in judged.spans if span.kind is SpanKind.OFF]
    before = [t for t in since if t <= gone[0].start_ns]
    begin = before[-1] if before else (judged.spans[0].start_ns if judged.spans else 0)
    first = starts[0] - begin / 1e9
    if first > 0.0:
        runs = np.concatenate(([first], runs))
    taps = sorted(event.t_ns for event in judged.events if event.kind is EventKind.TAP)
    met = tuple(np.array([t for t in taps if span.met_by(t)]) / 1e9 for span in gone)
    dead = sum(span.kinds[0] is SpanKind.DEAD for span in gone)
    returned = tuple(span.returned for span in gone)
    return _Times(starts, ends, runs, met, returned, dead > len(gone) / 2)


def _tap_bound(times: _Times) -> tuple[int, float]:
    """Give how many dropouts ended upon a tap, and the chance of that many.

    A dropout that was tapped ends at random somewhere in its length; the chance that this is
    within reach of a tap is the part of the length that the taps' reaches cover. Which taps it met
    and which ends count is asked as for the tap test, so that both count the same.
    """
    reach, late = TAP_REACH_NS / 1e9, LATE_NS / 1e9
    chances, hits = [], 0
    dropouts = zip(times.starts.tolist(), times.ends.tolist(), times.met, strict=True)
    for (start, end, met), returned in zip(dropouts, times.returned, strict=True):
        if not len(met):
            chances.append(0.0)
            continue
        covered, until = 0.0, start
        for tap in met.tolist():
            covered += max(tap + reach - max(until, tap - late), 0.0)
            until = max(until, tap + reach)
        chances.append(min(covered / (max(end, until) - start), 1.0))
        hits += returned and end - met[-1] <= reach
    return hits, chance_of_so_many(np.array(chances), hits) if hits else 1.0


def _evenly(periods: NDArray[np.float64]) -> bool:
    mean = float(periods.mean())
    inside = RETRY_S[0] <= mean <= RETRY_S[1]
    return inside and float(np.std(periods, ddof=1)) <= EVEN * mean


def _regular(figures: _Figures, chance: float, *, dead: bool) -> Rhythm:
    every = (
        f"{figures.count} dropouts, one every {figures.period_s:.2f} s (standard deviation"
        f" {figures.period_sd_s:.2f} s); at random they would be as even with a chance of"
        f" {_chance(chance)}"
    )
    if dead:
        words = (
            f"{every}. But the voltage stood across the motor meanwhile: a controller that tries"
            f" again would have taken it away."
        )
        return figures.told(RhythmKind.RANDOM, chance, words)
    words = f"{every}: consistent with a controller that cuts out and tries again. {_WEIGH}"
    return figures.told(RhythmKind.RETRY, chance, words)


def _cut_out(times: _Times, figures: _Figures) -> Rhythm | None:
    if len(times.runs) < FEWEST:
        return None
    long_pauses = float(np.min(times.pauses)) >= PAUSE_S
    long_runs = float(np.min(times.runs)) >= RUN_S
    chance = chance_of_no_short_one(times.runs)
    if not (long_pauses and long_runs) or chance > _UNLIKELY_CUT_OUT:
        return None
    pauses = (
        f"{figures.count} dropouts after runs of about {figures.on_s:.0f} s, with pauses of about"
        f" {figures.off_s:.0f} s, not upon taps; that no run is short would happen by chance with"
        f" {_chance(chance)}"
    )
    if times.dead:
        words = (
            f"{pauses}. The voltage stood across the motor meanwhile, which a cut-out in the"
            f" controller would have taken away; a thermal switch inside the motor looks like this."
        )
        return figures.told(RhythmKind.RANDOM, chance, words)
    words = f"{pauses}: consistent with a thermal cut-out that opens when hot. {_WEIGH}"
    return figures.told(RhythmKind.CUT_OUT, chance, words)


def _chance(chance: float) -> str:
    return "less than 0.0001" if chance < 1e-4 else f"{chance:.2g}"
