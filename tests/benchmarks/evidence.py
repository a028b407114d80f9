"""Figures of the evidence layer."""

from __future__ import annotations

import shutil
import tempfile
from pathlib import Path

import pyarrow as pa
import pyarrow.csv
from figure import Figure, interleaved_s
from traces import about, fan_block, write_recording

from meterlog.evidence import export_recording
from meterlog.recording import Recording
from meterlog.work import review_folder

ROWS = 1_000_000


def csv_export() -> Figure:
    """Export of a recording against pyarrow writing the very table that the export holds."""
    with tempfile.TemporaryDirectory() as place:
        folder = write_recording(Path(place) / "run", about(1e-3), fan_block(ROWS, 1e-3))
        out, plain = Path(place) / "out", Path(place) / "plain.csv"
        _, review = review_folder(folder)

        def export() -> None:
            shutil.rmtree(out, ignore_errors=True)
            export_recording(Recording.open(folder), review, out, lambda _part: None)

        export()
        table = _table(next(out.glob("readings-*.csv")))
        seconds, arrow_s = interleaved_s(export, lambda: pyarrow.csv.write_csv(table, plain), 3)
    return Figure(
        "evidence",
        "CSV export of 1e6 rows, 3 channels, all files",
        f"{ROWS / seconds / 1e6:.2f} M rows/s",
        f"pyarrow write_csv, same table {ROWS / arrow_s / 1e6:.2f} M rows/s",
        arrow_s / seconds,
        ">= 0.7x",
        arrow_s / seconds >= 0.7,
    )


def _table(path: Path) -> pa.Table:
    return pyarrow.csv.read_csv(path)


FIGURES = (csv_export,)
