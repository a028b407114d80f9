"""Clock: monotonic time since the recording's zero, tied to the wall clock once."""

from __future__ import annotations

import time
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Self


@dataclass(frozen=True, slots=True)
class Clock:
    """The time of one recording.

    Attributes
    ----------
    zero_ns : int, nanoseconds
        The host's monotonic clock at the recording's zero.
    started_utc : datetime
        Wall time of the zero, in UTC.
    local_offset_s : int, seconds
        The place's UTC offset at the zero.
    """

    zero_ns: int
    started_utc: datetime
    local_offset_s: int

    @classmethod
    def start(cls) -> Self:
        """Give a clock whose zero is now."""
        before = time.monotonic_ns()
        started = datetime.now(UTC)
        after = time.monotonic_ns()
        offset = started.astimezone().utcoffset()
        return cls((before + after) // 2, started, int(offset.total_seconds()) if offset else 0)

    def now_ns(self) -> int:
        """Give the nanoseconds since the zero."""
        return time.monotonic_ns() - self.zero_ns
