"""JobAtHand: the job that the window works on. No widgets."""

from __future__ import annotations

import json
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

from meterlog.model import Job
from meterlog.model.conditions import Conditions
from meterlog.model.errors import MeterlogError
from meterlog.model.job_card import JobCard, PartIdentity, with_value
from meterlog.profile import settings_folder
from meterlog.work.job_cards import change_card, load_card
from meterlog.work.job_folder import CARD, JobWork, Side, keep_work, load_work
from meterlog.work.shelf import fresh_folder

JOBS = "jobs"
"""Folder of the jobs, among the recordings."""
_LAST = "last-job.json"


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
    """

    def __init__(self, shelf: Callable[[], Path], settings: Path | None = None) -> None:
        self._shelf = shelf
        self._last = (settings_folder() if settings is None else settings) / _LAST
        self.folder: Path | None = None
        self.card = JobCard()
        self.work = JobWork()
        self.conditions = Conditions()
        self.listeners: list[Callable[[], None]] = []

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
            found = json.loads(self._last.read_text("utf-8"))
            folder = Path(found["folder"])
            return folder if (folder / CARD).is_file() else None
        except (OSError, ValueError, TypeError, KeyError):
            return None

    def new(self) -> None:
        """Turn to a job of which nothing is known yet."""
        self.folder, self.card, self.work = None, JobCard(), JobWork()
        self._tell()

    def open(self, folder: Path) -> None:
        """Turn to the job in a folder.

        Raises
        ------
        UsageError
            If it holds no job; the one at hand stays.
        """
        card, work = load_card(folder / CARD), load_work(folder)
        self.folder, self.card, self.work = folder, card, work
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
        if change(self.card) == self.card:
            return
        self._begin()
        if self.card_path is not None:
            self.card = change_card(self.card_path, change)
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
        self._begin()
        if self.folder is not None:
            keep_work(self.folder, work)
        self.work = work
        self._tell()

    def fit(self, side: Side) -> None:
        """Say which part is in the vehicle now; raises as :meth:`set_work`."""
        self.set_work(replace(self.work, fitted=side))

    def take_recording(self, folder: Path, *, circuit: bool = False) -> None:
        """Add a recording that was made for this job; raises as :meth:`set_work`."""
        self.set_work(self.work.taking(folder, self.work.fitted, circuit=circuit))

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

    def _begin(self) -> None:
        """Make the job's folder where there is none."""
        if self.folder is not None:
            return
        folder = fresh_folder(self.card.work_order, self.jobs_folder())
        change_card(folder / CARD, lambda _: self.card)
        self.folder = folder
        self._remember()

    def _remember(self) -> None:
        """Keep which job is the last one; where that fails, only the convenience is lost."""
        try:
            self._last.parent.mkdir(parents=True, exist_ok=True)
            self._last.write_text(json.dumps({"folder": str(self.folder)}), "utf-8")
        except (OSError, MeterlogError):
            return

    def _tell(self) -> None:
        for listener in self.listeners:
            listener()


def _part_words(part: PartIdentity) -> str:
    return " ".join(word for word in (part.name, part.number, part.serial) if word)
