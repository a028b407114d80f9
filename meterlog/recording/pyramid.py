"""Pyramid: least and greatest reading of any stretch of a long recording, exact, in an instant.

What it tells comes from records that carry their own checks, and from rows of the readings' file
that match the checks made of them when each batch was sound. It is a cache: whatever does not fit
makes it unusable, and it is made anew from the readings.
"""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from meterlog.profile.plain_file import open_plain
from meterlog.recording.arrow_header import HeaderDamaged
from meterlog.recording.batch_body import checked_batch
from meterlog.recording.pyramid_form import FACTOR, FIRST_CELL, GROUP, Form
from meterlog.recording.pyramid_head import PyramidHead, PyramidUnusable, stream_state
from meterlog.recording.pyramid_level import PyramidLevel
from meterlog.recording.pyramid_maker import Cells, above, cells_of_tail, joined_cells
from meterlog.recording.pyramid_pixels import Cut, Pixels
from meterlog.recording.pyramid_rows import PyramidRows
from meterlog.recording.pyramid_writer import TABLE_NAME, level_name
from meterlog.recording.read_at import ReadAt
from meterlog.recording.stream_index import Torn, place_at

_CELLS_A_PIXEL = 4
"""With fewer whole cells in a pixel, cells of the level beneath are taken."""


