"""JobAtHand: the job that the window works on. No widgets."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

from meterlog.model import Job
from meterlog.model.conditions import Conditions
from meterlog.model.errors import DiskFailed, UsageError
from meterlog.model.job_card import JobCard, PartIdentity, with_value
from meterlog.profile import settings_folder
from meterlog.profile.full_path import full_path
from meterlog.window.kept_file import keep, read_kept
from meterlog.window.words import later, say
from meterlog.work.job_cards import change_card, load_card
from meterlog.work.job_folder import CARD, WORK, JobWork, Side, change_work, keep_work, load_work
from meterlog.work.shelf import fresh_folder

JOBS = "jobs"
"""Folder of the jobs, among the recordings."""
_LAST = "last-job.json"
_FILED_OLD = later("Stop the recording first: this run is filed with the old part.")
_FILED_NEW = later("Stop the recording first: this run is filed with the new part.")


class JobAtHand:
    """One job: its card and its work. What is changed is on the disk when a method returns.

    Parameters
    ----------
    shelf : callable
        Gives the folder in which recordings are made; jobs lie in ``jobs`` of it.
    settings : Path or None
        Where it is remembered which job was the last; None: the user's settings folder.

    Attributes
    ----------
    folder : Path or None
        None until something is entered.
    card : JobCard
    work : JobWork
    conditions : Conditions
        Under which the next run is made.
    listeners : list of callable
        Called after every change.
    leaving : list of callable
        Called before another job comes, so that what is being typed is kept with this one. What
        they raise keeps this one.
    parting : list of callable
        Called once all of those have let this one go and the other one could be read; this one is
        still at hand. What they raise keeps it, too.
    told : str
        What has become of the job's folder, to be said once.
    filing : callable
        Gives which part the run in progress is filed with; None where there is none.
    """

    def __init__(self, shelf: Callable[[], Path], settings: Path | None = None) -> None:
        self._shelf = shelf
        self._last = (settings_folder() if settings is None else settings) / _LAST
        self.folder: Path | None = None
        self.card = JobCard()
        self.work = JobWork()
        self.conditions = Conditions()
        self.listeners: list[Callable[[], None]] = []
        self.leaving: list[Callable[[], None]] = []
        self.parting: list[Callable[[], None]] = []
        self.told = ""
        self.filing: Callable[[], Side | None] = lambda: None

    @property
    def card_path(self) -> Path | None:
        """The file of the card; None until something is entered."""
        return self.folder / CARD if self.folder is not None else None

    def jobs_folder(self) -> Path:
        """Give the folder in which jobs lie."""
        return self._shelf() / JOBS

    def last_folder(self) -> Path | None:
        """Give the job of the last time, where it is still there."""
        try:
            found = read_kept(self._last)
            folder = Path(found["folder"])
            return folder if (folder / CARD).is_file() else None
        except (OSError, ValueError, TypeError, KeyError):
            return None

    def new(self) -> None:
        """Turn to a job of which nothing is known yet.

        Raises
        ------
        MeterlogError
            If something that was being typed can't be kept; the job at hand stays.
        """
        self._ask(self.leaving)
        self._ask(self.parting)
        self.folder, self.card, self.work = None, JobCard(), JobWork()
        self._tell()

    def open(self, folder: Path, *, remember: bool = True) -> None:
        """Turn to the job in a folder.

        Parameters
        ----------
        folder : Path
        remember : bool
            Go on with it the next time, too; False for a demo.

        Raises
        ------
        UsageError
            If it holds no job; the one at hand stays.
        MeterlogError
            As :meth:`new`.
        """
        if not (folder / CARD).is_file():
            raise UsageError(
                say("holds no job: there is no {card}.", card=CARD),
                subject=str(folder),
                remedy=say("Choose the folder of one job; they lie in the folder jobs."),
            )
        self._ask(self.leaving)
        card, work = load_card(folder / CARD), load_work(folder)
        self._ask(self.parting)
        self.folder, self.card, self.work = folder, card, work
        if remember:
            self._remember()
        self._tell()

    def enter(self, key: str, text: str) -> None:
        """Enter one field of the card; the first one makes the job's folder.

        Raises
        ------
        UsageError
            If there is no such field, or the text is none.
        DiskFailed
            If it can't be kept.
        """
        self.change(lambda card: with_value(card, key, text))

    def change(self, change: Callable[[JobCard], JobCard]) -> None:
        """Change the card; raises as :meth:`enter`."""
        changed = change(self.card)
        if changed == self.card:
            return
        folder = self._begin(changed.work_order)
        self.card = change_card(folder / CARD, change)
        self._tell()

    def set_work(self, work: JobWork) -> None:
        """Take another list of what belongs to the job.

        Raises
        ------
        DiskFailed
            If it can't be kept.
        """
        if work == self.work:
            return
        keep_work(self.begin(), work)
        self.work = work
        self._tell()

    def change_work(self, change: Callable[[JobWork], JobWork]) -> None:
        """Change what belongs to the job, another program's additions kept.

        Raises
        ------
        DiskFailed
            If it can't be kept.
        """
        if change(self.work) == self.work:
            return
        known = self.work
        self.work = change_work(self.begin(), change, lambda: known)
        self._tell()

    def fit(self, side: Side) -> None:
        """Say which part is in the vehicle now.

        Raises
        ------
        UsageError
            If a run is in progress, which is filed with the other part.
        DiskFailed
            If it can't be kept.
        """
        filed = self.filing()
        if filed not in {None, side}:
            raise UsageError(say(_FILED_OLD if filed is Side.OLD else _FILED_NEW))
        self.change_work(lambda work: replace(work, fitted=side))

    def take_recording(self, folder: Path, *, circuit: bool = False) -> None:
        """Add a recording that was made for this job; raises as :meth:`set_work`."""
        side = self.work.fitted
        self.change_work(lambda work: work.taking(folder, side, circuit=circuit))

    def tell_speeds(self, folder: Path, speeds: int) -> None:
        """Keep at how many speeds a recording of this job ran; raises as :meth:`set_work`."""
        full = full_path(folder)
        if any(full_path(one.folder) == full for one in self.work.recordings):
            self.change_work(lambda work: work.telling(folder, speeds))

    def take_pack(self, folder: Path) -> None:
        """Add a pack that was made of this job; raises as :meth:`set_work`."""
        self.change_work(lambda work: work.taking_pack(folder))

    def look_again(self) -> None:
        """Take over what another program changed; a file that went away changes nothing.

        Raises
        ------
        UsageError, DiskFailed
            If a file is there and can't be read; what is known stays.
        """
        if self.folder is None:
            return
        try:
            there = (self.folder / CARD).is_file()
        except OSError as error:  # such as of a share that is not connected any more
            raise DiskFailed(
                say("can't be looked at: {why}.", why=error.strerror or type(error).__name__),
                subject=str(self.folder / CARD),
                remedy=say("What is known of the job stays; connect its disk again."),
            ) from error
        if not there:
            return
        card, work = load_card(self.folder / CARD), load_work(self.folder)
        if not (self.folder / WORK).exists():
            work = self.work
        if (card, work) != (self.card, self.work):
            self.card, self.work = card, work
            self._tell()

    def job(self) -> Job:
        """Give what a recording made now says about its job."""
        card = self.card
        part = card.new_part if self.work.fitted is Side.NEW else card.old_part
        return Job(
            work_order=card.work_order,
            vehicle=card.vehicle,
            odometer=card.odometer or card.hours,
            complaint=card.complaint,
            part=_part_words(part),
            technician=card.technician,
            measured_under=self.conditions,
        )

    def begin(self) -> Path:
        """Give the job's folder; make it where there is none.

        Raises
        ------
        DiskFailed
            If it can't be made.
        """
        return self._begin(self.card.work_order)

    def _begin(self, name: str) -> Path:
        if self.folder is not None:
            self._begin_anew(self.folder)
            return self.folder
        folder = fresh_folder(name, self.jobs_folder())
        change_card(folder / CARD, lambda _: self.card)
        self.folder = folder
        self._remember()
        return folder

    def _begin_anew(self, folder: Path) -> None:
        """Put the card where the job's folder went away: without it nobody finds the rest."""
        try:
            there = (folder / CARD).exists()
        except OSError:
            there = True  # whoever writes there says why that fails
        if not there:
            change_card(folder / CARD, lambda _: self.card)
            self.told = say(
                "The job's folder was not there any more: what is known of the job was put into"
                " {folder} anew. What lay beside it is missing.",
                folder=folder,
            )

    def _remember(self) -> None:
        """Keep which job is the last one; where that fails, only the convenience is lost."""
        keep(self._last, {"folder": str(self.folder)})

    @staticmethod
    def _ask(listeners: list[Callable[[], None]]) -> None:
        for listener in listeners:
            listener()

    def _tell(self) -> None:
        for listener in self.listeners:
            listener()


def _part_words(part: PartIdentity) -> str:
    """Say it in words that tell number and serial apart, for whoever reads nothing but them."""
    number = f"part number {part.number}" if part.name and part.number else part.number
    serial = f"serial {part.serial}" if part.serial else ""
    return ", ".join(word for word in (part.name, number, serial) if word)
