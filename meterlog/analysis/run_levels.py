"""RunLevels: by how much current and voltage moved during one stretch, as the bins come."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.level_walk import LevelReach
from meterlog.analysis.levels import LevelPart
from meterlog.analysis.long_table import sums_of

_NOTHING = (np.inf, -np.inf)
_Ends = tuple[float, float]


class RunLevels(LevelReach):
    """The swing of the current, and of the voltage across the motor, from bin to bin."""

    def forget(self) -> None:
        """Begin anew."""
        self._amps: _Ends = _NOTHING
        self._volts: _Ends = _NOTHING
        self._count = 0

    def take(self, part: LevelPart) -> None:
        """Take the next bins."""
        amps = _finite(part.amps)
        self._count += len(amps)
        self._amps = _wider(self._amps, amps)
        self._volts = _wider(self._volts, _finite(part.feed - part.back))

    @property
    def swing_a(self) -> float:
        """Largest less least current; 0 where none was read."""
        return max(self._amps[1] - self._amps[0], 0.0)

    @property
    def swing_v(self) -> float:
        """Likewise the voltage across the motor."""
        return max(self._volts[1] - self._volts[0], 0.0)

    def mean_a(self, start_ns: int, end_ns: int) -> float | None:
        """Give the mean current of the stretch that was asked for; None where none was read."""
        if not self._count:
            return None
        lots = self._levels.lots(*self.reach(start_ns, end_ns))
        amps = (_finite(part.amps)[np.newaxis] for part in lots)
        return float(sums_of(amps, self._count)[0]) / self._count


def _finite(column: NDArray[np.float64]) -> NDArray[np.float64]:
    return column[np.isfinite(column)]


def _wider(ends: _Ends, column: NDArray[np.float64]) -> _Ends:
    if not len(column):
        return ends
    return min(ends[0], float(column.min())), max(ends[1], float(column.max()))
