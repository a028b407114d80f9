"""Onset: what is known of the moment at which the current went."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.rows import Rows
from meterlog.model import Limits


def _near(column: NDArray[np.float64] | None, index: int) -> NDArray[np.float64]:
    """Give the readings of the two rows before ``index``; the nearer may be half-way already."""
    if column is None:
        return np.empty(0)
    return column[max(index - 2, 0) : index]


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

        ``before`` are feed and return from when current surely flowed; None where none did.
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
