"""RecordingsDesk: ties the library to its page: looks through folders, searches, judges, opens."""

from __future__ import annotations

import time
from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import QFileDialog, QWidget

from meterlog.evidence.palette import Palette
from meterlog.model.errors import MeterlogError
from meterlog.recording.spill_places import spill_places
from meterlog.window.folder_dialog import show_beside
from meterlog.window.job_at_hand import JobAtHand
from meterlog.window.recordings_page.good_ones_desk import GoodOnesDesk
from meterlog.window.recordings_page.hit_words import COLUMNS, USUAL, detail_words
from meterlog.window.recordings_page.library_work import LibraryWork
from meterlog.window.recordings_page.newest_question import NewestQuestion
from meterlog.window.recordings_page.recordings_page import RecordingsPage
from meterlog.window.recordings_page.sorted_hits import sorted_hits
from meterlog.window.remedies_here import remedy_here
from meterlog.window.session import Phase, Session
from meterlog.window.words import say
from meterlog.window.work_page import PageKey
from meterlog.work.library import (
    Hit,
    Kind,
    SpeedSeries,
    Usual,
    Wanted,
    WatchedFolders,
    series_of,
)

_Key = Qt.Key
_FETCH_MS = 15
"""An answer to a search is shown so soon after it is there."""
_AGAIN_S = 20.0
"""So often the folders are looked through while the page is on show."""
_AFTER_TROUBLE_S = 3.0
_SEARCHING_S = 0.3
"""What is found to other words stands for so long before it is said that the search goes on."""
_SHOW_AGAIN_S = 1.5
"""So often what has been read and judged meanwhile is shown."""
_SETTLED = {Phase.IDLE, Phase.SHOWING}
_Question = tuple[tuple[Path, ...], Wanted, Usual | None, tuple[int, bool]]
"""Folders, what is searched for, how it is to lie beside good ones, and the order."""


