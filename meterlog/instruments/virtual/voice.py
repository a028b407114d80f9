"""Voice: the protocol of a virtual meter's dialect."""

from __future__ import annotations

from typing import Protocol

import numpy as np

from meterlog.instruments.virtual.meter import MeterModel, Shown
from meterlog.instruments.virtual.play import Play

SLACK_S = 1e-9
"""Two ways to compute the same instant differ by less than this."""


class Voice(Protocol):
    """Speaks one dialect. All times are scenario time in seconds.

    Attributes
    ----------
    reach_s : float, seconds
        How far back it looks for what it has to say.
    """

    reach_s: float

    def greet(self, now_s: float) -> None:
        """Begin anew, because a client has opened the port."""

    def hear(self, data: bytes, now_s: float) -> None:
        """Take what the client has sent."""

    def due_s(self) -> float | None:
        """Give the time at which there will be something to say; None for not by itself."""

    def say(self, now_s: float) -> list[bytes]:
        """Give what is to be said by now; the play has gone on to ``now_s`` or beyond."""


def read_window(play: Play, meter: MeterModel, end_s: float) -> Shown:
    """Give one reading: the mean over the meter's integration time up to ``end_s``."""
    stop = min(max(play.steps_at(end_s), 1), play.steps)
    start = max(0, stop - max(1, play.steps_at(meter.integration_s)))
    mean: np.ndarray[tuple[int, int], np.dtype[np.float64]] = play.span(start, stop).mean(
        axis=0, keepdims=True
    )
    return meter.show(mean)
