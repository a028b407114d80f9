"""PackedAhead: the large files of a pack, packed in threads while the rest of the work goes on.

The same packed bytes go into the zip and into the PDF: to pack the tables twice, one after the
other, was half of the time that a pack took.

Source
------
RFC 1950 (zlib: a head of two bytes, what is packed, a checksum of four bytes) around RFC 1951
(deflate), which is what a zip holds (PKWARE APPNOTE 6.3, 4.4.5).
"""

from __future__ import annotations

import threading
import zlib
from collections.abc import Iterable, Iterator
from concurrent.futures import Future, ThreadPoolExecutor
from dataclasses import dataclass
from pathlib import Path
from types import TracebackType
from typing import Final, Self

from meterlog.profile.plain_file import open_plain

LEVEL: Final = 3
"""Of zlib: tables of readings come out a twentieth larger than with its usual 6, in less than half
the time."""
PIECE: Final = 1 << 20
_HEAD, _CHECK = 2, 4
_WORTH = 1 << 18
"""Smaller files are packed as fast as a thread is asked to."""
_THREADS = 2


@dataclass(frozen=True, slots=True, eq=False)
class Packed:
    """A file as it is packed.

    Attributes
    ----------
    stream : bytes
        RFC 1950.
    size : int, bytes
        Unpacked.
    crc : int
        CRC-32 of the content, as a zip wants it.
    """

    stream: bytes
    size: int
    crc: int

    @property
    def deflated(self) -> memoryview:
        """The packed bytes alone, RFC 1951."""
        return memoryview(self.stream)[_HEAD:-_CHECK]


def none_packed(_: str) -> Packed | None:
    """Give nothing: no file is packed already."""
    return None


def pack(pieces: Iterable[bytes]) -> Packed:
    """Pack a file that comes in pieces."""
    packer, parts, size, crc = zlib.compressobj(LEVEL), list[bytes](), 0, 0
    for piece in pieces:
        parts.append(packer.compress(piece))
        size, crc = size + len(piece), zlib.crc32(piece, crc)
    return Packed(b"".join((*parts, packer.flush())), size, crc)


class PackedAhead:
    """Packs files in threads; what is under way when it is left is given up.

    Whoever begins a file changes it no more. Used as a context manager.
    """

    def __init__(self) -> None:
        self._pool = ThreadPoolExecutor(_THREADS, "pack")
        self._under_way: dict[str, Future[Packed]] = {}
        self._left = threading.Event()

    def __enter__(self) -> Self:
        """Be ready."""
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        """Give up what is under way."""
        self._left.set()
        self._pool.shutdown(cancel_futures=True)

    def begin(self, name: str, path: Path) -> None:
        """Begin to pack a file, unless it is too small to be worth it.

        Parameters
        ----------
        name : str
            In the pack.
        path : Path

        Raises
        ------
        OSError
            If it is not there.
        """
        if path.stat().st_size >= _WORTH:
            self._under_way[name] = self._pool.submit(self._pack, path)

    def get(self, name: str) -> Packed | None:
        """Give a file as it is packed, once it is; None for one that was not begun.

        Raises
        ------
        OSError
            If it could not be read.
        """
        found = self._under_way.get(name)
        return None if found is None else found.result()

    def _pack(self, path: Path) -> Packed:
        return pack(self._pieces(path))

    def _pieces(self, path: Path) -> Iterator[bytes]:
        with open_plain(path) as stream:
            while not self._left.is_set() and (piece := stream.read(PIECE)):
                yield piece
