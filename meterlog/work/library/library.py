"""Library: finds recordings, circuit checks and jobs by an index of what lies in folders.

The folders are what counts. Whatever in them looks otherwise than when it was read is read again,
and the index can be thrown away at any time.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from types import TracebackType

import meterlog
from meterlog.model.errors import MeterlogError
from meterlog.profile.full_path import full_path
from meterlog.work.library.facts import Facts, job_facts, recording_facts, unreadable
from meterlog.work.library.hit import BEING_MADE, UNSEALED, Hit, Kind, Verdicts, currents_text
from meterlog.work.library.index_file import IndexFile
from meterlog.work.library.judging import Judged, judge
from meterlog.work.library.places import Place, walk
from meterlog.work.library.search import drawn_at, found_in
from meterlog.work.library.wanted import Wanted

_LOT = 50
_PROGRAM = f"meterlog {meterlog.__version__}"
_COLUMNS = (
    *("kind", "started", "work_order", "vehicle", "part", "technician", "odometer", "complaint"),
    *("mark", "duration_s", "instruments", "state", "trouble", "words", "key"),
)

Progress = Callable[[float], None]


@dataclass(frozen=True, slots=True)
class Refreshed:
    """What a look through the folders has found.

    Attributes
    ----------
    known : int
        Recordings and jobs.
    read : int
        Of them read, as they were new or had changed.
    left : int
        Of them not read yet, as only so many were to be read.
    gone : tuple of (Path, str)
        Folders that can't be looked into now, and why.
    unsealed : tuple of Path
        Recordings that were never sealed and that nobody is recording now.
    to_judge : int
        Sealed recordings whose verdict is not known yet.
    """

    known: int
    read: int
    left: int
    gone: tuple[tuple[Path, str], ...]
    unsealed: tuple[Path, ...]
    to_judge: int


class Library:
    """The index of some folders. Any thread may call any method.

    Parameters
    ----------
    index : Path or None
        Its file; None: the usual one in the user's cache folder.
    """

    def __init__(self, index: Path | None = None) -> None:
        self._index = IndexFile(index)

    def __enter__(self) -> Library:
        """Give itself."""
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        at: TracebackType | None,
    ) -> None:
        """Close it."""
        self.close()

    def close(self) -> None:
        """Let go of an index that could not be kept."""
        self._index.close()

    @property
    def told(self) -> str:
        """What was wrong with the index, for a person; empty for nothing."""
        return self._index.told

    @property
    def times_made(self) -> int:
        """How often the index was begun empty; another number than before: refresh."""
        return self._index.times_made

    @property
    def path(self) -> Path:
        """The file of the index."""
        return self._index.path

    def refresh(
        self, roots: Sequence[Path], progress: Progress, most: int | None = None
    ) -> Refreshed:
        """Look through folders, and read what is new there or has changed.

        Parameters
        ----------
        roots : sequence of Path
        progress : callable
            Called with the part done, 0 to 1, and often; what it raises ends the work, and what
            has been read by then stays read.
        most : int or None
            Read at most so many.

        Raises
        ------
        DiskFailed
            If the index can't be kept.
        """
        places = _whole(roots)
        given = {full_path(root): root for root in roots}
        walked = walk(places, lambda: progress(0.0))

        def work(connection: sqlite3.Connection) -> Refreshed:
            self._index.check(connection)
            changed = _changed(walked.places, _known(connection))
            read = changed[:most]
            _read(connection, read, progress)
            _drop_gone(connection, places, walked.places, walked.unread)
            return Refreshed(
                len(walked.places),
                len(read),
                len(changed) - len(read),
                tuple((given.get(one, one), why) for one, why in walked.unread.items()),
                _in_state(connection, places, UNSEALED),
                len(_to_judge(connection, places)),
            )

        return self._index.run(work)

    def search(self, roots: Sequence[Path], wanted: Wanted) -> tuple[Hit, ...]:
        """Give what fits, newest first, out of what the last refresh knew.

        Raises
        ------
        DiskFailed
            If the index can't be kept.
        """
        return self._index.run(lambda one: found_in(one, _whole(roots), wanted, _PROGRAM))

    def drawn(self, keys: Sequence[str]) -> dict[str, str]:
        """Give what runs draw, by the keys of their verdicts; only of those that were judged.

        Returns
        -------
        dict of str to str
            As :func:`~meterlog.work.drawn.drawn_from` reads it.

        Raises
        ------
        DiskFailed
            If the index can't be kept.
        """
        return self._index.run(lambda one: drawn_at(one, keys, _PROGRAM))

    def judge_missing(
        self, roots: Sequence[Path], progress: Progress, most: int | None = None
    ) -> int:
        """Judge the sealed recordings whose verdict is not known yet, newest first.

        Parameters
        ----------
        roots : sequence of Path
        progress : callable
            As of :meth:`refresh`; each verdict is kept at once.
        most : int or None
            At most so many.

        Returns
        -------
        int
            How many were judged.
        """
        missing = self._index.run(lambda one: _to_judge(one, _whole(roots)))[:most]
        for number, (folder, key) in enumerate(missing):

            def part(of_one: float, number: int = number) -> None:
                progress((number + of_one) / len(missing))

            part(0.0)
            judged = _judged(folder, part)
            if judged is not None:
                self._index.run(partial(_keep, key=key, judged=judged))
        progress(1.0)
        return len(missing)

    def forget(self, root: Path) -> None:
        """Drop what is known of a folder; nothing in it is touched."""

        def work(connection: sqlite3.Connection) -> None:
            inside = [name for (name,) in connection.execute("SELECT folder FROM things")]
            _drop(connection, (name for name in inside if _is_in(name, _whole([root]))))

        self._index.run(work)


def _whole(roots: Sequence[Path]) -> tuple[Path, ...]:
    return tuple(dict.fromkeys(full_path(root) for root in roots))


def _is_in(name: str, roots: Iterable[Path]) -> bool:
    place = Path(name)
    return any(place.is_relative_to(root) for root in roots)


def _known(connection: sqlite3.Connection) -> dict[str, tuple[str, str]]:
    rows = connection.execute("SELECT folder, signs, state FROM things")
    return {folder: (signs, state) for folder, signs, state in rows}


def _changed(places: Sequence[Place], known: dict[str, tuple[str, str]]) -> list[Place]:
    # That a program has died which was recording shows in no file.
    return [
        one
        for one in places
        if known.get(str(one.folder), ("", ""))[0] != one.signs
        or known[str(one.folder)][1] == BEING_MADE
    ]


def _read(connection: sqlite3.Connection, changed: Sequence[Place], progress: Progress) -> None:
    for start in range(0, len(changed), _LOT):
        lot = []
        for number, one in enumerate(changed[start : start + _LOT], start):
            progress(number / len(changed))
            lot.append((one, _facts(one)))
        connection.execute("BEGIN IMMEDIATE")
        for one, facts in lot:
            _put(connection, one, facts)
        connection.execute("COMMIT")


def _facts(place: Place) -> Facts:
    read = job_facts if place.job else recording_facts
    try:
        return read(place.folder)
    # One folder that nobody thought of must not keep all others from being found.
    except Exception as error:  # noqa: BLE001
        why = f"{type(error).__name__}: {error} This is a fault of the program; report it."
        return unreadable(place.folder, Kind.JOB if place.job else Kind.RUN, why)


def _put(connection: sqlite3.Connection, place: Place, facts: Facts) -> None:
    marks = ", ".join("?" * (len(_COLUMNS) + 2))
    values = [getattr(facts, name) for name in _COLUMNS]
    connection.execute(
        f"INSERT OR REPLACE INTO things (folder, signs, {', '.join(_COLUMNS)}) VALUES ({marks})",  # noqa: S608 - names above
        [_text(str(place.folder)), place.signs, *map(_text, values)],
    )
    connection.execute("DELETE FROM belongs WHERE job = ?", [_text(str(place.folder))])
    connection.executemany(
        "INSERT OR REPLACE INTO belongs VALUES (?, ?, ?, ?)",
        [
            [
                *(_text(str(place.folder)), _text(str(one.folder)), one.side.value),
                _text(facts.numbers.get(one.side, "")),
            ]
            for one in facts.belongs
        ],
    )


def _text(value: object) -> object:
    """Give a value as SQLite takes it: halves of characters, as in odd file names, can't go in."""
    return value.encode("utf-8", "replace").decode() if isinstance(value, str) else value


