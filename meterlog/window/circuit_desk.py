"""CircuitDesk: ties a circuit check to its page: entries to the log, the log to the judge."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

from meterlog.evidence.circuit_marks import CircuitMarks, marks_of
from meterlog.model import (
    Block,
    Circuit,
    CircuitCheck,
    CircuitState,
    CircuitVerdict,
    Expectation,
    Job,
    ProbePoint,
)
from meterlog.model.errors import MeterlogError, UsageError
from meterlog.profile import load_circuit
from meterlog.window.circuit_answers import nothing_words, turned_words
from meterlog.window.circuit_choice import circuit_titles
from meterlog.window.circuit_judge import Answer, Asked, CircuitJudge
from meterlog.window.circuit_jumper import CircuitJumper
from meterlog.window.circuit_keys import SIGNS, CircuitAction
from meterlog.window.circuit_page import CircuitPage
from meterlog.window.circuit_point_words import WORKING, point_words
from meterlog.window.circuit_reading import LiveReading, Ready, typed_reading
from meterlog.window.circuit_speed import CircuitSpeed
from meterlog.window.last_setup import LastSetup
from meterlog.window.remedies_here import remedy_here
from meterlog.window.sentences import sentence
from meterlog.window.session import Session
from meterlog.window.words import later, say
from meterlog.work import Run, fresh_folder
from meterlog.work.circuit_log import CircuitLog

_FIRST = later("Choose the circuit first (C).")
_NEW_CHECK = later("A new check. What was entered before, for {title}, stays in {folder}.")
_TO_LOOK = later("What is proposed is to look, not to measure: {test}")
_NO_OTHER = later("There is no other voltage channel to choose from.")
_ANYWHERE = {CircuitAction.CIRCUIT, CircuitAction.READ_ON, CircuitAction.READ_BACK}
"""What can be done before a circuit was chosen; typing, too, as what is typed is no command."""


class CircuitDesk:
    """The working parts of the Circuit page.

    Parameters
    ----------
    session : Session
        Its recording, if one is in progress, keeps the entries and gives the live readings.
    folder : callable
        Gives the folder in which a recording of the check's own would be made.
    job : callable
        Gives the job that such a recording is for.
    last : LastSetup or None
        Where the circuit chosen last is remembered; None: in the user's settings folder.
    """

    def __init__(
        self,
        session: Session,
        folder: Callable[[], Path],
        job: Callable[[], Job],
        last: LastSetup | None = None,
    ) -> None:
        self.session = session
        self.page = CircuitPage()
        self.judge = CircuitJudge()
        self.log = CircuitLog(self._new_folder)
        self._folder, self._job = folder, job
        self._last = last or LastSetup()
        self._begun = False
        self._run: Run | None = None
        self._live = LiveReading()
        self.speed = CircuitSpeed(session, self.page.state_row)
        self._chosen = ""
        self._jumper_at = CircuitJumper()
        self._answer: Answer | None = None
        self._expected: tuple[Expectation, ...] = ()
        session.listeners.append(self._on_block)
        self._connect()

    def _connect(self) -> None:
        page = self.page
        page.state_row.chosen.connect(self.choose)
        page.state_row.changed.connect(lambda _: self._on_state())
        page.drawing.picked.connect(self.go_to)
        page.entries.picked.connect(self.go_to)
        page.point.take.connect(lambda: self.do(CircuitAction.TAKE))
        page.point.asked.connect(self._step)
        page.point.no_reach.connect(lambda: self.do(CircuitAction.NO_REACH))
        page.point.typed.connect(self._on_typed)
        page.signs.seen.connect(lambda at: self.do(CircuitAction.SIGN, at))
        page.state_row.undo.connect(lambda: self.do(CircuitAction.UNDO))
        page.state_row.redo.connect(lambda: self.do(CircuitAction.REDO))

    @property
    def circuit(self) -> Circuit | None:
        """The circuit that is checked."""
        return self.log.circuit

    @property
    def state(self) -> CircuitState:
        """What the circuit is set to."""
        return self.page.state_row.state

    @property
    def verdict(self) -> CircuitVerdict | None:
        """The verdict on the check as it stands; None while it is worked out."""
        answer = self._answer
        if answer is None or answer.asked.check != self.log.check:
            return None
        return answer.verdict

    def begin(self) -> None:
        """Fill the page, the first time it is turned to."""
        if self._begun:
            return
        self._begun = True
        before = self._last.load().circuit
        titles = circuit_titles()
        self.page.state_row.show_list(titles, before)
        if before in {name for name, _ in titles}:
            self.choose(before)

    def choose(self, name: str) -> None:
        """Begin a check of a circuit."""
        self.session.trouble = ""
        if self.circuit is not None and self.circuit.name == name:
            return
        try:
            circuit = load_circuit(name)
        except MeterlogError as error:
            self.session.trouble = remedy_here(str(error))
            return
        self._last.keep(replace(self._last.load(), circuit=name))
        self._say_left()
        self.log.choose(circuit)
        self._chosen = circuit.points[0].name if circuit.points else ""
        self._jumper_at.drop()
        self._answer, self._expected = None, ()
        self.page.suspects.show_suspects((), "")
        self.page.state_row.show_circuit(circuit)
        self.speed.begin()

    def _say_left(self) -> None:
        """Say where the entries of the check before are, if it had any."""
        circuit, check, folder = self.circuit, self.log.check, self.log.folder
        if circuit is not None and check is not None and (check.readings or check.signs):
            self.session.trouble = say(_NEW_CHECK, title=sentence(circuit.title), folder=folder)

    def do(self, action: CircuitAction, step: int = 0) -> None:
        """Do what a key or button asks for; what can't be done is said."""
        self.session.trouble = ""
        row = self.page.state_row
        doing: dict[CircuitAction, Callable[[], object]] = {
            CircuitAction.TAKE: self._take,
            CircuitAction.TYPE: self.page.point.ask,
            CircuitAction.POINT_BACK: lambda: self._step(-1),
            CircuitAction.POINT_ON: lambda: self._step(1),
            CircuitAction.PROPOSED: self._to_proposed,
            CircuitAction.AS_PROPOSED: self._as_proposed,
            CircuitAction.KEY: row.next_key,
            CircuitAction.PLUG: row.next_plug,
            CircuitAction.FUSE: row.next_fuse,
            CircuitAction.JUMPER: self._jumper,
            CircuitAction.COMPLAINT: row.turn_complaint,
            CircuitAction.NO_REACH: self._turn_reach,
            CircuitAction.CIRCUIT: row.box.showPopup,
            CircuitAction.PROBE: self._next_channel,
            CircuitAction.READ_ON: lambda: self.page.read_on(1),
            CircuitAction.READ_BACK: lambda: self.page.read_on(-1),
            CircuitAction.UNDO: lambda: self._turn(self.log.undo),
            CircuitAction.REDO: lambda: self._turn(self.log.redo),
            CircuitAction.SIGN: lambda: self._enter(
                lambda: self.log.sign(*SIGNS[step], self.state)
            ),
        }
        if self.circuit is None and action not in _ANYWHERE:
            self.session.trouble = say(_FIRST)
        if self.circuit is not None or action in {*_ANYWHERE, CircuitAction.TYPE}:
            doing[action]()

    def go_to(self, point: str) -> None:
        """Choose a test point."""
        self._chosen = point
        self._show()

    def _step(self, by: int) -> None:
        circuit = self.circuit
        if circuit is None or not circuit.points:
            return
        names = [point.name for point in circuit.points]
        at = names.index(self._chosen) if self._chosen in names else -by
        self.go_to(names[(at + by) % len(names)])

    def _to_proposed(self) -> None:
        test = self.verdict.next_test if self.verdict else None
        if test is not None and test.point:
            self.go_to(test.point)
        elif test is not None:
            self.session.trouble = say(_TO_LOOK, test=sentence(test.words))
        else:
            self.session.trouble = nothing_words(self.verdict)

    def _next_channel(self) -> None:
        if not self.page.point.next_channel():
            self.session.trouble = say(_NO_OTHER)

    def _as_proposed(self) -> None:
        test = self.verdict.next_test if self.verdict else None
        if test is None:
            self.session.trouble = nothing_words(self.verdict)
            return
        self.speed.take(test.state)
        if test.point:
            self.go_to(test.point)

    def _jumper(self) -> None:
        """Join the node of the point chosen before with that of the one chosen now."""
        try:
            state = self._jumper_at.end(self._point(), self.state)
        except UsageError as error:
            self.session.trouble = str(error)
            return
        if state is None:
            self._show()
        else:
            self.page.state_row.set_state(state)

    def _turn(self, turning: Callable[[], object]) -> None:
        """Undo or redo, and say what that was."""
        circuit, before = self.circuit, self.log.check
        if circuit is not None and self._enter(turning):
            self.session.trouble = turned_words(circuit, before, self.log.check)

    def _turn_reach(self) -> None:
        check, point = self.log.check, self._point()
        if check is not None and point is not None:
            reached = point.name in check.no_reach
            self._enter(lambda: self.log.reach(point.name, reached=reached))

    def _take(self) -> None:
        """Enter the settled value of the live channel at the chosen point."""
        circuit, point = self.circuit, self._point()
        if circuit is None or point is None:
            return
        chosen, now_ns = self.page.point.channel, self.session.now_ns()
        ready = self._live.take(circuit, point, chosen, now_ns)
        if isinstance(ready, str):
            self.session.trouble = ready
        else:
            self._read(point, ready)

    def _on_typed(self, words: str) -> None:
        self.session.trouble = ""
        circuit, point = self.circuit, self._point()
        if circuit is None or point is None:
            self.session.trouble = say(_FIRST)
            return
        try:
            ready = typed_reading(circuit, point, words)
        except UsageError as error:
            self.session.trouble = str(error)
            return
        if self._read(point, ready):
            self.page.point.leave()

    def _read(self, point: ProbePoint, ready: Ready) -> bool:
        return self._enter(
            lambda: self.log.read(
                point.name, ready.value, self.state, ready.standard_u, shared_u=ready.shared_u,
                meter_ohm=ready.meter_ohm, complaint=self.page.state_row.complaint_now,
                source=ready.source, basis=ready.basis,
            )
        )  # fmt: skip

    def _enter(self, entering: Callable[[], object]) -> bool:
        """Make an entry; what can't be kept is said, and does not count."""
        try:
            self.log.job = self._job()
            entering()
        except MeterlogError as error:
            self.session.trouble = remedy_here(str(error))
            return False
        self._ask()
        self._show()
        return True

    def _on_state(self) -> None:
        self._ask()
        self._show()

    def _ask(self) -> None:
        if self.circuit is not None and self.log.check is not None:
            self.judge.ask(Asked(self.circuit, self.log.check, self.state))

    def _new_folder(self) -> Path:
        job = self._job()
        subject = job.work_order or job.vehicle or (self.circuit.name if self.circuit else "")
        return fresh_folder(subject, self._folder())

    def _on_block(self, block: Block) -> None:
        self._live.probe.take(block)

    def tick(self, *, seen: bool) -> None:
        """Follow the recording, and fetch what was worked out; a few times a second is enough."""
        self._follow()
        answer = self.judge.pull()
        if answer is not None:
            self._answer = answer
            if answer.trouble:
                self.session.trouble = answer.trouble
            kept = [one for one in self._expected if one.state != answer.asked.state]
            self._expected = (*kept, *answer.expected)
            self._show()
        if seen:
            self._show_live()

    def _follow(self) -> None:
        run, shown = self.session.run, self.session.shown
        if run is not self._run:
            self._run = run
            known = None if run is None or shown is None else shown.about.instruments
            self._live.follow(known)
            self.speed.forget()
            self.page.point.show_channels(self._live.channels())
            try:
                self.log.follow(run)
            except MeterlogError as error:
                self.session.trouble = str(error)
        if run is None or shown is None:
            return
        self._live.probe.follow(shown.events)
        self.speed.follow()

    def close(self) -> None:
        """Seal what the check keeps by itself; what can't be sealed is sealed at the next start."""
        try:
            self.log.close()
        except MeterlogError as error:
            self.session.trouble = str(error)

    def _point(self) -> ProbePoint | None:
        circuit = self.circuit
        names = {point.name for point in circuit.points} if circuit else set()
        return circuit.point(self._chosen) if circuit and self._chosen in names else None

    def _marks(self, circuit: Circuit, check: CircuitCheck) -> CircuitMarks:
        return marks_of(circuit, check, self.verdict, self.state, self._expected, self._chosen)

    def _show(self) -> None:
        """Put everything on the page."""
        circuit, check = self.circuit, self.log.check
        if circuit is None or check is None:
            return
        marks = self._marks(circuit, check)
        self.page.drawing.show_marks(circuit, marks)
        verdict = self.verdict
        if verdict is not None:
            self.page.next_test.show_verdict(circuit, verdict)
            self.page.suspects.show_suspects(verdict.suspects, verdict.settled)
        elif self.judge.busy:
            self.page.next_test.show_words(say(WORKING))
        elif self._answer is not None:
            self.page.next_test.show_words(sentence(self._answer.trouble))
            self.page.suspects.show_suspects((), "")
        self.page.entries.show_check(circuit, check, verdict)
        self.page.state_row.show_turns(can_undo=self.log.can_undo, can_redo=self.log.can_redo)
        self._show_point(circuit, check, marks)
        self._show_live()

    def _show_point(self, circuit: Circuit, check: CircuitCheck, marks: CircuitMarks) -> None:
        point = self._point()
        if point is None:
            self.page.point.show_point("", reached=True)
            return
        # While it is worked out anew: what stands beside is back before it could be read here.
        mark, verdict = marks.points[point.name], self._answer.verdict if self._answer else None
        words = point_words(circuit, point, mark, self.state, verdict, self._jumper_at.start)
        reached = not {point.name, point.place} & check.no_reach
        self.page.point.show_point(words, reached=reached, lasting=verdict is not None)

    def _show_live(self) -> None:
        circuit, point = self.circuit, self._point()
        if circuit is None or point is None:
            self.page.point.show_live("")
            return
        chosen, now_ns = self.page.point.channel, self.session.now_ns()
        self.page.point.show_live(self._live.words(circuit, point, chosen, now_ns))
