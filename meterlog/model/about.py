"""About: what was known when a recording began."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import UTC, datetime
from enum import StrEnum

from meterlog.model.instrument import Instrument
from meterlog.model.job import Job
from meterlog.model.limits import Limits

UNDATED = datetime(1970, 1, 1, tzinfo=UTC)
"""``About.started_utc`` of a trace that has seconds only: nobody knows when it was taken."""


class Origin(StrEnum):
    """Where the readings come from. Anything but ``measured`` is marked wherever it is shown."""

    MEASURED = "measured"
    SIMULATED = "simulated"
    IMPORTED = "imported"
    TYPED = "typed"


@dataclass(frozen=True, slots=True)
class About:
    """The head of a recording, written and synced before its first reading.

    Attributes
    ----------
    recording_id : str
        Random, unique (UUID 4).
    started_utc : datetime
        Wall time of the recording's zero, with UTC offset +00:00. Written once; all else is
        monotonic, so a stepped clock can't bend a trace.
    local_offset_s : int, seconds
        The place's UTC offset at the start.
    zero_ns : int, nanoseconds
        The host's monotonic clock at the recording's zero.
    program : str
        Name and version of the program that wrote it.
    origin : Origin
    instruments : tuple of Instrument
    limits : Limits
        As in force when the recording was made; a review may use others.
    job : Job
    """

    recording_id: str
    started_utc: datetime
    local_offset_s: int
    zero_ns: int
    program: str
    origin: Origin
    instruments: tuple[Instrument, ...]
    limits: Limits = field(default_factory=Limits)
    job: Job = field(default_factory=Job)
