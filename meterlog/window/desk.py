"""Desk: ties the session to the pages: keys to actions, the timer to what is drawn."""

from __future__ import annotations

import time
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QTimer
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QFileDialog

from meterlog.evidence.trace_picture import origin_mark
from meterlog.model import LEADS, Event, EventKind
from meterlog.model.errors import MeterlogError
from meterlog.window.circuit_desk import CircuitDesk
from meterlog.window.circuit_keys import CircuitAction, circuit_action_of, shown_keys
from meterlog.window.doubts_told import DoubtsTold
from meterlog.window.keys import Action, action_of
from meterlog.window.meters_page import MetersPage
from meterlog.window.remedies_here import remedy_here
from meterlog.window.run_page import RunPage
from meterlog.window.session import Phase, Session
from meterlog.window.status_strip import StatusStrip, alarm_words
from meterlog.work import Run

if TYPE_CHECKING:
    from meterlog.window.main_window import MainWindow

FRAME_S = 0.04
"""From one drawing to the next at least: what an eye can follow, and half a core can draw."""
LOOK_MS = 8
"""How often it is looked whether anything is new: a reading that comes alone is drawn at once."""
GLANCE_S = 0.25
STOP_AGAIN_S = 2.0
_REPEATING = {Action.EARLIER, Action.LATER, Action.CLOSER, Action.WIDER}
_STEPPING = {CircuitAction.POINT_BACK, CircuitAction.POINT_ON}
_ANYWHERE = {
    Action.START_STOP, Action.METERS, Action.CIRCUIT, Action.LOOKS, Action.OPEN, Action.GUIDE,
}  # fmt: skip
_STOP_AGAIN = "Press Enter (or S) once more within 2 seconds to stop and seal."
_CLOSING = "Sealing the recording… the window closes by itself when that is done."


