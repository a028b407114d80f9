"""TimeWatch: notices that the computer slept, or that its clock was set, while it recorded."""

from __future__ import annotations

import sys
import time
from collections.abc import Callable

from meterlog.acquire.bus import Item
from meterlog.model import Event, EventKind

_LOOK_NS = 1_000_000_000
_SLEPT_NS = 1_000_000_000
"""A shorter sleep is no more than the time the two clocks are read at."""
_STEPPED_NS = 1_000_000_000
"""Time services move a clock by less than this, and slowly."""


def slept_ns() -> int | None:
    """Give the time that this computer has spent asleep; None where the system does not tell.

    Returns
    -------
    int or None, nanoseconds
        Only differences mean anything.

    Source
    ------
    clock_gettime(2) of Linux: ``CLOCK_MONOTONIC`` does not count time in which the system is
    suspended, ``CLOCK_BOOTTIME`` does. Of macOS: ``CLOCK_MONOTONIC`` counts it,
    ``CLOCK_UPTIME_RAW`` does not. Windows: QueryUnbiasedInterruptTime does not,
    QueryInterruptTime does.
    """
    if sys.platform == "win32":
        return _slept_on_windows()
    if hasattr(time, "CLOCK_BOOTTIME"):
        awake = time.clock_gettime_ns(time.CLOCK_MONOTONIC)
        return time.clock_gettime_ns(time.CLOCK_BOOTTIME) - awake
    if hasattr(time, "CLOCK_UPTIME_RAW"):
        awake = time.clock_gettime_ns(time.CLOCK_UPTIME_RAW)
        return time.clock_gettime_ns(time.CLOCK_MONOTONIC) - awake
    return None


def _slept_on_windows() -> int | None:
    import ctypes

    try:
        kernel = ctypes.WinDLL("kernelbase")  # type: ignore[attr-defined,unused-ignore]
        everything, awake = ctypes.c_uint64(), ctypes.c_uint64()
        kernel.QueryInterruptTime(ctypes.byref(everything))
        kernel.QueryUnbiasedInterruptTime(ctypes.byref(awake))
    except (OSError, AttributeError):
        return None
    return (everything.value - awake.value) * 100


class TimeWatch:
    """A sink that looks at the computer's clocks once a second and says what happened to them.

    The times of a recording come from a clock that nobody can set, so a wall clock that is set
    changes none of them. That clock may stand still while the computer sleeps: what was recorded
    before and after then looks as if it followed at once, and nobody may read it so.

    Parameters
    ----------
    put : callable
        Takes the events.
    slept : callable
        Gives the time spent asleep so far, or None, in nanoseconds.
    """

    def __init__(
        self, put: Callable[[Event], None], slept: Callable[[], int | None] = slept_ns
    ) -> None:
        self._put = put
        self._slept = slept
        self._looked_ns: int | None = None
        self._asleep_ns: int | None = None
        self._ahead_ns = 0

    def take(self, item: Item) -> None:
        """Nothing to do: only the time matters."""

    def tick(self, now_ns: int) -> None:
        """Look at the clocks, at most once a second of the recording's time."""
        if self._looked_ns is not None and now_ns - self._looked_ns < _LOOK_NS:
            return
        before, self._looked_ns = self._looked_ns, now_ns
        asleep_ns, was_asleep_ns = self._slept(), self._asleep_ns
        ahead_ns, was_ahead_ns = time.time_ns() - time.monotonic_ns(), self._ahead_ns
        self._asleep_ns, self._ahead_ns = asleep_ns, ahead_ns
        if before is None:
            return
        gone_ns = 0 if asleep_ns is None or was_asleep_ns is None else asleep_ns - was_asleep_ns
        step_ns = ahead_ns - was_ahead_ns
        if gone_ns >= _SLEPT_NS:
            self._say(now_ns, _slept_words(gone_ns))
            if sys.platform != "win32":  # there the clock of the recording goes on in sleep
                step_ns -= gone_ns
        if abs(step_ns) >= _STEPPED_NS:
            self._say(now_ns, _step_words(step_ns, told=asleep_ns is not None))

    def rest_ns(self, now_ns: int) -> int:
        """Tell how long it is to the next look, nanoseconds."""
        return 0 if self._looked_ns is None else self._looked_ns + _LOOK_NS - now_ns

    def _say(self, now_ns: int, words: str) -> None:
        self._put(Event(now_ns, EventKind.TIMING, words))


def _slept_words(gone_ns: int) -> str:
    counts = "counted" if sys.platform == "win32" else "not counted"
    return (
        f"the computer slept for {_duration(gone_ns)}, ended within the last second: nothing was "
        f"measured in that time, and it is {counts} in the times of this recording"
    )


def _step_words(step_ns: int, *, told: bool) -> str:
    way = "forward" if step_ns > 0 else "back"
    cause = "" if told or step_ns < 0 else ", or the computer slept"
    return (
        f"the computer's clock was set {way} by {_duration(abs(step_ns))}{cause}: the times of "
        "this recording go on by a clock that can't be set, from the date and time of its start"
    )


def _duration(ns: int) -> str:
    seconds = ns / 1e9
    if seconds < 120.0:
        return f"{seconds:.1f} s"
    return f"{seconds / 60.0:.1f} min" if seconds < 7200.0 else f"{seconds / 3600.0:.1f} h"
