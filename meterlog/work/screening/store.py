"""Store: the tables of a screening on the disk. Killed at any instant, it holds what was done.

While work goes on each lot is a file of its own in ``parts``, there whole or not at all. At the
end they become one table, and the parts go. What is damaged is left out and done again.
"""

from __future__ import annotations

import contextlib
import os
import re
import secrets
import time
from collections.abc import Iterable, Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path

import pyarrow as pa
import pyarrow.parquet as pq

from meterlog.model.errors import DiskFailed, UsageError
from meterlog.profile.plain_file import open_plain
from meterlog.recording.append_file import sync_folder
from meterlog.recording.arrow_arrays import table_of, truth_array, whole_array
from meterlog.work.baseline_tables import BASELINE_TABLE
from meterlog.work.file_lock import alone_with
from meterlog.work.screening.columns import BASELINES, FINDINGS
from meterlog.work.screening.kept_rows import kept_rows
from meterlog.work.screening.table_file import UNREADABLE, schema_of

TABLE = "findings.parquet"
_PARTS = "parts"
_PATIENCE_S = 1.0
_BESIDE = ".writing-"
_DIGITS = 8
_PART = re.compile(r"[0-9]{20}-[0-9a-f]{8}\.parquet")
_MAGIC = b"PAR1"
"""What each Parquet file begins with."""

Done = Mapping[str, tuple[str, str]]
"""By where a recording lies: its key and what was asked when it was done."""


class Store:
    """A folder with the tables.

    Parameters
    ----------
    folder : Path
        Made where it is not there.

    Attributes
    ----------
    unusable : tuple of Path
        Files of rows that are damaged, of another version or can't be, as :meth:`done` met them.
    """

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.table = folder / TABLE
        self.baselines = folder / BASELINE_TABLE
        self._parts = folder / _PARTS
        self.unusable: tuple[Path, ...] = ()

    @contextmanager
    def alone(self) -> Iterator[None]:
        """Hold it against other programs while a block runs.

        Raises
        ------
        UsageError
            If it is no folder, or holds tables of another program, which would be lost.
        DiskFailed
            If another program holds it, or nothing can be written there.
        """
        with _told_where(self.folder):
            if self.folder.exists() and not self.folder.is_dir():
                raise UsageError(
                    "is no folder.", subject=str(self.folder), remedy="Choose a folder with --out."
                )
            self.folder.mkdir(parents=True, exist_ok=True)
            with alone_with(self.table, _PATIENCE_S):
                _refuse_foreign(self.table, FINDINGS)
                _refuse_foreign(self.baselines, BASELINES)
                self._parts.mkdir(exist_ok=True)
                for place in (self.folder, self._parts):
                    for left in place.glob(f"{_BESIDE}{'[0-9a-f]' * _DIGITS}"):
                        left.unlink()
                yield

    def done(self) -> Done:
        """Give what has been done and need not be tried again, by where it lies."""
        found: dict[str, tuple[str, str]] = {}

        def heads(rows: pa.Table) -> pa.Table:
            first = rows.filter(pa.compute.equal(rows["number"], whole_array([0])[0]))
            return first.filter(_standing(first)).select(["folder", "key", "asked"])

        for path in self._files():
            read = kept_rows(path, heads)
            if read is None:
                self.unusable = (*self.unusable, path)
            else:
                rows = (read[name].to_pylist() for name in read.column_names)
                found.update(
                    {folder: (key, asked) for folder, key, asked in zip(*rows, strict=True)}
                )
        return found

    def keep(self, rows: pa.Table) -> None:
        """Keep the rows of a lot; once this returns they survive a kill.

        Raises
        ------
        DiskFailed
            If the disk does not take them.
        """
        with _told_where(self.folder):
            _write(rows, self._parts / f"{time.time_ns():020}-{secrets.token_hex(4)}.parquet")

    def gather(self, wanted: Mapping[str, str], asked: str) -> pa.Table:
        """Give the rows of the wanted recordings in order, each recording once.

        Where one was tried more than once what stands counts, else the newest.

        Parameters
        ----------
        wanted : mapping of str to str
            Keys of recordings by where they lie.
        asked : str
            What was asked.
        """
        seen: set[str] = set()
        kept, passing = [], []

        def fresh(rows: pa.Table) -> pa.Table:
            columns = (rows[name].to_pylist() for name in ("folder", "key", "asked"))
            return rows.filter(
                truth_array(
                    one == asked and wanted.get(folder) == key and folder not in seen
                    for folder, key, one in zip(*columns, strict=True)
                )
            )

        def take(rows: pa.Table) -> None:
            part = fresh(rows)
            seen.update(part["folder"].to_pylist())
            kept.append(part)

        for path in self._files():
            # What nobody wants is not kept in memory meanwhile.
            rows = kept_rows(path, fresh)
            if rows is not None:
                stands = _standing(rows)
                take(rows.filter(stands))
                passing.append(rows.filter(pa.compute.invert(stands)))
        for rows in passing:
            take(rows)
        whole = pa.concat_tables([table_of([], FINDINGS), *kept])
        return whole.sort_by([("folder", "ascending"), ("number", "ascending")])

    def finish(self, rows: pa.Table, baselines: pa.Table) -> None:
        """Put the tables in the place of all parts.

        Raises
        ------
        DiskFailed
            If the disk does not take them.
        """
        with _told_where(self.folder):
            _write(baselines, self.baselines)
            _write(rows, self.table)
            for path in self._own_parts():
                path.unlink()
            # What somebody else has put there stays, and so does the folder.
            with contextlib.suppress(OSError):
                self._parts.rmdir()

    def _own_parts(self) -> list[Path]:
        inside = self._parts.iterdir() if self._parts.is_dir() else ()
        return [path for path in inside if _PART.fullmatch(path.name)]

    def _files(self) -> list[Path]:
        """Give all files of rows, the newest first."""
        parts = sorted(self._own_parts(), reverse=True)
        return [*parts, *([self.table] if self.table.is_file() else [])]


