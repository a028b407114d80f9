"""Onset: what is known of the moment at which the current went."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.rows import Rows
from meterlog.model import Limits

_KEPT = 2
"""The nearer of two rows may be half-way already."""


def _near(column: NDArray[np.float64] | None, index: int) -> NDArray[np.float64]:
    """Give the readings of the two rows before ``index``; the nearer may be half-way already."""
    if column is None:
        return np.empty(0)
    return column[max(index - 2, 0) : index]


class LastFlow:
    """Remembers feed and return of the last two rows with current, and when that was.

    Attributes
    ----------
    feed, back : ndarray, float64, volts
        Empty without such a channel.
    """

    def __init__(self) -> None:
        self.feed = self.back = np.empty(0)
        self._last_ns: int | None = None

    def note(self, rows: Rows, first: int, last: int, *, goes_on: bool) -> None:
        """Take rows ``first`` to ``last`` (exclusive), all with current.

        ``goes_on``: they continue the rows taken before.
        """
        kept = (self.feed, self.back) if goes_on else (np.empty(0), np.empty(0))
        self.feed, self.back = (
            np.empty(0)
            if column is None
            else np.concatenate((before, column[max(first, last - _KEPT) : last]))[-_KEPT:]
            for before, column in zip(kept, (rows.feed, rows.back), strict=True)
        )
        self._last_ns = int(rows.t_ns[last - 1])

    def forget(self) -> None:
        """Know that the current has gone since."""
        self._last_ns = None

    def turns_at(self, t_ns: int, coast_ns: int) -> bool:
        """Tell whether the current flowed so shortly ago that the motor may still turn."""
        return self._last_ns is not None and t_ns - self._last_ns <= coast_ns


class Onset:
    """Remembers times and levels from before the current went.

    Attributes
    ----------
    gone_ns : int, nanoseconds
        First reading without current.
    since_ns : int, nanoseconds
        The same, or the last change of the commanded speed if that came later: a voltage tells
        something only if it was read afterwards.
    flowed : bool
        Current flowed right before, so that the motor turns and generates.
    feed_v, back_v : float or None, volts
        Feed and return before; None where not known.
    """

    def __init__(self, limits: Limits) -> None:
        self._present_v = limits.supply_present_v
        self.gone_ns = 0
        self.since_ns = 0
        self.flowed = False
        self.feed_v: float | None = None
        self.back_v: float | None = None

    def begin(
        self,
        rows: Rows,
        index: int,
        before: tuple[NDArray[np.float64], NDArray[np.float64]] | None,
        *,
        flowed: bool,
    ) -> None:
        """Note that row ``index`` is the first without current.

        ``before`` are feed and return when the current was last read; None where that is in the
        rows right before.
        """
        self.gone_ns = self.since_ns = int(rows.t_ns[index])
        self.flowed = flowed
        self.back_v = None
        near = (_near(rows.feed, index), _near(rows.back, index))
        self._levels(*(near if before is None else before), flowing=flowed)

    def asked(self, rows: Rows, index: int, at_ns: int) -> None:
        """Note a change of the commanded speed before row ``index``, while there is no current."""
        self.since_ns = at_ns
        self._levels(_near(rows.feed, index), _near(rows.back, index), flowing=False)

    def _levels(
        self, feed: NDArray[np.float64], back: NDArray[np.float64], *, flowing: bool
    ) -> None:
        feed, back = feed[np.isfinite(feed)], back[np.isfinite(back)]
        if len(feed) and (flowing or float(feed.max()) >= self._present_v):
            self.feed_v = float(feed.max())
        if len(back) and flowing:
            self.back_v = float(back.min())
