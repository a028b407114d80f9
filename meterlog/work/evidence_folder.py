"""The evidence of one recording in one folder: judgement, tables and a picture of the trace."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from meterlog.evidence import export_recording
from meterlog.model import Review
from meterlog.recording import Recording


def write_evidence(
    recording: Recording,
    review: Review,
    out: Path,
    progress: Callable[[float], None],
) -> tuple[tuple[Path, ...], str]:
    """Write the judgement, the tables and the picture of one recording.

    Parameters
    ----------
    recording : Recording
    review : Review
    out : Path
        Absent or empty.
    progress : callable
        Called with the part done, 0 to 1.

    Returns
    -------
    tuple of (tuple of Path, str)
        All files written, and why there is no picture (empty when there is one).

    Raises
    ------
    EvidenceError
        If the folder holds something or can't be written.
    """
    files = export_recording(recording, review, out, progress)
    try:
        # Imported here: tables must come out where Qt's libraries are missing.
        from meterlog.evidence.trace_picture import save_png, scene_of
    except ImportError as error:
        return files, f"no picture: Qt can't be loaded ({error})"
    return (*files, save_png(out / "trace.png", scene_of(recording, review))), ""
