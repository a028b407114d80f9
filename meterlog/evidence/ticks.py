"""Ticks: round numbers for the axes of a trace, and how they read."""

from __future__ import annotations

import math

_TIME_STEPS_S = (60.0, 120.0, 300.0, 600.0, 900.0, 1800.0, 3600.0, 7200.0, 21_600.0, 86_400.0)


def nice_step(span: float, most: int) -> float:
    """Give the smallest step of 1, 2 or 5 times a power of ten with at most ``most`` steps.

    Source
    ------
    The rounding of Heckbert, "Nice numbers for graph labels", Graphics Gems, 1990.
    """
    raw = span / max(most, 1)
    if not raw > 0.0 or not math.isfinite(raw):
        return 1.0
    power = 10.0 ** math.floor(math.log10(raw))
    for factor in (1.0, 2.0, 5.0):
        if factor * power >= raw * (1.0 - 1e-9):
            return factor * power
    return 10.0 * power


def time_step(span_s: float, most: int) -> float:
    """Give a step in seconds: 1, 2, 5 by tens below a minute, whole minutes and hours above."""
    step = nice_step(span_s, most)
    if step <= 20.0:
        return step
    return next((s for s in _TIME_STEPS_S if span_s / s <= most), step)


def ticks_at(low: float, high: float, step: float) -> tuple[float, ...]:
    """Give the multiples of ``step`` from ``low`` to ``high``, both included."""
    first = math.ceil(low / step - 1e-9)
    last = math.floor(high / step + 1e-9)
    return tuple(index * step for index in range(first, last + 1))


def tick_text(value: float, step: float) -> str:
    """Write a tick with as many decimals as its step needs, and no minus before a zero."""
    places = max(0, -math.floor(math.log10(step) + 1e-9))
    return f"{value if abs(value) > step / 1e6 else 0.0:.{places}f}"


def time_text(seconds: float, step: float) -> str:
    """Write a time: seconds below steps of a minute, ``m:ss`` or ``h:mm:ss`` above."""
    if step < 60.0:
        return tick_text(seconds, step)
    sign = "-" if seconds < 0 else ""
    minutes, rest = divmod(round(abs(seconds)), 60)
    hours, minutes = divmod(minutes, 60)
    if hours:
        return f"{sign}{hours}:{minutes:02d}:{rest:02d}"
    return f"{sign}{minutes}:{rest:02d}"


_TOPS = (1.0, 1.5, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0)


def ceiling(value: float) -> float:
    """Give the top of an axis that has room for ``value``: one of few sizes, so it seldom jumps."""
    if not value > 0.0 or not math.isfinite(value):
        return 1.0
    power = 10.0 ** math.floor(math.log10(value))
    return next((top * power for top in _TOPS if top * power >= value), 10.0 * power)
