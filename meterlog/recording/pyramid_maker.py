"""PyramidMaker: the records of an envelope pyramid, made while the rows come in."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from meterlog.recording.pyramid_form import FACTOR, FIRST_CELL, GROUP, Form, Words, word_sums

LOT = 64 * GROUP
"""Rows that are gathered at most before cells are made of them: small arrays cost as much as large
ones."""
_PIECES = 64
_LEAST_LOT = 2 * GROUP
"""No more is gathered than so many pieces of the size in which rows come: of a meter that gives ten
readings a second a whole lot is an hour's, and would grow all that while."""
_FIRST_ROOM = 256


@dataclass(frozen=True, slots=True, eq=False)
class Cells:
    """Cells in order.

    Attributes
    ----------
    first_ns : ndarray, int64, shape (n,)
        Times of their first rows.
    low, high : ndarray, float64, shape (channels, n)
        NaN where there is no value.
    """

    first_ns: NDArray[np.int64]
    low: NDArray[np.float64]
    high: NDArray[np.float64]

    def __len__(self) -> int:
        """Count the cells."""
        return len(self.first_ns)

    def part(self, start: int, stop: int) -> Cells:
        """Give cells ``start`` to ``stop`` (exclusive)."""
        piece = slice(start, stop)
        return Cells(self.first_ns[piece], self.low[:, piece], self.high[:, piece])

    def of(self, channels: Sequence[int]) -> Cells:
        """Give the same cells of these channels only."""
        which = list(channels)
        return Cells(self.first_ns, self.low[which], self.high[which])


class PyramidMaker:
    """Takes rows in pieces of any size; the records are the same however they come.

    Parameters
    ----------
    channels : int
    salt : int
        See :class:`~meterlog.recording.pyramid_form.Form`.

    Attributes
    ----------
    rows : int
        Rows taken.
    records : list of int
        Records made, by level.
    """

    def __init__(self, channels: int, salt: int) -> None:
        self.rows = 0
        self.records: list[int] = []
        self._channels = channels
        self._salt = salt
        self._held: Words = np.empty((1 + channels, _FIRST_ROOM), np.uint64)
        """Rows that wait, the first ``_waiting`` of them: each by itself would take a multiple."""
        self._waiting = 0
        self._open: list[Cells] = []

    def take(
        self, t_ns: NDArray[np.int64], values: NDArray[np.float64]
    ) -> Iterator[tuple[int, Words]]:
        """Add rows, and give records that are complete.

        Parameters
        ----------
        t_ns : ndarray, int64, shape (n,), nanoseconds
            Never decreasing.
        values : ndarray, float64, shape (n, channels)
            NaN enters no cell.

        Yields
        ------
        level : int
        records : ndarray, uint64, shape (m, words)
        """
        end = self._waiting + len(t_ns)
        self._make_room(end)
        rows = self._held[:, self._waiting : end]
        rows[0] = t_ns.view(np.uint64)
        rows[1:].view(np.float64)[:] = values.T
        self.rows += len(t_ns)
        self._waiting = end
        if end >= min(max(_LEAST_LOT, _PIECES * len(t_ns)), LOT):
            yield from self.rest()

    def _make_room(self, count: int) -> None:
        room = self._held.shape[1]
        if count > room:
            held = np.empty((1 + self._channels, max(2 * room, count)), np.uint64)
            held[:, : self._waiting] = self._held[:, : self._waiting]
            self._held = held

    def rest(self) -> Iterator[tuple[int, Words]]:
        """Give the records that are complete now, as :meth:`take` does."""
        rows = self._held[:, : self._waiting]
        whole = self._waiting // GROUP * GROUP
        if not whole:
            return
        cells, checks = _cells_of(np.ascontiguousarray(rows[:, :whole]))
        left = self._waiting - whole
        if self._held.shape[1] > 2 * LOT:  # many came at once: not kept for good
            self._held = rows[:, whole:].copy()
        else:
            self._held[:, :left] = rows[:, whole:].copy()
        self._waiting = left
        yield from self._stack(0, cells, checks)

    def _stack(self, level: int, cells: Cells, checks: Words | None) -> Iterator[tuple[int, Words]]:
        if level == len(self._open):
            self._open.append(no_cells(self._channels))
            self.records.append(0)
        cells = joined_cells([self._open[level], cells])
        count = len(cells) // FACTOR
        self._open[level] = cells.part(count * FACTOR, len(cells))
        if not count:
            return
        whole = cells.part(0, count * FACTOR)
        form = Form(level, self._channels, self._salt)
        records = np.empty((count, form.words), np.uint64)
        form.first_ns(records)[:] = whole.first_ns.reshape(count, FACTOR)
        for into, what in zip(form.extremes(records), (whole.low, whole.high), strict=True):
            into[:] = what.reshape(self._channels, count, FACTOR).transpose(1, 0, 2)
        if checks is not None:
            shaped = checks.reshape(1 + self._channels, count, FACTOR)
            form.raw_checks(records)[:] = shaped.transpose(1, 0, 2)
        form.close(records, self.records[level])
        self.records[level] += count
        yield level, records
        yield from self._stack(level + 1, above(form, records), None)


def no_cells(channels: int) -> Cells:
    """Give no cell at all."""
    return Cells(np.empty(0, np.int64), np.empty((channels, 0)), np.empty((channels, 0)))


def joined_cells(parts: Sequence[Cells]) -> Cells:
    """Put cells of one level behind each other; at least one part."""
    held = [part for part in parts if len(part)]
    if len(held) < 2:
        return held[0] if held else parts[0]
    return Cells(
        np.concatenate([part.first_ns for part in held]),
        np.concatenate([part.low for part in held], axis=1),
        np.concatenate([part.high for part in held], axis=1),
    )


def _extremes(
    cells: NDArray[np.float64],
) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """Give least and greatest along the last axis; NaN where there is none."""
    # Several times faster than fmin and fmax, and hand on a NaN by which it can be told.
    low, high = cells.min(axis=-1), cells.max(axis=-1)
    odd = np.isnan(low)
    if odd.any():
        low[odd] = np.fmin.reduce(cells[odd], axis=-1)
        high[odd] = np.fmax.reduce(cells[odd], axis=-1)
    return low, high


def _cells_of(rows: Words) -> tuple[Cells, Words]:
    """Give the cells of rows, shape (1 + channels, n), and checks, shape (1 + channels, n / 64)."""
    pieces = rows.reshape(len(rows), -1, FIRST_CELL)
    checks = word_sums(pieces.reshape(-1, FIRST_CELL)).reshape(len(rows), -1)
    low, high = _extremes(pieces[1:].view(np.float64))
    return Cells(pieces[0, :, 0].view(np.int64).copy(), low, high), checks


def above(form: Form, records: Words) -> Cells:
    """Give the cells that records are in the level above."""
    low, high = form.extremes(records)
    least, greatest = _extremes(low)[0], _extremes(high)[1]
    return Cells(form.first_ns(records)[:, 0].copy(), least.T.copy(), greatest.T.copy())


def cells_of_tail(rows: Words) -> Cells:
    """Give the cells of some rows, shape (1 + channels, n), the last of fewer than 64 perhaps."""
    starts = np.arange(0, rows.shape[1], FIRST_CELL)
    if not len(starts):
        return no_cells(len(rows) - 1)
    values = rows[1:].view(np.float64)
    low = np.fmin.reduceat(values, starts, axis=1)
    high = np.fmax.reduceat(values, starts, axis=1)
    return Cells(rows[0].view(np.int64)[starts], low, high)
