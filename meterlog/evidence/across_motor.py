"""AcrossMotor: the voltage across the motor as one line, from readings of feed and return."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from meterlog.evidence.trace_store import SILENT_INTERVALS, TraceLine
from meterlog.model import Block, Channel, Instrument, Quantity, Role

ACROSS = "across the motor"


class AcrossMotor:
    """Takes a recording meter by meter and makes the line.

    Where one meter read both, row by row. Where two did, the return is joined up between its
    readings at the times of the feed's, never across a silence; not where one is typed by hand,
    as nobody knows what lies between typed readings.

    Parameters
    ----------
    instruments : sequence of Instrument
        Of the recording.

    Attributes
    ----------
    line : TraceLine or None
        None where feed or return is not read, or can't be joined.
    """

    def __init__(self, instruments: Sequence[Instrument]) -> None:
        self._feed = _home(instruments, Role.MOTOR_FEED)
        self._back = _home(instruments, Role.MOTOR_RETURN)
        self._instruments = tuple(instruments)
        self._t: list[NDArray[np.int64]] = []
        self._volts: list[NDArray[np.float64]] = []
        self._whole: tuple[NDArray[np.int64], NDArray[np.float64]] | None = None
        self.line = self._begin()

    def _begin(self) -> TraceLine | None:
        if self._feed is None or self._back is None:
            return None
        (meter, column), other = self._feed, self._back[0]
        if meter is not other and (meter.typed or other.typed):
            return None
        interval_s = meter.channels[column].interval_s
        channel = Channel(ACROSS, Quantity.VOLTAGE, Role.MOTOR_FEED, interval_s=interval_s)
        return TraceLine(ACROSS, channel, typed=meter.typed)

    @property
    def in_order(self) -> tuple[Instrument, ...]:
        """The meters in the order in which :meth:`take` wants them: the return's first."""
        if self._back is None:
            return self._instruments
        first = self._back[0]
        return (first, *(one for one in self._instruments if one is not first))

    def take(self, block: Block) -> None:
        """Take a Block; the whole of one meter after the other, in :attr:`in_order`."""
        if self.line is None or self._feed is None or self._back is None:
            return
        (meter, up), (other, down) = self._feed, self._back
        if meter is other:
            if block.source == meter.key:
                self.line.append(block.t_ns, block.values[:, up] - block.values[:, down])
        elif block.source == other.key:
            self._t.append(block.t_ns)
            self._volts.append(block.values[:, down])
        elif block.source == meter.key:
            back = self._joined(block.t_ns, other.channels[down].interval_s)
            self.line.append(block.t_ns, block.values[:, up] - back)

    def _joined(self, at_ns: NDArray[np.int64], interval_s: float) -> NDArray[np.float64]:
        """Give the return at these times; NaN within silences and beyond its ends."""
        if self._whole is None:
            if not self._t:
                return np.full(at_ns.shape, np.nan)
            self._whole = np.concatenate(self._t), np.concatenate(self._volts)
        t_ns, volts = self._whole
        joined = np.interp(at_ns, t_ns, volts, left=np.nan, right=np.nan)
        after = np.clip(np.searchsorted(t_ns, at_ns), 1, max(t_ns.shape[0] - 1, 1))
        if t_ns.shape[0] > 1 and interval_s > 0.0:
            apart = t_ns[after] - t_ns[after - 1]
            joined[apart > SILENT_INTERVALS * interval_s * 1e9] = np.nan
        return joined


def _home(instruments: Sequence[Instrument], role: Role) -> tuple[Instrument, int] | None:
    """Give the meter and the column that read a role."""
    for one in instruments:
        column = one.column(role)
        if column is not None:
            return one, column
    return None