def _drop_gone(
    connection: sqlite3.Connection,
    roots: Sequence[Path],
    places: Sequence[Place],
    unread: dict[Path, str],
) -> None:
    """Drop what is no longer in folders that could be looked into; note those that could not."""
    there = {str(one.folder) for one in places}
    inside = [name for name in _known(connection) if _is_in(name, roots)]
    _drop(connection, (one for one in inside if one not in there and not _is_in(one, unread)))
    connection.execute("BEGIN IMMEDIATE")
    away = [name for (name,) in connection.execute("SELECT folder FROM away")]
    for name in away:
        if _is_in(name, roots):
            connection.execute("DELETE FROM away WHERE folder = ?", [name])
    connection.executemany(
        "INSERT OR REPLACE INTO away VALUES (?, ?)",
        [(_text(str(folder)), why) for folder, why in unread.items()],
    )
    connection.execute("COMMIT")


def _drop(connection: sqlite3.Connection, names: Iterable[str]) -> None:
    gone = [(name,) for name in names]
    connection.execute("BEGIN IMMEDIATE")
    connection.executemany("DELETE FROM things WHERE folder = ?", gone)
    connection.executemany("DELETE FROM belongs WHERE job = ?", gone)
    connection.execute("COMMIT")


def _in_state(
    connection: sqlite3.Connection, roots: Sequence[Path], state: str
) -> tuple[Path, ...]:
    rows = connection.execute("SELECT folder FROM things WHERE state = ? ORDER BY folder", [state])
    away = [Path(name) for (name,) in connection.execute("SELECT folder FROM away")]
    return tuple(Path(name) for (name,) in rows if _is_in(name, roots) and not _is_in(name, away))


