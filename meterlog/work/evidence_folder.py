"""The evidence of one recording in one folder: judgement, tables and a picture of the trace."""

from __future__ import annotations

import contextlib
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path

from meterlog.circuit import Isolation
from meterlog.evidence import export_recording
from meterlog.evidence.cell_text import AS_USUAL
from meterlog.evidence.circuit_files import JudgedCheck, circuit_files
from meterlog.evidence.table_form import TableForm
from meterlog.model import Review
from meterlog.recording import Recording
from meterlog.work.circuit_checks import judged_checks


def write_evidence(
    recording: Recording,
    review: Review,
    out: Path,
    progress: Callable[[float], None],
    form: TableForm = AS_USUAL,
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
    form : TableForm
        Of all tables.

    Returns
    -------
    tuple of (tuple of Path, str)
        All files written, and why there is no picture (empty when there is one).

    Raises
    ------
    EvidenceError
        If the folder holds something or can't be written; nothing is left in it then.
    """
    judged, lacking = judged_checks(recording)
    more = circuit_files(recording, judged, lacking, form)
    beside = [one.pointer() for one in judged]
    files = export_recording(recording, review, out, progress, more, beside, form)
    try:
        pictures, no_picture = _pictures(recording, review, judged, out)
    except BaseException:
        # The folder was empty. Left full, it would be refused when the export is tried again.
        for left in (*files, *out.glob("*.png")):
            with contextlib.suppress(OSError):
                left.unlink()
        raise
    return (*files, *pictures), no_picture


def _pictures(
    recording: Recording, review: Review, judged: Sequence[JudgedCheck], out: Path
) -> tuple[tuple[Path, ...], str]:
    """Draw all there is to draw; say why where there is none of the trace."""
    try:
        # Imported here: tables must come out where Qt's libraries are missing.
        from meterlog.evidence.trace_picture import save_png, scene_of
    except ImportError as error:
        return (), f"no picture: Qt can't be loaded ({error})"
    circuits = tuple(_circuits(recording, judged, out))
    if not recording.about.instruments:
        return circuits, "no trace: no meter was recorded"
    return (*circuits, save_png(out / "trace.png", scene_of(recording, review))), ""


def _circuits(recording: Recording, judged: Sequence[JudgedCheck], out: Path) -> Iterator[Path]:
    """Draw every check of a circuit."""
    from meterlog.evidence.circuit_png import drawn_state, save_circuit_png
    from meterlog.model.origin_mark import origin_mark

    about = recording.about
    for at, one in enumerate(judged, 1):
        yield save_circuit_png(
            out / ("circuit.png" if at == 1 else f"circuit-{at}.png"),
            one.circuit,
            one.check,
            one.verdict,
            expected=Isolation(one.circuit).expected(drawn_state(one.check)),
            mark=origin_mark(about),
            program=about.program,
        )
