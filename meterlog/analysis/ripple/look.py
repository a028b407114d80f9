"""Look: what one steady stretch shows by itself, before the bars are counted over all of them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.ripple.counts import Signs
from meterlog.analysis.ripple.cuts import later_by
from meterlog.analysis.ripple.flaws import FEWEST_BARS, Odd, alternates, odd_ones, shows_whole_turn
from meterlog.analysis.ripple.humps import humps_in
from meterlog.analysis.ripple.notches import FINENESS, LEAST_NOTCH, ripples_between
from meterlog.analysis.ripple.plausible import NEEDED_RATE_HZ
from meterlog.analysis.ripple.refused import JUMP, averaged, jumps, no_windows, too_slow, unclear
from meterlog.analysis.ripple.repeat import (
    LONGEST,
    best_cut,
    cut_waves,
    find_repeat,
)
from meterlog.analysis.ripple.tracking import Tracked, track
from meterlog.analysis.ripple.turn import Turn, differs_by_halves, lay_over
from meterlog.analysis.ripple.windows import Window
from meterlog.model import Channel, Limits, Step

_CORRECTIONS = 2
FAINT = 0.003
"""A ripple of less than this part of the mean, under deep notches, may be taken for their own
lines."""
_LEFT = 2.5
"""It then is so where single ripples leave so many times more of the pattern than it has itself.
Both fitted to made-up motors, see ``tests/benchmarks/bars.py``."""
TOO_FAINT = (
    f"There are deep notches, but between them a ripple of less than {100.0 * FAINT:g} % of the"
    f" mean, or of no clear count: too faint to count bars by. At a lower speed the motor's winding"
    f" smooths it less; look there. A pulsed feed would look the same."
)
_WEAK = 0.07
"""A ripple of less than this part of what differs from one to the next is no guide to the turn."""
_UNEXPLAINED = 1.5
"""A pattern that leaves so many times its own rms is none of the turn's."""
_CLEARER = 1.5
"""Of two ways to follow the turn, one must show the ripple so many times better. Fitted to made-up
motors, as above."""
_HOLDS = 0.3
"""One that leaves less than this is well followed."""
_COARSE = 4.0
_NEAR = 0.08
"""Windows of one step whose ripple is further off than this part show something else."""


@dataclass(frozen=True, slots=True, eq=False)
class Look:
    """What one steady stretch shows.

    Attributes
    ----------
    step : Step
    rate_hz : float, readings per second
    refusal : str
        Why nothing can be told; else empty.
    needed_rate_hz : float or None
    tracked : tuple of Tracked
    waves : tuple of ndarray, shape (ripples, PLACES)
        Of each, cut where the pattern shows best.
    signs : Signs or None
        None where no pattern comes again.
    turn : Turn or None
    odd : tuple of Odd
    by_notches : bool
        The turn was followed by a bar's notches, and the ripples counted between them.
    """

    step: Step
    rate_hz: float
    refusal: str = ""
    needed_rate_hz: float | None = None
    tracked: tuple[Tracked, ...] = ()
    waves: tuple[NDArray[np.float64], ...] = ()
    signs: Signs | None = None
    turn: Turn | None = None
    odd: tuple[Odd, ...] = ()
    by_notches: bool = False

    @property
    def hz(self) -> float:
        """Ripples per second, mean over all windows."""
        lengths = np.array([len(one.waves) for one in self.tracked], np.float64)
        seconds = lengths / np.array([one.hz for one in self.tracked])
        return float(lengths.sum() / seconds.sum())

    @property
    def faint(self) -> bool:
        """There are deep notches, and hardly a ripple between them."""
        if self.turn is None or not self.odd or self.by_notches:
            return False
        ripple = self.turn.typical
        return bool(np.ptp(ripple) < FAINT and self.turn.left_rms > _LEFT * ripple.std())