def _to_judge(connection: sqlite3.Connection, roots: Sequence[Path]) -> list[tuple[Path, str]]:
    rows = connection.execute(
        "SELECT folder, key FROM things LEFT JOIN verdicts USING (key) GROUP BY folder "
        "HAVING key != '' AND sum(program IS ?) = 0 ORDER BY started DESC, folder",
        [_PROGRAM],
    ).fetchall()
    away = [Path(name) for (name,) in connection.execute("SELECT folder FROM away")]
    fit = [one for one in rows if _is_in(one[0], roots) and not _is_in(one[0], away)]
    # A copy has the same verdict.
    return list({key: (Path(folder), key) for folder, key in reversed(fit)}.values())[::-1]


def _judged(folder: Path, progress: Progress) -> Judged | None:
    """Judge; None where the folder has gone meanwhile. What can't be judged has a verdict, too."""
    stopped = False

    def told(part: float) -> None:
        nonlocal stopped
        stopped = True
        progress(part)
        stopped = False

    try:
        return judge(folder, told)
    # One recording that nobody thought of must not keep all others from being judged.
    except Exception as error:
        if stopped:
            raise
        if not folder.is_dir():
            return None
        why = str(error)
        if not isinstance(error, MeterlogError | OSError):
            why = f"{type(error).__name__}: {why} This is a fault of the program; report it."
        return Judged(Verdicts.CANT_TELL, "", f"Can't be judged: {why}")


def _keep(connection: sqlite3.Connection, key: str, judged: Judged) -> None:
    connection.execute(
        "INSERT OR REPLACE INTO verdicts VALUES (?, ?, ?, ?, ?, ?, ?)",
        [
            *(key, _PROGRAM, judged.verdict.value, judged.worst, _text(judged.sentence)),
            *(currents_text(judged.currents), judged.drawn),
        ],
    )
