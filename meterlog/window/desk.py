"""Desk: ties the session to the pages: keys to actions, the timer to what is drawn."""

from __future__ import annotations

import time
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QWidget

from meterlog.model import Event, EventKind
from meterlog.model.errors import MeterlogError
from meterlog.window.acting_keys import PAGE_ACTIONS, ActingKeys, Wanted
from meterlog.window.before_second import BeforeSecondLine
from meterlog.window.circuit_desk import CircuitDesk
from meterlog.window.circuit_keys import CircuitAction
from meterlog.window.closing import Closing
from meterlog.window.doing import Doing
from meterlog.window.edits_on_trace import EditsOnTrace
from meterlog.window.folder_dialog import ask_folder
from meterlog.window.job_of_session import JobOfSession
from meterlog.window.key_map import KeyMap
from meterlog.window.keys import Action
from meterlog.window.later_pages import later_pages
from meterlog.window.mark_value import value_words
from meterlog.window.meters_page import MetersPage
from meterlog.window.own_enter import keeps_enter
from meterlog.window.page_stack import PageStack
from meterlog.window.pages import Page
from meterlog.window.pulse import Pulse
from meterlog.window.remedies_here import remedy_here
from meterlog.window.run_page import RunPage
from meterlog.window.second_behind import SecondBehind
from meterlog.window.session import Phase, Session
from meterlog.window.sound import SoundDesk
from meterlog.window.stop_asked import StopAsked
from meterlog.window.telling import Telling
from meterlog.window.typed_lines import TypedLines
from meterlog.window.where_i_was import Where, WhereIWas
from meterlog.window.words import say
from meterlog.window.work_page import PageKey
from meterlog.work import Run

if TYPE_CHECKING:
    from meterlog.window.main_window import MainWindow

FRAME_S = 0.04
"""From one drawing to the next at least: what an eye can follow, and half a core can draw."""
LOOK_MS = 60
"""How often it is looked whether anything else is new; readings wake the window by themselves."""
GLANCE_S = 0.33


