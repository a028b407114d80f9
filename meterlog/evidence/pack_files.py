"""PackFiles: what a check reads: the files of a folder, or those attached to a PDF."""

from __future__ import annotations

import hashlib
import io
from collections.abc import Mapping
from pathlib import Path
from typing import BinaryIO, Protocol

from meterlog.evidence.pack_bag import walk
from meterlog.profile.plain_file import open_plain
from meterlog.recording.bag import is_plain_name, sha256_of


class PackFiles(Protocol):
    """Files by name.

    Attributes
    ----------
    names : frozenset of str
        All plain files.
    odd : tuple of str
        What is there and is no plain file; never read.
    """

    names: frozenset[str]
    odd: tuple[str, ...]

    def open(self, name: str) -> BinaryIO:
        """Open a file for reading."""

    def digest(self, name: str) -> str:
        """Give its SHA-256."""

    def size(self, name: str) -> int:
        """Give its bytes."""


class FolderFiles:
    """The files of a folder.

    Raises
    ------
    OSError
        If it can't be looked into.
    """

    def __init__(self, folder: Path) -> None:
        found = list(walk(folder))
        self.folder = folder
        self.names = frozenset(name for name, plain in found if plain and is_plain_name(name))
        self.odd = tuple(sorted(name for name, _ in found if name not in self.names))

    def open(self, name: str) -> BinaryIO:
        """Open a file for reading."""
        return open_plain(self.folder / name)

    def digest(self, name: str) -> str:
        """Give its SHA-256."""
        return sha256_of(self.folder / name)

    def size(self, name: str) -> int:
        """Give its bytes."""
        return (self.folder / name).stat().st_size


class AttachedFiles:
    """Files that are held in memory."""

    def __init__(self, contents: Mapping[str, bytes]) -> None:
        self._contents = dict(contents)
        self.names = frozenset(contents)
        self.odd: tuple[str, ...] = ()

    def open(self, name: str) -> BinaryIO:
        """Open a file for reading."""
        return io.BytesIO(self._contents[name])

    def digest(self, name: str) -> str:
        """Give its SHA-256."""
        return hashlib.sha256(self._contents[name]).hexdigest()

    def size(self, name: str) -> int:
        """Give its bytes."""
        return len(self._contents[name])


def content_of(files: PackFiles, name: str, most: int = 1 << 26) -> bytes:
    """Give the content of a small file, ``most`` bytes of it."""
    with files.open(name) as stream:
        return stream.read(most)
