"""Outfit: which meters are connected in a run, drawn from what workshops have."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from meter import Meter

from meterlog.model import Accuracy

HAND_HZ = 30.0
"""Below this a meter is taken for a hand or bench meter that averages and may choose its range."""
LINES_HZ = 100.0
"""Below this readings are lost line by line, above it by blocks."""


@dataclass(frozen=True)
class Wish:
    """What kind of outfit is wanted: rates in readings a second, and no hazards for plain ones."""

    slowest: float = 2.0
    fastest: float = 20_000.0
    hazards: bool = True


def draw_meters(
    rng: np.random.Generator, wish: Wish, length: float, pulse_hz: float
) -> tuple[Meter, ...]:
    """Draw one or two meters; ``pulse_hz`` 0 for a steady feed."""
    columns = [("feed", "return", "current"), ("feed", "current"), ("return", "current")]
    columns += [("current",)]
    chosen = columns[int(rng.choice(4, p=(0.7, 0.1, 0.08, 0.12)))]
    rate = _rate(rng, wish)
    if len(chosen) == 1 or rng.random() < 0.7:
        return (_meter(rng, "meter", chosen, rate, wish, (length, pulse_hz)),)
    volts = tuple(name for name in chosen if name != "current")
    second = float(np.clip(rate * np.exp(rng.uniform(-1.2, 1.2)), wish.slowest, wish.fastest))
    return (
        replace(
            _meter(rng, "amps", ("current",), rate, wish, (length, pulse_hz)), offset_u_s=0.0005
        ),
        _meter(rng, "volts", volts, second, wish, (length, pulse_hz), beside=True),
    )


def _rate(rng: np.random.Generator, wish: Wish) -> float:
    return float(np.exp(rng.uniform(np.log(wish.slowest), np.log(wish.fastest))))


def _window(rng: np.random.Generator, interval: float, hand: bool) -> tuple[float, float]:
    """Give the averaging time, and what the profile states of it (0: not stated)."""
    if hand:
        window = interval * rng.choice((0.15, 0.5, 0.8, 1.0))
        return float(window), 0.0 if rng.random() < 0.3 else float(window)
    form = rng.random()
    if form < 0.4:
        return 0.0, 0.0
    window = float(interval * (1.0 if form < 0.7 else rng.uniform(0.1, 1.0)))
    return window, window if rng.random() < 0.8 else 0.0


def _current(rng: np.random.Generator, hand: bool) -> tuple[Accuracy, float, float]:
    resolution = float(rng.choice((0.01, 0.01, 0.001, 0.1) if hand else (0.001, 0.005, 0.02)))
    floor = float(rng.choice((0.0, 0.02, 0.05, 0.1)))
    digits = 0.5 if resolution == 0.1 else float(rng.choice((1.0, 2.0, 5.0)))
    stated = Accuracy(float(rng.uniform(0.3, 2.0)), digits, resolution, floor, basis="invented")
    white = rng.uniform(0.002, 0.02) if hand else rng.uniform(0.005, 0.08)
    return stated, float(white), float(rng.uniform(0.0, 0.02))


def _meter(
    rng: np.random.Generator,
    key: str,
    columns: tuple[str, ...],
    rate: float,
    wish: Wish,
    run: tuple[float, float],
    *,
    beside: bool = False,
) -> Meter:
    length, pulse_hz = run
    interval, hand = 1.0 / rate, rate < HAND_HZ
    window, stated_window = _window(rng, interval, hand)
    accuracy: dict[str, Accuracy] = {}
    white: dict[str, float] = {}
    slow: dict[str, float] = {}
    for name in columns:
        if name == "current":
            accuracy[name], white[name], slow[name] = _current(rng, hand)
        else:
            accuracy[name] = Accuracy(float(rng.uniform(0.05, 0.7)), 2.0, 0.01, basis="invented")
            white[name], slow[name] = float(rng.uniform(0.003, 0.03)), float(rng.uniform(0.0, 0.02))
    choosing = hand and "current" in columns and wish.hazards and rng.random() < 0.3
    late_u = float(rng.uniform(0.001, 0.02)) if beside else 0.0
    gone = wish.hazards and rng.random() < 0.25
    return Meter(
        key=key,
        columns=columns,
        interval=interval,
        window=window,
        stated_window=stated_window,
        jitter=float(rng.choice((0.0, 0.02, 0.15))),
        accuracy=accuracy,
        error={name: float(rng.uniform(-1.0, 1.0)) for name in columns},
        noise=white,
        slow_noise=slow,
        # Nobody states it, so no budget can hold it: it is one of the hazards.
        drift_a_per_s=float(rng.uniform(-1.0, 1.0)) * (0.05 / 60.0 if wish.hazards else 0.0),
        offset_s=float(np.clip(rng.normal(0.0, late_u), -2 * late_u, 2 * late_u))
        if beside
        else 0.0,
        offset_u_s=late_u,
        lost=float(rng.uniform(0.0, 0.03)) if gone and rate < LINES_HZ else 0.0,
        bursts=_bursts(rng, length) if gone and rate >= LINES_HZ else [],
        range_top=float(rng.choice((60.0, 100.0, 400.0))),
        low_range=4.0 if choosing else 0.0,
        blank=float(rng.uniform(0.3, 1.5)) if choosing else 0.0,
        # A reading a long time after many pulses: nobody samples these without a filter.
        smooth=pulse_hz > 0.0 and rate < 4.0 * pulse_hz,
        loose=_loose(rng, columns, length) if wish.hazards else [],
    )


def _bursts(rng: np.random.Generator, length: float) -> list[tuple[float, float]]:
    starts = rng.uniform(0.0, length, int(rng.integers(1, 4)))
    return [(float(at), float(at + np.exp(rng.uniform(-5.0, -1.0)))) for at in starts]


def _loose(
    rng: np.random.Generator, columns: tuple[str, ...], length: float
) -> list[tuple[str, float, float, float]]:
    """Give (probe, from, to, volts shown): a voltage probe that falls off now and then."""
    probes = [name for name in columns if name != "current"]
    if not probes or rng.random() > 0.15:
        return []
    result = []
    for _ in range(int(rng.integers(1, 3))):
        start = float(rng.uniform(0.0, length))
        ghost = 0.0 if rng.random() < 0.6 else float(rng.uniform(0.1, 2.5))
        result.append(
            (str(rng.choice(probes)), start, start + float(rng.uniform(0.05, 4.0)), ghost)
        )
    return result
