"""GoodOnesDesk: the table of good ones that recordings are held against, read and kept in step."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QFileDialog

from meterlog.model.errors import MeterlogError
from meterlog.window.folder_dialog import show_beside
from meterlog.window.good_ones import (
    FoundTables,
    KeptChoice,
    beside_lines,
    caution_lines,
    find_tables,
    from_words,
)
from meterlog.window.good_ones.beside_words import usual_told
from meterlog.window.long_work import LongWork, trouble_words
from meterlog.window.recordings_page.good_ones_row import GoodOnesRow
from meterlog.window.recordings_page.newest_question import NewestQuestion
from meterlog.window.remedies_here import remedy_here
from meterlog.window.words import say, say_many
from meterlog.work.library import Hit, Kind, Library, Usual, Wanted

if TYPE_CHECKING:
    from meterlog.work.screening import Usuals


@dataclass(frozen=True, slots=True)
class _Read:
    """What came of looking for tables and reading the one that is used, by which choice."""

    choice: str | None
    found: FoundTables
    usuals: Usuals | None
    trouble: str


@dataclass(frozen=True, slots=True)
class _Told:
    """What is told of one recording, and by which table."""

    usuals: Usuals
    hit: Hit
    words: str


class GoodOnesDesk:
    """Nothing here waits; :meth:`tick` fetches what is done.

    Parameters
    ----------
    library : Library
    row : GoodOnesRow
    changed : callable
        Called when other marks are known, so that what is on show is asked for anew.
    told : callable
        Called when there are other words on the chosen one.
    """

    def __init__(
        self,
        library: Library,
        row: GoodOnesRow,
        changed: Callable[[], None],
        told: Callable[[], None],
    ) -> None:
        self._library, self._row = library, row
        self._changed, self._told = changed, told
        self._kept = KeptChoice()
        self._choice = self._kept.load()
        self._reading: LongWork[_Read] = LongWork("good-ones")
        self._holding: LongWork[int] = LongWork("held")
        self._detail: NewestQuestion[_Told] = NewestQuestion("beside")
        self._roots: tuple[Path, ...] = ()
        self._due = self._to_hold = False
        self._dialog: QFileDialog | None = None
        self._words: _Told | None = None
        self.usuals: Usuals | None = None
        self.trouble = ""
        row.chosen.connect(self.choose)
        row.browse.connect(self._browse)
        row.show_tables((), self._choice)

    @property
    def busy(self) -> bool:
        """True while something is under way."""
        return self._reading.busy or self._holding.busy or self._detail.busy or self._due

    @property
    def holding(self) -> bool:
        """True while recordings are being held against the table."""
        return self._holding.busy

    def look(self, roots: Sequence[Path]) -> None:
        """Look for tables in these folders, and read the one that is used where it has changed."""
        self._roots = tuple(roots)
        self._due = True

    def hold(self) -> None:
        """Hold against the table what has been judged meanwhile."""
        self._to_hold = True

    def choose(self, choice: str | None) -> None:
        """Take a table, none or the one found by itself, now and in future."""
        self._choice = choice
        self._kept.keep(choice)
        self._due = True

    def marked(self, only: Usual | None) -> Callable[[Sequence[Hit]], tuple[Hit, ...]]:
        """Give what marks hits with all that is known now; for the thread that searches."""
        usuals = self.usuals
        if usuals is None:
            return tuple
        return lambda hits: usuals.marked(hits, only)

    def words(self, hit: Hit) -> str:
        """Give what is told of one recording, and ask for it where that is not known yet."""
        usuals, library = self.usuals, self._library
        if usuals is None or hit.kind is not Kind.RUN or not hit.sentence:
            return ""
        told = self._words
        if told is None or told.hit != hit:
            self._detail.ask(lambda: _Told(usuals, hit, _beside(usuals, library, hit)))
        # What is on show of the same one stays until there are other words.
        return told.words if told is not None and told.hit.folder == hit.folder else ""

    def tick(self, *, may_hold: bool) -> None:
        """Fetch what is done and begin what is due.

        Parameters
        ----------
        may_hold : bool
            Nothing that goes first is under way, such as a recording.
        """
        self._fetch()
        if self._holding.busy and not may_hold:
            self._holding.cancel()
            self._to_hold = True
        if self._due and not self._reading.busy:
            self._due = False
            choice, roots, known = self._choice, self._roots, self.usuals
            self._reading.begin(lambda tell: _read(choice, roots, known, tell))
        usuals, library, roots = self.usuals, self._library, self._roots
        if self._to_hold and may_hold and usuals is not None and not self._holding.busy:
            self._to_hold = False
            self._holding.begin(
                lambda tell: usuals.judge(library, library.search(roots, Wanted()), tell)
            )

    def close(self) -> None:
        """Let go of the threads."""
        self._due = self._to_hold = False
        for one in (self._reading, self._holding):
            one.cancel()
            one.wait()
        self._detail.close()

    def _fetch(self) -> None:
        read, held, detail = self._reading.fetch(), self._holding.fetch(), self._detail.fetch()
        if read is not None:
            self._take(*read)
        if held is not None:
            many, trouble = held
            self.trouble = trouble or self.trouble
            if many:
                self._changed()
        if detail is not None:
            told, trouble = detail
            self.trouble = trouble or self.trouble
            # By a table that is used no more, nothing is told.
            if told is not None and told.usuals is self.usuals:
                self._words = told
                self._told()

    def _take(self, read: _Read | None, trouble: str) -> None:
        if read is None:
            self.trouble = trouble
            return
        if read.choice != self._choice:
            return  # another table was chosen since, and is read next
        self.trouble = read.trouble
        self._row.show_tables(read.found.tables, self._choice)
        if read.usuals is not self.usuals:
            self.usuals, self._words = read.usuals, None
            # What is being held against the table before is not asked for any more.
            self._holding.cancel()
            self._to_hold = True
            self._changed()
            self._told()
        self._row.tell(_holds(read.usuals, read.found))

    def _browse(self) -> None:
        dialog = QFileDialog(
            self._row.window(), say("The table of good ones: choose its file, baselines.parquet")
        )
        dialog.setFileMode(QFileDialog.FileMode.ExistingFile)
        dialog.setNameFilter(say("Tables of baselines ({pattern})", pattern="*.parquet"))
        dialog.setOption(QFileDialog.Option.DontUseNativeDialog)
        if self.usuals is not None:
            dialog.setDirectory(str(self.usuals.sign.path.parent))
        elif self._roots:
            dialog.setDirectory(str(self._roots[0]))
        dialog.fileSelected.connect(self.choose)
        self._dialog = dialog
        show_beside(dialog)


def _read(
    choice: str | None,
    roots: Sequence[Path],
    known: Usuals | None,
    tell: Callable[[float], None],
) -> _Read:
    """Look for tables and read the one that is used; one that is known is not read again."""
    found = find_tables(choice, roots, tell)
    if found.used is None:
        return _Read(choice, found, None, "")
    # Not needed to open a window, nor where there is no table.
    from meterlog.work.screening import Usuals
    from meterlog.work.screening.usuals import TableSign

    try:
        if known is not None and TableSign.of(found.used) == known.sign:
            return _Read(choice, found, known, "")
        return _Read(choice, found, Usuals(found.used), "")
    except MeterlogError as error:
        return _Read(choice, found, None, trouble_words(error))


def _holds(usuals: Usuals | None, found: FoundTables) -> str:
    if usuals is None:
        return "" if found.used is not None else say("no table: “meterlog screen FOLDER” makes one")
    numbers = usuals.numbers
    return say_many(
        len(numbers),
        "1 part number: {names}",
        "{many} part numbers: {names}",
        many=len(numbers),
        names=", ".join(numbers) or "–",
    )


def _beside(usuals: Usuals, library: Library, hit: Hit) -> str:
    """Say how one recording lies beside the good ones of its part; for a thread of its own."""
    found = usuals.held(library, hit)
    if found.held is not None:
        held = found.held
        lead = from_words(held, usuals.sign.path, usuals.sign.made)
        head = say("Against good ones: {usual}. {lead}", usual=usual_told(held.usual), lead=lead)
        refusal = [remedy_here(held.comparison.refusal)] if held.comparison.refusal else []
        return "\n".join([head, *refusal, *beside_lines(held), *caution_lines(held.comparison)])
    told = say("Against good ones: {usual}.", usual=usual_told(Usual.NO_BASELINE))
    return f"{told} {_why_none(found.number, found.volts)}".strip()


def _why_none(number: str, volts: Sequence[float]) -> str:
    if not number:
        return say(
            "Neither the recording nor its job says the part number: enter it on the Job page."
        )
    if volts:
        known = ", ".join(f"{one:g} V" for one in volts)
        return say("The table holds {number} for {known} nominal only.", number=number, known=known)
    return say("The table holds none of {number} of its kind.", number=number)
