"""IndexFile: the index on the disk. It is a cache: what is damaged is thrown away and made anew."""

from __future__ import annotations

import contextlib
import os
import shutil
import sqlite3
import tempfile
import threading
import time
from collections.abc import Callable
from contextlib import closing
from pathlib import Path
from typing import TypeVar

from meterlog.model.errors import DiskFailed

T = TypeVar("T")

FORMAT = 3
"""Of the tables below; in the file's name too, so that versions of the program don't fight."""
BUSY_S = 10.0
_AGAIN_S = 0.02
_MOST_MENDED = 3

_TABLES = """
CREATE TABLE things (
    folder TEXT PRIMARY KEY, signs TEXT NOT NULL, kind TEXT NOT NULL, started TEXT NOT NULL,
    work_order TEXT NOT NULL, vehicle TEXT NOT NULL, part TEXT NOT NULL, technician TEXT NOT NULL,
    odometer TEXT NOT NULL, complaint TEXT NOT NULL, mark TEXT NOT NULL, duration_s REAL,
    instruments TEXT NOT NULL, state TEXT NOT NULL, trouble TEXT NOT NULL, words TEXT NOT NULL,
    key TEXT NOT NULL);
CREATE TABLE belongs (job TEXT NOT NULL, folder TEXT NOT NULL, side TEXT NOT NULL,
    number TEXT NOT NULL, PRIMARY KEY (job, folder));
CREATE INDEX belongs_folder ON belongs (folder);
CREATE TABLE away (folder TEXT PRIMARY KEY, why TEXT NOT NULL);
CREATE TABLE verdicts (key TEXT NOT NULL, program TEXT NOT NULL, outcome TEXT NOT NULL,
    worst TEXT NOT NULL, sentence TEXT NOT NULL, currents TEXT NOT NULL,
    drawn TEXT NOT NULL, PRIMARY KEY (key, program));
"""

_DISK = {
    sqlite3.SQLITE_FULL,
    sqlite3.SQLITE_READONLY,
    sqlite3.SQLITE_CANTOPEN,
    sqlite3.SQLITE_IOERR,
    sqlite3.SQLITE_PERM,
    sqlite3.SQLITE_AUTH,
    sqlite3.SQLITE_NOLFS,
    sqlite3.SQLITE_PROTOCOL,
}
_BUSY = {sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED}


def usual_index() -> Path:
    """Give the file of this user's index; it need not exist.

    It lies in the user's cache folder and not beside the recordings: those may lie on a share
    where a database's locks don't hold, on a stick that is pulled out or can't be written, and
    hold nothing but evidence.
    """
    from platformdirs import user_cache_path

    return user_cache_path("meterlog", appauthor=False) / f"library-{FORMAT}.sqlite3"


