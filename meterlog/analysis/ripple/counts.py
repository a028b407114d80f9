"""Counts: how many bars, under how many brushes, make so many ripples a turn."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from meterlog.analysis.ripple.plausible import HIGHEST_RPM, LOWEST_RPM

_WHOLE, _HALF, _QUARTER = 1.0, 0.1, 0.03
"""How likely the pattern of a turn comes again only after all of it, after half, after a quarter:
for the latter all brushes and both halves of the shaft's turning must be alike."""
_PERHAPS_HALF = 0.8
_NOT_ALTERNATING, _MARKED_NOT_ALTERNATING = 0.5, 0.7
"""How likely an odd count's brushes are so alike that every second ripple is no higher, and that
this is hidden where deep notches take ripples away. Fitted to made-up motors, see
``tests/benchmarks/bars.py``."""
_NOT_ODD = 0.1
"""How likely an even count seems to alternate, or its notch to be two ripples wide."""
_FLOOR = 1e-4


@dataclass(frozen=True, slots=True)
class Count:
    """One possible build.

    Attributes
    ----------
    brushes, bars : int
    prior : float
        How common it is among cabin fans, the commonest 1: two brushes are the rule, even and odd
        counts both common. Common practice, no source.
    """

    brushes: int
    bars: int
    prior: float = 1.0

    @property
    def ripples(self) -> int:
        """Ripples a turn: the least common multiple of brushes and bars.

        Source
        ------
        Rule of the trade for lap windings with as many brushes as poles (a maker's data sheet for
        counting ripples: six for three bars under two brushes).
        """
        return math.lcm(self.brushes, self.bars)

    def bar_at(self, ripple: int) -> int:
        """Give the bar, from 0, that is under a brush at a ripple, from 0 where bar 0 is.

        Where it may be several, the smallest: with an even count two bars meet their brushes at
        once.
        """
        turn, wide = self.ripples, self.ripples // self.bars
        places = ((ripple - brush * turn // self.brushes) % turn for brush in range(self.brushes))
        return min(place // wide for place in places if place % wide == 0)


def _builds() -> tuple[Count, ...]:
    two = [Count(2, bars) for bars in range(8, 26)]
    four = [Count(4, bars, 0.1 if bars % 2 == 0 else 0.03) for bars in range(8, 26)]
    return (*two, *(one for one in four if one.ripples <= 100))


BUILDS = _builds()


@dataclass(frozen=True, slots=True)
class Signs:
    """What one steady stretch shows of the build.

    Attributes
    ----------
    hz : float, hertz
        Ripples per second.
    repeat : int, ripples
    confidence : float, 0 to 1
        Of the repeat.
    marked : bool
        Some ripples are far off the others.
    half, quarter : bool
        So far off, they come again after half the pattern; after a quarter.
    alternating : bool
        Every second ripple is higher, beyond the scatter of all.
    perhaps_half : bool
        Nothing in the pattern says that it is a whole turn rather than half of one.
    wide : bool
        What is far off is two ripples wide.
    """

    hz: float
    repeat: int
    confidence: float
    marked: bool = False
    half: bool = False
    quarter: bool = False
    alternating: bool = False
    perhaps_half: bool = False
    wide: bool = False


@dataclass(frozen=True, slots=True)
class Counted:
    """The build that fits best.

    Attributes
    ----------
    count : Count
    confidence : float, 0 to 1
        That there are so many bars.
    turn_confidence : float, 0 to 1
        That there are so many ripples a turn, whatever the bars.
    others : tuple of int
        Other bar counts that are not much less likely.
    """

    count: Count
    confidence: float
    turn_confidence: float
    others: tuple[int, ...]

    @property
    def all(self) -> tuple[int, ...]:
        """The likeliest bar count and the others, in order."""
        return tuple(sorted((self.count.bars, *self.others)))


def count_bars(signs: Sequence[Signs]) -> Counted | None:
    """Find the build that fits what all steady stretches of one motor show.

    Returns
    -------
    Counted or None
        None where none fits.

    Source
    ------
    Bayes' rule over the builds; how likely each sign is under each build is common practice, no
    source, and coarse.
    """
    if not signs:
        return None
    logs = [
        math.log(one.prior * _oddness(one, signs))
        + sum(math.log(s.confidence * _fit(one, s) + _FLOOR) for s in signs)
        for one in BUILDS
    ]
    best = max(logs)
    if best < len(signs) * math.log(2.0 * _FLOOR):
        return None
    weights = [math.exp(value - best) for value in logs]
    whole = sum(weights)
    winner = BUILDS[logs.index(best)]
    by_bars: dict[int, float] = {}
    for one, weight in zip(BUILDS, weights, strict=True):
        by_bars[one.bars] = by_bars.get(one.bars, 0.0) + weight / whole
    turn = sum(
        w / whole for one, w in zip(BUILDS, weights, strict=True) if one.ripples == winner.ripples
    )
    sure = max(s.confidence for s in signs)
    others = tuple(b for b, share in sorted(by_bars.items()) if b != winner.bars and share > 0.05)
    return Counted(winner, by_bars[winner.bars] * sure, turn * sure, others)


def _fit(build: Count, signs: Signs) -> float:
    """Give how well one stretch's signs fit a build, 0 to 1."""
    if build.ripples % signs.repeat:
        return 0.0
    parts = build.ripples // signs.repeat
    half = _PERHAPS_HALF if signs.perhaps_half else _HALF
    shares = {1: _WHOLE, 2: half, 4: _QUARTER if build.brushes == 4 else 0.0}
    fit = shares.get(parts, 0.0)
    if not LOWEST_RPM <= 60.0 * signs.hz / build.ripples <= HIGHEST_RPM:
        return 0.0
    if signs.marked:
        fit *= _fit_marks(build.brushes // parts, signs)
    return fit


def _oddness(build: Count, signs: Sequence[Signs]) -> float:
    """Give how well what tells odd from even counts fits a build, 0 to 1.

    Brushes and bars are the same at every speed, so that many speeds without a sign say no more
    than one.
    """
    alternating, wide = any(s.alternating for s in signs), any(s.wide for s in signs)
    if build.ripples == build.bars:
        return (_NOT_ODD if alternating else 1.0) * (_NOT_ODD if wide else 1.0)
    if alternating:
        return 1.0
    return _MARKED_NOT_ALTERNATING if any(s.marked for s in signs) else _NOT_ALTERNATING


def _fit_marks(passes: int, signs: Signs) -> float:
    """Give how well the marks fit a bar that is met so many times in one pattern."""
    if passes >= 4:
        return 1.0 if signs.quarter else 0.02
    if passes >= 2:
        return (0.02 if signs.quarter else 1.0) if signs.half else 0.3
    return 0.1 if signs.half else 1.0
