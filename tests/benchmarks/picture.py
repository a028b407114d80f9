"""Figures of the picture: frames of the trace, each beside a bare frame of the same process."""

from __future__ import annotations

from figure import Figure
from long_trace import child, long_recording

_WHERE = "1920x1080"


def _frame(what: str, words: tuple[object, ...], most: float, most_ms: float | None) -> Figure:
    median, p95, bare = child("frames.py", *words)
    ratio = median / bare
    within = most_ms is None or p95 * 1e3 <= most_ms
    target = f"<= {most}x" + ("" if most_ms is None else f", p95 <= {most_ms} ms")
    return Figure(
        "picture",
        f"{what}, {_WHERE}",
        f"{median * 1e3:.1f} ms, p95 {p95 * 1e3:.1f} ms",
        f"bare 2 x 2,000 points {bare * 1e3:.1f} ms",
        ratio,
        target,
        ratio <= most and within,
    )


def live() -> tuple[Figure, Figure]:
    """One live frame with 1e8 points behind it: the newest 30 s, and all of them on screen."""
    return (
        _frame("live frame, 2 curves, 1e8 points behind", ("live",), 1.5, 16.7),
        _frame("live frame, 2 curves, 1e8 points on screen", ("live-all",), 1.5, 16.7),
    )


def look() -> Figure:
    """One frame while a very long recording is moved and zoomed, four curves and the area."""
    long = long_recording()
    return _frame(f"pan/zoom frame at {long.samples} samples", ("look", long.folder), 2.0, None)


def idle() -> Figure:
    """The window at ten readings a second."""
    share, _ = child("idle.py")
    bare, _ = child("idle_bare.py")
    return Figure(
        "picture",
        f"CPU of the window, 10 readings/s, {_WHERE}",
        f"{share * 100.0:.1f} % of a core",
        f"two bare pyqtgraph plots at that pace {bare * 100.0:.1f} %",
        share / bare,
        "<= 5 %",
        share <= 0.05,
    )


FIGURES = (live, look, idle)
