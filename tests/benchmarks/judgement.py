"""Figures of the judgement layer."""

from __future__ import annotations

import tempfile
from pathlib import Path

import numpy as np
from figure import Figure, interleaved_s
from traces import about, fan_block, fan_instrument, write_recording

from meterlog.analysis import SpanDetector
from meterlog.model import Event, EventKind
from meterlog.profile import load_limits
from meterlog.recording import Recording
from meterlog.work import review_folder

CHUNK = 1_000_000


def span_detection() -> Figure:
    """Spans of three channels against a copy of the same arrays."""
    rows = 10_000_000
    block, limits = fan_block(rows, 1e-5), load_limits("linear-12v")

    def detect() -> None:
        detector = SpanDetector([fan_instrument(1e-5)], limits)
        detector.feed(Event(0, EventKind.SPEED, "4"))
        for start in range(0, rows, CHUNK):
            detector.feed(block.rows(start, start + CHUNK))
        detector.finish()

    target = np.empty_like(block.values)
    seconds, copy_s = interleaved_s(detect, lambda: np.copyto(target, block.values))
    rate = rows / seconds
    return Figure(
        "judgement",
        "span detection, 3 channels",
        f"{rate / 1e6:.0f} M rows/s",
        f"copy {rows / copy_s / 1e6:.0f} M rows/s",
        copy_s / seconds,
        ">= 0.05x and >= 30 M rows/s",
        copy_s / seconds >= 0.05 and rate >= 3e7,
    )


def whole_review() -> Figure:
    """Review of ten minutes at 10 kS/s, three channels, against reading the file alone."""
    rows = 6_000_000
    with tempfile.TemporaryDirectory() as place:
        folder = write_recording(Path(place) / "run", about(1e-4), fan_block(rows, 1e-4))

        def read() -> None:
            recording = Recording.open(folder)
            for block in recording.blocks("meter"):
                len(block)

        seconds, read_s = interleaved_s(lambda: review_folder(folder), read, 3)
    return Figure(
        "judgement",
        "review of 10 min, 10 kS/s, 3 channels",
        f"{seconds:.2f} s",
        f"reading alone {read_s:.2f} s",
        seconds / read_s,
        "<= 10x",
        seconds / read_s <= 10.0,
    )


FIGURES = (span_detection, whole_review)
