"""SettledRuns: how far into a list of pieces the answers stand, so that none is asked again."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Generic, TypeVar

from meterlog.analysis.pieces import Piece

_Answer = TypeVar("_Answer")


class SettledRuns(Generic[_Answer]):
    """Keeps the answers about the front of a list that only grows at its end."""

    def __init__(self) -> None:
        self._grounds: object = None
        self._count = 0
        self._next: Piece | None = None
        self._answers: dict[int, _Answer] = {}

    def resume(self, pieces: Sequence[Piece], grounds: object) -> tuple[int, dict[int, _Answer]]:
        """Give the first piece to ask about, and the answers, by index, about those before it.

        Parameters
        ----------
        pieces : sequence of Piece
        grounds : object
            What all answers rest on; where it has changed, everything is asked afresh.
        """
        same = self._count < len(pieces) and pieces[self._count] is self._next
        if not same or grounds != self._grounds:
            self._count, self._next, self._answers = 0, None, {}
        self._grounds = grounds
        return self._count, dict(self._answers)

    def settle(self, pieces: Sequence[Piece], count: int, answers: Mapping[int, _Answer]) -> None:
        """Note that the answers about the first ``count`` pieces stand.

        Nothing is noted where no piece follows: the last one still grows.
        """
        if count + 1 < len(pieces):
            self._count, self._next, self._answers = count, pieces[count], dict(answers)
