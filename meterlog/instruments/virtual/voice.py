"""Voice: the protocol of a virtual meter's dialect."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Protocol

import numpy as np
from numpy.typing import NDArray

from meterlog.instruments.virtual.meter import MeterModel, Shown
from meterlog.instruments.virtual.play import Play

BANNER = "VIRTUAL BENCH - simulated readings, all names invented"
"""What a virtual meter sends when its port is opened, so that nobody takes it for a real one."""

Key = Callable[[str, float], None]
SLACK_S = 1e-9
"""Two ways to compute the same instant differ by less than this."""


class Voice(Protocol):
    """Speaks one dialect. All times are scenario time in seconds.

    Attributes
    ----------
    reach_s : float, seconds
        How far back it looks for what it has to say.
    keys : mapping of str to callable
        What can be done to a meter of this dialect besides what can be done to any: takes the
        words behind the order (see :mod:`meterlog.instruments.virtual.trouble`) and the time.
    card : mapping
        What there is to know about this specimen, for the truth file.
    """

    reach_s: float
    keys: Mapping[str, Key]
    card: Mapping[str, object]

    def greet(self, now_s: float) -> None:
        """Begin anew, because a client has opened the port."""

    def hear(self, data: bytes, now_s: float) -> None:
        """Take what the client has sent."""

    def due_s(self) -> float | None:
        """Give the time at which there will be something to say; None for not by itself."""

    def say(self, now_s: float) -> list[bytes]:
        """Give what is to be said by now; the play has gone on to ``now_s`` or beyond."""

    def news(self) -> list[tuple[float, str, str]]:
        """Give what the meter did by itself since the last call: time, kind, value."""


def window_means(
    trace: NDArray[np.float64], stops: NDArray[np.int64], width: int
) -> NDArray[np.float64]:
    """Give the mean of the ``width`` rows before each of ``stops``.

    Parameters
    ----------
    trace : ndarray, shape (n, points)
    stops : ndarray, int64, shape (readings,)
        Row numbers, exclusive.
    width : int
        At least 1; less where the trace begins later.

    Returns
    -------
    ndarray, shape (readings, points)
    """
    sums = np.zeros((trace.shape[0] + 1, trace.shape[1]))
    np.cumsum(trace, axis=0, out=sums[1:])
    starts = np.maximum(stops - width, 0)
    return (sums[stops] - sums[starts]) / (stops - starts)[:, None]


def window_mean(play: Play, integration_s: float, end_s: float) -> NDArray[np.float64]:
    """Give the circuit's mean over ``integration_s`` up to ``end_s``, shape (1, 5)."""
    stop = min(max(play.steps_at(end_s), 1), play.steps)
    start = max(0, stop - max(1, play.steps_at(integration_s)))
    mean: NDArray[np.float64] = play.span(start, stop).mean(axis=0, keepdims=True)
    return mean


def read_window(play: Play, meter: MeterModel, end_s: float) -> Shown:
    """Give one reading: the mean over the meter's integration time up to ``end_s``."""
    return meter.show(window_mean(play, meter.integration_s, end_s))
