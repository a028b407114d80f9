"""Stretch: the figures of a recording between two instants, while it grows or afterwards."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from meterlog.analysis.stretch_figures import StretchFigure, StretchFigures
from meterlog.recording import Recording


def stretch_figures(
    folder: Path, start_ns: int, end_ns: int, progress: Callable[[float], None]
) -> tuple[StretchFigure, ...]:
    """Give the figures of every channel over a stretch, both ends included.

    Parameters
    ----------
    folder : Path
        Of a recording; one that is being written gives what has been flushed.
    start_ns, end_ns : int, nanoseconds since the recording's zero
        In either order.
    progress : callable
        Called with the part done, 0 to 1. May raise to cancel.

    Raises
    ------
    RecordingUnreadable
        If the folder holds no recording or it is damaged beyond use.
    """
    start_ns, end_ns = min(start_ns, end_ns), max(start_ns, end_ns)
    recording = Recording.open(folder)
    about = recording.about
    figures = StretchFigures(about.instruments, about.job.measured_under.ambient_c)
    for event in recording.events:
        if event.t_ns <= end_ns:
            figures.take_event(event)
    for place, instrument in enumerate(about.instruments):
        for block in recording.between(instrument.key, start_ns, end_ns):
            figures.take(block)
            inside = (int(block.t_ns[-1]) - start_ns) / max(end_ns - start_ns, 1)
            progress((place + inside) / len(about.instruments))
    return figures.figures()
