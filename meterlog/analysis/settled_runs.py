"""SettledRuns: how far into a list of pieces the answers stand, so that none is asked again."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Generic, TypeVar

from meterlog.analysis.pieces import Piece
from meterlog.analysis.timeline import SpeedChange

_Answer = TypeVar("_Answer")
_SLACK = 1e-9
"""Rounding: what is this near to its threshold is asked."""


@dataclass(frozen=True, slots=True)
class SettledRun:
    """A run of pieces that changes no more.

    Attributes
    ----------
    first, last : int
        Its first piece, and the one after its last.
    from_ohm : float, ohms
        A source of less than this leaves the run without an answer; -inf: ask in any case.
    """

    first: int
    last: int
    from_ohm: float


class SettledRuns(Generic[_Answer]):
    """Keeps the answers about the front of a list that only grows at its end.

    All answers rest on the resistance of the source, which is known a little better with each
    command. Only the runs that it could make a difference to are then asked again.
    """

    def __init__(self) -> None:
        self._count = 0
        self._next: Piece | None = None
        self._end_ns = 0
        self._changes: list[SpeedChange] = []
        self._runs: list[SettledRun] = []
        self._answers: dict[int, _Answer] = {}
        self._grounds: object = None

    def resume(
        self, pieces: Sequence[Piece], changes: Sequence[SpeedChange], grounds: object, ohm: float
    ) -> tuple[int, dict[int, _Answer], list[SettledRun]]:
        """Give the first piece to ask about, and what is known about those before it.

        Parameters
        ----------
        pieces : sequence of Piece
        changes : sequence of SpeedChange
            Where one has come among those that the answers rest on, everything is asked afresh.
        grounds : object
            What is known of the source; where it has changed, some are asked again.
        ohm : float, ohms
            Of the source; where it is less than 0 only those are that hang on no resistance.

        Returns
        -------
        int
        dict
            The answers by the index of their piece.
        list of SettledRun
            Those before that first piece which are to be asked again all the same.
        """
        same = self._count < len(pieces) and pieces[self._count] is self._next
        if not same or self._known(changes) != self._changes:
            self._count, self._next, self._end_ns = 0, None, 0
            self._changes, self._runs, self._answers = [], [], {}
        again: list[SettledRun] = []
        if grounds != self._grounds:
            self._answers = {}
            again = [run for run in self._runs if run.from_ohm <= ohm * (1.0 + _SLACK)]
        self._grounds = grounds
        return self._count, dict(self._answers), again

    def _known(self, changes: Sequence[SpeedChange]) -> list[SpeedChange]:
        return list(changes[: bisect_right(changes, self._end_ns, key=lambda one: one.t_ns)])

    def settle(
        self,
        pieces: Sequence[Piece],
        changes: Sequence[SpeedChange],
        runs: Sequence[SettledRun],
        answers: Mapping[int, _Answer],
    ) -> None:
        """Note that these further runs stand, and all answers up to the last of them.

        The last run of the pieces is passed over where nothing follows it: it still grows.
        """
        runs = [run for run in runs if run.last + 1 < len(pieces)]
        if runs:
            self._runs += runs
            self._count = runs[-1].last
            self._next, self._end_ns = pieces[self._count], pieces[self._count - 1].end_ns
            self._changes = self._known(changes)
        self._answers = {at: one for at, one in answers.items() if at < self._count}
