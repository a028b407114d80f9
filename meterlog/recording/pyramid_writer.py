"""PyramidWriter: keeps the envelope pyramid of one instrument's readings while they are written.

It is a cache: whatever goes wrong with it leaves the recording alone, and the pyramid is made anew
when it is wanted.
"""

from __future__ import annotations

import contextlib
import errno
import hashlib
import re
from pathlib import Path
from typing import BinaryIO

import numpy as np
from numpy.typing import NDArray

from meterlog.recording import layout
from meterlog.recording.pyramid_form import TABLE, Form
from meterlog.recording.pyramid_head import PyramidHead, salt_of, stream_state
from meterlog.recording.pyramid_maker import PyramidMaker

SHORT = 262_144
"""Up to so many rows no pyramid is kept: all of them are read faster than it pays."""
TABLE_NAME = "batches"
_PIECE = 1 << 18
"""So many bytes are written together, also before it pays: a slow meter has a batch for each
reading, so that what waits would be megabytes. What never pays is taken away again."""
_CHUNK = 4_096
_OURS = re.compile(r"level-\d{1,2}|batches|head\.json(\.partial)?")


def level_name(level: int) -> str:
    """Give the name of the file of a level."""
    return f"level-{level}"


def pyramid_folder(folder: Path, source: str) -> Path:
    """Give where the pyramid of an instrument lies beside its readings."""
    return folder / layout.CACHE / source


def make_room(folder: Path) -> None:
    """Make an empty folder for a pyramid, in a folder that is there; no link is followed.

    Raises
    ------
    OSError
        If it can't be made, or something else lies there.
    """
    folder.parent.mkdir(exist_ok=True)
    if folder.parent.is_symlink():
        raise NotADirectoryError(errno.ENOTDIR, "is a link", str(folder.parent))
    clear(folder)
    folder.mkdir()


def clear(folder: Path) -> None:
    """Take away a pyramid and nothing else; never raises, never follows a link."""
    if folder.is_symlink() or folder.parent.is_symlink():
        return
    with contextlib.suppress(OSError):
        for path in folder.iterdir():
            if _OURS.fullmatch(path.name):
                path.unlink()
        folder.rmdir()


class PyramidWriter:
    """Makes a pyramid in a folder of its own; of a short recording none is left.

    Parameters
    ----------
    folder : Path
        Made when it is needed; what it holds is overwritten.
    recording_id, source : str
    channels : int

    Attributes
    ----------
    failed : str
        Why there will be none; empty while all is well.
    """

    def __init__(self, folder: Path, recording_id: str, source: str, channels: int) -> None:
        self.failed = ""
        self._folder = folder
        self._id = recording_id
        self._source = source
        self._channels = channels
        self._salt = salt_of(recording_id, source)
        self._maker = PyramidMaker(channels, self._salt)
        self._waiting: dict[str, list[bytearray]] = {}
        self._bytes = 0
        self._files: dict[str, BinaryIO] = {}
        self._batches = 0
        self._crcs = hashlib.sha256()

    @property
    def rows(self) -> int:
        """Rows taken."""
        return self._maker.rows

    def take(
        self,
        t_ns: NDArray[np.int64],
        values: NDArray[np.float64],
        place: tuple[int, int, int],
        crc: int,
    ) -> None:
        """Take the rows of one batch that has been written; never raises.

        Parameters
        ----------
        t_ns : ndarray, int64, shape (n,), nanoseconds
        values : ndarray, float64, shape (n, channels)
        place : tuple of int, bytes
            Where its message begins, where its body begins, and where it ends, in the file.
        crc : int
            Its checksum, as its head has it.
        """
        if self.failed:
            return
        start, body, end = place
        words = (start, body, self._maker.rows, len(t_ns), crc, end, 0)
        row = np.array([words], np.uint64)
        Form(TABLE, self._channels, self._salt).close(row, self._batches)
        self._batches += 1
        self._crcs.update(crc.to_bytes(4, "little"))
        self._keep(TABLE_NAME, row.tobytes())
        for level, records in self._maker.take(t_ns, values):
            self._keep(level_name(level), records.tobytes())
        if self._bytes >= _PIECE:
            self._guard_write()

    def _keep(self, name: str, piece: bytes) -> None:
        waiting = self._waiting.setdefault(name, [])
        # One that grows to its end moves on and leaves holes; one object for each piece is large.
        if not waiting or len(waiting[-1]) >= _CHUNK:
            waiting.append(bytearray())
        waiting[-1].extend(piece)
        self._bytes += len(piece)

    def _guard_write(self) -> None:
        try:
            self._write()
        except OSError as error:
            self.drop(f"can't be written: {error.strerror}")

    def _write(self) -> None:
        waiting, self._waiting, self._bytes = self._waiting, {}, 0
        if not self._files:
            make_room(self._folder)
        for name, pieces in waiting.items():
            if name not in self._files:
                self._files[name] = (self._folder / name).open("wb", buffering=0)
            rest = memoryview(b"".join(pieces))
            while rest:
                rest = rest[self._files[name].write(rest) :]

    def finish(self, stream: Path, left_out: int = 0) -> bool:
        """Write what is left and, last, the head; never raises.

        Parameters
        ----------
        stream : Path
            The readings' file, in which nothing changes any more.
        left_out : int
            Batches that did not match their checksum.

        Returns
        -------
        bool
            True if a pyramid is there now.
        """
        if self.failed:
            self._close()
            return False
        if self._maker.rows <= SHORT:
            if self._take_away():
                with contextlib.suppress(OSError):  # others may be in it
                    self._folder.parent.rmdir()
            return False
        for level, records in self._maker.rest():
            self._keep(level_name(level), records.tobytes())
        try:
            self._write()
            self._close()
            size, changed_ns = stream_state(stream)
            PyramidHead(
                self._id,
                self._source,
                self._channels,
                self._maker.rows,
                self._batches,
                tuple(count for count in self._maker.records if count),
                left_out,
                size,
                changed_ns,
                self._crcs.hexdigest(),
            ).write(self._folder)
        except OSError as error:
            self.drop(f"can't be written: {error.strerror}")
            return False
        return True

    def drop(self, why: str) -> None:
        """Give up, and take away what was written; never raises."""
        self.failed = why
        self._take_away()

    def _take_away(self) -> bool:
        """Take away what was written; tell whether anything was."""
        began = bool(self._files)
        self._close()
        self._waiting = {}
        if began:
            clear(self._folder)
        return began

    def _close(self) -> None:
        for file in self._files.values():
            with contextlib.suppress(OSError):
                file.close()
        self._files = {}