class RecordingsDesk:
    """The Recordings page with its working parts.

    Parameters
    ----------
    at_hand : JobAtHand
        Its jobs' folder tells the usual folder of recordings.
    session : Session
    open_recording, open_job : callable
        Called with the folder to open.
    index : Path or None
        File of the index; None: the usual one.
    """

    def __init__(
        self,
        at_hand: JobAtHand,
        session: Session,
        open_recording: Callable[[Path], None],
        open_job: Callable[[Path], None],
        index: Path | None = None,
    ) -> None:
        self._at_hand, self._session = at_hand, session
        self._open_recording, self._open_job = open_recording, open_job
        self.page = RecordingsPage()
        self.work = LibraryWork(index)
        self.good_ones = GoodOnesDesk(
            self.work.library, self.page.good_ones, self._search, self._show_detail
        )
        self._kept = WatchedFolders()
        self._watched = self._kept.load()
        self._searching: NewestQuestion[tuple[_Question, tuple[Hit, ...]]] = NewestQuestion(
            "search"
        )
        self._question: _Question | None = None
        self._unanswered_s: float | None = None
        self._series: NewestQuestion[tuple[SpeedSeries, ...]] = NewestQuestion("currents")
        self._sort = 0, True
        self._phases = session.phases.mark()
        self._trouble = ""
        self._date_trouble = self._search_trouble = ""
        self._shown_s = float("-inf")
        self._dialog: QFileDialog | None = None
        self._timer = QTimer(self.page)
        self._timer.setInterval(_FETCH_MS)
        self._timer.timeout.connect(self._fetch)
        self._connect()
        self._show_folders()

    def _connect(self) -> None:
        page = self.page
        page.search.changed.connect(self._search)
        page.search.left.connect(self._to_table)
        page.table.hits.sorting.connect(self._on_sort)
        page.table.opened.connect(self._open)
        page.table.chosen.connect(self._on_chosen)
        page.strip.cancelled.connect(self.work.cancel)
        folders = page.folders
        folders.narrowed.connect(self._search)
        folders.watch_asked.connect(self._ask_folder)
        folders.forget_asked.connect(self._forget)
        folders.mend_asked.connect(self._mend)
        folders.judge_asked.connect(self._judge)

    @property
    def widget(self) -> QWidget:
        """What stands in the stack of pages."""
        return self.page

    def begin(self) -> None:
        """Look through the folders again: the page is being turned to."""
        self._trouble = ""
        self._show_folders()
        self._look()
        self._look_for_tables()
        self._search()

    def tick(self) -> None:
        """Fetch what has been read and judged, and begin what is due."""
        self._on_phase()
        if self.work.tick(may_judge=self._may_judge()):
            self._show_folders()
            self.good_ones.hold()
            self._search()
        self.good_ones.tick(may_hold=self._may_judge())
        now_s = time.monotonic()
        if self.page.isVisible():
            if (self.work.busy or self.good_ones.holding) and now_s - self._shown_s > _SHOW_AGAIN_S:
                self._search()
            idle_s = now_s - self.work.looked_s
            due_s = _AFTER_TROUBLE_S if self.work.trouble else _AGAIN_S
            if idle_s > due_s and not self._session.recording:
                self._look()
        self._show_words()

    def set_palette(self, palette: Palette, pixels: int) -> None:
        """Take other colours, and text of ``pixels`` height."""
        self.page.set_palette(palette, pixels)

    def keys(self) -> tuple[PageKey, ...]:
        """Give the keys of this page."""
        # While recording Enter stops, wherever the focus is.
        opens = () if self._session.recording else ("Enter",)
        keys = [
            *(PageKey((), one, say("open"), lambda: None) for one in opens),
            PageKey((_Key.Key_I,), "I", say("find"), self._to_words),
            PageKey((_Key.Key_Q,), "Q", say("clear the search"), self.page.search.clear_all),
            PageKey((_Key.Key_Y,), "Y", say("sort by the next column"), self._next_column),
            PageKey((_Key.Key_V,), "V", say("turn the order"), self._turn_order),
            PageKey((_Key.Key_A,), "A", say("choose all"), self.page.table.selectAll),
            PageKey((_Key.Key_H,), "H", say("current at the next speed"), self._next_speed),
        ]
        if self.work.unsealed and not self._session.recording:
            keys.append(PageKey((_Key.Key_C,), "C", say("seal what was cut off"), self._mend))
        return tuple(keys)

    def may_close(self) -> bool:
        """Tell that nothing is lost: the index can be made again."""
        return True

    def close(self) -> None:
        """Let go of threads and of the index."""
        self._timer.stop()
        self._searching.close()
        self._series.close()
        self.good_ones.close()
        self.work.close()

    # Folders

    def _usual(self) -> Path:
        return self._at_hand.jobs_folder().parent.absolute()

    def _all_roots(self) -> tuple[Path, ...]:
        # Where recordings go on when their disk fails, if that ever happened.
        spilt = (one for one in spill_places() if one.is_dir())
        return tuple(dict.fromkeys((self._usual(), *self._watched, *spilt)))

    def _show_folders(self) -> None:
        self.page.folders.show_folders(self._all_roots(), self._watched, self.work.gone)

    def _look(self) -> None:
        usual = self._usual()
        self.work.look(self._all_roots(), usual)

    def _look_for_tables(self) -> None:
        self.good_ones.look(self._all_roots())

    def _ask_folder(self) -> None:
        dialog = QFileDialog(self.page.window(), say("Look into another folder: choose it"))
        dialog.setFileMode(QFileDialog.FileMode.Directory)
        dialog.setOption(QFileDialog.Option.ShowDirsOnly)
        dialog.setOption(QFileDialog.Option.DontUseNativeDialog)
        dialog.fileSelected.connect(lambda name: self.watch(Path(name)))
        self._dialog = dialog
        show_beside(dialog)

    def watch(self, folder: Path) -> None:
        """Look into another folder too, now and in future."""
        self._keep_watched((*self._watched, folder.absolute()))
        self._look()
        self._look_for_tables()

    def _forget(self, folder: Path) -> None:
        self._keep_watched(tuple(one for one in self._watched if one != folder))
        self.work.forget(folder)
        self._look_for_tables()

    def _keep_watched(self, folders: tuple[Path, ...]) -> None:
        self._trouble = ""
        self._watched = tuple(dict.fromkeys(folders))
        try:
            self._kept.keep(self._watched)
        except MeterlogError as error:
            self._trouble = remedy_here(str(error))
        self._show_folders()
        self._search()

    # Searching

    def _search(self) -> None:
        wanted, self._date_trouble = self.page.search.wanted()
        roots, library = self.page.folders.roots(), self.work.library
        column, falling = self._sort
        self._shown_s = time.monotonic()
        page, good_ones = self.page, self.good_ones
        page.show_usual(shown=good_ones.usuals is not None)
        usual = page.search.only_usual()
        mark = good_ones.marked(usual)
        question = roots, wanted, usual, self._sort
        if question != self._question:
            self._question = question
            if self._unanswered_s is None:
                self._unanswered_s = self._shown_s
        self._searching.ask(
            lambda: (
                question,
                sorted_hits(mark(library.search(roots, wanted)), column, falling=falling),
            )
        )
        self._timer.start()

    def _fetch(self) -> None:
        found = self._searching.fetch()
        if found is not None:
            answer, self._search_trouble = found
            if answer is not None:
                # An older question's hits are shown, too, but never counted as the newest's.
                question, hits = answer
                self.page.table.show_hits(hits)
                if question == self._question:
                    self._unanswered_s = None
                    self.page.folders.show_many(len(hits))
            elif not self._searching.busy:
                self._unanswered_s = None
                self.page.folders.show_many(None)
        since_s = self._unanswered_s
        if since_s is not None and time.monotonic() - since_s > _SEARCHING_S:
            self.page.folders.show_searching()
        series = self._series.fetch()
        if series is not None and series[0] is not None:
            self.page.currents.show_series(series[0])
        if not self._searching.busy and not self._series.busy:
            self._timer.stop()

    def _on_chosen(self) -> None:
        chosen = self.page.table.chosen_hits()
        self._show_detail()
        self._series.ask(lambda: series_of(chosen))
        self._timer.start()

    def _show_detail(self) -> None:
        hit = self.page.table.current_hit()
        beside = "" if hit is None else self.good_ones.words(hit)
        self.page.show_detail(
            say("Nothing was found.") if hit is None else detail_words(hit, beside)
        )

    def _on_sort(self, column: int, falling: bool) -> None:  # noqa: FBT001 - a signal gives it
        self._sort = column, falling
        self._search()

    def _order_by(self, column: int, *, falling: bool) -> None:
        order = Qt.SortOrder.DescendingOrder if falling else Qt.SortOrder.AscendingOrder
        self.page.table.sortByColumn(column, order)

    def _next_column(self) -> None:
        shown = len(COLUMNS) if self.good_ones.usuals is not None else USUAL
        column = (self._sort[0] + 1) % shown
        self._order_by(column, falling=column == 0)

    def _turn_order(self) -> None:
        self._order_by(self._sort[0], falling=not self._sort[1])

    def _next_speed(self) -> None:
        self.page.currents.next_speed()

    def _to_words(self) -> None:
        self.page.search.words.setFocus(Qt.FocusReason.OtherFocusReason)
        self.page.search.words.selectAll()

    def _to_table(self) -> None:
        self.page.table.setFocus(Qt.FocusReason.OtherFocusReason)

    # Doing

    def _open(self, hit: Hit) -> None:
        self._trouble = ""
        if hit.away:
            self._trouble = say(
                "{folder} can't be looked into now: plug in or connect its disk.", folder=hit.folder
            )
        elif hit.kind is Kind.JOB:
            self._open_job(hit.folder)
        else:
            self._open_recording(hit.folder)
        self._show_words()

    def _mend(self) -> None:
        self._trouble = ""
        try:
            self._session.mend(self.work.unsealed)
        except MeterlogError as error:
            self._trouble = remedy_here(str(error))
        self._show_words()

    def _judge(self) -> None:
        self.work.go_on_judging()

    def _may_judge(self) -> bool:
        """Tell whether judging would disturb nothing: what is being recorded goes first."""
        return self.page.isVisible() and not self._session.recording and not self._session.busy

    def _on_phase(self) -> None:
        """Look again once something was recorded or sealed."""
        if any(
            now in _SETTLED and before not in {Phase.OPENING, Phase.IDLE}
            for before, now in tuple(self._phases.turns())
        ):
            self._look()

    def _show_words(self) -> None:
        work, page = self.work, self.page
        told = (
            *(self._date_trouble, self._search_trouble, self._trouble, work.trouble),
            work.library.told,
            self.good_ones.trouble,
        )
        gone = [
            say("{folder}: can't be looked into: {why}.", folder=folder, why=why)
            for folder, why in work.gone.items()
        ]
        page.say("\n".join(one for one in told if one), "\n".join(gone))
        page.folders.show_cut_off(len(work.unsealed), busy=not self._may_mend())
        page.folders.show_to_judge(work.offered)
        words = work.words
        if words:
            page.strip.show_part(words, work.part, stopping=work.stopping)
        else:
            page.strip.hide()

    def _may_mend(self) -> bool:
        return not self._session.recording and not self._session.busy
