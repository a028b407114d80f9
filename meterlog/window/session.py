"""Session: the recording on show, and what is under way with it. No widgets.

Opening ports, sealing and reading a folder take up to seconds, so they run in a plain thread of
their own; the window pulls the outcome on its timer.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, TypeVar

from meterlog.acquire import ZeroTaking
from meterlog.evidence.trace_store import TraceStore
from meterlog.model import Block, Event, EventKind, Review, Role
from meterlog.model.errors import MeterlogError, UsageError
from meterlog.recording import seal
from meterlog.recording.layout import is_sealed
from meterlog.window.judging import Judging
from meterlog.window.long_recording import mend_traces
from meterlog.window.long_work import trouble_words
from meterlog.window.merged_events import merged_events
from meterlog.window.one_thread import OneThread
from meterlog.window.opened import Opened, opened
from meterlog.window.phase import Phase, PhaseLog
from meterlog.window.plain_note import zero_words
from meterlog.window.refusals import no_mark, under_way
from meterlog.window.remedies_here import remedy_here
from meterlog.window.shown import Shown
from meterlog.window.words import later, say
from meterlog.work import Run, RunStatus

if TYPE_CHECKING:
    from meterlog.model.amendment import Amendment
    from meterlog.work.edits_on_top import EditsOnTop

__all__ = ["Phase", "Session"]

Answer = TypeVar("Answer")
_PATIENCE_S = 2.0
_NOT_JUDGED = later(
    "Not judged: the trace is shown, nothing is said of it. Open it again to judge."
)


class Session:
    """One run or recording at a time.

    Attributes
    ----------
    phases : PhaseLog
        The phases gone into so far.
    shown : Shown or None
        What is to be drawn.
    status : RunStatus
        The last glance at the run.
    trouble : str
        The last error, for a person; empty when all is well.
    folder : Path or None
        Of the run or recording on show.
    judging : Judging
        How far a recording has been read and judged.
    listeners : list of callable
        Called with every Block that :meth:`pull` fetches.
    """

    def __init__(self, on_mark: Callable[[Event], None] | None = None) -> None:
        self.phases = PhaseLog()
        self.shown: Shown | None = None
        self.status = RunStatus()
        self.trouble = self._lasting = self._damage = self._moved = ""
        self.folder: Path | None = None
        self._on_mark = on_mark
        self.listeners: list[Callable[[Block], None]] = []
        self._run: Run | None = None
        self._zeroing: ZeroTaking | None = None
        self._work = OneThread()
        self.judging = Judging()

    @property
    def phase(self) -> Phase:
        """What is under way."""
        return self.phases.now

    @phase.setter
    def phase(self, phase: Phase) -> None:
        self.phases.go(phase)

    @property
    def recording(self) -> bool:
        """True while a run is in progress, sealing included."""
        return self.phase in {Phase.CONNECTING, Phase.RECORDING, Phase.SEALING}

    @property
    def run(self) -> Run | None:
        """The run that takes marks and readings now; None when nothing is being recorded."""
        return self._run if self.phase is Phase.RECORDING else None

    @property
    def busy(self) -> bool:
        """True while a thread of this session is at work."""
        return self._work.busy

    def start(self, plan: Callable[[], Run]) -> None:
        """Connect and record, in the background.

        Parameters
        ----------
        plan : callable
            Makes the run, started or not; its errors become :attr:`trouble`.

        Raises
        ------
        UsageError
            If something is under way already.
        """
        self._refuse_if_busy()

        def work() -> Callable[[], None]:
            run = plan()
            if run.about is None:
                run.start()
            return lambda: self.adopt(run)

        self._begin(Phase.CONNECTING, work, "meterlog-connect")

    def adopt(self, run: Run) -> None:
        """Show a run that has been started."""
        about = run.about
        if about is None:
            raise UsageError(say("the run has not been started."), remedy=say("Start it first."))
        self._run, self._zeroing = run, None
        self.folder = run.folder
        self.shown = Shown(about, TraceStore(about.instruments), live=True)
        self.status = run.status()
        self.phase = Phase.RECORDING

    def open(self, folder: Path) -> None:
        """Read and judge a recording, in the background.

        Raises
        ------
        UsageError
            If a recording is in progress.
        """
        self._refuse_if_busy()
        self._begin(Phase.OPENING, lambda: self._read(folder), "meterlog-open")

    def turn_found_steps(self) -> None:
        """Judge anew with the found speeds taken as commanded, or as found again; in background.

        Nothing where no speed was found or something is under way.
        """
        shown, folder = self.shown, self.folder
        if shown is None or folder is None or not shown.has_found_steps or self.busy:
            return
        accept = not shown.accepted
        self._begin(Phase.OPENING, lambda: self._read(folder, accept_steps=accept), "meterlog-open")

    def amend(self, make: Callable[[EditsOnTop], Amendment]) -> bool:
        """Write an edit on top of the recording on show and judge it anew, in the background.

        False, with :attr:`trouble`, where no sealed recording is on show.

        Parameters
        ----------
        make : callable
            Gives the edit from those that are there; its errors become :attr:`trouble`, and then
            nothing was written.
        """
        shown, folder = self.shown, self.folder
        idle = not (self.busy or self.recording)
        if shown is None or folder is None or shown.live or not idle or not is_sealed(folder):
            self.trouble = say(
                "Edits are made on top of a recording that is sealed: stop it first."
            )
            return False

        def work() -> Callable[[], None]:
            from meterlog.recording import Recording
            from meterlog.work.edits_on_top import EditsOnTop

            top = EditsOnTop(Recording.open(folder))
            top.write(make(top))
            return self._read(folder, accept_steps=shown.accepted)

        self._begin(Phase.OPENING, work, "meterlog-amend")
        return True

    def mend(self, folders: Sequence[Path]) -> None:
        """Seal recordings that were cut off, marked as recovered, in the background.

        Raises
        ------
        UsageError
            If something else is under way.
        """
        self._refuse_if_busy()
        before = self.phase

        def work() -> Callable[[], None]:
            for folder in folders:
                seal(folder, recovered=True)
            return lambda: self._return_to(before)

        self._begin(Phase.MENDING, work, "meterlog-mend")

    def _return_to(self, phase: Phase) -> None:
        self.phase = phase

    def stop(self, outcome: str = "stopped") -> None:
        """End and seal the run, then judge it as a whole, in the background."""
        run = self._run
        if run is None or self.phase is not Phase.RECORDING:
            return

        def work() -> Callable[[], None]:
            folder = run.stop(outcome)
            self._moved = run.status().moved
            return self._read(folder)

        self._begin(Phase.SEALING, work, "meterlog-seal")

    def mark(self, kind: EventKind, value: str = "", at_ns: int | None = None) -> Event | None:
        """Put what the technician did into the run; None, with :attr:`trouble`, without one."""
        event = self._ask(lambda run: run.mark(kind, value, at_ns))
        if event is None:
            return None
        if self.shown is not None:
            self.shown.events = merged_events(self.shown.events, (event,))
        if self._on_mark is not None:
            self._on_mark(event)
        return event

    def undo_mark(self) -> Event | None:
        """Take back the mark made last: speed, tap, leads moved or note.

        Returns
        -------
        Event or None
            The mark; None, with :attr:`trouble`, where there is none to take back.
        """
        undone = self._ask(lambda run: (*run.undo_mark(), run.marks.speed))
        if undone is None:
            return None
        mark, entry, speed = undone
        if self.shown is not None:
            self.shown.events = merged_events(self.shown.events, (entry,))
        if self._on_mark is not None and mark.kind is EventKind.SPEED:
            # Whoever turns the fan by what is marked turns it back.
            self._on_mark(Event(entry.t_ns, EventKind.SPEED, str(speed)))
        return mark

    def take_zero(self) -> None:
        """Take the zero of the motor current; how it goes is told by :attr:`trouble`."""
        taking = self._ask(lambda run: run.take_zero(Role.MOTOR_CURRENT))
        if taking is not None:
            self._zeroing, self.trouble = taking, zero_words(taking)

    def type_reading(self, key: str, values: Sequence[float]) -> bool:
        """Put a typed reading into the run; False, with :attr:`trouble`, where it is refused."""

        def ask(run: Run) -> bool:
            run.type_reading(key, values)
            return True

        return self._ask(ask) or False

    def _ask(self, ask: Callable[[Run], Answer]) -> Answer | None:
        """Ask something of the run; None, with :attr:`trouble`, without one or if it refuses."""
        run = self.run
        if run is None:
            self.trouble = no_mark(self.phase)
            return None
        try:
            return ask(run)
        except MeterlogError as error:
            self.trouble = remedy_here(str(error))
            return None

    def now_ns(self) -> int:
        """Nanoseconds since the run's zero; the end of what is shown without a run."""
        if self._run is not None and self.phase is Phase.RECORDING:
            return self._run.now_ns()
        return self.shown.end_ns if self.shown else 0

    def leave_page(self) -> None:
        """Forget what was said of a key; an error and what is damaged in the recording stay."""
        lasts = self._lasting and self.trouble.startswith(self._lasting)
        self.trouble = self._lasting if lasts else self._damage

    @property
    def fresh(self) -> bool:
        """Tell whether :meth:`pull` would fetch anything."""
        live = self._run is not None and self.shown is not None and self.shown.live
        return self._work.has_news or (live and self._run is not None and self._run.tail.waiting)

    def pull(self) -> bool:
        """Fetch what has come in since the last call.

        Returns
        -------
        bool
            True if there is something new to draw.
        """
        settled = self._work.settle()
        if self._run is None or self.shown is None or not self.shown.live:
            return settled
        blocks = self._run.tail.drain()
        for block in blocks:
            self.shown.traces.take(block)
            for listener in self.listeners:
                listener(block)
        return bool(blocks) or settled

    def glance(self) -> None:
        """Fetch the run's status, events and review: a few times a second is enough."""
        if self._run is None or self.shown is None or not self.shown.live:
            if self.shown is not None and self.folder is not None and not self.busy:
                words, again = mend_traces(self.shown, self.folder)
                if again:
                    self.open(self.folder)
                if words:
                    self.trouble = self._lasting = words
            return
        self.status = self._run.status()
        self._tell_zero()
        self.shown.events = merged_events(self.shown.events, self.status.events)
        self.shown.review = self._run.review()

    def _tell_zero(self, after: str = "") -> None:
        """Say how the taking of a zero went, once that is known; after what else is to be said."""
        if self._zeroing is not None and self._zeroing.done:
            told, self._zeroing = zero_words(self._zeroing), None
            self.trouble = f"{after} {told}" if after else told

    def wait(self, seconds: float) -> bool:
        """Wait for the thread at work; True once there is none."""
        self._work.join(seconds)
        self._work.settle()
        return not self._work.busy

    def stop_judging(self) -> None:
        """Ask for the trace alone, while a long recording is being judged."""
        if self.phase is Phase.JUDGING:
            self.judging.stop()

    def _refuse_if_busy(self) -> None:
        if self.phase is Phase.JUDGING:
            # Whoever goes on to something else does not wait for a judgement.
            self.stop_judging()
            self.wait(_PATIENCE_S)
        if self.busy or self.recording:
            raise under_way(self.phase)

    def _begin(self, phase: Phase, work: Callable[[], Callable[[], None]], name: str) -> None:
        before, self.phase, self.judging = self.phase, phase, Judging()
        self.trouble = self._damage = self._moved = ""

        def failed(error: Exception) -> Callable[[], None]:
            words = trouble_words(error)
            return lambda: self._fail(before, words)

        self._work.begin(work, name, failed, self._leave_unjudged)

    def _fail(self, before: Phase, words: str) -> None:
        self.trouble = self._lasting = words
        self._tell_zero(words)
        if self._run is not None and self.shown is not None and before is Phase.RECORDING:
            self.status, self.folder = self._run.status(), self._run.folder
            self.shown.live = False
        self._run = self._zeroing = None
        self.phase = Phase.SHOWING if self.shown is not None else Phase.IDLE

    def _read(self, folder: Path, *, accept_steps: bool = False) -> Callable[[], None]:
        def first(shown: Shown) -> None:
            self._work.meanwhile(lambda: self._put(folder, shown, {}, Phase.JUDGING))

        read = opened(folder, accept_steps=accept_steps, first=first, tell=self.judging.tell)
        return lambda: self._show(folder, read)

    def _leave_unjudged(self) -> None:
        self.trouble = self._lasting = say(_NOT_JUDGED)
        self._tell_zero(self.trouble)
        self.phase = Phase.SHOWING

    def _show(self, folder: Path, read: Opened) -> None:
        said = self._moved or read.part, " ".join(read.damage)
        self.trouble = self._lasting = self._damage = "\n".join(one for one in said if one)
        self._tell_zero(self._damage)
        self._put(folder, read.shown, read.readings, Phase.SHOWING)

    def _put(self, folder: Path, shown: Shown, rows: Mapping[str, int], phase: Phase) -> None:
        self._run, self.folder, self.shown, self.phase = None, folder, shown, phase
        self.status = RunStatus(elapsed_ns=shown.end_ns, rows=dict(rows), events=shown.events)

    @property
    def review(self) -> Review:
        """The review on show; an empty one when there is nothing."""
        return self.shown.review if self.shown else Review()