def _standing(rows: pa.Table) -> pa.Array:
    """Tell of each row whether what it says stands, and is not to be tried again."""
    return truth_array(not one for one in rows["passing"].to_pylist())


def _refuse_foreign(path: Path, own: pa.Schema) -> None:
    """Refuse to take the place of a file that this program has not written.

    A damaged table of its own is one that begins as any Parquet file does.
    """
    try:
        said = schema_of(path).metadata or {}
        good = said.get(b"meterlog") == (own.metadata or {}).get(b"meterlog")
    except FileNotFoundError:
        return
    except UNREADABLE:
        good = _begins_as_one(path)
    if not good:
        raise UsageError(
            "is no table of a screening, and would be overwritten.",
            subject=str(path),
            remedy="Move it away, or choose another folder with --out.",
        )


def _begins_as_one(path: Path) -> bool:
    """Tell whether a file begins as Parquet does; what is no file does not."""
    try:
        with open_plain(path) as stream:
            return stream.read(len(_MAGIC)) == _MAGIC
    except OSError:
        return False


def _write(rows: pa.Table, path: Path) -> None:
    """Write a file that is there whole or not at all."""
    aside = path.with_name(f"{_BESIDE}{secrets.token_hex(_DIGITS // 2)}")
    try:
        with aside.open("wb") as stream:
            pq.write_table(rows, stream, compression="zstd")
            stream.flush()
            os.fsync(stream.fileno())
        aside.replace(path)
    except BaseException:
        with contextlib.suppress(OSError):
            aside.unlink(missing_ok=True)
        raise
    sync_folder(path.parent)


@contextmanager
def _told_where(folder: Path) -> Iterator[None]:
    try:
        yield
    except OSError as error:
        raise DiskFailed(
            f"can't be written: {error.strerror or error}.",
            subject=str(error.filename or folder),
            remedy="Make room or choose another folder with --out; what was done is kept.",
        ) from error


def folders_of(rows: pa.Table) -> Iterable[str]:
    """Give where the recordings of some rows lie, each once."""
    return dict.fromkeys(rows["folder"].to_pylist())
