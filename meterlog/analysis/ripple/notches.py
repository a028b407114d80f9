"""Notches: the turn followed by a bar's own notches, and the ripples counted between them.

Where an open bar takes most of the current at each passage and the winding smooths the ripple away,
the ripple's line drowns beside the notches' own. The notches then tell the turn far better than the
ripple does, and over many turns laid upon each other the ripples between them can be counted.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.ripple.repeat import LONGEST

FINENESS = 40
"""Parts into which a pattern is cut before ripples are counted in it."""
LEAST_NOTCH = 0.06
"""Part of the mean that notches must take at their deepest for the turn to be followed by them."""
_FEWEST = 4
_DEEP = 0.25
"""What lies lower than the middle by this part of the deepest belongs to a notch."""
_FOOT, _RECOVERY = 0.01, 0.05
"""Parts of a pattern beside a notch, before and after, that are its edges."""
_DEGREE = 5
_DECAYS = (0.01, 0.02, 0.04)
"""The current comes back after a notch with the winding's time constant: in parts of a pattern."""
_LONGEST_MASK = 0.6
"""With more than this part of the pattern in notches, too little is left to count in."""
_SHOWN = 1.25
"""Without any wave, so many times more must be left than with the best."""
_CLEARLY = 1.4
"""The best count must tell so many times more than the next best. All fitted to made-up motors,
see ``tests/benchmarks/bars.py``."""


def ripples_between(pattern: NDArray[np.float64], thought: int | None = None) -> int | None:
    """Count the ripples in one pattern by what lies between its notches.

    Parameters
    ----------
    pattern : ndarray, float64, shape (n,)
        Evenly spaced over one repetition, as part of the mean.
    thought : int or None
        The count by the ripple's own line, where that gave one: it need not be clearly the best,
        but the best once the wave that rivals it is taken out too. Bars of unlike heights make
        such waves at low numbers, which the winding smooths less than the ripple.

    Returns
    -------
    int or None
        None where no count is clearly the best.

    Source
    ------
    Least squares spectrum of what is left where parts are missing: P. Vanicek, Astrophys. Space
    Sci. 12 (1971) 10 (from memory): a wave of each whole number to the pattern, together with a
    slow curve in each stretch between notches; the wave that explains most is taken.
    """
    count = len(pattern)
    first, kept = _between(pattern)
    passages = int((np.diff(kept.astype(np.int8), prepend=0) == 1).sum())
    if kept.sum() < (1.0 - _LONGEST_MASK) * count:
        return None
    turned = np.roll(pattern, -first)
    angle = 2.0 * np.pi * (np.arange(count) + 0.5) / count
    slow, values = _curves(kept), turned[kept]
    numbers = np.arange(_FEWEST, min(LONGEST, count // 4) + 1)
    best, gains = _best_wave(values, slow, numbers, angle[kept])
    if best is None and thought is not None:
        told = np.where(numbers == thought, -np.inf, np.log(gains) * numbers)
        rival = numbers[int(np.argmax(told))]
        slow = _with_wave(slow, rival * angle[kept])
        best, gains = _best_wave(values, slow, numbers[numbers != rival], angle[kept])
        numbers = numbers[numbers != rival]
        if best != thought:
            return None
    if best is None or best < _FEWEST * passages:
        return None
    return best if gains[numbers == best][0] > _SHOWN else None


def _best_wave(
    values: NDArray[np.float64],
    slow: NDArray[np.float64],
    numbers: NDArray[np.int64],
    angle: NDArray[np.float64],
) -> tuple[int | None, NDArray[np.float64]]:
    """Give the number whose wave is clearly the best, if any, and what each leaves less, times."""
    left = np.array([_left(values, _with_wave(slow, number * angle)) for number in numbers])
    gains: NDArray[np.float64] = _left(values, slow) / left
    # What slow changes leave falls with the number; so does the weight that finds the ripple.
    told = np.log(gains) * numbers
    best = int(np.argmax(told))
    clear = told[best] > _CLEARLY * np.delete(told, best).max()
    return (int(numbers[best]) if clear else None), gains


def _between(pattern: NDArray[np.float64]) -> tuple[int, NDArray[np.bool_]]:
    """Give where to begin, in a notch, and what lies between notches from there on."""
    middle = float(np.median(pattern))
    first = int(np.argmin(pattern))
    turned = np.roll(pattern, -first)
    deep = turned < middle - _DEEP * (middle - float(pattern.min()))
    before, after = (round(part * len(pattern)) + 1 for part in (_FOOT, _RECOVERY))
    masked = deep.copy()
    for shift in range(1, before + 1):
        masked |= np.roll(deep, -shift)
    for shift in range(1, after + 1):
        masked |= np.roll(deep, shift)
    return first, ~masked


def _curves(kept: NDArray[np.bool_]) -> NDArray[np.float64]:
    """Give the terms of a slow curve in each stretch that is kept, one column each."""
    starts = np.flatnonzero(np.diff(kept.astype(np.int8), prepend=0) == 1)
    stops = np.flatnonzero(np.diff(kept.astype(np.int8), append=0) == -1) + 1
    columns = []
    at = np.arange(len(kept))
    for start, stop in zip(starts.tolist(), stops.tolist(), strict=True):
        inside = (at >= start) & (at < stop)
        place = (at - start) / max(stop - start - 1, 1) * 2.0 - 1.0
        terms = min(_DEGREE, stop - start - 1) + 1
        columns += [np.where(inside, place**power, 0.0)[kept] for power in range(terms)]
        since = np.clip((at - start) / len(kept), 0.0, None)
        columns += [np.where(inside, np.exp(-since / part), 0.0)[kept] for part in _DECAYS]
    return np.column_stack(columns)


def _with_wave(table: NDArray[np.float64], angle: NDArray[np.float64]) -> NDArray[np.float64]:
    return np.column_stack((table, np.cos(angle), np.sin(angle)))


def _left(values: NDArray[np.float64], table: NDArray[np.float64]) -> float:
    """Give the sum of squares that the terms in ``table`` leave."""
    found, *_ = np.linalg.lstsq(table, values, rcond=None)
    away = values - table @ found
    return float(away @ away) + 1e-18
