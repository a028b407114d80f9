"""CompareDesk: ties the page Before / after to the job at hand and to the work in its thread."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication, QKeySequence, QShortcut
from PySide6.QtWidgets import QFileDialog, QWidget

from meterlog.evidence.palette import Palette
from meterlog.profile.full_path import full_path
from meterlog.window.compare_page.beside_good import BesideGood
from meterlog.window.compare_page.compare_view import CompareView
from meterlog.window.compare_page.copied import copied_words
from meterlog.window.compare_page.laid_runs import LaidRuns, lay_runs
from meterlog.window.compare_page.picks import Picks, edit_stamps, offers, recordings_at
from meterlog.window.folder_dialog import show_beside
from meterlog.window.job_at_hand import JobAtHand
from meterlog.window.long_work import LongWork
from meterlog.window.remedies_here import remedy_here
from meterlog.window.session import Session
from meterlog.window.words import later, say
from meterlog.window.work_page import PageKey
from meterlog.work.job_folder import JobWork, Side

_COMPARING = later("Comparing")
_HOLDING = later("Holding the new part against good ones")
_WAITS = later("A recording is in progress: press C, or “Compare again”, to compare all the same.")
_PART = 0.25
"""Of what is shown, that one press of a key moves on."""


class CompareDesk:
    """The page's working parts.

    Parameters
    ----------
    at_hand : JobAtHand
    session : Session
    """

    def __init__(self, at_hand: JobAtHand, session: Session) -> None:
        self._at_hand = at_hand
        self._session = session
        self._work: LongWork[LaidRuns] = LongWork("compare")
        self.beside = BesideGood(at_hand)
        self._others: list[Path] = []
        self._chosen_by_hand = False
        self._stale = True
        self._job: tuple[Path | None, JobWork] = (None, JobWork())
        self._wanted: Picks | None = None
        self._laying: tuple[Picks, tuple[int, ...]] = (Picks(), ())
        """What the comparison under way is of."""
        self._dialog: QFileDialog | None = None
        self._stamps: tuple[int, ...] = ()
        self._waits = True
        self.picks = Picks()
        self.laid: LaidRuns | None = None
        self.view = CompareView()
        self._connect()
        self.view.order_tabs()
        self.view.show_looks()
        at_hand.listeners.append(self._on_job)

    def _connect(self) -> None:
        view, sides = self.view, self.view.sides
        sides.picked.connect(self._on_pick)
        sides.browse.connect(self._browse)
        sides.swap.clicked.connect(self.swap)
        sides.again.connect(self.compare)
        sides.take_in.clicked.connect(self._take_in)
        sides.take_out.clicked.connect(self._take_out)
        view.work.cancelled.connect(self._cancel)
        view.by_step.clicked.connect(lambda: self.look(by_step=True))
        view.by_time.clicked.connect(lambda: self.look(by_step=False))
        view.all.clicked.connect(self.look_at_all)
        view.copy.clicked.connect(self.copy)
        view.table.chosen.connect(self.choose)
        view.good.table.chosen.connect(self.choose)
        view.beside_pair.clicked.connect(lambda: view.turn_to(good=False))
        view.beside_good.clicked.connect(lambda: view.turn_to(good=True))
        view.picture.chosen.connect(self.choose)
        copy = QShortcut(QKeySequence(QKeySequence.StandardKey.Copy), view)
        copy.setContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)
        copy.activated.connect(self.copy)

    @property
    def widget(self) -> QWidget:
        """What stands in the stack of pages."""
        return self.view

    def begin(self) -> None:
        """Offer the job's recordings, and compare the newest of both parts."""
        self._take_offers()
        # The table may be another one by now.
        self._ask_beside()

    def tick(self) -> None:
        """Show how far the comparison is, and what came of it."""
        if self._stale and self.view.isVisible():
            self._take_offers()
        self._tick_beside()
        if not self._work.busy:
            return
        found = self._work.fetch()
        if found is None:
            stopping = self._work.cancelling
            self.view.work.show_part(say(_COMPARING), self._work.part, stopping=stopping)
            return
        self.view.work.hide()
        if self._wanted is not None and self._wanted.request() is not None:
            self._begin_work(self._wanted)
            return
        self._wanted = None
        if self._laying != (self.picks, self._stamps):
            return  # other recordings are chosen, and cannot be compared now
        laid, trouble = found
        self._show(laid)
        if trouble:
            self.view.show_trouble(trouble)
        elif laid is None:
            self.view.show_lacking(say("Cancelled. “Compare again” (C) begins anew."))

    def _show(self, laid: LaidRuns | None) -> None:
        self.laid = laid
        self.view.show_laid(laid)
        self.view.table.choose(None)

    def set_palette(self, palette: Palette, pixels: int) -> None:
        """Take other colours, and text of ``pixels`` height."""
        self.view.set_palette(palette, pixels)

    def keys(self) -> tuple[PageKey, ...]:
        """Give the keys that act on this page now."""
        key = Qt.Key
        sides, picture = self.view.sides, self.view.picture
        return (
            PageKey((key.Key_H,), "H", say("next before"), lambda: sides.step(sides.before)),
            PageKey((key.Key_Q,), "Q", say("next after"), lambda: sides.step(sides.after)),
            PageKey((key.Key_I,), "I", say("swap"), self.swap),
            PageKey((key.Key_C,), "C", say("compare again"), self.compare),
            PageKey((key.Key_F9,), "F9", say("good ones"), self._turn_beside),
            PageKey((key.Key_A,), "A", say("by step, by time"), self._turn_look),
            PageKey((key.Key_F2,), "F2", say("all"), self.look_at_all),
            PageKey((key.Key_F3,), "F3 F4", say("step"), lambda: self._step(-1)),
            PageKey((key.Key_F4,), "", say("next step"), lambda: self._step(1)),
            PageKey((key.Key_F5,), "F5 F6", say("wider, closer"), lambda: picture.zoom(-1.0)),
            PageKey((key.Key_F6,), "", say("closer"), lambda: picture.zoom(1.0)),
            PageKey((key.Key_F7,), "F7 F8", say("earlier, later"), lambda: picture.look_on(-_PART)),
            PageKey((key.Key_F8,), "", say("later"), lambda: picture.look_on(_PART)),
        )

    def may_close(self) -> bool:
        """Tell that nothing is lost when the window closes: a comparison can be made again."""
        return True

    def close(self) -> None:
        """Stop what is under way."""
        self._wanted = None
        self._work.cancel()
        self.beside.close()

    def swap(self) -> None:
        """Exchange before and after."""
        if not self.picks.against_good:
            self._take(self.picks.swapped())

    def compare(self) -> None:
        """Compare what is chosen, whether that was done before or not."""
        self._ask(self.picks)
        self._waits = False
        self._ask_beside()

    def look(self, *, by_step: bool) -> None:
        """Lay speed over speed, or the whole runs."""
        picture = self.view.picture
        chosen = picture.speed
        picture.set_by_step(by_step=by_step)
        if by_step and chosen is not None:
            picture.choose(chosen)
        self.view.show_looks()

    def look_at_all(self) -> None:
        """Look at the whole axis, no speed chosen."""
        self.view.picture.choose(None)
        self.view.table.choose(None)
        self.view.good.table.choose(None)

    def choose(self, speed: int) -> None:
        """Show one speed in the picture and in the table."""
        picture = self.view.picture
        if self.laid is not None and not picture.by_step:
            self.look(by_step=True)
        if self.laid is not None:
            picture.choose(speed)
        self.view.table.choose(speed)
        self.view.good.table.choose(speed)
        picture.setAccessibleDescription(self.view.table.said.text())

    def copy(self) -> None:
        """Copy the comparison as text, what it was measured with and its marks included."""
        words = copied_words(self.laid, self.beside.found)
        if words:
            QGuiApplication.clipboard().setText(words)

    def _turn_beside(self) -> None:
        self.view.turn_to(good=not self.view.beside_good.isChecked())

    def _ask_beside(self) -> None:
        """Hold what is chosen as the new part against good ones."""
        if self.beside.ask(self.picks.after, self._stamps[-1] if self._stamps else 0):
            self.view.show_beside(None)

    def _tick_beside(self) -> None:
        beside = self.beside
        idle = not self._work.busy and (not self._session.recording or not self._waits)
        if beside.tick(may_begin=idle and self.view.isVisible()):
            self.view.show_beside(beside.found, beside.trouble)
        if self._work.busy:
            return
        if beside.working and beside.part > 0.0:
            self.view.work.show_part(say(_HOLDING), beside.part, stopping=beside.stopping)
        else:
            self.view.work.hide()

    def _turn_look(self) -> None:
        self.look(by_step=not self.view.picture.by_step)

    def _step(self, by: int) -> None:
        speeds = self.view.table.speeds or self.view.good.table.speeds
        if not speeds:
            return
        now = self.view.picture.speed or self.view.good.table.chosen_speed
        if now in speeds:
            self.choose(speeds[(speeds.index(now) + by) % len(speeds)])
        else:
            self.choose(speeds[0 if by > 0 else -1])

    def _on_job(self) -> None:
        self._stale = True

    def _take_offers(self) -> None:
        """Offer what there is now; what was chosen by hand stays chosen in the same job."""
        self._stale = False
        work = self._at_hand.work
        job, before_job = (self._at_hand.folder, work), self._job
        self._job = job
        # A job that has just got its folder is the same; another one has other recordings.
        another = job[0] != before_job[0] and work != before_job[1]
        if another:
            self._chosen_by_hand = False
            if self._dialog is not None:
                self._dialog.close()  # it asks for a recording of the job before
        shown = self._session.folder
        if shown is not None and not self._session.recording and recordings_at(shown):
            self._remember(full_path(shown))
        before = offers(work, self._others, Side.OLD)
        after = offers(work, self._others, Side.NEW)
        self.view.sides.offer(before, after)
        picks = Picks() if another else self.picks
        if not self._chosen_by_hand:
            old, new = work.newest(Side.OLD), work.newest(Side.NEW)
            picks = replace(picks, before=old, after=new)
        self._set(picks)

    def _remember(self, folder: Path) -> None:
        if folder not in self._others:
            self._others.append(folder)

    def _on_pick(self) -> None:
        self._take(self.view.sides.chosen(self.picks))

    def _take(self, picks: Picks) -> None:
        """Take what was chosen by hand."""
        self._chosen_by_hand = True
        self._set(picks)

    def _set(self, picks: Picks) -> None:
        """Compare what is chosen where that is not shown yet."""
        stamps = edit_stamps(picks)
        known = (picks, stamps) == (self.picks, self._stamps)
        same = known and (self.laid is not None or self._work.busy)
        another = picks.after != self.picks.after or stamps[-1:] != self._stamps[-1:]
        self.picks, self._stamps = picks, stamps
        if another:
            self._waits = True
            self._ask_beside()
        self.view.sides.show_picks(picks)
        if same:
            return
        if self._session.recording and not picks.lacking():
            # Judging would take time from the readings that come in.
            self._wanted = None
            self._work.cancel()
            self._show(None)
            self.view.show_lacking(say(_WAITS))
            return
        self._ask(picks)

    def _ask(self, picks: Picks) -> None:
        """Begin a comparison; one under way is stopped first."""
        self.view.show_trouble("")
        self.view.show_lacking(picks.lacking())
        if picks.lacking():
            self._wanted = None
            self._work.cancel()
            self._show(None)
        elif self._work.busy:
            self._wanted = picks
            self._work.cancel()
        else:
            self._begin_work(picks)

    def _begin_work(self, picks: Picks) -> None:
        self._wanted = None
        request = picks.request()
        if request is None:
            return
        self._show(None)
        self._laying = picks, self._stamps
        self._work.begin(lambda progress: lay_runs(request, progress))
        self.view.work.show_part(say(_COMPARING), 0.0)

    def _cancel(self) -> None:
        self._wanted = None
        self._work.cancel()
        self.beside.cancel()

    def _take_in(self) -> None:
        chosen = self.picks.before
        if chosen is not None and chosen not in self.picks.good:
            self._take(replace(self.picks, good=(*self.picks.good, chosen)))

    def _take_out(self) -> None:
        self._take(replace(self.picks, good=self.picks.good[:-1]))

    def _browse(self, side: str) -> None:
        dialog = QFileDialog(self.view, say("The recording {side}: choose its folder", side=side))
        dialog.setFileMode(QFileDialog.FileMode.Directory)
        dialog.setOption(QFileDialog.Option.ShowDirsOnly)
        dialog.setOption(QFileDialog.Option.DontUseNativeDialog)
        dialog.setDirectory(str(self._at_hand.jobs_folder().parent))
        dialog.fileSelected.connect(lambda name: self.take_folder(side, Path(name)))
        self._dialog = dialog
        show_beside(dialog)

    def take_folder(self, side: str, folder: Path) -> None:
        """Take a folder that was chosen for a side, ``before`` or ``after``.

        For several good ones, a folder in which recordings lie stands for all of them.
        """
        found = recordings_at(folder)
        several = side == "before" and self.picks.against_good
        if not found or (len(found) > 1 and not several):
            many = (
                say("holds several recordings; choose one of them")
                if found
                else say("holds no recording")
            )
            self.view.sides.tell(
                remedy_here(
                    say(
                        "{folder} {many}. Choose the folder of one recording.",
                        folder=folder,
                        many=many,
                    )
                )
            )
            return
        self.view.sides.tell("")
        for one in found:
            self._remember(one)
        work = self._at_hand.work
        self.view.sides.offer(
            offers(work, self._others, Side.OLD), offers(work, self._others, Side.NEW)
        )
        if several:
            good = (*self.picks.good, *(one for one in found if one not in self.picks.good))
            self._take(replace(self.picks, good=good, before=found[-1]))
        elif side == "before":
            self._take(replace(self.picks, before=found[0]))
        else:
            self._take(replace(self.picks, after=found[0]))