class Desk:
    """The working parts of the main window.

    Parameters
    ----------
    window : MainWindow
    on_mark : callable or None
    next_run : callable or None
        Makes the run that the start key begins once, instead of what the Meters page says.
    """

    def __init__(
        self,
        window: MainWindow,
        on_mark: Callable[[Event], None] | None,
        next_run: Callable[[], Run] | None = None,
    ) -> None:
        self.window = window
        self._next_run = next_run
        self.session = Session(on_mark)
        self.meters_page = MetersPage()
        self.run_page = RunPage()
        self.circuit = CircuitDesk(
            self.session, self.meters_page.recordings_parent, self.meters_page.job_words
        )
        self.status = StatusStrip()
        self._stop_asked_s = float("-inf")
        self._glanced_s = float("-inf")
        self._ticked_s = float("-inf")
        self._glance_s = GLANCE_S
        self._phase = Phase.IDLE
        self._from_page = False
        self._doubts = DoubtsTold()
        self._closing = False
        self._dialog: QFileDialog | None = None
        window.pages.addWidget(self.meters_page)
        window.pages.addWidget(self.run_page)
        window.pages.addWidget(self.circuit.page)
        window.foot.addWidget(self.status)
        self._connect()
        self._timer = QTimer(window)
        self._timer.setInterval(LOOK_MS)
        self._timer.timeout.connect(self._look)
        self._timer.start()

    def _connect(self) -> None:
        header = self.window.header
        header.page_asked.connect(self.window.show_page)
        header.start_asked.connect(lambda: self.do(Action.START_STOP))
        header.open_asked.connect(lambda: self.do(Action.OPEN))
        header.looks_asked.connect(lambda: self.do(Action.LOOKS))
        self.window.pages.currentChanged.connect(lambda _: self._on_page())
        self.meters_page.start.connect(lambda: self.do(Action.START_STOP))
        self.meters_page.browse.connect(lambda: self.do(Action.OPEN))
        self.meters_page.recordings.chosen.connect(self.open)
        self.meters_page.recordings.mend.connect(self._mend)
        self.run_page.note.kept.connect(
            lambda words, at_ns: self.session.mark(EventKind.NOTE, words, at_ns)
        )
        self.run_page.typing.typed.connect(self._on_typed)
        self.run_page.found.turned.connect(lambda: self.do(Action.FOUND_STEPS))

    def begin(self, run: Run | None, recording: Path | None) -> None:
        """Show a run, a recording, or the Meters page."""
        self.window.show_page(1 if run is not None or recording is not None else 0)
        self.run_page.fill()
        if run is not None and run.about is not None:
            self.session.adopt(run)
        elif run is not None:
            self.session.start(lambda: run)
        elif recording is not None:
            self.open(recording)
        self._show_keys()
        self.tick()

    @property
    def _on_circuit(self) -> bool:
        return self.window.pages.currentIndex() == 2

    def _on_page(self) -> None:
        if self._on_circuit:
            self.circuit.begin()
        self._show_keys()

    def action_of(self, event: QKeyEvent) -> tuple[Action | CircuitAction, int] | None:
        """Give what a key press asks for on the page on show; None when it asks for nothing."""
        return circuit_action_of(event) if self._on_circuit else action_of(event)

    def takes_keys(self, action: Action | CircuitAction) -> bool:
        """Tell whether a key acts now: on its page, and anywhere while recording."""
        if isinstance(action, CircuitAction):
            return self._on_circuit
        if self._on_circuit and action is Action.SPEED:
            return True
        if action is Action.ASK:
            return self.window.pages.currentIndex() == 0 and not self.session.recording
        anywhere = action in _ANYWHERE
        on_run_page = self.window.pages.currentIndex() == 1
        if action is Action.FOUND_STEPS:
            shown = self.session.shown
            return on_run_page and shown is not None and shown.has_found_steps
        return anywhere or on_run_page or self.session.recording

    def _show_keys(self) -> None:
        """Name the keys that act now."""
        acting = {action for action in Action if self.takes_keys(action)}
        if self._on_circuit:
            self.window.keys.show_keys(shown_keys(acting))
            return
        if not self.window.guide.isVisible():
            acting -= {Action.GUIDE}
        before = self.window.pages.currentIndex() == 0 and not self.session.recording
        self.window.keys.show_actions(acting, before=before)

    @staticmethod
    def repeats(action: Action | CircuitAction) -> bool:
        """Tell whether a key held down acts again and again."""
        return action in _REPEATING or action in _STEPPING

    def do(self, action: Action | CircuitAction, step: int = 0) -> None:
        """Do what a key or button asks for."""
        self.session.trouble = ""
        if isinstance(action, CircuitAction):
            self.circuit.do(action, step)
        else:
            self._do(action, step)
        self._glanced_s = float("-inf")
        self.tick()

    def _do(self, action: Action, step: int) -> None:
        doing: dict[Action, Callable[[], object]] = {
            Action.START_STOP: self._start_or_stop,
            Action.SPEED: lambda: self._speed(step),
            Action.TAP: lambda: self.session.mark(EventKind.TAP),
            Action.WIGGLE: lambda: self.session.mark(EventKind.WIGGLE, LEADS),
            Action.NOTE: self._note,
            Action.ZERO: self.session.take_zero,
            Action.TYPE_READING: self._ask_reading,
            Action.FOLLOW: self.run_page.follow,
            Action.EARLIER: lambda: self.run_page.look(move=-0.25),
            Action.LATER: lambda: self.run_page.look(move=0.25),
            Action.CLOSER: lambda: self.run_page.look(zoom=1),
            Action.WIDER: lambda: self.run_page.look(zoom=-1),
            Action.ASK: self.meters_page.ports.ask,
            Action.OPEN: self._browse,
            Action.METERS: lambda: self._turn_page(0),
            Action.CIRCUIT: lambda: self._turn_page(2),
            Action.LOOKS: self.window.toggle_looks,
            Action.GUIDE: self.window.guide.forward,
            Action.FOUND_STEPS: self.session.turn_found_steps,
        }
        doing[action]()

    def _speed(self, step: int) -> None:
        """Command a speed; the circuit's state follows, on its page also without a recording."""
        if self.session.recording or not self._on_circuit:
            self.session.mark(EventKind.SPEED, str(step))
        if self._on_circuit:
            self.circuit.set_speed(step)

    def _start_or_stop(self) -> None:
        if self.session.phase is Phase.RECORDING:
            now_s = time.monotonic()
            if now_s - self._stop_asked_s <= STOP_AGAIN_S:
                self._stop_asked_s = float("-inf")
                self.session.stop()
            else:
                self._stop_asked_s = now_s
            return
        try:
            self.session.start(self._next_run or self.meters_page.plan().run)
            self._from_page = self._next_run is None
            self._next_run = None
        except MeterlogError as error:
            self.session.trouble = remedy_here(str(error))

    def _note(self) -> None:
        if self.session.phase is not Phase.RECORDING:
            self.session.mark(EventKind.NOTE)
            return
        self.window.show_page(1)
        self.run_page.note.ask(self.session.now_ns())

    def _ask_reading(self) -> None:
        """Open the line for readings typed by hand, or say why there is none."""
        typed = self.session.typed_instruments()
        if typed:
            self.window.show_page(1)
            self.run_page.typing.ask(typed)

    def _on_typed(self, key: str, values: tuple[float, ...]) -> None:
        self.session.trouble = ""
        if self.session.type_reading(key, values):
            self.run_page.typing.show_taken(values)
        else:
            self.run_page.typing.refuse(self.session.trouble)

    def _turn_page(self, page: int) -> None:
        """Turn to a page; from it, to the trace."""
        self.window.show_page(1 if self.window.pages.currentIndex() == page else page)

    def _browse(self) -> None:
        if self.session.recording:
            self.session.trouble = "Stop the recording first; then open another one."
            return
        dialog = QFileDialog(self.window, "Open a recording: choose its folder")
        dialog.setFileMode(QFileDialog.FileMode.Directory)
        dialog.setOption(QFileDialog.Option.ShowDirsOnly)
        dialog.setOption(QFileDialog.Option.DontUseNativeDialog)
        dialog.setDirectory(self.meters_page.folder.text())
        dialog.fileSelected.connect(lambda name: self.open(Path(name)))
        self._dialog = dialog
        dialog.open()

    def open(self, folder: Path) -> None:
        """Open a recording and show it."""
        try:
            self.session.open(folder)
        except MeterlogError as error:
            self.session.trouble = remedy_here(str(error))
        self.window.show_page(1)
        self.tick()

    def _mend(self, folders: Sequence[Path]) -> None:
        try:
            self.session.mend(folders)
        except MeterlogError as error:
            self.session.trouble = remedy_here(str(error))
        self.tick()

    def _look(self) -> None:
        now_s = time.monotonic()
        news = self.session.fresh or now_s - self._glanced_s >= self._glance_s
        if news and now_s - self._ticked_s >= FRAME_S:
            self.tick()

    def tick(self) -> None:
        """Fetch what is new and draw it; a few times a second look at everything else."""
        fresh = self.session.pull()
        self._ticked_s = now_s = time.monotonic()
        due = now_s - self._glanced_s >= self._glance_s
        if due:
            self._glanced_s = now_s
            self.session.glance()
            self.circuit.tick(seen=self._on_circuit)
            self._show_words()
            # A judgement that takes long, of a long recording, is asked for less often.
            self._glance_s = max(GLANCE_S, 10.0 * (time.monotonic() - now_s))
        changed = self.session.phase is not self._phase
        if changed:
            self._on_phase(self._phase, self.session.phase)
        if self._closing:
            self._go_on_closing()
        seen = self.window.pages.currentIndex() == 1
        live = self.session.shown is not None and self.session.shown.live
        if seen and (changed or (due and live)):
            self.run_page.show_judgement(self.session)
        if seen and (fresh or changed):
            self.run_page.show_session(self.session)

    def _show_words(self) -> None:
        self.status.show_session(self.session)
        self.window.sound_alarm(alarm_words(self.session.phase, self.session.status))
        asked = time.monotonic() - self._stop_asked_s <= STOP_AGAIN_S
        told = (self.session.trouble, self._doubt_words())
        words = _STOP_AGAIN if asked else "\n".join(one for one in told if one)
        self.window.say(_CLOSING if self._closing else words)
        recording = self.session.phase is Phase.RECORDING
        self.window.header.start.setText(
            ("Stop: press again" if asked else "Stop") if recording else "Start"
        )

    def _doubt_words(self) -> str:
        """Say what has just begun to speak against a meter."""
        if self.session.phase is not Phase.RECORDING:
            self._doubts.forget()
            return ""
        return self._doubts.words(self.session.review.doubts, time.monotonic())

    def _on_phase(self, before: Phase, now: Phase) -> None:
        self._phase = now
        busy = self.session.busy
        self.window.header.start.setDisabled(busy)
        self.window.header.open.setDisabled(self.session.recording or busy)
        shown = self.session.shown
        self.window.header.show_origin(origin_mark(shown.about) if shown else "")
        self._show_words()
        if shown is not None:
            self.window.header.what.setText(_what(shown.about.job.work_order, self.session.folder))
        recording = self.session.recording
        self.meters_page.bar(recording=recording)
        self._show_keys()
        if now is Phase.RECORDING:
            if self._from_page:
                self.meters_page.keep()
            self._from_page = False
            if not self._on_circuit:
                self.window.show_page(1)
        else:
            self.run_page.typing.close_line()
        if before is Phase.CONNECTING and now is not Phase.RECORDING and shown is None:
            self.window.show_page(0)
        if before in {Phase.SEALING, Phase.MENDING}:
            self.meters_page.show_recordings()

    def may_close(self) -> bool:
        """Tell whether nothing would be lost; if it would, begin to seal and close afterwards."""
        if self.session.phase is Phase.RECORDING or self.session.busy:
            self._closing = True
            self._show_words()
            self.tick()
            return False
        self.circuit.close()
        self._timer.stop()
        return True

    def _go_on_closing(self) -> None:
        if self.session.busy:
            return
        if self.session.phase is Phase.RECORDING:
            self.session.stop()
        else:
            self._closing = False
            self.window.close_soon()


def _what(work_order: str, folder: Path | None) -> str:
    return " · ".join(part for part in (work_order, folder.name if folder else "") if part)