def look_at(
    step: Step, windows: Sequence[Window], rate_hz: float, channel: Channel, limits: Limits
) -> Look:
    """Look at the windows of one step.

    Parameters
    ----------
    step : Step
    windows : sequence of Window
        None for too short a stretch, or readings too uneven.
    rate_hz : float, readings per second
    channel : Channel
        Of the motor current.
    limits : Limits
    """
    if refusal := too_slow(rate_hz, channel):
        return Look(step, rate_hz, refusal, NEEDED_RATE_HZ)
    if refusal := no_windows(windows, limits):
        return Look(step, rate_hz, refusal)
    look = _by_ripple(step, windows, rate_hz, channel, limits)
    if not (look.refusal or _weak(look)) or _is_averaged(look, channel):
        return look
    other = _by_notches(step, windows, rate_hz, look)
    doubtful = bool(look.refusal) or look.faint or _unexplained(look)
    if other is None or (other.refusal and not doubtful):
        return look
    # What is left of slow changes makes for counts that are too low; never for too high ones.
    better = doubtful or other.hz > (1.0 + JUMP) * look.hz or _clearer(other, look)
    return other if better else look


def _by_ripple(
    step: Step, windows: Sequence[Window], rate_hz: float, channel: Channel, limits: Limits
) -> Look:
    """Look by the ripple's own line."""
    found = [one for one in map(track, windows) if one is not None]
    middle = float(np.median([one.hz for one in found])) if found else 0.0
    tracked = tuple(one for one in found if abs(one.hz - middle) <= _NEAR * middle)
    refusal = unclear(step, tracked, windows, channel, limits)
    if refusal:
        return Look(step, rate_hz, refusal)
    look, ratio = _pattern(step, rate_hz, tracked), 1.0
    for _ in range(_CORRECTIONS):
        factor = _correction(look)
        if factor == 1.0:
            break
        ratio *= factor
        again = [one for one in (track(window, ratio) for window in windows) if one is not None]
        near = tuple(one for one in again if abs(one.hz / ratio - middle) <= _NEAR * middle)
        if not near:
            break
        look = _cut_alike(_pattern(step, rate_hz, near), windows, ratio)
    return look


def _weak(look: Look) -> bool:
    """Tell whether the ripple is hardly there beside what differs from one to the next."""
    if look.turn is None:
        return False
    differ = max(float(np.ptp(look.turn.heights)), look.turn.left_rms)
    return bool(np.ptp(look.turn.typical) < _WEAK * differ)


def _unexplained(look: Look) -> bool:
    """Tell whether single ripples leave more of the pattern than it has itself."""
    return look.turn is not None and look.turn.left_rms > _UNEXPLAINED * look.turn.waves.std()


def _clearer(look: Look, than: Look) -> bool:
    """Tell whether the ripple stands out clearly better from what single ones leave of it.

    Cut in another number of parts than there are ripples, the parts are less alike.
    """
    if look.turn is None or than.turn is None:
        return False
    one, other = (float(np.ptp(turn.typical)) / turn.left_rms for turn in (look.turn, than.turn))
    return one > _CLEARER * other


def _is_averaged(look: Look, channel: Channel) -> bool:
    return bool(look.refusal) and look.refusal == averaged(channel)


def _by_notches(
    step: Step, windows: Sequence[Window], rate_hz: float, by_ripple: Look
) -> Look | None:
    """Look by the lines of deep notches; None where none come again turn after turn.

    The pattern is first followed coarsely, then in a known number of parts, and at last by the
    ripples that were counted between the notches. What the ripple's own line told may decide
    between two counts.
    """
    ratio, look = _COARSE, None
    for wanted in (FINENESS, None):
        look = _notched(step, windows, rate_hz, ratio)
        if look is None or look.turn is None:
            return None
        if wanted is not None:
            ratio *= wanted / len(look.turn.waves)
    turn = look.turn if look is not None else None
    if turn is None or turn.left_rms > _HOLDS * turn.waves.std():
        return None
    pattern = turn.waves.ravel()
    if float(np.median(pattern) - pattern.min()) < LEAST_NOTCH:
        return None
    count = ripples_between(pattern, by_ripple.signs.repeat if by_ripple.signs else None)
    if count is None:
        return Look(step, rate_hz, TOO_FAINT)
    look = _notched(step, windows, rate_hz, ratio * count / len(turn.waves))
    if look is None or look.signs is None or look.signs.repeat != count:
        return Look(step, rate_hz, TOO_FAINT)
    return replace(look, by_notches=True)


