"""LevelWalk: the levels of a whole recording lot by lot, each once, however often it is asked.

A live review asks four times a second for what takes the whole recording to tell. What is told by
the bins that can't change any more is kept; the newest bin is looked at anew each time.
"""

from __future__ import annotations

import copy
from collections.abc import Iterator
from typing import Self

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.levels import LevelPart, Levels, runs_of


class LevelWalk:
    """Goes along the levels from their first bin.

    Parameters
    ----------
    levels : Levels
    """

    def __init__(self, levels: Levels) -> None:
        self._levels = levels
        self._at = 0

    def settled(self) -> Iterator[LevelPart]:
        """Give the bins that can't change any more and were not given before; to be used up."""
        first, self._at = self._at, self._levels.settled
        yield from self._levels.lots(first, self._at)

    def newest(self) -> LevelPart:
        """Give the newest bin, which may still change; none before the first."""
        return self._levels.part(self._at, len(self._levels))


class LevelReach:
    """What the levels of one stretch say; its end moves on while the recording goes on.

    Parameters
    ----------
    levels : Levels
    """

    def __init__(self, levels: Levels) -> None:
        self._levels = levels
        self._first: int | None = None
        self._at = 0
        self._asked: tuple[int, int] | None = None
        self.forget()

    def forget(self) -> None:
        """Begin anew: what was taken does not count."""

    def take(self, part: LevelPart) -> None:
        """Take the next bins of the stretch."""

    def reach(self, start_ns: int, end_ns: int) -> tuple[int, int]:
        """Give the first bin between two times, and the one after the last."""
        return self._levels.places(start_ns, end_ns)

    def over(self, start_ns: int, end_ns: int) -> Self:
        """Give what the bins between two times say; the beginning is the same each time."""
        if self._asked == (start_ns, end_ns):
            return self  # nothing of it can have changed
        self._asked = None
        first, last = self.reach(start_ns, end_ns)
        if first != self._first or last < self._at:
            self.forget()
            self._first = self._at = first
        settled = max(min(last, self._levels.settled), self._at)
        for part in self._levels.lots(self._at, settled):
            self.take(part)
        self._at = settled
        if last <= settled:
            if self._levels.end_ns > end_ns:
                self._asked = start_ns, end_ns
            return self
        now = copy.copy(self)
        for part in self._levels.lots(settled, last):
            now.take(part)
        return now


class LongRuns:
    """Stretches of neighbouring bins that a mask holds and that last, as the bins come.

    Parameters
    ----------
    least_ns : int, nanoseconds
        Shorter ones are none.

    Attributes
    ----------
    ended : list of (int, int)
        Start and end in nanoseconds of those that can't grow any more.
    """

    def __init__(self, least_ns: int) -> None:
        self._least_ns = least_ns
        self.ended: list[tuple[int, int]] = []
        self._open: tuple[int, int] | None = None

    def take(self, mask: NDArray[np.bool_], t_ns: NDArray[np.int64]) -> None:
        """Take the next bins: what holds of each, and when it begins."""
        runs = runs_of(mask, t_ns)
        first = self._joined(runs)
        for run in runs[first:]:
            self._end()
            self._open = run
        if self._open is not None and len(t_ns) and int(t_ns[-1]) >= self._open[1]:
            self._end()

    def _end(self) -> None:
        if self._open is not None and self._lasts(self._open):
            self.ended.append(self._open)
        self._open = None

    def _joined(self, runs: list[tuple[int, int]]) -> int:
        """Let the first of the runs go on with the open one, if it does; give how many did."""
        if not runs or self._open is None or runs[0][0] != self._open[1]:
            return 0
        self._open = self._open[0], runs[0][1]
        return 1

    def _lasts(self, run: tuple[int, int]) -> bool:
        return run[1] - run[0] >= self._least_ns

    def still_open(self, mask: NDArray[np.bool_], t_ns: NDArray[np.int64]) -> list[tuple[int, int]]:
        """Give those that have not ended, were these the next bins: none, one or two.

        Nothing is taken.
        """
        ahead = LongRuns(self._least_ns)
        ahead._open = self._open
        ahead.take(mask, t_ns)
        return [*ahead.ended, *([ahead._open] if ahead._open and ahead._lasts(ahead._open) else [])]
