"""AtticFile: a nameless file in which a judgement lays aside what is too much for memory."""

from __future__ import annotations

import contextlib
import tempfile
import weakref
from collections.abc import Iterator
from pathlib import Path
from typing import IO

from meterlog.model.errors import RecordingError


class AtticFile:
    """Bytes on the disk, for as long as this object lives.

    There is no file before the first bytes come. Then it has no name (on Windows: it goes as it is
    closed), so that nothing of it is left, also where the program is killed. It lies in the user's
    cache folder, as the folder for temporary files is in memory on many systems; there only where
    that one takes none. Never in the recording's own folder, which is evidence.

    Not for several threads at once, nor for a process and its fork.
    """

    def __init__(self) -> None:
        self._file: IO[bytes] | None = None
        self._end = 0

    def put(self, data: bytes) -> int | None:
        """Keep bytes.

        Parameters
        ----------
        data : bytes

        Returns
        -------
        int or None
            Where they lie; None where no file can be made, or its disk is full.
        """
        file = self._file or self._made()
        if file is None:
            return None
        try:
            file.seek(self._end)
            if file.write(data) != len(data):
                return None
        except OSError:
            return None
        place, self._end = self._end, self._end + len(data)
        return place

    def get(self, place: int, size: int) -> bytes:
        """Give the bytes that lie at a place.

        Parameters
        ----------
        place : int
        size : int

        Returns
        -------
        bytes

        Raises
        ------
        RecordingError
            If the disk does not give them back.
        """
        trouble = "it is shorter than what was written"
        try:
            if self._file is not None:
                self._file.seek(place)
                data = self._file.read(size)
                if len(data) == size:
                    return data
        except OSError as error:
            trouble = str(error)
        raise RecordingError(
            f"the judgement's temporary file can't be read back: {trouble}.",
            remedy="The readings are kept all the same. Check that disk, and review them again.",
        )

    def _made(self) -> IO[bytes] | None:
        for folder in _folders():
            with contextlib.suppress(OSError):
                self._file = tempfile.TemporaryFile(buffering=0, dir=folder)  # noqa: SIM115
                weakref.finalize(self, self._file.close)
                return self._file
        return None


def _folders() -> Iterator[Path]:
    from platformdirs import user_cache_path

    cache = user_cache_path("meterlog", appauthor=False)
    with contextlib.suppress(OSError):
        cache.mkdir(parents=True, exist_ok=True)
    yield cache
    with contextlib.suppress(OSError):  # there may be no folder for temporary files at all
        yield Path(tempfile.gettempdir())