class IndexFile:
    """Opens the index for one piece of work at a time; any thread may call :meth:`run`.

    Parameters
    ----------
    path : Path or None
        None: :func:`usual_index`.

    Attributes
    ----------
    told : str
        What was wrong with the index, for a person; empty for nothing.
    times_made : int
        How often it was begun empty: whoever finds another number than before must fill it.
    """

    def __init__(self, path: Path | None = None) -> None:
        self._path = usual_index() if path is None else path
        self._lock = threading.Lock()
        self._own: Path | None = None
        self.told = ""
        self.times_made = 0

    @property
    def path(self) -> Path:
        """Where it lies now."""
        return self._path

    def run(self, work: Callable[[sqlite3.Connection], T]) -> T:
        """Do something with the index; begun again where the index had to be made anew.

        Raises
        ------
        DiskFailed
            If another program keeps the index, or it can't be kept anywhere.
        """
        give_up_s = time.monotonic() + BUSY_S
        mended = 0
        while mended < _MOST_MENDED:
            try:
                with closing(self._open()) as connection:
                    return work(connection)
            except UnicodeDecodeError as error:
                # What SQLite says of a damaged file names tables as they stand there: any bytes.
                mended += 1
                self._mend(sqlite3.DatabaseError(f"its text is damaged: {error.reason}"))
            except sqlite3.DatabaseError as error:
                # Not every wait for a lock is SQLite's own: that for another kind of journal isn't.
                if _code(error) in _BUSY and time.monotonic() < give_up_s:
                    time.sleep(_AGAIN_S)
                    continue
                mended += 1
                self._mend(error)
            except OSError as error:
                mended += 1
                self._elsewhere(error.strerror or str(error))
        raise DiskFailed(
            "can't be kept.",
            subject=str(self._path),
            remedy="Recordings are not touched by this: look through their folders by hand, and "
            "make room or rights for the file.",
        )

    def check(self, connection: sqlite3.Connection) -> None:
        """Raise ``sqlite3.DatabaseError`` where the file is damaged."""
        found = connection.execute("PRAGMA quick_check(1)").fetchone()
        if found is None or found[0] != "ok":
            raise sqlite3.DatabaseError("quick_check found damage")

    def close(self) -> None:
        """Take away an index that could not be kept."""
        if self._own is not None:
            shutil.rmtree(self._own, ignore_errors=True)
            self._own = None

    def _open(self) -> sqlite3.Connection:
        self._path.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
        # Job cards name customers: others who use this computer need not read them here.
        os.close(os.open(self._path, os.O_RDWR | os.O_CREAT, 0o600))
        connection = sqlite3.connect(self._path, timeout=BUSY_S, isolation_level=None)
        try:
            # It stays so once it was set, and setting it needs the file for itself.
            if connection.execute("PRAGMA journal_mode").fetchone()[0] != "wal":
                connection.execute("PRAGMA journal_mode=WAL")
            connection.execute("PRAGMA synchronous=NORMAL")
            self._make(connection)
        except BaseException:
            connection.close()
            raise
        return connection

    def _make(self, connection: sqlite3.Connection) -> None:
        if _version(connection) == FORMAT:
            return
        connection.execute("BEGIN IMMEDIATE")
        if _version(connection) == 0:
            for statement in _TABLES.strip().split(";\n"):
                connection.execute(statement)
            connection.execute(f"PRAGMA user_version = {FORMAT}")
            self.times_made += 1
        connection.execute("COMMIT")
        if _version(connection) != FORMAT:
            raise sqlite3.DatabaseError("the tables are of another program")

    def _mend(self, error: sqlite3.DatabaseError) -> None:
        first = _code(error)
        if first in _BUSY:
            raise DiskFailed(
                "is kept by another program.",
                subject=str(self._path),
                remedy="Close it, or wait until it is done, and look again.",
            ) from error
        if first in _DISK:
            self._elsewhere(str(error))
            return
        try:
            with self._lock:
                if not self._sound():
                    self._throw_away()
        except OSError as failed:
            # Not under the lock: going elsewhere takes it, too.
            self._elsewhere(failed.strerror or str(failed))

    def _sound(self) -> bool:
        """Tell whether another thread or program has made it anew already."""
        try:
            with closing(sqlite3.connect(self._path, timeout=BUSY_S)) as connection:
                self.check(connection)
                if _version(connection) != FORMAT:
                    return False
                for table in ("things", "belongs", "away", "verdicts"):
                    connection.execute(f"SELECT * FROM {table} LIMIT 1").fetchall()  # noqa: S608 - names above
        except (sqlite3.DatabaseError, UnicodeDecodeError):
            return False
        return True

    def _throw_away(self) -> None:
        for ending in ("-wal", "-shm", ""):
            self._path.with_name(self._path.name + ending).unlink(missing_ok=True)
        self.told = (
            "The index was damaged: it was thrown away and is made anew from the folders. No "
            "recording was touched."
        )

    def _elsewhere(self, why: str) -> None:
        """Go on with an index that lasts as long as this program runs."""
        with self._lock:
            if self._own is not None:
                return
            with contextlib.suppress(OSError):
                self._own = Path(tempfile.mkdtemp(prefix="meterlog-library-"))
                self.told = (
                    f"The index can't be kept in {self._path}: {why}. It is made anew each time; "
                    "make room or rights there."
                )
                self._path = self._own / f"library-{FORMAT}.sqlite3"


def _code(error: sqlite3.DatabaseError) -> int | None:
    """Give SQLite's code of an error, without what it adds to tell kinds of it apart."""
    code: int | None = getattr(error, "sqlite_errorcode", None)
    return None if code is None else code & 0xFF


def _version(connection: sqlite3.Connection) -> int:
    found: int = connection.execute("PRAGMA user_version").fetchone()[0]
    return found
