"""BarScore: waves of known motors through RippleWatch, and what is found held against the truth."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass, field

import numpy as np
from bar_waves import BarMotor, bar_wave, shown_ripple

from meterlog.analysis.judged import Judged
from meterlog.analysis.labels import Stretch
from meterlog.analysis.ripple import RippleWatch
from meterlog.analysis.rows import Rows
from meterlog.model import (
    Channel,
    Finding,
    Instrument,
    Limits,
    Quantity,
    RippleView,
    Role,
    Step,
)

HONEST_RIPPLE = 0.01
"""Honest signal to noise: what the armature and the clamp leave of the ripple is 1 % of the mean or
more, peak to peak; the meter's noise is at most 0.3 of that (so drawn). The trade's figure for a
sound ripple is 5 to 15 %; below 1 % the winding has smoothed nearly all of it away, and the lines
of a notch that takes 30 to 100 % stand beside it as high. Weaker ones are scored apart."""


def honest(motor: BarMotor, seed: int) -> bool:
    """Tell whether the ripple that reaches the meter is honest, by the wave itself."""
    return shown_ripple(motor, seed) >= HONEST_RIPPLE


def watched(
    motor: BarMotor, seed: int, limits: Limits | None = None
) -> tuple[RippleView, tuple[Finding, ...]]:
    """Give the view of one steady step of ``motor``, and the findings."""
    t_s, amps = bar_wave(motor, seed)
    t_ns = np.round(t_s * 1e9).astype(np.int64)
    flags = np.ones(len(t_ns), np.bool_)
    rows = Rows(t_ns, amps, None, None, flags, ~flags)
    channel = Channel("amps", Quantity.CURRENT, Role.MOTOR_CURRENT, interval_s=1.0 / motor.rate_hz)
    instrument = Instrument("daq", "test", "-", (channel,))
    limits = limits or Limits()
    watch = RippleWatch([instrument], limits)
    watch.take_rows(rows, [Stretch(0, len(t_ns), 4, steady=True)])
    step = Step(4, 0, int(t_ns[-1]) + 2_000_000_000, steady_n=len(t_ns), steady_mean_a=14.0)
    views, findings = watch.views(Judged((instrument,), limits, steps=(step,)))
    return views[0], findings


def drawn_motor(number: int, *, dead: bool) -> BarMotor:
    """Draw a motor: 8 to 24 bars, odd and even, 5 to 40 readings a bar, at least 5000 a second.

    The faster ripple of odd counts is read at least 2.5 times (five times a bar); the meter's
    noise is 5 to 30 % of what the ripple shows. See :data:`HONEST_RIPPLE`.
    """
    rng = np.random.default_rng((number, int(dead)))
    bars = int(rng.integers(8, 25))
    rpm = float(rng.uniform(1100.0, 4400.0))
    per_bar = float(np.exp(rng.uniform(math.log(5.0), math.log(40.0))))
    return BarMotor(
        bars=bars,
        rpm=rpm,
        rate_hz=max(5_000.0, per_bar * bars * rpm / 60.0),
        seconds=2.4,
        ripple=float(rng.uniform(0.05, 0.15)),
        bar_scatter=float(rng.uniform(0.02, 0.08)),
        brush_apart=float(rng.uniform(0.05, 0.15)),
        dead=(int(rng.integers(bars)),) if dead else (),
        depth=float(rng.uniform(0.3, 1.0)),
        notch_width=float(rng.uniform(0.6, 1.0)),
        drift=float(rng.uniform(0.0, 0.02)),
        wobble=float(rng.uniform(0.0, 0.02)),
        armature_s=float(rng.uniform(1e-4, 4e-4)),
        noise=float(rng.uniform(0.05, 0.3)),
        shape="rectified" if bars % 2 else str(rng.choice(("rectified", "raised"))),
    )


@dataclass
class Score:
    """Counts of what came out."""

    runs: int = 0
    refused: int = 0
    counted: int = 0
    turn_right: int = 0
    wrong_count: int = 0
    flawed: int = 0
    found: int = 0
    outright: int = 0
    honest: int = 0
    found_honest: int = 0
    turn_wrong: int = 0
    stated: list[tuple[float, bool]] = field(default_factory=list)
    missed: list[int] = field(default_factory=list)


def named(view: RippleView) -> set[int]:
    """Give the bar count that a view gives, and those that its words do not rule out."""
    besides = re.search(r"[;:] ([\d or]+) (not ruled out\)|bars make as many)", view.statement)
    words = besides.group(1).split(" or ") if besides else []
    return {int(word) for word in words} | ({view.bars} if view.bars else set())


def turn_of(motor: BarMotor) -> int:
    """Give the ripples a turn that a motor makes."""
    return math.lcm(motor.brushes, motor.bars)


def score(numbers: range, *, dead: bool) -> Score:
    """Score a range of drawn motors."""
    result = Score()
    for number in numbers:
        motor = drawn_motor(number, dead=dead)
        view, _ = watched(motor, number)
        result.runs += 1
        result.refused += bool(view.refusal)
        result.counted += view.bars == motor.bars
        result.wrong_count += view.bars is not None and view.bars != motor.bars
        result.turn_right += view.ripples_per_turn == turn_of(motor)
        result.flawed += bool(view.flaws)
        result.turn_wrong += view.ripples_per_turn not in (None, turn_of(motor))
        if view.bars is not None and view.bars_confidence is not None:
            result.stated.append((view.bars_confidence, view.bars == motor.bars))
        fair = honest(motor, number)
        result.honest += fair
        found = len(view.flaws) == 1 and view.flaws[0].bar == 1 and view.flaws[0].depth > 0.0
        # 9 and 18 bars, 11 and 22, make as many ripples a turn; the words then name both.
        told = motor.bars in named(view) and view.ripples_per_turn == turn_of(motor)
        result.found += found and told
        result.found_honest += found and told and fair
        result.outright += found and told and view.bars == motor.bars
        if dead and not (found and told):
            result.missed.append(number)
    return result
