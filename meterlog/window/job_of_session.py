"""JobOfSession: which job the recordings made in the window belong to."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

from meterlog.model import EventKind, standing
from meterlog.model.errors import MeterlogError
from meterlog.profile.full_path import full_path
from meterlog.window.job_at_hand import JobAtHand
from meterlog.window.remedies_here import remedy_here
from meterlog.window.session import Phase, Session
from meterlog.window.words import later, say
from meterlog.work.job_folder import JobWork, Side, change_work
from meterlog.work.wholeness import one_part

_PART = {Side.OLD: later("old part"), Side.NEW: later("new part")}


class JobOfSession:
    """Ties the session to the job at hand; what can't be kept becomes the session's trouble.

    Parameters
    ----------
    session : Session
    at_hand : JobAtHand
    """

    def __init__(self, session: Session, at_hand: JobAtHand) -> None:
        self._session, self._at_hand = session, at_hand
        self._circuit: Path | None = None
        self._made_here = False
        self._left: tuple[Path | None, Side] | None = None
        """The job that was left while its run was being connected, and the part in then."""
        self._filed_in: tuple[Path, Path] | None = None
        """The run filed last, and its job."""
        self._asked: tuple[object, ...] = ()
        self._other = ""
        """What the run on show is of by what was asked last."""
        at_hand.filing = self._filed
        # Not while the pages are asked: one of them may keep the job, or enter what is typed in it.
        at_hand.parting.append(self._on_parting)

    @property
    def words(self) -> str:
        """Which job it is and which part is in the vehicle; empty for no job.

        Before it that of the run on show, where that is of another job or part.
        """
        if self._at_hand.folder is None:
            return ""
        name = self._at_hand.card.work_order or self._at_hand.folder.name
        words = say(
            "{name}: {fitted} part in", name=name, fitted=say(self._at_hand.work.fitted.value)
        )
        # Asked for at every look, and paths are followed on the disk.
        session, at_hand = self._session, self._at_hand
        run = session.folder, session.shown is None, self._filed_in
        asked = *run, at_hand.folder, at_hand.work
        if asked != self._asked:
            self._asked, self._other = asked, self._of_another()
        other = self._other
        return f"{say('this run: {of}', of=other)} · {words}" if other else words

    def _of_another(self) -> str:
        """Name what the run on show is of, where that is not the job at hand and its part."""
        folder = self._session.folder
        if folder is None or self._session.shown is None:
            return ""
        if self._filed_in is not None and self._filed_in[0] == folder:
            job = self._filed_in[1]
            if not self._is_at_hand(job):
                return job.name
        here, work = full_path(folder), self._at_hand.work
        sides = [one.side for one in work.recordings if full_path(one.folder) == here]
        return say(_PART[sides[0]]) if sides and sides[0] is not work.fitted else ""

    def open(self, folder: Path) -> None:
        """Turn to the job in a folder."""
        self._try(lambda: self._at_hand.open(folder))

    def show(self, folder: Path) -> None:
        """Turn to a job that was handed over, for this time only."""
        self._try(lambda: self._at_hand.open(folder, remember=False))

    def fit_new(self) -> None:
        """Say that the new part is in, where a job is at hand."""
        new = Side.NEW
        if self._at_hand.folder is not None:
            # Not fit(), which asks for the run that has begun: it is the new part's.
            self._try(lambda: self._at_hand.change_work(lambda work: replace(work, fitted=new)))

    def open_last(self) -> None:
        """Go on with the job of the last time, where it is still there."""
        folder = self._at_hand.last_folder()
        if folder is not None:
            self.open(folder)

    def turn_part(self) -> None:
        """Say that the other part is in the vehicle now."""
        side = Side.OLD if self._at_hand.work.fitted is Side.NEW else Side.NEW
        self._try(lambda: self._at_hand.fit(side))

    def begin_run(self, *, made_here: bool) -> None:
        """Take the job at hand for that of the run which is being connected.

        Parameters
        ----------
        made_here : bool
            It was begun from the Meters page: then it makes a job where there is none. A run that
            was handed to the window belongs to a job only where one is at hand.
        """
        self._made_here, self._left = made_here, None

    def _on_parting(self) -> None:
        """Keep which job a run is of that is being connected: another one comes to hand.

        Raises
        ------
        DiskFailed
            If the job has no folder yet and none can be made.
        """
        at_hand = self._at_hand
        if self._session.phase is Phase.CONNECTING and self._left is None:
            of = at_hand.begin() if self._made_here else at_hand.folder
            self._left = of, at_hand.work.fitted

    def add_recording(self) -> bool:
        """Let the recording that has begun belong to the job that it was begun for.

        Returns
        -------
        bool
            It was begun from the Meters page.
        """
        at_hand, folder, left = self._at_hand, self._session.folder, self._left
        made_here, self._made_here, self._left = self._made_here, False, None
        if folder is None:
            return made_here
        if left is None and (made_here or at_hand.folder is not None):
            self._try(lambda: at_hand.take_recording(folder))
            job = at_hand.folder
        elif left is not None:
            job, side = left
            if job is not None:
                self._change(job, lambda work: work.taking(folder, side))
        else:
            job = None
        self._filed_in = None if job is None else (folder, job)
        return made_here

    def tick(self) -> None:
        """Say what has become of the job's folder."""
        told, self._at_hand.told = self._at_hand.told, ""
        if told:
            said = self._session.trouble
            self._session.trouble = f"{said}\n{told}" if said else told

    def look_again(self) -> str:
        """Take over what another window has said of the job; give why that could not be."""
        try:
            self._at_hand.look_again()
        except MeterlogError as error:
            return remedy_here(str(error))
        return ""

    def tell_speeds(self, *, ended: bool) -> None:
        """Keep at how many speeds the recording ran that is on show.

        Parameters
        ----------
        ended : bool
            It is the run filed last, which has just ended, wherever it went on.
        """
        shown, folder = self._session.shown, self._session.folder
        if shown is None or folder is None:
            return
        if ended:
            self._file_anew(folder)
        told = [one for one in standing(shown.events) if one.kind is EventKind.SPEED]
        speeds = len({one.speed for one in told if one.value.isdecimal()} - {0})
        filed = self._filed_in
        if filed is not None and filed[0] == folder and not self._is_at_hand(filed[1]):
            self._change(filed[1], lambda work: work.telling(folder, speeds))
        elif self._at_hand.folder is not None:
            self._try(lambda: self._at_hand.tell_speeds(folder, speeds))

    def _file_anew(self, folder: Path) -> None:
        """File the run that has ended in another folder than it was begun in."""
        filed = self._filed_in
        if filed is None or full_path(filed[0]) == full_path(folder):
            return
        begun, job = filed
        # Where the parts could not be put together, the first one belongs to the job, too.
        whole = not one_part(folder)
        self._change(job, lambda work: work.going_on(begun, folder, leave=whole))
        self._filed_in = folder, job

    def _change(self, job: Path, change: Callable[[JobWork], JobWork]) -> None:
        """Change what belongs to a job, whether it is at hand or not."""
        if self._is_at_hand(job):
            self._try(lambda: self._at_hand.change_work(change))
        else:
            self._try(lambda: change_work(job, change))

    def _is_at_hand(self, job: Path) -> bool:
        here = self._at_hand.folder
        return here is not None and full_path(here) == full_path(job)

    def add_circuit(self, folder: Path | None) -> None:
        """Let a circuit check belong to the job that has a recording of its own.

        Parameters
        ----------
        folder : Path or None
            Where the check's entries go; that of the run in progress is known already.
        """
        if folder is None or folder in {self._circuit, self._session.folder}:
            return
        self._circuit = folder
        self._try(lambda: self._at_hand.take_recording(folder, circuit=True))

    def _filed(self) -> Side | None:
        """Give the part that the run in progress is of; None where it is of no part of this job."""
        session, work = self._session, self._at_hand.work
        if session.phase is Phase.CONNECTING:
            if self._left is None:
                return work.fitted
            # Whoever turned away from its job and back is in that job again.
            job, side = self._left
            return side if job is not None and self._is_at_hand(job) else None
        if not session.recording or session.folder is None:
            return None
        folder = full_path(session.folder)
        return next((one.side for one in work.recordings if full_path(one.folder) == folder), None)

    def _try(self, change: Callable[[], object]) -> None:
        try:
            change()
        except MeterlogError as error:
            self._session.trouble = remedy_here(str(error))
