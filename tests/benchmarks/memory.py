"""Figures of the memory layer."""

from __future__ import annotations

import os
import shutil
import tempfile
from pathlib import Path

from figure import Figure, interleaved_s
from traces import about, fan_block

from meterlog.recording import Envelope, Recorder

ROWS = 2_500_000
"""Ten million samples in four channels: a tenth of what a long job writes, so that it can be
repeated."""
BATCH = 10_000


def append() -> tuple[Figure, Figure]:
    """Append with the envelope against numpy's tofile of the same bytes."""
    block = fan_block(ROWS, 1e-4, 4)
    with tempfile.TemporaryDirectory() as place:
        folder, plain = Path(place) / "run", Path(place) / "plain"

        def record() -> None:
            shutil.rmtree(folder, ignore_errors=True)
            recorder = Recorder.create(folder, about(1e-4, 4), keep_raw=False)
            envelopes = [Envelope() for _ in range(4)]
            for start in range(0, ROWS, BATCH):
                part = block.rows(start, start + BATCH)
                recorder.take(part)
                for column, envelope in enumerate(envelopes):
                    envelope.append(part.t_ns, part.values[:, column])
            recorder.close()

        def raw() -> None:
            with plain.open("wb") as file:
                for start in range(0, ROWS, BATCH):
                    block.t_ns[start : start + BATCH].tofile(file)
                    for column in range(4):
                        block.values[start : start + BATCH, column].tofile(file)
                file.flush()
                os.fsync(file.fileno())

        seconds, raw_s = interleaved_s(record, raw, 3)
        size = (folder / "data" / "meter.arrows").stat().st_size
    rate = 4 * ROWS / seconds
    per_row = size / ROWS
    return (
        Figure(
            "memory",
            "append 1e7 samples, 4 channels, envelope in memory",
            f"{rate / 1e6:.0f} M samples/s",
            f"tofile + fsync {4 * ROWS / raw_s / 1e6:.0f} M samples/s",
            raw_s / seconds,
            ">= 0.5x",
            raw_s / seconds >= 0.5,
        ),
        Figure(
            "memory",
            "bytes on disk per row of 4 channels",
            f"{per_row:.2f} B",
            "8 + 4 x 8 = 40 B",
            per_row / 40.0,
            "<= 1.10x",
            per_row / 40.0 <= 1.10,
        ),
    )


FIGURES = (append,)
