"""Figures of the evidence layer."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
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


def claim_pack() -> tuple[Figure, ...]:
    """A pack of two ten-minute runs, signed, with all tables, as the command makes it."""
    return tuple(_claim_pack(rate) for rate in (50, 1_000))


def _claim_pack(rate: int) -> Figure:
    rows = 600 * rate
    with tempfile.TemporaryDirectory() as place:
        home = Path(place)
        runs = [
            write_recording(home / name, about(1.0 / rate), fan_block(rows, 1.0 / rate))
            for name in ("before", "after")
        ]
        code = (
            "import sys, time; from pathlib import Path\n"
            "from meterlog.cli import main\n"
            "start = time.perf_counter(); code = main(sys.argv[1:])\n"
            "print(time.perf_counter() - start); sys.exit(code)\n"
        )
        words = ["claim", "job/card.json", "--before", str(runs[0]), "--after", str(runs[1])]
        card = [sys.executable, "-m", "meterlog", "job", "job/card.json", "--set", "work_order=1"]
        env = {**os.environ, "QT_QPA_PLATFORM": "offscreen", "HOME": place, "XDG_DATA_HOME": place}
        subprocess.run(card, check=True, cwd=home, env=env, capture_output=True)
        times = []
        for turn in range(3):
            asked = [sys.executable, "-c", code, *words, "--out", f"pack-{turn}"]
            ran = subprocess.run(
                asked, check=True, cwd=home, env=env, capture_output=True, text=True
            )
            times.append(float(ran.stdout.split()[-1]))
    seconds = sorted(times)[1]
    return Figure(
        "evidence",
        f"claim pack of two 10-minute runs at {rate:,} readings/s, 3 channels",
        f"{seconds:.1f} s",
        "-",
        None,
        "<= 5 s",
        seconds <= 5.0,
    )


FIGURES = (csv_export, claim_pack)
