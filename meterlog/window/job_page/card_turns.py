"""CardTurns: entries on the card that can be taken back, newest first. No widgets."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from meterlog.model.card_fields import FIELDS
from meterlog.model.job_card import JobCard, value_of, with_value

Change = Callable[[JobCard], JobCard]


@dataclass(frozen=True, slots=True)
class Turn:
    """One entry.

    Attributes
    ----------
    words : str
        What was done.
    before, after : mapping of str to str
        What the fields it changed said, by their keys.
    """

    words: str
    before: Mapping[str, str]
    after: Mapping[str, str]


class CardTurns:
    """What was entered at one job since it was opened."""

    def __init__(self) -> None:
        self._done: list[Turn] = []
        self._back: list[Turn] = []

    def forget(self) -> None:
        """Begin anew: another job is at hand."""
        self._done, self._back = [], []

    @property
    def can_undo(self) -> bool:
        """True where there is an entry to take back."""
        return bool(self._done)

    @property
    def can_redo(self) -> bool:
        """True where one was taken back."""
        return bool(self._back)

    def note(self, words: str, before: JobCard, after: JobCard) -> None:
        """Note an entry that was kept; one that goes on in the same field is one entry."""
        changed = [
            field.key
            for field in FIELDS
            if value_of(before, field.key) != value_of(after, field.key)
        ]
        if not changed:
            return
        turn = Turn(
            words,
            {key: value_of(before, key) for key in changed},
            {key: value_of(after, key) for key in changed},
        )
        self._back = []
        last = self._done[-1] if self._done else None
        if last is not None and last.words == words and last.after == turn.before:
            turn = Turn(words, last.before, turn.after)
            self._done.pop()
        self._done.append(turn)

    def undo(self, change: Callable[[Change], None]) -> str:
        """Take the newest entry back.

        Parameters
        ----------
        change : callable
            Is given what changes the card; where it raises, nothing is taken back.

        Returns
        -------
        str
            What was taken back; empty where there was nothing.
        """
        return self._turn(self._done, self._back, change, back=True)

    def redo(self, change: Callable[[Change], None]) -> str:
        """Put in again what was taken back last; as :meth:`undo`."""
        return self._turn(self._back, self._done, change, back=False)

    @staticmethod
    def _turn(
        here: list[Turn], there: list[Turn], change: Callable[[Change], None], *, back: bool
    ) -> str:
        if not here:
            return ""
        turn = here[-1]
        values = turn.before if back else turn.after
        change(lambda card: _with(card, values))
        there.append(here.pop())
        return turn.words


def _with(card: JobCard, values: Mapping[str, str]) -> JobCard:
    for key, text in values.items():
        card = with_value(card, key, text)
    return card
