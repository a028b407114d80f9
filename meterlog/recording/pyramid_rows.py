"""PyramidRows: single rows under an envelope pyramid, each checked by the cell it belongs to."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from meterlog.recording.even_times import are_even, even_times
from meterlog.recording.pyramid_form import FIRST_CELL, TABLE, Form, Words, word_sums
from meterlog.recording.pyramid_head import PyramidHead, PyramidUnusable
from meterlog.recording.pyramid_level import NEVER
from meterlog.recording.read_at import ReadAt

_NAN = np.array([np.nan]).view(np.uint64)[0]
Columns = NDArray[np.uint64]
"""Rows as they lie in the file: times, then each channel's values; shape (1 + channels, n)."""


class PyramidRows:
    """Finds rows in the readings' file by their numbers.

    Parameters
    ----------
    stream : ReadAt
        The readings' file.
    table : ReadAt
        Where each batch lies.
    head : PyramidHead

    Raises
    ------
    PyramidUnusable
        If the table is torn or damaged.
    OSError
        If it can't be read.
    """

    def __init__(self, stream: ReadAt, table: ReadAt, head: PyramidHead) -> None:
        self._stream = stream
        self._channels = head.channels
        form = Form(TABLE, head.channels, head.salt)
        try:
            words = table.words(0, head.batches * form.words).reshape(-1, form.words)
        except EOFError as error:
            raise PyramidUnusable("the table of its batches is torn") from error
        if not form.sound(words, np.arange(head.batches)):
            raise PyramidUnusable("the table of its batches is damaged")
        self.starts, self._bodies, self._firsts, self._counts, self.crcs, self.ends = (
            np.ascontiguousarray(words[:, k]).astype(np.int64) for k in range(6)
        )
        self.tail: Columns = np.empty((1 + head.channels, 0), np.uint64)
        self.filed = head.rows

    def batch_of(self, row: int) -> int:
        """Give the number of the batch that holds a row."""
        return int(np.searchsorted(self._firsts, row, "right")) - 1

    def first_row(self, batch: int) -> int:
        """Give the number of a batch's first row."""
        return int(self._firsts[batch])

    def keep_tail(self, tail: Columns, filed: int) -> None:
        """Keep the rows behind row ``filed``, which no record on the disk covers, in memory."""
        self.tail = tail
        self.filed = filed

    def stretch(self, first: int, last: int, checks: Words, columns: Sequence[int]) -> Columns:
        """Give rows ``first`` to ``last`` (exclusive).

        Parameters
        ----------
        first, last : int
            Multiples of 64, or the end.
        checks : ndarray, uint64, shape (len(columns), cells)
            Of the cells of these rows that lie before row ``filed``.
        columns : sequence of int
            Which: 0 for the times, 1 for the first channel, and so on.

        Raises
        ------
        PyramidUnusable
            If a row is not as it was when the pyramid was made.
        OSError
            If the file can't be read.
        """
        out = np.empty((len(columns), last - first), np.uint64)
        on_disk = min(last, self.filed) - first
        if on_disk > 0:
            self._fill(first, out[:, :on_disk], columns)
            for column, check in zip(out[:, :on_disk], checks, strict=True):
                if (word_sums(column.reshape(-1, FIRST_CELL)) != check).any():
                    raise PyramidUnusable("the readings were changed after it was made")
        if last > self.filed:
            tail = self.tail[columns, max(first - self.filed, 0) : last - self.filed]
            out[:, max(on_disk, 0) :] = tail
        return out

    def _fill(self, first: int, out: Columns, columns: Sequence[int]) -> None:
        last = first + out.shape[1]
        try:
            for batch in range(self.batch_of(first), self.batch_of(last - 1) + 1):
                start, rows = int(self._firsts[batch]), int(self._counts[batch])
                a, b = max(first, start), min(last, start + rows)
                into, body = slice(a - first, b - first), int(self._bodies[batch])
                if b - a == rows and len(out) == 1 + self._channels:
                    self._stream.into(body, [column[into] for column in out])
                    continue
                for number, column in zip(columns, out, strict=True):
                    place = body + 8 * (number * rows + a - start)
                    self._stream.into(place, [column[into]])
        except EOFError as error:
            raise PyramidUnusable("the readings' file is shorter than it was") from error

    def cells(
        self,
        numbers: NDArray[np.int64],
        checks: Words,
        columns: Sequence[int],
        needed: NDArray[np.bool_],
        pace: tuple[NDArray[np.int64], NDArray[np.int64]],
    ) -> Columns:
        """Give the rows of some cells of level 0, 64 of each.

        Parameters
        ----------
        numbers : ndarray, int64, shape (n,)
            Rising.
        checks : ndarray, uint64, shape (n on the disk, len(columns))
        columns : sequence of int
            As :meth:`stretch`, the times first.
        needed : ndarray, bool, shape (len(columns) - 1, n)
            Of which cells each channel is wanted; elsewhere it is NaN.
        pace : tuple of ndarray, int64, shape (n on the disk,), nanoseconds
            When these cells begin, and how far apart their rows are where they lie evenly.

        Returns
        -------
        Columns
            Rows that are not there have the time NEVER.

        Raises
        ------
        PyramidUnusable, OSError
            As :meth:`stretch`.
        """
        kept = numbers[numbers * FIRST_CELL < self.filed]
        out = np.empty((len(columns), len(numbers), FIRST_CELL), np.uint64)
        even = are_even(*pace, checks[:, 0])
        wanted = np.concatenate([~even[None], needed[:, : len(kept)]])
        self._fill_cells(kept, out, columns, wanted)
        out[1:, : len(kept)][~wanted[1:]] = _NAN  # not read, or not checked
        for column, check, read in zip(out, checks.T, wanted, strict=True):
            which = np.flatnonzero(read)
            if (word_sums(column[which]) != check[which]).any():
                raise PyramidUnusable("the readings were changed after it was made")
        out[0, : len(kept)][even] = even_times(pace[0][even], pace[1][even]).view(np.uint64)
        for at in range(len(kept), len(numbers)):
            start = int(numbers[at]) * FIRST_CELL - self.filed
            rows = self.tail[columns, start : start + FIRST_CELL]
            out[0, at] = np.uint64(NEVER)
            out[1:, at] = _NAN
            out[:, at, : rows.shape[1]] = rows
        return out.reshape(len(columns), -1)

    def _fill_cells(
        self,
        numbers: NDArray[np.int64],
        out: Columns,
        columns: Sequence[int],
        wanted: NDArray[np.bool_],
    ) -> None:
        firsts = numbers * FIRST_CELL
        batches = np.searchsorted(self._firsts, firsts, "right") - 1
        ahead, counts = firsts - self._firsts[batches], self._counts[batches]
        within = ahead + FIRST_CELL <= counts
        places = self._bodies[batches] + 8 * ahead
        try:
            for number, column, read in zip(columns, out, wanted, strict=True):
                whole = np.flatnonzero(within & read)
                column[whole] = self._stream.pieces(
                    (places + 8 * number * counts)[whole], FIRST_CELL
                )
            for at in np.flatnonzero(~within).tolist():
                self._fill(int(firsts[at]), out[:, at], columns)
        except EOFError as error:
            raise PyramidUnusable("the readings' file is shorter than it was") from error
