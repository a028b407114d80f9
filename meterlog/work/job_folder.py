"""JobFolder: one job's card, and which recordings, circuit checks and packs belong to it."""

from __future__ import annotations

import contextlib
import json
import os
import secrets
from collections.abc import Callable
from dataclasses import dataclass, replace
from enum import StrEnum
from pathlib import Path

from meterlog.model.errors import DiskFailed, UsageError
from meterlog.model.json_kinds import as_list, as_table, as_text
from meterlog.profile.full_path import full_path
from meterlog.profile.plain_file import open_plain
from meterlog.recording.append_file import sync_descriptor, sync_folder
from meterlog.work.file_lock import alone_with

CARD, WORK = "card.json", "work.json"
"""Names of the files of a job's folder."""
FORMAT = "meterlog-job-work/1"
_MOST_BYTES = 4_000_000


class Side(StrEnum):
    """Which part was in the vehicle when something was measured."""

    OLD = "old"
    NEW = "new"


@dataclass(frozen=True, slots=True)
class Kept:
    """One recording of the job.

    Attributes
    ----------
    folder : Path
    side : Side
    circuit : bool
        It holds a circuit check and no run.
    speeds : int or None
        At how many speeds it ran, where that is known; None while it runs.
    """

    folder: Path
    side: Side
    circuit: bool = False
    speeds: int | None = None


@dataclass(frozen=True, slots=True)
class JobWork:
    """What was made for one job.

    Attributes
    ----------
    fitted : Side
        Which part is in the vehicle now.
    recordings : tuple of Kept
        In the order in which they were made.
    packs : tuple of Path
    """

    fitted: Side = Side.OLD
    recordings: tuple[Kept, ...] = ()
    packs: tuple[Path, ...] = ()

    def newest(self, side: Side) -> Path | None:
        """Give the newest run with one of the parts; None where there is none.

        A run at fewer speeds than another is passed over: started by mistake and stopped at once,
        it does not take the place of the whole one.
        """
        runs = [one for one in self.recordings if one.side is side and not one.circuit]
        most = max((one.speeds or 0 for one in runs), default=0)
        whole = (one.folder for one in reversed(runs) if one.speeds is None or one.speeds >= most)
        return next(whole, None)

    def circuits(self) -> tuple[Path, ...]:
        """Give the circuit checks that stand alone."""
        return tuple(one.folder for one in self.recordings if one.circuit)

    def taking(self, folder: Path, side: Side, *, circuit: bool = False) -> JobWork:
        """Give the work with one recording more, or with one on another side."""
        full = full_path(folder)
        if any(full_path(one.folder) == full for one in self.recordings):
            kept = (
                replace(one, side=side, circuit=circuit) if full_path(one.folder) == full else one
                for one in self.recordings
            )
            return replace(self, recordings=tuple(kept))
        return replace(self, recordings=(*self.recordings, Kept(folder, side, circuit)))

    def going_on(self, begun: Path, folder: Path, *, leave: bool) -> JobWork:
        """Give the work in which a run went on in another folder than it was begun in.

        Parameters
        ----------
        begun, folder : Path
        leave : bool
            All of it is in ``folder``: the one it was begun in is left out.
        """
        full = full_path(begun)
        sides = [one.side for one in self.recordings if full_path(one.folder) == full]
        work = self.taking(folder, sides[0]) if sides else self
        kept = (one for one in work.recordings if not (leave and full_path(one.folder) == full))
        return replace(work, recordings=tuple(kept))

    def telling(self, folder: Path, speeds: int) -> JobWork:
        """Give the work in which it is known at how many speeds a run of it ran."""
        full = full_path(folder)
        kept = (
            replace(one, speeds=speeds) if full_path(one.folder) == full else one
            for one in self.recordings
        )
        return replace(self, recordings=tuple(kept))

    def taking_pack(self, folder: Path) -> JobWork:
        """Give the work with one pack more."""
        return self if folder in self.packs else replace(self, packs=(*self.packs, folder))

    def leaving(self, folder: Path) -> JobWork:
        """Give the work without one recording."""
        kept = tuple(one for one in self.recordings if one.folder != folder)
        return replace(self, recordings=kept)


