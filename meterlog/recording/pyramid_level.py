"""PyramidLevel: the cells of one level, from the disk, checked each time they are read."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from meterlog.recording.pyramid_form import FACTOR, Form, Words
from meterlog.recording.pyramid_head import PyramidUnusable
from meterlog.recording.pyramid_maker import Cells, joined_cells
from meterlog.recording.read_at import ReadAt

NEVER = np.iinfo(np.int64).max
"""Time of a cell or row that is not there: after everything."""
_NEAR = 8
"""Records that lie closer together than this are read in one go."""


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
    """

    def __init__(self, form: Form, file: ReadAt | None, records: int, rest: Cells) -> None:
        self.form = form
        self.records = records
        self._file = file
        self._rest = rest

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

    def stretch(self, first: int, last: int) -> Cells:
        """Give cells ``first`` to ``last`` (exclusive), and perhaps some before and behind.

        Raises
        ------
        PyramidUnusable, OSError
            As :meth:`read`.
        """
        records = self.read(first // FACTOR, min(-(-last // FACTOR), self.records))
        cells = self._flat(records)
        return joined_cells([cells, self._rest]) if last > self.records * FACTOR else cells

    def below(self, cells: NDArray[np.int64]) -> Cells:
        """Give the cells of which these cells of the level above are made, 8 of each.

        Parameters
        ----------
        cells : ndarray, int64, shape (n,)
            Numbers of cells of the level above, rising.

        Returns
        -------
        Cells
            Of 8 n cells.

        Raises
        ------
        PyramidUnusable, OSError
            As :meth:`read`.
        """
        kept = cells[cells < self.records]
        found = self._flat(self.scattered(kept))
        if len(kept) == len(cells):
            return found
        lacking = FACTOR - len(self._rest)
        none = np.full((self.form.channels, lacking), np.nan)
        return joined_cells([found, self._rest, Cells(np.full(lacking, NEVER), none, none)])

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
        cuts = np.flatnonzero(np.diff(numbers) > _NEAR) + 1
        firsts = numbers[np.concatenate(([0], cuts))]
        counts = numbers[np.concatenate((cuts - 1, [len(numbers) - 1]))] - firsts + 1
        starts = np.concatenate(([0], np.cumsum(counts)))
        room = np.empty((int(starts[-1]), self.form.words), np.uint64)
        size, file = self.form.size, self._file
        try:
            single = np.flatnonzero(counts == 1)
            file.scattered((firsts[single] * size).tolist(), room, starts[single].tolist())
            for at in np.flatnonzero(counts > 1).tolist():
                file.into(int(firsts[at]) * size, [room[starts[at] : starts[at + 1]]])
        except EOFError as error:
            raise PyramidUnusable(f"level {self.form.level} is torn") from error
        run = np.searchsorted(firsts, numbers, "right") - 1
        records: Words = room[starts[run] + numbers - firsts[run]]
        if not self.form.sound(records, numbers):
            raise PyramidUnusable(f"level {self.form.level} is damaged")
        return records

    def _flat(self, records: Words) -> Cells:
        channels = self.form.channels
        low, high = self.form.extremes(records)
        return Cells(
            self.form.first_ns(records).ravel(),
            low.transpose(1, 0, 2).reshape(channels, -1),
            high.transpose(1, 0, 2).reshape(channels, -1),
        )
