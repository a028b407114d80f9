"""Figures of the memory layer."""

from __future__ import annotations

import itertools
import os
import tempfile
import time
from pathlib import Path

import numpy as np
from figure import Figure, interleaved_s, median_s, percentile
from long_trace import child, long_recording
from traces import about, fan_block

from meterlog.evidence.trace_store import TraceStore
from meterlog.recording import Recorder, Recording, kept_pyramid

ROWS = 2_500_000
"""Ten million samples in four channels: a tenth of what a long job writes, so that it can be
repeated."""
BATCH = 10_000
PIXELS = 2_000
WINDOWS = 300


def append() -> tuple[Figure, Figure]:
    """Append with the envelope against numpy's tofile of the same bytes."""
    block = fan_block(ROWS, 1e-4, 4)
    with tempfile.TemporaryDirectory() as place:
        # Each turn writes something new: taking the last one away is no part of the work.
        folders = (Path(place) / f"run-{number}" for number in itertools.count())
        plains = (Path(place) / f"plain-{number}" for number in itertools.count())

        def record() -> Path:
            folder = next(folders)
            recorder = Recorder.create(folder, about(1e-4, 4), keep_raw=False)
            for start in range(0, ROWS, BATCH):
                recorder.take(block.rows(start, start + BATCH))
            recorder.close()
            return folder

        def raw() -> None:
            with next(plains).open("wb") as file:
                for start in range(0, ROWS, BATCH):
                    block.t_ns[start : start + BATCH].tofile(file)
                    for column in range(4):
                        block.values[start : start + BATCH, column].tofile(file)
                file.flush()
                os.fsync(file.fileno())

        seconds, raw_s = interleaved_s(record, raw, 5)
        folder = record()
        files = [folder / "data" / "meter.arrows", *(folder / "cache" / "meter").iterdir()]
        size = sum(file.stat().st_size for file in files)
    rate = 4 * ROWS / seconds
    per_row = size / ROWS
    return (
        Figure(
            "memory",
            "append 1e7 samples, 4 channels, envelope on the disk",
            f"{rate / 1e6:.0f} M samples/s",
            f"tofile + fsync {4 * ROWS / raw_s / 1e6:.0f} M samples/s",
            raw_s / seconds,
            ">= 0.5x",
            raw_s / seconds >= 0.5,
        ),
        Figure(
            "memory",
            "bytes on disk per row of 4 channels, envelope included",
            f"{per_row:.2f} B",
            "8 + 4 x 8 = 40 B",
            per_row / 40.0,
            "<= 1.10x",
            per_row / 40.0 <= 1.10,
        ),
    )


def _traces(folder: Path) -> TraceStore:
    head = Recording.without_readings(folder).about
    pyramid = kept_pyramid(folder, head, head.instruments[0])
    return TraceStore(head.instruments, pyramids={"meter": pyramid})


def open_long() -> Figure:
    """Open a very long recording and have the envelope of all of it, all four channels."""
    long = long_recording()
    stream = long.folder / "data" / "meter.arrows"

    def envelope() -> None:
        traces = _traces(long.folder)
        if len(traces.lines[0].shown(0, traces.end_ns, PIXELS)[0]) != 2 * PIXELS:
            raise RuntimeError("the envelope is not whole")

    def read() -> None:
        with stream.open("rb") as file:
            file.read(4_000_000)

    seconds, read_s = interleaved_s(envelope, read)
    return Figure(
        "memory",
        f"open {long.samples} samples to first envelope",
        f"{seconds * 1e3:.1f} ms",
        f"open + 4 MB read {read_s * 1e3:.1f} ms",
        seconds / read_s,
        "<= 50 ms",
        seconds <= 0.050,
    )


def any_window() -> tuple[Figure, Figure]:
    """The envelope of one channel in windows of any length and place; exact against numpy."""
    long = long_recording()
    traces = _traces(long.folder)
    line, (meter,) = traces.lines[0], traces.kept
    meter.silent_ns = {0: line.silent_ns}
    rng = np.random.default_rng(1)
    recording = Recording.open(long.folder)
    times, numpy_times, wrong, compared = [], [], 0, 0
    samples = rng.normal(size=(PIXELS, 1_000))
    for _ in range(WINDOWS):
        rows = int(np.exp(rng.uniform(np.log(1e4), np.log(long.rows))))
        start = int(rng.integers(0, long.rows - rows + 1)) * 100_000
        end = start + rows * 100_000 - 1
        begun = time.perf_counter()
        _, values = line.shown(start, end, PIXELS)
        times.append(time.perf_counter() - begun)
        # In turn, so that both find the processor's cache as the other left it.
        begun = time.perf_counter()
        samples.min(axis=1), samples.max(axis=1)
        numpy_times.append(time.perf_counter() - begun)
        if rows > 2_000_000:
            continue
        compared += 1
        blocks = list(recording.between("meter", start, end))
        t_ns = np.concatenate([block.t_ns for block in blocks])
        read = np.concatenate([block.values[:, 0] for block in blocks])
        edges = np.linspace(start, end, PIXELS + 1).astype(np.int64)
        starts = np.searchsorted(t_ns, edges[:-1])
        low, high = np.minimum.reduceat(read, starts), np.maximum.reduceat(read, starts)
        wrong += not (np.array_equal(values[::2], low) and np.array_equal(values[1::2], high))
    if wrong or not compared:
        raise RuntimeError(f"{wrong} of {compared} envelopes differ from numpy's")
    numpy_s = percentile(numpy_times, 0.5)
    again_s = median_s(lambda: (samples.min(axis=1), samples.max(axis=1)))
    median, p95 = percentile(times, 0.5), percentile(times, 0.95)
    what = f"envelope of any window of {long.samples} samples at 2,000 px"
    reference = f"numpy min/max of 2,000 x 1,000 {numpy_s * 1e3:.1f} ms in turn with it"
    reference += f" ({again_s * 1e3:.1f} ms of the same again and again)"
    return (
        Figure(
            "memory",
            f"{what}, median ({compared} compared: exact)",
            f"{median * 1e3:.1f} ms",
            reference,
            median / numpy_s,
            "<= 2x",
            median <= 2.0 * numpy_s,
        ),
        Figure(
            "memory",
            f"{what}, p95",
            f"{p95 * 1e3:.1f} ms",
            reference,
            p95 / numpy_s,
            "<= 5 ms",
            p95 <= 0.005,
        ),
    )


def _growth(what: str, grew_mb: float) -> Figure:
    return Figure("memory", what, f"{grew_mb:.0f} MB", "-", None, "<= 150 MB", grew_mb <= 150.0)


def resident() -> tuple[Figure, ...]:
    """How much processes grow that record, judge and check a very long recording."""
    long = long_recording()
    review_s, review_mb, verify_s, verify_mb = child("reviewing_long.py", long.folder)
    recorded = (
        [] if not long.grew_mb else [_growth(f"growth, {long.samples} recorded", long.grew_mb)]
    )
    return (
        *recorded,
        _growth(f"growth, {long.samples} judged in {review_s:.0f} s", review_mb),
        _growth(f"growth, judged and checked ({verify_s:.0f} s)", verify_mb),
    )


FIGURES = (append, open_long, any_window, resident)