class Pyramid:
    """The pyramid over one instrument's readings.

    Parameters
    ----------
    folder : Path
        Where it lies.
    stream : Path
        The readings' file.
    head : PyramidHead

    Attributes
    ----------
    head : PyramidHead
    last_flags : tuple of int
        Of the last row, by channel.

    Raises
    ------
    PyramidUnusable
        If a file of it is missing, torn or damaged, or the readings are not those it was made of.
    OSError
        If a file can't be read.
    """

    def __init__(self, folder: Path, stream: Path, head: PyramidHead) -> None:
        self.head = head
        if stream_state(stream)[0] != head.stream_bytes:
            raise PyramidUnusable("the readings' file has another length than it had")
        try:
            table = ReadAt(folder / TABLE_NAME)
            files = [ReadAt(folder / level_name(k)) for k in range(len(head.records))]
        except FileNotFoundError as error:
            raise PyramidUnusable("a file of it is missing") from error
        self.last_flags: tuple[int, ...] = ()
        self._rows = PyramidRows(ReadAt(stream), table, head)
        filed = head.records[0] * GROUP if head.records else 0
        if not (head.batches and 0 <= head.rows - filed < GROUP):
            raise PyramidUnusable("its head does not fit its records")
        self._rows.keep_tail(self._tail(stream, filed), filed)
        self._levels = self._stacked(files)

    def _tail(self, stream: Path, filed: int) -> NDArray[np.uint64]:
        """Read the rows behind the last record; the last batch is checked in any case."""
        rows = self._rows
        parts: list[NDArray[np.uint64]] = []
        with open_plain(stream) as file:
            for batch in range(rows.batch_of(min(filed, self.head.rows - 1)), self.head.batches):
                try:
                    place = place_at(
                        file, int(rows.starts[batch]), self.head.stream_bytes, self.head.channels
                    )
                except (Torn, HeaderDamaged) as error:
                    raise PyramidUnusable("the readings' last batch has changed") from error
                if place is None or place.crc != rows.crcs[batch]:
                    raise PyramidUnusable("the readings' last batch has changed")
                block = checked_batch(file, place, self.head.source, self.head.channels)
                if block is None:
                    raise PyramidUnusable("the readings' last batch is damaged")
                part = np.empty((1 + self.head.channels, len(block)), np.uint64)
                part[0] = block.t_ns.view(np.uint64)
                part[1:] = np.ascontiguousarray(block.values.T).view(np.uint64)
                parts.append(part[:, max(filed - rows.first_row(batch), 0) :])
                self.last_flags = tuple(block.flags[-1].tolist())
        tail = np.concatenate(parts, axis=1)
        if tail.shape[1] != self.head.rows - filed:
            raise PyramidUnusable("the readings' last batches have changed")
        return tail

    def _stacked(self, files: list[ReadAt]) -> list[PyramidLevel]:
        head, levels = self.head, []
        rest = cells_of_tail(self._rows.tail)
        for number in range(64):
            form = Form(number, head.channels, head.salt)
            records = head.records[number] if number < len(files) else 0
            file = files[number] if number < len(files) else None
            level = PyramidLevel(form, file, records, rest)
            levels.append(level)
            if not records:
                break
            covered = head.records[number + 1] * FACTOR if number + 1 < len(files) else 0
            rest = self._cells_above(level, covered, rest)
        return levels

    def _cells_above(self, level: PyramidLevel, covered: int, rest: Cells) -> Cells:
        """Give the cells above that no record above covers; the last of a rest of this level."""
        if not 0 <= level.records - covered < FACTOR:
            raise PyramidUnusable("its levels do not fit each other")
        found = above(level.form, level.read(covered, level.records))
        if not len(rest):
            return found
        low, high = np.fmin.reduce(rest.low, axis=1), np.fmax.reduce(rest.high, axis=1)
        return joined_cells([found, Cells(rest.first_ns[:1], low[:, None], high[:, None])])

    @property
    def rows(self) -> int:
        """Count the rows."""
        return self.head.rows

    def last_row(self) -> tuple[int, NDArray[np.float64]]:
        """Give time and values of the last row; values of shape (channels,)."""
        t_ns, values = self.read(self.rows - 1, self.rows)
        return int(t_ns[0]), values[:, 0]

    def extremes_of_all(self) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
        """Give least and greatest value of each channel, shape (channels,); NaN without any."""
        top = self._levels[-1].stretch(0, self._levels[-1].cells)
        return np.fmin.reduce(top.low, axis=1), np.fmax.reduce(top.high, axis=1)

    def rows_before(self, t_ns: int) -> int:
        """Count the rows with times before an instant.

        Raises
        ------
        PyramidUnusable, OSError
            As the constructor.
        """
        top = self._levels[-1]
        cell = int(np.searchsorted(top.stretch(0, top.cells).first_ns, t_ns)) - 1
        if cell < 0:
            return 0
        for level in self._levels[-2::-1]:
            stack = level.below(np.array([cell]))
            cell = cell * FACTOR + int(np.searchsorted(stack.first_ns, t_ns)) - 1
        first = cell * FIRST_CELL
        times, _ = self.read(first, min(first + FIRST_CELL, self.rows))
        return first + int(np.searchsorted(times, t_ns))

    def read(
        self, first: int, last: int, channels: Sequence[int] | None = None
    ) -> tuple[NDArray[np.int64], NDArray[np.float64]]:
        """Give rows ``first`` to ``last`` (exclusive): times, values of shape (channels, n).

        Parameters
        ----------
        first, last : int
        channels : sequence of int or None
            Which, in this order; None: all.

        Raises
        ------
        PyramidUnusable, OSError
            As the constructor.
        """
        start = first // FIRST_CELL
        end = min(-(-last // FIRST_CELL) * FIRST_CELL, self.rows)
        base = self._levels[0]
        begun = start // FACTOR
        records = base.read(begun, min(-(-end // GROUP), base.records))
        found = base.form.raw_checks(records)
        wanted = self._columns(channels)
        checks = found[:, wanted].transpose(1, 0, 2).reshape(len(wanted), -1)
        ahead = start - begun * FACTOR
        on_disk = max(min(end, self._rows.filed) // FIRST_CELL - start, 0)
        checks = checks[:, ahead : ahead + on_disk]
        rows = self._rows.stretch(start * FIRST_CELL, end, checks, wanted)
        inner = rows[:, first - start * FIRST_CELL : last - start * FIRST_CELL]
        return inner[0].view(np.int64), inner[1:].view(np.float64)

    def _columns(self, channels: Sequence[int] | None) -> list[int]:
        """Give the columns of rows that are wanted: the times, and those of some channels."""
        every = range(self.head.channels) if channels is None else channels
        return [0, *(1 + channel for channel in every)]

    def pixels(
        self,
        edges: NDArray[np.int64],
        first: int,
        last: int,
        channels: Sequence[int] | None = None,
    ) -> Pixels:
        """Give least and greatest reading between instants, exactly.

        Parameters
        ----------
        edges : ndarray, int64, shape (n + 1,), nanoseconds
            Never falling; pixel k covers times from ``edges[k]`` up to, but without,
            ``edges[k + 1]``.
        first, last : int
            ``rows_before`` of the first edge and of the last.
        channels : sequence of int or None
            Which, in this order; None: all.

        Returns
        -------
        Pixels

        Raises
        ------
        PyramidUnusable, OSError
            As the constructor.

        Source
        ------
        Checked in ``tests/unit/recording/test_pyramid.py`` against numpy over the readings.
        """
        wanted = range(self.head.channels) if channels is None else channels
        pixels = Pixels(edges, wanted)
        number = self._level_for(last - first, len(edges) - 1)
        level = self._levels[number]
        size = FIRST_CELL * FACTOR**number
        begin = first // size // FACTOR * FACTOR
        # One more than there are rows of, so that the last cell's end is known.
        left = pixels.take_run(begin, level.stretch(begin, min(-(-last // size) + 1, level.cells)))
        for lower in self._levels[number - 1 :: -1] if number else ():
            below = lower.below(left.numbers)
            numbers = (left.numbers[:, None] * FACTOR + np.arange(FACTOR)).ravel()
            left = pixels.take_cells(numbers, below, after=left.next_ns)
        self._take_rows(pixels, left, self._columns(wanted))
        return pixels

    def _level_for(self, rows: int, pixels: int) -> int:
        number = 0
        while (
            number + 1 < len(self._levels)
            and rows >= FIRST_CELL * FACTOR ** (number + 1) * _CELLS_A_PIXEL * pixels
        ):
            number += 1
        return number

    def _take_rows(self, pixels: Pixels, cut: Cut, columns: Sequence[int]) -> None:
        """Tell the rows of cells apart that an edge goes through."""
        cells, base = cut.numbers, self._levels[0]
        if not len(cells):
            return
        kept = cells[cells < base.records * FACTOR]
        holders = np.unique(kept // FACTOR)
        checks = base.form.raw_checks(base.scattered(holders))
        at = np.searchsorted(holders, kept // FACTOR)
        rows = self._rows.cells(
            cells, checks[at, :, kept % FACTOR][:, columns], columns, cut.needed
        )
        pixels.take_rows(rows[0].view(np.int64), rows[1:].view(np.float64))
