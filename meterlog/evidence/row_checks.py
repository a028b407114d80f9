"""RowChecks: digests of a table's rows, by which a check names the rows that were changed.

The digest of a whole file, in the manifest, says that it was changed; these say where. For every
``data/<name>.csv`` of a pack there is a tag file ``row-checks/<name>.csv.txt``, listed in the tag
manifest and so covered by the signature. It is text::

    meterlog row checks 1
    file: data/before/findings.csv
    rows: 1234
    block: 5
    9f86d081884c7d65
    ...

``rows`` counts lines (each ends with a line feed; the last may lack it), the heading among them;
a cell with a line feed inside makes two. ``block`` is how many rows each digest covers, the last
one fewer: one row in tables of up to 256 rows, never more than 100. A digest is the first 16
hexadecimal digits of the SHA-256 of the block's bytes as they stand in the file, line feeds too.
A table of 100,000 rows costs 17 kB, 0.3 % of its size or so.

Rows put in or taken out move all that follow, so each block is sought at its place counted from
the table's beginning and from its end.

Source
------
SHA-256: FIPS 180-4, shortened as in its section 7.
"""

from __future__ import annotations

import hashlib
import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import islice
from typing import BinaryIO

import numpy as np

FOLDER = "row-checks"
_HEAD = "meterlog row checks 1"
_TICKS = 256
"""Blocks between two calls of what tells that work goes on."""
_DIGITS = 16
_LINE_FEED = 10
_MOST_ROWS = 100
_SINGLE_ROWS = 256
_LONGEST = 1 << 20
"""Bytes of a line that are held at once; a longer one is digested in pieces."""
_FORM = re.compile(
    rf"{_HEAD}\nfile: (?P<file>[^\n]+)\nrows: (?P<rows>\d{{1,15}})\nblock: (?P<block>\d{{1,3}})\n"
    rf"(?P<digests>(?:[0-9a-f]{{{_DIGITS}}}\n)*)"
)


def checks_name(name: str) -> str:
    """Give the name of the row checks of the payload file ``name``."""
    return f"{FOLDER}/{name.removeprefix('data/')}.txt"


@dataclass(frozen=True, slots=True)
class RowsFound:
    """Where a table differs.

    Attributes
    ----------
    rows : tuple of (int, int)
        First and last row of each stretch, counted from 1 (the heading) in the table as it was
        packed; whole blocks.
    more : int
        Rows that it has now above what it had; negative when some are gone.
    block : int
        Rows of a block; where it is above 1, not every row of a stretch need differ.
    """

    rows: tuple[tuple[int, int], ...]
    more: int
    block: int = 1

    @property
    def words(self) -> str:
        """Say it: ``rows 3 to 5 and 9 differ``; empty when nothing was found."""
        within = self.block > 1
        told = [str(a) if a == b else f"{a} to {b}" for a, b in self.rows]
        if len(told) > 8:
            told = [*told[:8], f"{len(told) - 8} more stretches"]
        listed = " and ".join(filter(None, (", ".join(told[:-1]), *told[-1:])))
        lone = len(self.rows) == 1 and self.rows[0][0] == self.rows[0][1]
        parts = []
        if told and within:
            parts.append(f"it differs within rows {listed}")
        elif told:
            parts.append(f"row {listed} differs" if lone else f"rows {listed} differ")
        if self.more:
            count = abs(self.more)
            noun = "1 row was" if count == 1 else f"{count} rows were"
            parts.append(f"{noun} {'put in' if self.more > 0 else 'taken out'}")
        return "; ".join(parts)


