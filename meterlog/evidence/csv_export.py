"""CsvExport: a recording and its review as tables that anybody can open."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from pathlib import Path

from meterlog.evidence.cell_text import AS_USUAL
from meterlog.evidence.judgement_files import judgement_file, review_file
from meterlog.evidence.partial_files import PartialFiles
from meterlog.evidence.readings_csv import ReadingsCsv
from meterlog.evidence.readme_text import readme_text
from meterlog.evidence.table_form import TableForm
from meterlog.evidence.tables_csv import TablesCsv
from meterlog.model import Review
from meterlog.model.visible_text import steerless
from meterlog.recording import METADATA_ENDING, Recording


class _Progress:
    """Rows written, as a part of all."""

    def __init__(self, total: int, tell: Callable[[float], None]) -> None:
        self._total = max(1, total)
        self._done = 0
        self._tell = tell

    def __call__(self, rows: int) -> None:
        """Count ``rows`` more."""
        self._done += rows
        self._tell(min(1.0, self._done / self._total))


def export_recording(
    recording: Recording,
    review: Review,
    out: Path,
    progress: Callable[[float], None],
    more: Mapping[str, bytes] | None = None,
    beside: Sequence[str] = (),
    form: TableForm = AS_USUAL,
) -> tuple[Path, ...]:
    """Write a recording and its review as tables.

    Parameters
    ----------
    recording : Recording
    review : Review
    out : Path
        Absent or empty.
    progress : callable
        Called with the part done, 0 to 1. May raise to cancel: nothing is left behind then.
    more : mapping of str to bytes, or None
        Further files by name, such as :func:`~meterlog.evidence.circuit_files.circuit_files` gives.
    beside : sequence of str
        What they come to, for the head of ``judgement.txt``.
    form : TableForm
        Of all tables; ``more`` come as they are.

    Returns
    -------
    tuple of Path
        ``README.txt``, ``judgement.txt``, ``review.json``, ``findings.csv``, ``steps.csv``,
        ``spans.csv``, ``events.csv``, one ``readings-<key>.csv`` an instrument; ``budgets.csv``,
        ``startups.csv`` and ``taps.csv`` where there are any; to each table its metadata.

    Raises
    ------
    EvidenceError
        If the folder holds something or can't be written.
    RecordingUnreadable
        If the recording can't be read any more.

    Source
    ------
    RFC 4180 for the tables (UTF-8, header, CRLF), RFC 3339 for time stamps, CSV on the Web (W3C,
    2015) for their metadata.
    """
    instruments = recording.about.instruments
    told = _Progress(sum(recording.rows(one.key) for one in instruments), progress)
    with PartialFiles(out) as files:
        for instrument in instruments:
            table = ReadingsCsv(recording, review, instrument, form)
            with files.file(table.name) as stream:
                table.write(stream, told)
            with files.file(table.name + METADATA_ENDING) as stream:
                stream.write(table.metadata())
        tables = TablesCsv(recording, review, form).files()
        for name, content in {**tables, **(more or {})}.items():
            with files.file(name) as stream:
                stream.write(content)
        # The last: by now all damage of the recording is known.
        for name, text in (
            ("judgement.txt", steerless(judgement_file(recording, review, beside))),
            ("review.json", review_file(recording, review)),
            ("README.txt", steerless(readme_text(recording, review, form))),
        ):
            with files.file(name) as stream:
                stream.write(text.encode("utf-8", "backslashreplace"))
    progress(1.0)
    return tuple(sorted(files.written, key=lambda path: (path.suffix != ".txt", path.name)))
