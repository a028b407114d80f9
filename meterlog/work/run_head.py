"""The head of a run: what ``about.json`` says of it."""

from __future__ import annotations

import uuid

from meterlog import __version__
from meterlog.acquire import Clock
from meterlog.model import About, Instrument, Job, Limits, Origin


def run_head(
    clock: Clock,
    instruments: tuple[Instrument, ...],
    origin: Origin | None,
    limits: Limits,
    job: Job,
) -> About:
    """Give the head of a recording that begins at the zero of ``clock``.

    Parameters
    ----------
    clock : Clock
    instruments : tuple of Instrument
        As they were met.
    origin : Origin or None
        None: ``simulated`` as soon as one instrument says so of itself, ``typed`` when all are
        typed by hand, else ``measured``.
    limits : Limits
    job : Job
    """
    return About(
        recording_id=str(uuid.uuid4()),
        started_utc=clock.started_utc,
        local_offset_s=clock.local_offset_s,
        zero_ns=clock.zero_ns,
        program=f"meterlog {__version__}",
        origin=_origin(instruments) if origin is None else origin,
        instruments=instruments,
        limits=limits,
        job=job,
    )


def _origin(instruments: tuple[Instrument, ...]) -> Origin:
    if any(instrument.simulated for instrument in instruments):
        return Origin.SIMULATED
    typed = all(instrument.typed for instrument in instruments)
    return Origin.TYPED if typed else Origin.MEASURED
