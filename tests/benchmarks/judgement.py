"""Figures of the judgement layer."""

from __future__ import annotations

import math
import tempfile
from functools import partial
from pathlib import Path

import numpy as np
from bar_waves import BarMotor, bar_wave
from figure import Figure, interleaved_s
from traces import about, fan_block, fan_instrument, write_recording

from meterlog.analysis import SpanDetector
from meterlog.analysis.detector import WINDOW
from meterlog.analysis.found_steps import StepFinder
from meterlog.analysis.judged import Judged
from meterlog.analysis.labels import Stretch
from meterlog.analysis.ripple import RippleWatch
from meterlog.analysis.rows import Rows
from meterlog.model import (
    Channel,
    Event,
    EventKind,
    Instrument,
    Quantity,
    Role,
    Span,
    SpanKind,
    Step,
)
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


def _find_steps(rows: Rows, judged: Judged) -> int:
    """Find the steps of rows given in parts, as a review gives them; give how many there are."""
    finder = StepFinder()
    for start in range(0, len(rows), WINDOW):
        part = rows.part(start, start + WINDOW)
        finder.take_rows(part, [Stretch(0, len(part), None, steady=True)])
    return len(finder.changes(judged))


def _stepped_rows(count: int, interval_s: float) -> tuple[Rows, Judged]:
    """Give the current of a fan run through twelve speeds, noise added."""
    rng = np.random.default_rng(2)
    levels = np.array([3.6, 5.7, 9.0, 13.6, 5.7, 3.6, 13.6, 9.0, 13.6, 3.6, 9.0, 5.7])
    amps = levels[np.arange(count) * len(levels) // count] + rng.normal(0.0, 0.2, count)
    t_ns = np.arange(count, dtype=np.int64) * round(interval_s * 1e9)
    whole = Span(SpanKind.RUNNING, 0, int(t_ns[-1]))
    rows = Rows(t_ns, amps, None, None, np.ones(count, np.bool_), np.zeros(count, np.bool_))
    return rows, Judged((), load_limits("linear-12v"), spans=(whole,))


def step_finding() -> tuple[Figure, ...]:
    """Speed changes in 10^6 samples against their cumulative sum; growth from 10^4 to 10^7."""
    sizes = (10_000, 100_000, 1_000_000, 10_000_000)
    times = {}
    for count in sizes:
        # A hundred seconds and more, so that each speed is one.
        rows, judged = _stepped_rows(count, max(1e-4, 100.0 / count))
        found = _find_steps(rows, judged)
        if found != 11:
            raise AssertionError(f"{found} changes found in {count} samples instead of 11")
        times[count] = interleaved_s(
            partial(_find_steps, rows, judged), partial(np.cumsum, rows.amps)
        )
    seconds, sum_s = times[1_000_000]
    logs = np.log([float(count) for count in sizes])
    growth = float(np.polyfit(logs, np.log([times[count][0] for count in sizes]), 1)[0])
    last = math.log10(times[10_000_000][0] / seconds)
    return (
        Figure(
            "judgement",
            "step finding, 10^6 samples",
            f"{1e3 * seconds:.1f} ms",
            f"cumsum {1e3 * sum_s:.2f} ms",
            seconds / sum_s,
            "<= 50x",
            seconds / sum_s <= 50.0,
        ),
        Figure(
            "judgement",
            "step finding, growth from 10^4 to 10^7",
            f"exponent {growth:.2f}, last decade {last:.2f}",
            "linear: 1",
            max(growth, last),
            "<= 1.1",
            max(growth, last) <= 1.1,
        ),
    )


def ripple_analysis() -> Figure:
    """Ripple of a million readings at 10 kS/s against Welch's spectrum of the same."""
    from scipy import signal

    rate, count = 10_000.0, 1_000_000
    _, amps = bar_wave(BarMotor(dead=(3,), rate_hz=rate, seconds=20.0), 1)
    amps = np.tile(amps, count // len(amps))
    t_ns = np.arange(count, dtype=np.int64) * 100_000
    every = np.ones(count, np.bool_)
    rows = Rows(t_ns, amps, None, None, every, ~every)
    limits = load_limits("linear-12v")
    channel = Channel("amps", Quantity.CURRENT, Role.MOTOR_CURRENT, interval_s=1.0 / rate)
    meter = Instrument("daq", "benchmark", "-", (channel,))
    step = Step(4, 0, 102 * 10**9, steady_n=count, steady_mean_a=14.0)
    judged = Judged((meter,), limits, steps=(step,))

    def look() -> None:
        watch = RippleWatch([meter], limits)
        for start in range(0, count, WINDOW):
            stop = min(start + WINDOW, count)
            part = [Stretch(0, stop - start, 4, steady=True)]
            watch.take_rows(rows.part(start, stop), part)
        watch.views(judged)

    seconds, welch_s = interleaved_s(look, lambda: signal.welch(amps, rate, nperseg=8192))
    return Figure(
        "judgement",
        "ripple analysis, 10^6 readings",
        f"{seconds * 1e3:.0f} ms",
        f"scipy.signal.welch, 8192 a segment, {welch_s * 1e3:.0f} ms",
        seconds / welch_s,
        "<= 5x",
        seconds / welch_s <= 5.0,
    )


FIGURES = (span_detection, whole_review, step_finding, ripple_analysis)