def load_work(job: Path) -> JobWork:
    """Read what belongs to the job in a folder; nothing where there is no list.

    Raises
    ------
    UsageError
        If the list can't be read or is none; names the file.
    """
    path = job / WORK
    try:
        with open_plain(path) as stream:
            content = stream.read(_MOST_BYTES + 1)
    except FileNotFoundError:
        return JobWork()
    except OSError as error:
        raise _wrong(f"can't be read: {error.strerror}.", path) from error
    if len(content) > _MOST_BYTES:
        raise _wrong("is too large for a list of recordings.", path)
    try:
        return _work(json.loads(content), job)
    except (ValueError, TypeError, KeyError, RecursionError) as error:
        raise _wrong("is no list of a job's recordings.", path) from error


def keep_work(job: Path, work: JobWork) -> None:
    """Put the list in the place of the one before; all of the old one or all of the new one.

    Raises
    ------
    DiskFailed
        If it can't be written.
    """
    change_work(job, lambda _: work, lambda: work)


def change_work(
    job: Path, change: Callable[[JobWork], JobWork], lost: Callable[[], JobWork] = JobWork
) -> JobWork:
    """Change the list of the job in a folder; when this returns, the change is on the disk.

    It is read again before, so that nothing is lost that another program added since.

    Parameters
    ----------
    job : Path
        Is made where it is not there.
    change : callable
        Gives the new list from the one that is there.
    lost : callable
        Gives the list to start from where there is none on the disk, or none that can be read.

    Returns
    -------
    JobWork
        As it is now.

    Raises
    ------
    DiskFailed
        If it can't be written; what was there is there still.
    """
    path = job / WORK
    try:
        job.mkdir(parents=True, exist_ok=True)
        with alone_with(path):
            try:
                before = load_work(job) if path.exists() else lost()
            except UsageError:
                # What can't be read is no list, but it may be all that is left of one.
                path.replace(path.with_name(f"{WORK}.unreadable-{secrets.token_hex(4)}"))
                before = lost()
            after = change(before)
            if after != before or not path.exists():
                _replace(path, after, job)
    except OSError as error:
        raise DiskFailed(
            f"can't be written: {error.strerror}.",
            subject=str(path),
            remedy="Free some space or choose another folder; what was there is there still.",
        ) from error
    return after


def fresh_pack(job: Path) -> Path:
    """Give the folder of the job's next pack: ``claim-1``, ``claim-2``; it does not exist yet."""
    number = 1
    while (job / f"claim-{number}").exists():
        number += 1
    return job / f"claim-{number}"


def _replace(path: Path, work: JobWork, job: Path) -> None:
    values = {
        "format": FORMAT,
        "fitted": work.fitted.value,
        "recordings": [
            {
                "folder": _told(one.folder, job),
                "part": one.side.value,
                "circuit": one.circuit,
                **({} if one.speeds is None else {"speeds": one.speeds}),
            }
            for one in work.recordings
        ],
        "packs": [_told(one, job) for one in work.packs],
    }
    content = json.dumps(values, ensure_ascii=False, indent=1) + "\n"
    aside = path.with_name(f".{path.name}.{secrets.token_hex(4)}")
    try:
        with aside.open("xb") as stream:
            stream.write(content.encode())
            stream.flush()
            sync_descriptor(stream.fileno())
        aside.replace(path)
    except BaseException:
        with contextlib.suppress(OSError):
            aside.unlink(missing_ok=True)
        raise
    sync_folder(path.parent)


def _told(folder: Path, job: Path) -> str:
    """Give a path as the list keeps it: from the job's folder, so that both can be moved."""
    full, home = full_path(folder), full_path(job)
    shelf = home.parent.parent
    if full.is_relative_to(shelf):
        return Path(os.path.relpath(full, home)).as_posix()
    return str(full)


def _work(found: object, job: Path) -> JobWork:
    table = as_table(found)
    if table["format"] != FORMAT:
        raise ValueError
    kept = [as_table(one) for one in as_list(table["recordings"])]
    recordings = tuple(
        Kept(
            _path(one["folder"], job),
            Side(as_text(one["part"])),
            one["circuit"] is True,
            _speeds(one.get("speeds")),
        )
        for one in kept
    )
    packs = tuple(_path(one, job) for one in as_list(table["packs"]))
    return JobWork(Side(as_text(table["fitted"])), recordings, packs)


def _speeds(found: object) -> int | None:
    whole = isinstance(found, int) and not isinstance(found, bool)
    return found if isinstance(found, int) and whole and found >= 0 else None


def _path(found: object, job: Path) -> Path:
    return full_path(job / as_text(found))


def _wrong(what: str, path: Path) -> UsageError:
    return UsageError(
        what,
        subject=str(path),
        remedy="Move the file away: the card and all recordings stay, and can be chosen anew.",
    )
