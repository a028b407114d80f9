"""BarWaves: the current of a turning commutator motor, made from its angle. Invented.

Independent of what looks at it: the shaft turns, each brush meets bar after bar, each bar has a
height of its own, an open bar takes the current away while a brush is on it; the armature's
inductance and the clamp smooth the sum; the meter averages over its interval and adds noise.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray


@dataclass(frozen=True)
class BarMotor:
    """A motor and how it is read.

    ``bar_scatter`` is the standard deviation of the bars' heights as part of the hump;
    ``brush_apart`` by how much the second brush's humps and notches are the lower; ``ripple`` the
    peak to peak of the humps of one brush pair as part of the mean; ``noise`` the meter's noise as
    part of that ripple; ``wobble`` a once-per-turn rise and fall as part of the mean.
    """

    bars: int = 12
    brushes: int = 2
    rpm: float = 3000.0
    rate_hz: float = 10_000.0
    seconds: float = 3.0
    mean_a: float = 14.0
    ripple: float = 0.10
    bar_scatter: float = 0.05
    brush_apart: float = 0.08
    dead: tuple[int, ...] = ()
    depth: float = 0.6
    notch_width: float = 0.8
    high: tuple[int, ...] = ()
    drift: float = 0.01
    jitter: float = 0.001
    wobble: float = 0.003
    armature_s: float = 2e-4
    clamp_hz: float = 20_000.0
    noise: float = 0.1
    brush_noise: float = 0.0
    shape: str = "rectified"


def _smoothed(x: NDArray[np.float64], motor: BarMotor, step_s: float) -> NDArray[np.float64]:
    """Smooth by armature and clamp, one pole each, by their frequency responses.

    The ends are joined and cut off by the caller.
    """
    turning = 2j * np.pi * np.fft.rfftfreq(len(x), step_s)
    poles = (1.0 + turning * motor.armature_s) * (1.0 + turning / (2.0 * np.pi * motor.clamp_hz))
    return np.fft.irfft(np.fft.rfft(x) / poles, len(x))


def _angle(motor: BarMotor, count: int, step_s: float, rng: np.random.Generator):
    """Shaft angle in turns: a slow drift, a slow wandering, a start at any angle."""
    t = np.arange(count) * step_s
    slow = np.interp(
        t, np.linspace(0.0, t[-1], 9), rng.normal(0.0, motor.jitter, 9)
    ) + motor.drift * np.cos(2.0 * np.pi * (0.13 * t + rng.uniform()))
    return rng.uniform() + np.cumsum(motor.rpm / 60.0 * (1.0 + slow)) * step_s


def _hump(part: NDArray[np.float64], shape: str) -> NDArray[np.float64]:
    if shape == "raised":
        return 0.5 - 0.5 * np.cos(2.0 * np.pi * part)
    return np.abs(np.sin(np.pi * part))


def bar_wave(motor: BarMotor, seed: int) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """Give times (s) and readings (A)."""
    rng = np.random.default_rng(seed)
    fine = max(2, int(np.ceil(60_000.0 / motor.rate_hz)))
    step_s = 1.0 / (motor.rate_hz * fine)
    pad = 200 * fine
    count = round(motor.seconds * motor.rate_hz) * fine + 2 * pad
    turn = _angle(motor, count, step_s, rng)
    heights = np.clip(1.0 + motor.bar_scatter * rng.standard_normal(motor.bars), 0.6, 1.4)
    for bar in motor.high:
        heights[bar] += 2.0
    humps, open_part = _humps(motor, turn, heights), np.ones(count)
    for brush in range(motor.brushes):
        weight = 1.0 - (motor.brush_apart if brush % 2 else 0.0)
        place = motor.bars * (turn + brush / motor.brushes)
        for dead in motor.dead:
            away = (place - dead - 0.5 + motor.bars / 2.0) % motor.bars - motor.bars / 2.0
            inside = np.abs(away) < motor.notch_width / 2.0
            dip = 0.5 + 0.5 * np.cos(2.0 * np.pi * away / motor.notch_width)
            open_part -= weight * motor.depth * np.where(inside, dip, 0.0)
    ripple = motor.ripple * (humps - humps.mean())
    amps = motor.mean_a * (1.0 + ripple) * np.clip(open_part, 0.0, 1.0)
    amps *= 1.0 + motor.wobble * np.cos(2.0 * np.pi * turn + 1.0)
    if motor.brush_noise:
        amps *= 1.0 - _dips(motor, count, step_s, rng)
    amps = _smoothed(amps, motor, step_s)[pad:-pad]
    read = amps.reshape(-1, fine).mean(axis=1)
    read += rng.normal(0.0, motor.noise * _shown(humps, motor, step_s, fine), len(read))
    digit = 60.0 / 2**14
    return np.arange(len(read)) / motor.rate_hz, np.round(read / digit) * digit


def shown_ripple(motor: BarMotor, seed: int) -> float:
    """Give what the armature and the clamp leave of the ripple, peak to peak, part of the mean."""
    rng = np.random.default_rng(seed)
    fine = max(2, int(np.ceil(60_000.0 / motor.rate_hz)))
    step_s = 1.0 / (motor.rate_hz * fine)
    turn = _angle(motor, 40_000 + 400 * fine, step_s, rng)
    heights = np.clip(1.0 + motor.bar_scatter * rng.standard_normal(motor.bars), 0.6, 1.4)
    return _shown(_humps(motor, turn, heights), motor, step_s, fine) / motor.mean_a


def _humps(
    motor: BarMotor, turn: NDArray[np.float64], heights: NDArray[np.float64]
) -> NDArray[np.float64]:
    """Give the sum of the humps under all brushes, without flaws but those of ``heights``."""
    humps = np.zeros(len(turn))
    for brush in range(motor.brushes):
        weight = 1.0 - (motor.brush_apart if brush % 2 else 0.0)
        place = motor.bars * (turn + brush / motor.brushes)
        bar = np.floor(place).astype(np.int64) % motor.bars
        part = place - np.floor(place)
        humps += weight * heights[bar] * _hump(part, motor.shape) / motor.brushes
    return humps


def _shown(humps, motor: BarMotor, step_s: float, fine: int) -> float:
    """Give what the armature and the clamp leave of the humps, peak to peak, amperes."""
    some = humps[: 40_000 + len(humps) % 2]
    left = _smoothed(some, motor, step_s)[200 * fine : -200 * fine]
    low, high = np.percentile(left, (2.0, 98.0))
    return motor.mean_a * motor.ripple * float(high - low)


def _dips(motor: BarMotor, count: int, step_s: float, rng: np.random.Generator):
    """Dips of bouncing brushes at random moments, some 100 a second, each about 0.5 ms."""
    hits = rng.random(count) < 100.0 * step_s
    length = max(1, round(5e-4 / step_s))
    return motor.brush_noise * np.minimum(1.0, np.convolve(hits, np.hanning(length), "same"))