@dataclass(frozen=True, slots=True)
class RowChecks:
    """The digests of one table.

    Attributes
    ----------
    file : str
        Name in the pack.
    rows : int
    block : int
        Rows a digest.
    digests : tuple of str
    """

    file: str
    rows: int
    block: int
    digests: tuple[str, ...]

    @classmethod
    def of(cls, file: str, stream: BinaryIO, tick: Callable[[], None] = lambda: None) -> RowChecks:
        """Take the digests of a table.

        Parameters
        ----------
        file : str
        stream : binary file that can seek, at its beginning
        tick : callable
            Called now and then. May raise to cancel.

        Raises
        ------
        OSError
            If it can't be read.
        """
        rows = _count(stream)
        block = 1 if rows <= _SINGLE_ROWS else min(_MOST_ROWS, -(-rows // _SINGLE_ROWS))
        stream.seek(0)
        digests = []
        for number, digest in enumerate(_blocks(stream, 0, rows, block)):
            digests.append(digest)
            if not number % _TICKS:
                tick()
        return cls(file, rows, block, tuple(digests))

    def to_bytes(self) -> bytes:
        """Give the file."""
        head = f"{_HEAD}\nfile: {self.file}\nrows: {self.rows}\nblock: {self.block}\n"
        return (head + "".join(f"{digest}\n" for digest in self.digests)).encode()

    @classmethod
    def parse(cls, content: bytes) -> RowChecks:
        """Read the file.

        Raises
        ------
        ValueError
            If it is not as :meth:`to_bytes` writes it.
        """
        found = _FORM.fullmatch(content.decode())
        if found is None:
            raise ValueError("holds no row checks")
        checks = cls(
            found["file"], int(found["rows"]), int(found["block"]), tuple(found["digests"].split())
        )
        if not checks.block or len(checks.digests) != -(-checks.rows // checks.block):
            raise ValueError("holds no row checks: their number does not fit")
        return checks

    def compare(self, stream: BinaryIO) -> RowsFound:
        """Find the rows that differ from what was packed.

        Parameters
        ----------
        stream : binary file that can seek, at its beginning

        Returns
        -------
        RowsFound

        Raises
        ------
        OSError
            If it can't be read.
        """
        more = _count(stream) - self.rows
        good = self._holding(stream, 0)
        if more:
            good |= self._holding(stream, more)
        bad = [k for k in range(len(self.digests)) if k not in good]
        if more > 0 and not bad:
            # Put in between two blocks: behind the last that stands where it stood.
            at = min(self._first_moved(stream) * self.block, self.rows)
            return RowsFound(((at + 1, at + more),), more)
        return RowsFound(self._stretches(bad), more, self.block)

    def _holding(self, stream: BinaryIO, moved: int) -> set[int]:
        first = -(-max(0, -moved) // self.block)
        stream.seek(0)
        for _ in islice(_lines(stream), first * self.block + moved):
            pass
        left = self.rows - first * self.block
        found = _blocks(stream, 0, left, self.block)
        wanted = self.digests[first:]
        return {first + k for k, (one, two) in enumerate(zip(found, wanted, strict=False))
                if one == two}  # fmt: skip

    def _first_moved(self, stream: BinaryIO) -> int:
        good = self._holding(stream, 0)
        return next((k for k in range(len(self.digests)) if k not in good), len(self.digests))

    def _stretches(self, blocks: list[int]) -> tuple[tuple[int, int], ...]:
        found: list[tuple[int, int]] = []
        for k in blocks:
            first, last = k * self.block + 1, min((k + 1) * self.block, self.rows)
            if found and found[-1][1] == first - 1:
                found[-1] = (found[-1][0], last)
            else:
                found.append((first, last))
        return tuple(found)


def _lines(stream: BinaryIO) -> Iterator[list[bytes]]:
    """Give each line, as its pieces."""
    pieces: list[bytes] = []
    while piece := stream.readline(_LONGEST):
        pieces.append(piece)
        if piece.endswith(b"\n"):
            yield pieces
            pieces = []
    if pieces:
        yield pieces


def _count(stream: BinaryIO) -> int:
    stream.seek(0)
    rows, last = 0, b"\n"
    while piece := stream.read(_LONGEST):
        rows += piece.count(b"\n")
        last = piece[-1:]
    return rows + (last != b"\n")


def _blocks(stream: BinaryIO, start: int, rows: int, block: int) -> Iterator[str]:
    """Give the digest of each block of the lines from ``start`` to ``rows``, as far as they go."""
    size = left = min(block, rows - start)
    digest, begun = hashlib.sha256(), False
    while start < rows and (piece := stream.read(_LONGEST)):
        ends = np.flatnonzero(np.frombuffer(piece, np.uint8) == _LINE_FEED) + 1
        at, passed = 0, 0
        while start < rows and passed + left <= len(ends):
            passed += left
            end = int(ends[passed - 1])
            digest.update(piece[at:end])
            yield digest.hexdigest()[:_DIGITS]
            at, start = end, start + size
            size = left = min(block, rows - start)
            digest, begun = hashlib.sha256(), False
        digest.update(piece[at:])
        left -= len(ends) - passed
        begun = begun or at < len(piece)
    if start < rows and begun:
        yield digest.hexdigest()[:_DIGITS]
