"""BesideGood: the chosen new part held against the table of baselines, in a thread of its own."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

from meterlog.model.errors import UsageError
from meterlog.window.good_ones import KeptChoice, find_tables
from meterlog.window.job_at_hand import JobAtHand
from meterlog.window.long_work import LongWork
from meterlog.window.remedies_here import remedy_here
from meterlog.work.job_folder import Side
from meterlog.work.library import WatchedFolders

if TYPE_CHECKING:
    from meterlog.work.screening import Held
    from meterlog.work.screening.usuals import TableSign


@dataclass(frozen=True, slots=True)
class Asked:
    """What shall be held.

    Attributes
    ----------
    after : Path
        The recording.
    number : str
        Its part number by the job's card; empty: by what it says of its part.
    stamp : int, nanoseconds
        When the edits on top of it were last changed.
    """

    after: Path
    number: str
    stamp: int


@dataclass(frozen=True, slots=True)
class Beside:
    """What came of it.

    Attributes
    ----------
    asked : Asked
    sign : TableSign or None
        Of the table; None where there is none.
    held : Held or None
        None where there is nothing to hold it against.
    made : datetime or None
        When the table was written.
    words : str
        Why there is nothing; empty where there is, or no table is at hand.
    """

    asked: Asked
    sign: TableSign | None = None
    held: Held | None = None
    made: datetime | None = None
    words: str = ""

    @property
    def table(self) -> Path | None:
        """The table of baselines."""
        return None if self.sign is None else self.sign.path


class BesideGood:
    """Nothing here waits; :meth:`tick` fetches what is done.

    Parameters
    ----------
    at_hand : JobAtHand
        Tells the part number by its card, and where recordings lie.
    """

    def __init__(self, at_hand: JobAtHand) -> None:
        self._at_hand = at_hand
        self._work: LongWork[Beside] = LongWork("beside-good")
        self._asked: Asked | None = None
        self._holding: Asked | None = None
        self._due = False
        self._kept = KeptChoice()
        self.found: Beside | None = None
        self.trouble = ""

    @property
    def busy(self) -> bool:
        """True until what was asked last has been answered."""
        return self._work.busy or self._due

    @property
    def working(self) -> bool:
        """True while a recording is being held."""
        return self._work.busy

    @property
    def part(self) -> float:
        """The part done, 0 to 1."""
        return self._work.part

    @property
    def stopping(self) -> bool:
        """True once it was asked to stop."""
        return self._work.cancelling

    def ask(self, after: Path | None, stamp: int) -> bool:
        """Ask for another recording, or anew: the table may be another one.

        Returns
        -------
        bool
            True where what is known is of another recording and must not be shown any more.
        """
        asked = None if after is None else Asked(after, self._number(after), stamp)
        gone = self.found is not None and asked != self.found.asked
        if gone:
            self.found = None
        if asked != self._asked:
            self._work.cancel()
        self.trouble = ""
        self._asked, self._due = asked, asked is not None
        return gone

    def cancel(self) -> None:
        """Stop; it is done again where it is asked again."""
        self._due = False
        self._work.cancel()

    def tick(self, *, may_begin: bool) -> bool:
        """Fetch and begin what is due; True where something else is known now.

        Parameters
        ----------
        may_begin : bool
            Nothing that goes first is under way.
        """
        news = False
        done = self._work.fetch()
        if done is not None:
            found, trouble = done
            # Of what was asked before, neither what was found nor what went wrong counts.
            same = self._asked is not None and self._holding == self._asked
            if same and (found is not None or not self._due):
                news = found is not self.found or trouble != self.trouble
                self.found, self.trouble = found, trouble
        if self._due and may_begin and not self._work.busy and self._asked is not None:
            self._due = False
            self._holding = self._asked
            asked, known = self._asked, self.found
            choice, roots = self._kept.load(), self._roots()
            self._work.begin(lambda tell: hold(asked, choice, roots, known, tell))
        return news

    def close(self) -> None:
        """Let go of the thread."""
        self.cancel()

    def _number(self, after: Path) -> str:
        for one in self._at_hand.work.recordings:
            if one.folder == after:
                card = self._at_hand.card
                return (card.new_part if one.side is Side.NEW else card.old_part).number
        return ""

    def _roots(self) -> tuple[Path, ...]:
        return (self._at_hand.jobs_folder().parent, *WatchedFolders().load())


def hold(
    asked: Asked,
    choice: str | None,
    roots: Sequence[Path],
    known: Beside | None,
    tell: Callable[[float], None],
) -> Beside:
    """Hold a recording against the table that is used; for a thread of its own.

    Parameters
    ----------
    asked : Asked
    choice : str or None
        Which table, as it is kept.
    roots : sequence of Path
        Where tables are looked for.
    known : Beside or None
        What is known already; given back where neither recording nor table has changed.
    tell : callable
        Called with the part done, 0 to 1.

    Raises
    ------
    EvidenceError
        If the table can't be read, or that of the recording's edits.
    RecordingUnreadable
        If the recording can't be read.
    """
    table = find_tables(choice, roots, tell).used
    if table is None:
        return Beside(asked)
    # Not needed to open a window, nor where there is no table.
    from meterlog.work.screening import AgainstRequest, hold_folder
    from meterlog.work.screening.usuals import TableSign

    sign = TableSign.of(table)
    if known is not None and (known.asked, known.sign) == (asked, sign):
        return known
    try:
        held = hold_folder(AgainstRequest(sign.path, asked.after, asked.number), tell)
    except UsageError as error:
        return Beside(asked, sign, words=remedy_here(str(error)))
    return Beside(asked, sign, held, sign.made)