class Desk:
    """The working parts of the main window.

    Parameters
    ----------
    window : MainWindow
    meters_page : MetersPage
        The first of the window's pages.
    on_mark : callable or None
    next_run : callable or None
        Makes the run that the start key begins once, instead of what the Meters page says.
    """

    def __init__(
        self,
        window: MainWindow,
        meters_page: MetersPage,
        on_mark: Callable[[Event], None] | None,
        next_run: Callable[[], Run] | None = None,
    ) -> None:
        self.window = window
        self._next_run = next_run
        self.session = Session(on_mark)
        self.meters_page = meters_page
        self.at_hand = self.meters_page.at_hand
        self.job = JobOfSession(self.session, self.at_hand)
        self.run_page = RunPage()
        self.circuit = CircuitDesk(
            self.session, self.meters_page.recordings_parent, self.meters_page.job_words
        )
        self.sound = SoundDesk(self.session, window)
        self.lines = TypedLines(window, self.session, self.run_page)
        self.edits = EditsOnTrace(self.session, self.run_page)
        self.run_page.add_line(
            BeforeSecondLine(
                self.meters_page.before_second, most=2, parent=self.run_page, once=True
            )
        )
        self.second = SecondBehind(self.session, self.at_hand, window)
        self._telling = Telling(window, self.session, self.job, self.sound)
        self.status = self._telling.status
        self._stop = StopAsked()
        self._glanced_s = float("-inf")
        self._ticked_s = float("-inf")
        self._glance_s = GLANCE_S
        self._owes_trace = self._owes_judgement = False
        """What has come since the trace was last seen, drawn once it is turned to."""
        self._phases = self.session.phases.mark()
        self._before_keys = Page.RUN
        self._where = WhereIWas()
        self._handed = False
        self._dialog: QWidget | None = None
        window.pages.addWidget(self.run_page)
        window.pages.addWidget(self.circuit.page)
        self.parts = PageStack(window.pages, later_pages(self))
        self._closing = Closing(self.session, self.parts, self.lines, self._stop)
        self._doing = Doing(self)
        self.keys = ActingKeys(self.session, self.parts, KeyMap())
        window.foot.addWidget(self.status)
        self._connect()
        self._pulse = Pulse(window, LOOK_MS)
        self._pulse.beat.connect(self._look)

    def _connect(self) -> None:
        header = self.window.header
        header.page_asked.connect(self.go_to)
        header.start_asked.connect(lambda: self.do(Action.START_STOP))
        header.open_asked.connect(lambda: self.do(Action.OPEN))
        header.looks_asked.connect(lambda: self.do(Action.LOOKS))
        self.window.pages.currentChanged.connect(lambda _: self._on_page())
        self.meters_page.start.connect(lambda: self.do(Action.START_STOP))
        self.meters_page.browse.connect(lambda: self.do(Action.OPEN))
        self.meters_page.recordings.chosen.connect(self.open)
        self.meters_page.recordings.mend.connect(self._mend)
        self.run_page.found.turned.connect(lambda: self.do(Action.FOUND_STEPS))

    def beginning(
        self, run: Run | None, recording: Path | None, job: Path | None = None
    ) -> Iterator[None]:
        """Show what was handed over, or go on where the last time ended; in steps, to paint."""
        self._handed = handed = run is not None or recording is not None
        where = None if handed else self._where.load()
        if where is not None:
            self.job.open_last()
            recording = where.recording
        if job is not None:
            self.job.show(job)
        begun = Page.RUN if handed else Page.JOB
        page = begun if where is None else where.page
        yield from self.parts.making([page])
        self.window.show_page(page)
        yield
        self.run_page.fill()
        if run is not None and run.about is not None:
            self.session.adopt(run)
        elif run is not None:
            self.session.start(lambda: run)
        elif recording is not None:
            self.open(recording, turn=where is None)
        self.show_keys()
        self.tick()

    @property
    def page(self) -> Page:
        """The page on show."""
        return Page(self.window.pages.currentIndex())

    @property
    def _on_circuit(self) -> bool:
        return self.page is Page.CIRCUIT

    def _on_page(self) -> None:
        if self._on_circuit:
            self.circuit.begin()
        self.parts.begin(self.page)
        self.show_keys()
        self._glanced_s = float("-inf")  # what is owed to it is drawn at the next look

    def go_to(self, page: int) -> None:
        """Turn to the page that the technician asked for: what was said of a key ends with it."""
        if page == Page.KEYS != self.page:
            self._before_keys = self.page
        self.session.leave_page()
        self.window.show_page(page)
        self._show_words()

    def show_keys(self) -> None:
        """Name the keys that act now."""
        window, focus = self.window, self.window.focusWidget()
        shown = self.keys.shown(
            self.page,
            guided=window.guide.isVisible(),
            in_lines=keeps_enter(focus),
            typing=window.is_typing(focus),
        )
        window.keys.show_keys(shown)

    def do(self, wanted: Wanted, step: int = 0) -> None:
        """Do what a key or button asks for."""
        if wanted not in {*PAGE_ACTIONS, Action.KEYS}:
            self.session.trouble = ""
        if isinstance(wanted, PageKey):
            wanted.do()
        elif isinstance(wanted, CircuitAction):
            self.circuit.do(wanted, step)
        else:
            self._doing(wanted, step)
        self._glanced_s = float("-inf")
        self.tick()

    def command_speed(self, step: int) -> None:
        """Command a speed; the circuit's state follows, on its page also without a recording."""
        if self._on_circuit:
            self.circuit.speed.command(step)
        else:
            self.session.mark(EventKind.SPEED, str(step))

    def next_speed(self, by: int) -> int:
        """Give the speed above or below the one commanded last; the ends stay."""
        shown = self.session.shown
        now = (shown.speed() if shown is not None and shown.live else None) or 0
        if self._on_circuit:
            now = self.circuit.state.speed
        return min(max(now + by, 0), 9)

    def start_or_stop(self) -> None:
        """Begin to record; while recording, stop when asked twice."""
        if self.session.phase is Phase.RECORDING:
            if self._stop.again():
                self._closing.stopped()
                self.lines.keep_note()
                self.session.stop()
            return
        try:
            self.session.start(self._next_run or self.meters_page.plan().run)
            # Here, not at the next look: it may have been refused by then.
            self._follow_phases()
            self.job.begin_run(made_here=self._next_run is None)
            # Ports are being opened by now: a share that hangs holds up no recording.
            untold = self.job.look_again()
            if self._next_run is not None:
                self.job.fit_new()
            self._next_run = None
            self.session.trouble = self.session.trouble or untold
        except MeterlogError as error:
            self.session.trouble = remedy_here(str(error))

    def turn_page(self, page: Page) -> None:
        """Turn to a page; from it, to the trace."""
        self.go_to(Page.RUN if self.page is page else page)

    def turn_keys(self) -> None:
        """Turn to what each key does, and from there back to the page before."""
        self.go_to(self._before_keys if self.page is Page.KEYS else Page.KEYS)

    def browse(self) -> None:
        """Ask for the folder of a recording to open."""
        if self.session.recording:
            self.session.trouble = say("Stop the recording first; then open another one.")
            return
        title, start = say("Open a recording: choose its folder"), self.meters_page.folder.text()
        dialog = ask_folder(self.window, title, start)
        dialog.fileSelected.connect(lambda name: self.open(Path(name)))
        self._dialog = dialog

    def open(self, folder: Path, *, turn: bool = True) -> None:
        """Open a recording and show it."""
        try:
            self.session.open(folder)
        except MeterlogError as error:
            self.session.trouble = remedy_here(str(error))
        if turn:
            self.window.show_page(Page.RUN)
        self.tick()

    def open_job(self, folder: Path) -> None:
        """Turn to a job and show its card."""
        self.job.open(folder)
        self.window.show_page(Page.JOB)
        self.tick()

    def undo(self) -> None:
        """Take back the last mark, and say which it was; beside open edits the last of them."""
        if self.edits.undo():
            return
        mark = self.session.undo_mark()
        if mark is not None:
            what = " ".join(word for word in (say(mark.kind.value), value_words(mark)) if word)
            self.session.trouble = say("Taken back: {what}.", what=what)

    def _mend(self, folders: Sequence[Path]) -> None:
        try:
            self.session.mend(folders)
        except MeterlogError as error:
            self.session.trouble = remedy_here(str(error))
        self.tick()

    def _look(self) -> None:
        now_s = time.monotonic()
        if not self.session.fresh and now_s - self._glanced_s < self._glance_s:
            return
        rest_s = self._ticked_s + FRAME_S - now_s
        if rest_s <= 0.0:
            self.tick()
        else:
            self._pulse.again_in(rest_s)

    def tick(self) -> None:
        """Fetch what is new and draw it; a few times a second look at everything else."""
        fresh = self.session.pull()
        self._ticked_s = now_s = time.monotonic()
        due = now_s - self._glanced_s >= self._glance_s
        if due:
            self._glanced_s = now_s
            self.session.glance()
            self.circuit.tick(seen=self._on_circuit)
            if self.session.run is None:  # else it is that of the run, wherever it goes on
                self.job.add_circuit(self.circuit.log.folder)
            self.parts.tick()
            self.job.tick()
            self.run_page.measure(self.session)
            self.edits.tick()
            self.second.tick()
            self.run_page.show_second(self.second.laid)
            self.sound.tick()
            self._show_words()
            # A judgement that takes long, of a long recording, is asked for less often.
            self._glance_s = max(GLANCE_S, 10.0 * (time.monotonic() - now_s))
        changed = self._follow_phases()
        if self._closing.goes():
            self.window.close_soon()
        live = self.session.shown is not None and self.session.shown.live
        self._owes_judgement |= changed or (due and live)
        self._owes_trace |= fresh or changed
        if self.page is Page.RUN:
            self._draw_owed()

    def _draw_owed(self) -> None:
        if self._owes_judgement:
            self._owes_judgement = False
            self.run_page.show_judgement(self.session)
        if self._owes_trace:
            self._owes_trace = False
            self.run_page.show_session(self.session)

    def _show_words(self) -> None:
        parent = self.meters_page.recordings_parent()
        self._telling.show(parent, stop=self._stop, closing=self._closing.waits)

    def _follow_phases(self) -> bool:
        turns = tuple(self._phases.turns())
        for before, now in turns:
            self._on_phase(before, now)
        return bool(turns)

    def _on_phase(self, before: Phase, now: Phase) -> None:
        self.second.forget_place()
        busy = self.session.busy
        self.window.header.start.setDisabled(busy)
        self.window.header.open.setDisabled(self.session.recording or busy)
        shown = self.session.shown
        self.window.header.show_origin(shown.mark if shown else "")
        self._show_words()
        if shown is not None:
            self.window.header.what.setText(_what(shown.about.job.work_order, self.session.folder))
        recording = self.session.recording
        self.meters_page.bar(recording=recording)
        self.show_keys()
        if now is Phase.RECORDING:
            if self.session.run is not None:
                self.session.run.tail.on_news = self._pulse.wake
            if self.job.add_recording():
                self.meters_page.keep()
            if self.page not in {Page.CIRCUIT, Page.RUN}:
                self.window.show_page(Page.RUN)
        self.lines.ask_again()
        if before is Phase.CONNECTING and now is not Phase.RECORDING and shown is None:
            self.window.show_page(Page.METERS)
        if before in {Phase.SEALING, Phase.MENDING}:
            self.job.tell_speeds(ended=before is Phase.SEALING)
            self.meters_page.show_recordings()

    def may_close(self, *, at_once: bool = False) -> bool:
        """Tell whether nothing would be lost; if it would, begin to seal and close afterwards.

        A recording ends only when that is asked twice, unless ``at_once``: nobody can be asked.
        """
        if not self._closing.may(at_once=at_once):
            if self._closing.held_by is not None:
                self.window.show_page(self._closing.held_by)
            self._show_words()
            self.tick()
            return False
        if not self._handed:
            self._where.keep(Where(self.page, self.session.folder))
        self.circuit.close()
        self.parts.close()
        self.sound.close()
        self.second.close()
        self.run_page.stretch.close_work()
        self._pulse.stop()
        return True


def _what(work_order: str, folder: Path | None) -> str:
    return " · ".join(part for part in (work_order, folder.name if folder else "") if part)
