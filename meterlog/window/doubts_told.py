"""DoubtsTold: what has just begun to speak against a meter, for a banner that goes away again."""

from __future__ import annotations

from collections.abc import Sequence

from meterlog.model import Doubt, DoubtKind, Role
from meterlog.window.remedies_here import remedy_here

_FOR_S = 12.0
_QUIET = {DoubtKind.ZERO_MISSING, DoubtKind.ZERO_OLD, DoubtKind.ACCURACY}
"""Beside the digits, or known before the recording began: nothing has just happened."""


class DoubtsTold:
    """Gives each doubt once, for so long that it can be read; after that the list has it."""

    def __init__(self) -> None:
        self._since_s: dict[tuple[DoubtKind, str, Role | None, int], float] = {}

    def words(self, doubts: Sequence[Doubt], now_s: float) -> str:
        """Give the newest doubt that is still to be shown; empty when there is none.

        Parameters
        ----------
        doubts : sequence of Doubt
            All that stand now.
        now_s : float, seconds
            Of a clock that only goes forward.
        """
        told = ""
        newest_s = now_s - _FOR_S
        for doubt in doubts:
            if doubt.kind in _QUIET:
                continue
            mark = (doubt.kind, doubt.source, doubt.role, round(doubt.start_ns / 1e9))
            since_s = self._since_s.setdefault(mark, now_s)
            if since_s > newest_s:
                told, newest_s = f"⚠ {remedy_here(doubt.text)}", since_s
        return told

    def forget(self) -> None:
        """Begin anew, for another recording."""
        self._since_s.clear()
