"""KeptColumns: the columns of pixels drawn last, so that what is moved is not asked for again.

Columns that are a whole number of nanoseconds wide lie on one grid wherever the picture is moved
to; those that were in the picture before are those that would be read again.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from meterlog.evidence.pixel_columns import column_edges

_EXACT_NS = 1 << 53
"""Up to here edges of columns are whole; recordings of a hundred days are shorter."""

Fetch = Callable[[NDArray[np.int64]], "Extremes"]


@dataclass(frozen=True, slots=True, eq=False)
class Extremes:
    """Least and greatest reading of columns of pixels.

    Attributes
    ----------
    low, high : ndarray, float64, shape (channels, columns)
        Infinite and minus infinite where a column has no value.
    has_rows : ndarray, bool, shape (columns,)
    """

    low: NDArray[np.float64]
    high: NDArray[np.float64]
    has_rows: NDArray[np.bool_]

    def part(self, start: int, stop: int) -> Extremes:
        """Give columns ``start`` to ``stop`` (exclusive)."""
        which = slice(start, stop)
        return Extremes(self.low[:, which], self.high[:, which], self.has_rows[which])


class KeptColumns:
    """The columns of one stretch."""

    def __init__(self) -> None:
        self._step_ns = 0
        self._start_ns = 0
        self._held: Extremes | None = None

    def forget(self) -> None:
        """Forget them all."""
        self._held = None

    def columns(self, start_ns: int, end_ns: int, columns: int, fetch: Fetch) -> Extremes:
        """Give the columns of a stretch, asking only for those that were not in the last one.

        Parameters
        ----------
        start_ns, end_ns : int, nanoseconds
        columns : int
            At least 1.
        fetch : callable
            Gives the columns between some edges.
        """
        edges = column_edges(start_ns, end_ns, columns)
        step_ns, rest = divmod(end_ns - start_ns, columns)
        whole = step_ns > 0 and not rest and abs(end_ns) < _EXACT_NS
        held = self._held if whole and step_ns == self._step_ns else None
        found = None if held is None else self._moved(held, edges, step_ns, fetch)
        if found is None:
            found = fetch(edges)
        self._held = None
        if whole:
            self._step_ns, self._start_ns = step_ns, start_ns
            # The last one also holds the instant at which the stretch ends: it is none of the grid.
            self._held = found.part(0, columns - 1)
        return found

    def _moved(
        self, held: Extremes, edges: NDArray[np.int64], step_ns: int, fetch: Fetch
    ) -> Extremes | None:
        """Give columns of which some are held; None where none is."""
        by, odd = divmod(int(edges[0]) - self._start_ns, step_ns)
        columns, width = len(edges) - 1, len(held.has_rows)
        first, last = max(-by, 0), min(width - by, columns - 1)
        if odd or last <= first:
            return None
        parts = [held.part(first + by, last + by)]
        if first:
            parts.insert(0, fetch(edges[: first + 1]))
        parts.append(fetch(edges[last:]))
        return Extremes(
            np.concatenate([part.low for part in parts], axis=1),
            np.concatenate([part.high for part in parts], axis=1),
            np.concatenate([part.has_rows for part in parts]),
        )