def _notched(step: Step, windows: Sequence[Window], rate_hz: float, ratio: float) -> Look | None:
    """Follow the notches in so many parts to each wave of their strongest line."""
    found: list[Tracked] = []
    for number, window in enumerate(windows):
        if one := track(window, ratio, notches=True):
            found.append(one)
        elif 2 * (number + 1 - len(found)) > len(windows):
            return None  # in most there are none
    middle = float(np.median([one.hz for one in found]))
    near = tuple(one for one in found if abs(one.hz - middle) <= _NEAR * middle)
    if not near or jumps(near):
        return None
    return _cut_alike(_pattern(step, rate_hz, near), windows, ratio, notches=True)


def _cut_alike(
    look: Look, windows: Sequence[Window], ratio: float, *, notches: bool = False
) -> Look:
    """Cut all windows where the first is cut, if the line that was followed leaves it open."""
    if look.signs is None:
        return look
    later = later_by(look.waves, look.signs.repeat, ratio)
    if not any(later):
        return look
    of = {window.start_ns: window for window in windows}
    again = [
        track(of[one.start_ns], ratio, notches=notches, later=late)
        for one, late in zip(look.tracked, later, strict=True)
    ]
    tracked = tuple(one for one in again if one is not None)
    return _pattern(look.step, look.rate_hz, tracked) if len(tracked) == len(again) else look


def _correction(look: Look) -> float:
    """Give the ripples to each wave that was followed; 1 where the ripple itself was."""
    if look.turn is None or look.faint:
        return 1.0
    followed = len(look.turn.waves)
    if _two_passages(look.odd, followed) and 2 * followed <= LONGEST:
        return 2.0
    return humps_in(look.turn.waves.ravel(), followed) / followed


def _two_passages(odd: Sequence[Odd], length: int) -> bool:
    """Tell whether an odd number of waves holds one bar's passages under two brushes.

    They lie half a turn apart, so the pattern is a whole turn, and an odd number of waves means
    that every other ripple was followed.
    """
    if length % 2 == 0 or len(odd) < 2 or odd[1].depth < 0.6 * odd[0].depth:
        return False
    return (odd[0].place - odd[1].place) % length in (length // 2, length // 2 + 1)


def _pattern(step: Step, rate_hz: float, tracked: tuple[Tracked, ...]) -> Look:
    shift = best_cut(tracked)
    waves = tuple(cut_waves(one, shift) for one in tracked)
    look = Look(step, rate_hz, tracked=tracked, waves=waves)
    repeat = find_repeat([one.mean(axis=1) for one in waves])
    if repeat is None:
        return look
    turn = lay_over(list(waves), repeat.ripples)
    odd = odd_ones(turn, whole=repeat.ripples >= FEWEST_BARS)
    if odd and 2 * repeat.ripples <= LONGEST and differs_by_halves(list(waves), repeat.ripples):
        repeat = replace(repeat, ripples=2 * repeat.ripples)
        turn = lay_over(list(waves), repeat.ripples)
    odd = odd_ones(turn, whole=repeat.ripples >= FEWEST_BARS)
    places = {one.place for one in odd}
    length = repeat.ripples

    def comes_again(part: int) -> bool:
        if length % part or not odd:
            return False
        return all((odd[0].place + k * length // part) % length in places for k in range(part))

    signs = Signs(
        look.hz,
        length,
        repeat.confidence,
        marked=bool(odd),
        half=comes_again(2),
        quarter=comes_again(4),
        alternating=alternates(turn.heights, places),
        perhaps_half=not odd and not shows_whole_turn(turn.heights),
        wide=any((odd[0].place + k) % length in places for k in (-1, 1)) if odd else False,
    )
    return Look(step, rate_hz, "", None, tracked, waves, signs, turn, tuple(odd))
