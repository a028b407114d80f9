"""The review of a recorded folder, by the same reviewer as live."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from meterlog.analysis import Reviewer
from meterlog.model import Block, Limits, Review
from meterlog.recording import Recording


def review_folder(
    folder: Path,
    limits: Limits | None = None,
    progress: Callable[[float], None] | None = None,
) -> tuple[Recording, Review]:
    """Judge a recording.

    Parameters
    ----------
    folder : Path
        Sealed or not; a damaged tail is left out and named in ``Recording.damage``.
    limits : Limits or None
        None: those in force when the recording was made.
    progress : callable or None
        Called with the part done, 0 to 1.

    Returns
    -------
    tuple of Recording and Review

    Raises
    ------
    RecordingUnreadable
        If there is no recording or it is damaged beyond use.
    """
    recording = Recording.open(folder)
    about = recording.about
    reviewer = Reviewer(about.instruments, limits or about.limits, about.started_utc)
    end_ns = max(recording.end_ns, 1)
    for item in recording.items():
        reviewer.feed(item)
        if progress is not None and isinstance(item, Block) and len(item):
            progress(min(int(item.t_ns[-1]) / end_ns, 1.0))
    return recording, reviewer.finish()
