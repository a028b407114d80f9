"""PyramidLevel: the cells of one level, from the disk, checked when they are read.

Those of the upper levels are kept in memory from then on.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from meterlog.recording.cell_memory import CellMemory
from meterlog.recording.pyramid_form import FACTOR, Form, Words
from meterlog.recording.pyramid_head import PyramidUnusable
from meterlog.recording.pyramid_maker import Cells, joined_cells
from meterlog.recording.read_at import ReadAt

NEVER = np.iinfo(np.int64).max
"""Time of a cell or row that is not there: after everything."""


class PyramidLevel:
    """One level: whole records on the disk, the cells behind them in memory.

    Parameters
    ----------
    form : Form
    file : ReadAt or None
        None where the level has no whole record.
    records : int
    rest : Cells
        The cells behind the last whole record, at most 8; the last may be a part of one.
    keeps : bool
        What has been read and checked is kept.
    """

    def __init__(
        self, form: Form, file: ReadAt | None, records: int, rest: Cells, *, keeps: bool = False
    ) -> None:
        self.form = form
        self.records = records
        self._file = file
        self._rest = rest
        self._kept = CellMemory(form, records) if keeps and file is not None else None

    @property
    def cells(self) -> int:
        """Count the cells."""
        return self.records * FACTOR + len(self._rest)

    def read(self, first: int, last: int) -> Words:
        """Give records ``first`` to ``last`` (exclusive), shape (n, words).

        Raises
        ------
        PyramidUnusable
            If one of them is not as it was written.
        OSError
            If the file can't be read.
        """
        words = self.form.words
        if self._file is None or last <= first:
            return np.empty((0, words), np.uint64)
        try:
            found = self._file.words(first * self.form.size, (last - first) * words)
        except EOFError as error:
            raise PyramidUnusable(f"level {self.form.level} is torn") from error
        records = found.reshape(-1, words)
        if not self.form.sound(records, np.arange(first, last)):
            raise PyramidUnusable(f"level {self.form.level} is damaged")
        return records

    def stretch(self, first: int, last: int, channels: Sequence[int] | None = None) -> Cells:
        """Give cells ``first`` to ``last`` (exclusive), and perhaps some before and behind.

        Parameters
        ----------
        first, last : int
        channels : sequence of int or None
            Which, in this order; None: all.

        Raises
        ------
        PyramidUnusable, OSError
            As :meth:`read`.
        """
        wanted = self._wanted(channels)
        begin, end = first // FACTOR, min(-(-last // FACTOR), self.records)
        if self._kept is None or end <= begin:
            cells = self._flat(self.read(begin, end), wanted)
        else:
            a, b = self._kept.lacks(begin, end)
            if a < b:
                self._kept.keep_run(a, self.read(a, b))
            cells = self._kept.run(begin, end, wanted)
        if last <= self.records * FACTOR:
            return cells
        return joined_cells([cells, self._rest.of(wanted)])

    def below(self, cells: NDArray[np.int64], channels: Sequence[int] | None = None) -> Cells:
        """Give the cells of which these cells of the level above are made, 8 of each.

        Parameters
        ----------
        cells : ndarray, int64, shape (n,)
            Numbers of cells of the level above, rising.
        channels : sequence of int or None
            Which, in this order; None: all.

        Returns
        -------
        Cells
            Of 8 n cells.

        Raises
        ------
        PyramidUnusable, OSError
            As :meth:`read`.
        """
        wanted = self._wanted(channels)
        held = cells[cells < self.records]
        if self._kept is None or not len(held):
            found = self._flat(self.scattered(held), wanted)
        else:
            lacking = self._kept.lacking(held)
            if len(lacking):
                self._kept.keep(lacking, self.scattered(lacking))
            found = self._kept.of(held, wanted)
        if len(held) == len(cells):
            return found
        lacking_cells = FACTOR - len(self._rest)
        none = np.full((len(wanted), lacking_cells), np.nan)
        return joined_cells(
            [found, self._rest.of(wanted), Cells(np.full(lacking_cells, NEVER), none, none)]
        )

    def is_known(self, above: int) -> bool:
        """Tell whether the cells that one above is made of can be told without the disk."""
        return above >= self.records or (self._kept is not None and self._kept.has(above))

    def begins(self, above: int) -> NDArray[np.int64]:
        """Give when the cells begin that one of the level above is made of, at most 8.

        Raises
        ------
        PyramidUnusable, OSError
            As :meth:`read`.
        """
        if above >= self.records:
            return self._rest.first_ns
        if self._kept is None:
            first_ns: NDArray[np.int64] = self.form.first_ns(self.read(above, above + 1))[0]
            return first_ns
        if not self._kept.has(above):
            self._kept.keep_run(above, self.read(above, above + 1))
        return self._kept.times(above)

    def _wanted(self, channels: Sequence[int] | None) -> list[int]:
        return list(range(self.form.channels) if channels is None else channels)

    def scattered(self, numbers: NDArray[np.int64]) -> Words:
        """Give some records, shape (n, words); ``numbers`` rise.

        Raises
        ------
        PyramidUnusable, OSError
            As :meth:`read`.
        """
        if not len(numbers):
            return self.read(0, 0)
        if self._file is None:
            raise PyramidUnusable(f"level {self.form.level} is missing")
        try:
            records = self._file.pieces(numbers * self.form.size, self.form.words)
        except EOFError as error:
            raise PyramidUnusable(f"level {self.form.level} is torn") from error
        if not self.form.sound(records, numbers):
            raise PyramidUnusable(f"level {self.form.level} is damaged")
        return records

    def _flat(self, records: Words, channels: list[int]) -> Cells:
        low, high = self.form.extremes(records)
        return Cells(
            self.form.first_ns(records).ravel(),
            np.stack([low[:, one].ravel() for one in channels]),
            np.stack([high[:, one].ravel() for one in channels]),
        )
