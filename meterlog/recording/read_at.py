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
from numpy.typing import NDArray

from meterlog.profile.plain_file import open_plain

if TYPE_CHECKING:
    from typing_extensions import Buffer

_HAS_PREADV = hasattr(os, "preadv")
_MOST_PARTS = 512


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

    def scattered(
        self, offsets: Sequence[int], rows: NDArray[np.uint64], which: Sequence[int]
    ) -> None:
        """Fill some rows of an array, shape (n, m), each from its own place.

        Raises
        ------
        EOFError, OSError
            As :meth:`into`.
        """
        if not _HAS_PREADV:
            for offset, at in zip(offsets, which, strict=True):
                self.into(offset, [rows[at]])
            return
        read, descriptor, got = os.preadv, self._fd, 0
        for offset, at in zip(offsets, which, strict=True):
            got += read(descriptor, (cast("Buffer", rows[at]),), offset)
        if got != 8 * rows.shape[1] * len(which):
            raise EOFError("the file is shorter than it should be")

    def _fill(self, offset: int, view: memoryview) -> None:
        with self._lock:
            self._file.seek(offset)
            while view:
                found = self._file.read(len(view))
                if not found:
                    raise EOFError("the file is shorter than it should be")
                view[: len(found)] = found
                view = view[len(found) :]
