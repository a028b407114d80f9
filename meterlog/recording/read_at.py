"""ReadAt: stretches out of a file, each by its place, without a map of the file in memory.

A mapped file would end the program when its disk is taken out; this raises an error instead.
"""

from __future__ import annotations

import os
import threading
import weakref
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any, cast

import numpy as np
from numpy.lib.stride_tricks import as_strided
from numpy.typing import NDArray

from meterlog.profile.plain_file import open_plain

if TYPE_CHECKING:
    from typing_extensions import Buffer

_HAS_PREADV = hasattr(os, "preadv")
_MOST_PARTS = 512
_NEAR = 8_192
"""Bytes between two pieces that are read with them: as quick as a call of the system more."""
_LONG_RUN = 8192
"""Words; runs that are shorter on average are read into bytes, which are then put together."""


class ReadAt:
    """An open file, read by places; threads may share it.

    Parameters
    ----------
    path : Path

    Attributes
    ----------
    size : int, bytes
        When it was opened.

    Raises
    ------
    OSError
        If it can't be opened or is no plain file.
    """

    def __init__(self, path: Path) -> None:
        self._file = open_plain(path)
        self._fd = self._file.fileno()
        self._lock = threading.Lock()
        self.size = os.fstat(self._fd).st_size
        weakref.finalize(self, self._file.close)

    def words(self, offset: int, count: int) -> NDArray[np.uint64]:
        """Give ``count`` words of 8 bytes from the byte ``offset`` on.

        Raises
        ------
        EOFError
            If the file is shorter.
        OSError
            If it can't be read.
        """
        if offset + 8 * count > self.size:
            raise EOFError("the file is shorter than it should be")
        out = np.empty(count, np.uint64)
        self.into(offset, [out])
        return out

    def into(self, offset: int, parts: Sequence[NDArray[Any]]) -> None:
        """Fill arrays, one behind the other, from the byte ``offset`` on.

        Raises
        ------
        EOFError
            If the file is shorter.
        OSError
            If it can't be read.
        """
        if _HAS_PREADV and len(parts) <= _MOST_PARTS:
            wanted = sum(part.nbytes for part in parts)
            if os.preadv(self._fd, cast("Sequence[Buffer]", parts), offset) == wanted:
                return
        for part in parts:
            self._fill(offset, memoryview(cast("Buffer", part)).cast("B"))
            offset += part.nbytes

    def pieces(self, offsets: NDArray[np.int64], words: int) -> NDArray[np.uint64]:
        """Give pieces of as many words each from these bytes on, shape (n, words).

        Parameters
        ----------
        offsets : ndarray, int64, shape (n,), bytes
            Rising; apart by whole words. What lies close together is read in one go.
        words : int

        Raises
        ------
        EOFError, OSError
            As :meth:`into`.
        """
        size = 8 * words
        if not len(offsets):
            return np.empty((0, words), np.uint64)
        far = np.diff(offsets) > size + _NEAR
        firsts = np.concatenate(([0], np.flatnonzero(far) + 1))
        begins = offsets[firsts]
        lengths = (np.append(offsets[firsts[1:] - 1], offsets[-1]) - begins) // 8 + words
        starts = np.concatenate(([0], np.cumsum(lengths)))
        room = self._runs(begins, lengths)
        if len(firsts) == len(offsets):
            return room.reshape(-1, words)
        run = np.cumsum(far, dtype=np.int64) if len(firsts) > 1 else 0
        at = np.zeros(len(offsets), np.int64)
        at[1:] = run
        at = starts[at] + (offsets - begins[at]) // 8
        # Each row is a piece that begins at its own word of the room: pieces are copied whole.
        every = as_strided(room, (len(room) - words + 1, words), (8, 8), writeable=False)
        picked: NDArray[np.uint64] = every[at]
        return picked

    def _runs(self, begins: NDArray[np.int64], lengths: NDArray[np.int64]) -> NDArray[np.uint64]:
        """Give runs of words, one behind the other; each begins at its own byte."""
        count = int(lengths.sum())
        if not _HAS_PREADV or count > _LONG_RUN * len(lengths):
            room, at = np.empty(count, np.uint64), 0
            for offset, length in zip(begins.tolist(), lengths.tolist(), strict=True):
                self.into(offset, [room[at : at + length]])
                at += length
            return room
        read, descriptor = os.pread, self._fd
        sizes = (8 * lengths).tolist()
        whole = b"".join(
            [read(descriptor, *one) for one in zip(sizes, begins.tolist(), strict=True)]
        )
        if len(whole) != 8 * count:
            raise EOFError("the file is shorter than it should be")
        return np.frombuffer(whole, np.uint64)

    def _fill(self, offset: int, view: memoryview) -> None:
        with self._lock:
            self._file.seek(offset)
            while view:
                found = self._file.read(len(view))
                if not found:
                    raise EOFError("the file is shorter than it should be")
                view[: len(found)] = found
                view = view[len(found) :]
