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
from meterlog.recording.cell_memory import CellMemory
from meterlog.recording.even_times import are_even, even_rows_before, steps_of
from meterlog.recording.pyramid_form import FACTOR, FIRST_CELL, GROUP, Form
from meterlog.recording.pyramid_head import PyramidHead, PyramidUnusable, stream_state
from meterlog.recording.pyramid_level import PyramidLevel
from meterlog.recording.pyramid_maker import Cells, above, cells_of_tail, joined_cells
from meterlog.recording.pyramid_pixels import Cut, Pixels
from meterlog.recording.pyramid_rows import PyramidRows
from meterlog.recording.pyramid_writer import TABLE_NAME, level_name
from meterlog.recording.read_at import ReadAt
from meterlog.recording.stream_index import Torn, place_at

_CELLS_A_PIXEL = 3
"""With fewer whole cells in a pixel, cells of the level beneath are taken."""
_KEPT_BYTES = 48 << 20
"""Of cells that are kept in memory: of 1e9 samples all levels but the lowest (35 MB)."""
_GUESSED = 2
"""Records that are looked at where an even pace would put an instant."""
_END = int(np.iinfo(np.int64).max)


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
        self._last_ns = 0
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
                self._last_ns = int(block.t_ns[-1])
                self.last_flags = tuple(block.flags[-1].tolist())
        tail = np.concatenate(parts, axis=1)
        if tail.shape[1] != self.head.rows - filed:
            raise PyramidUnusable("the readings' last batches have changed")
        return tail

    def _stacked(self, files: list[ReadAt]) -> list[PyramidLevel]:
        head, levels = self.head, []
        rest = cells_of_tail(self._rows.tail)
        from_level = self._kept_from()
        for number in range(64):
            form = Form(number, head.channels, head.salt)
            records = head.records[number] if number < len(files) else 0
            file = files[number] if number < len(files) else None
            level = PyramidLevel(form, file, records, rest, keeps=number >= from_level)
            levels.append(level)
            if not records:
                break
            covered = head.records[number + 1] * FACTOR if number + 1 < len(files) else 0
            rest = self._cells_above(level, covered, rest)
        return levels

    def _kept_from(self) -> int:
        """Give the lowest level that is kept in memory with all above it; never the lowest.

        Whether the readings are still those it was made of is seen by those read of the lowest.
        """
        room, level = _KEPT_BYTES, len(self.head.records)
        while level > 1:
            room -= CellMemory.bytes_for(self.head.channels, self.head.records[level - 1])
            if room < 0:
                break
            level -= 1
        return level

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
        level, above, end_ns = len(self._levels) - 1, 0, _END
        times, is_guessed = self._levels[level].begins(0), False  # the highest has no record
        while True:
            at = int(times.searchsorted(t_ns)) - 1
            if at < 0:
                return 0
            cell, begin_ns = above * FACTOR + at, int(times[at])
            end_ns = int(times[at + 1]) if at + 1 < len(times) else end_ns
            if not level:
                return cell * FIRST_CELL + self._rows_in(cell, t_ns)
            if not (is_guessed or self._levels[level - 1].is_known(cell)):
                is_guessed = True
                found = self._guessed(level, cell, (begin_ns, end_ns), t_ns)
                if found is not None:
                    return found
            level, above = level - 1, cell
            times = self._levels[level].begins(cell)

    def _guessed(self, level: int, cell: int, span_ns: tuple[int, int], t_ns: int) -> int | None:
        """Give the rows before an instant within a cell, found where an even pace would put them.

        None where they are not there. One look at the lowest level, instead of one at each.
        """
        base, size = self._levels[0], FIRST_CELL * FACTOR**level
        begin_ns, end_ns = span_ns[0], min(span_ns[1], self._last_ns)
        if end_ns <= begin_ns or base.records < _GUESSED:
            return None
        rows = min(size, self.rows - cell * size)
        row = cell * size + (t_ns - begin_ns) * rows // (end_ns - begin_ns)
        # So that it comes to lie in the middle of what is looked at.
        first = min(max((row - GROUP // 2) // GROUP, 0), base.records - _GUESSED)
        records = base.read(first, first + _GUESSED)
        first_ns = base.form.first_ns(records).ravel()
        at = int(first_ns.searchsorted(t_ns)) - 1
        if not 0 <= at < len(first_ns) - 1:
            return None  # times never fall: between two cells it is found, before or behind not
        checks = base.form.raw_checks(records)[:, 0].ravel()
        two, cell = slice(at, at + 2), first * FACTOR + at
        return cell * FIRST_CELL + self._rows_of(cell, first_ns[two], checks[two], t_ns)

    def _rows_in(self, cell: int, t_ns: int) -> int:
        """Count the rows of a cell of the lowest level before an instant."""
        first_ns, checks = self._lowest(cell, min((cell + 2) * FIRST_CELL, self._rows.filed))
        return self._rows_of(cell, first_ns, checks[0], t_ns)

    def _rows_of(
        self, cell: int, first_ns: NDArray[np.int64], checks: NDArray[np.uint64], t_ns: int
    ) -> int:
        """Count them, where this is when it and the next cell begin, as far as that is known."""
        if len(first_ns) == 2:
            steps_ns = steps_of(first_ns)
            if are_even(first_ns[:1], steps_ns[:1], checks[:1])[0]:
                at = even_rows_before(np.array([t_ns]), first_ns[:1], steps_ns[:1])
                return int(at[0])
        first = cell * FIRST_CELL
        times, _ = self.read(first, min(first + FIRST_CELL, self.rows), ())
        return int(times.searchsorted(t_ns))

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
        rows = self._stretch(first, last, [0, *self._columns(channels)])
        return rows[0].view(np.int64), rows[1:].view(np.float64)

    def _stretch(self, first: int, last: int, columns: Sequence[int]) -> NDArray[np.uint64]:
        """Give columns of rows, as they lie in the file."""
        start = first // FIRST_CELL
        end = min(-(-last // FIRST_CELL) * FIRST_CELL, self.rows)
        _, checks = self._lowest(start, end)
        rows = self._rows.stretch(start * FIRST_CELL, end, checks[columns], columns)
        return rows[:, first - start * FIRST_CELL : last - start * FIRST_CELL]

    def _lowest(self, start: int, end: int) -> tuple[NDArray[np.int64], NDArray[np.uint64]]:
        """Give when cells on the disk begin, and the checks of their rows, shape (columns, n).

        Those from cell ``start`` up to the row ``end``.
        """
        base, begun = self._levels[0], start // FACTOR
        records = base.read(begun, min(-(-end // GROUP), base.records))
        ahead = start - begun * FACTOR
        on_disk = max(min(end, self._rows.filed) // FIRST_CELL - start, 0)
        which = slice(ahead, ahead + on_disk)
        checks = base.form.raw_checks(records).transpose(1, 0, 2)
        columns = 1 + self.head.channels
        return base.form.first_ns(records).ravel()[which], checks.reshape(columns, -1)[:, which]

    def _columns(self, channels: Sequence[int] | None) -> list[int]:
        """Give the columns of rows that hold some channels."""
        every = range(self.head.channels) if channels is None else channels
        return [1 + channel for channel in every]

    def pixels_by_rows(
        self,
        edges: NDArray[np.int64],
        first: int,
        last: int,
        channels: Sequence[int] | None = None,
    ) -> Pixels:
        """Give the same as :meth:`pixels`, from all rows: quicker where a pixel holds few."""
        columns = self._columns(channels)
        pixels = Pixels(edges, len(columns))
        if last <= first:
            return pixels
        start = first // FIRST_CELL
        first_ns, checks = self._lowest(start, min(last, self._rows.filed))
        steps_ns = steps_of(first_ns)
        even = last <= (start + len(first_ns)) * FIRST_CELL
        if even and bool(are_even(first_ns, steps_ns, checks[0]).all()):
            values = self._rows.stretch(
                start * FIRST_CELL, (start + len(first_ns)) * FIRST_CELL, checks[columns], columns
            )
            bounds = even_rows_before(edges, first_ns, steps_ns)
            pixels.take_between(bounds, values.view(np.float64))
        else:
            pixels.take_rows(*self.read(first, last, channels))
        return pixels

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
        Checked in ``tests/unit/recording/pyramid/test_exact.py`` against numpy over the readings.
        """
        wanted = list(range(self.head.channels) if channels is None else channels)
        pixels = Pixels(edges, len(wanted))
        number = self._level_for(last - first, len(edges) - 1)
        level = self._levels[number]
        size = FIRST_CELL * FACTOR**number
        begin = first // size // FACTOR * FACTOR
        # One more than there are rows of, so that the last cell's end is known.
        cells = level.stretch(begin, min(-(-last // size) + 1, level.cells), wanted)
        left = pixels.take_run(begin, cells)
        for lower in self._levels[number - 1 :: -1] if number else ():
            below = lower.below(left.numbers, wanted)
            numbers = (left.numbers[:, None] * FACTOR + np.arange(FACTOR)).ravel()
            left = pixels.take_cells(numbers, below, after=left.next_ns)
        self._take_rows(pixels, left, [0, *self._columns(wanted)])
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
        holders = kept // FACTOR  # rising; numpy's unique loads 28 ms of modules when first asked
        holders = holders[np.flatnonzero(np.diff(holders, prepend=-1))]
        records = base.scattered(holders)
        at, which = np.searchsorted(holders, kept // FACTOR), kept % FACTOR
        checks = base.form.raw_checks(records)[at, :, which][:, columns]
        first_ns = base.form.first_ns(records)
        pace = first_ns[at, which], steps_of(first_ns)[at, which]
        rows = self._rows.cells(cells, checks, columns, cut.needed, pace)
        pixels.take_rows(rows[0].view(np.int64), rows[1:].view(np.float64))
