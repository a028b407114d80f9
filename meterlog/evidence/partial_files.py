"""PartialFiles: several new files in one folder that appear together, whole, or not at all."""

from __future__ import annotations

import contextlib
import os
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import BinaryIO

from meterlog.model.errors import EvidenceError

_ENDING = ".partial"


class PartialFiles:
    """Writes files under other names and gives them their own at the end. A context manager.

    Parameters
    ----------
    folder : Path
        Absent or empty; made when absent.

    Attributes
    ----------
    written : list of Path
        The files, by their final names.

    Raises
    ------
    EvidenceError
        If the folder holds something or can't be made; later, if it can't be written to.
    """

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.written: list[Path] = []
        try:
            if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
                raise EvidenceError(
                    "is there already and is not empty.",
                    subject=str(folder),
                    remedy="Choose another folder; nothing is overwritten.",
                )
            folder.mkdir(parents=True, exist_ok=True)
        except OSError as error:
            raise self._cannot(error) from error

    def _cannot(self, error: OSError) -> EvidenceError:
        return EvidenceError(
            f"can't be written: {error.strerror}.",
            subject=str(self.folder),
            remedy="Choose another folder or free some space.",
        )

    @contextmanager
    def file(self, name: str) -> Iterator[BinaryIO]:
        """Open a new file for writing; synced to the disk when left.

        Raises
        ------
        EvidenceError
            If it can't be written.
        """
        path = self.folder / name
        try:
            with path.with_name(name + _ENDING).open("xb") as stream:
                self.written.append(path)
                yield stream
                stream.flush()
                os.fsync(stream.fileno())
        except OSError as error:
            raise self._cannot(error) from error

    def __enter__(self) -> PartialFiles:
        """Begin."""
        return self

    def __exit__(self, kind: type[BaseException] | None, *_: object) -> None:
        """Give the files their names, or remove them when something went wrong."""
        if kind is not None:
            self._remove()
            return
        try:
            for path in self.written:
                path.with_name(path.name + _ENDING).rename(path)
        except OSError as error:
            self._remove()
            raise self._cannot(error) from error

    def _remove(self) -> None:
        for path in self.written:
            for name in (path.name, path.name + _ENDING):
                with contextlib.suppress(OSError):
                    path.with_name(name).unlink(missing_ok=True)
