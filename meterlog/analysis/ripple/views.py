"""Views: the ripple of one step in figures."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.budgets import budget
from meterlog.analysis.ripple.counts import Counted
from meterlog.analysis.ripple.flaws import bars_of, once_a_turn
from meterlog.analysis.ripple.look import TOO_FAINT, Look
from meterlog.analysis.ripple.plausible import (
    LEAST_TURNS,
    SAMPLES_PER_BAR,
    SAMPLES_PER_RIPPLE,
    may_be_image,
)
from meterlog.analysis.ripple.repeat import LONGEST
from meterlog.analysis.ripple.turn import Turn, lay_over
from meterlog.analysis.ripple.words import Extras, statement
from meterlog.model import Budget, RippleView, Shape, Source

TRUSTED = 0.6
"""A turn less sure than this is not given."""
GIVEN = 0.8
"""Bars less sure than this are not given: then two counts make as many ripples, and are named."""
_FINER = 16
"""So many times finer is a ripple drawn through its means."""
_CLOCK = 1e-4
"""Part by which the readings' times may run fast or slow where nothing else is known."""


def view_of(look: Look, counted: Counted | None) -> RippleView:
    """Give the view of one step.

    Parameters
    ----------
    look : Look
    counted : Counted or None
        What all steps together say of the bars.
    """
    view = RippleView(
        look.step.speed,
        look.step.start_ns,
        look.step.end_ns,
        look.rate_hz,
        look.refusal,
        look.needed_rate_hz,
    )
    if look.refusal:
        return replace(view, statement=look.refusal)
    sure = counted is not None and counted.turn_confidence >= TRUSTED
    if not sure and may_be_image(look.hz, look.rate_hz):
        return _perhaps_image(view, look)
    if look.faint:
        return replace(view, refusal=TOO_FAINT, statement=TOO_FAINT)
    view = _with_ripple(view, look)
    if counted is None or not sure:
        extras = Extras(repeat=None if look.signs is None else look.signs.repeat)
        return replace(view, statement=statement(view, extras))
    return _with_turn(view, look, counted)


def _perhaps_image(view: RippleView, look: Look) -> RippleView:
    needed = SAMPLES_PER_RIPPLE * max(look.hz, look.rate_hz - look.hz)
    refusal = (
        f"There is a line at {look.hz:,.0f} Hz, but at {look.rate_hz:,.0f} readings/s a ripple of"
        f" {look.rate_hz - look.hz:,.0f} Hz would look the same; {needed:,.0f} readings/s would"
        f" tell."
    )
    return replace(view, refusal=refusal, needed_rate_hz=needed, statement=refusal)


def frequency(look: Look) -> Budget:
    """Give the commutation frequency with its uncertainty.

    Source
    ------
    Ripples counted over a time: a quarter of a ripple at either end, the scatter from window to
    window, and the clock, combined as JCGM 100:2008, 5.1.2; type A as 4.2.3.
    """
    rates = np.array([one.hz for one in look.tracked])
    count = len(rates)
    seconds = sum(len(one.waves) / one.hz for one in look.tracked)
    ends = 0.25 * math.sqrt(2.0 * count) / seconds / math.sqrt(3.0)
    sources = [
        Source("ends of the count", ends, "Hz", shape=Shape.TRIANGULAR),
        Source("clock of the readings", _CLOCK * look.hz / math.sqrt(3.0), "Hz",
               shape=Shape.RECTANGULAR, basis="assumed, 100 parts in a million"),
    ]  # fmt: skip
    if count > 1:
        scatter = float(rates.std(ddof=1)) / math.sqrt(count)
        name = f"scatter of {count} windows"
        sources.append(Source(name, scatter, "Hz", degrees=count - 1.0))
    return budget("commutation frequency", look.hz, "Hz", sources)


def peak_to_peak(wave: NDArray[np.float64]) -> float:
    """Give the height of a ripple of which only means over its equal parts are known.

    Parameters
    ----------
    wave : ndarray, float64, shape (places,)
        Means over each part of one ripple, which comes again and again.

    Returns
    -------
    float, in the unit of ``wave``
        Of the curve that has these means and no higher waves: those of a sine in eighths reach
        but 0.90 of its height.

    Source
    ------
    The mean over a part of length 1/n lessens the k-th wave by sin(pi k/n) / (pi k/n): Fourier
    transform of a rectangle, any textbook of signals.
    """
    count = len(wave)
    waves = np.fft.rfft(wave) / np.sinc(np.arange(count // 2 + 1) / count)
    if count % 2 == 0:
        waves[-1] /= 2.0  # in the finer series it stands there twice
    return float(np.ptp(np.fft.irfft(waves, _FINER * count) * _FINER))


def _with_ripple(view: RippleView, look: Look) -> RippleView:
    found = frequency(look)
    mean_wave = np.mean([one.mean(axis=0) for one in look.waves], axis=0)
    if look.turn is not None:
        mean_wave = look.turn.typical
        left = look.turn.left_rms
    else:
        left = lay_over(list(look.waves), 1).left_rms
    ripple_rms = float(mean_wave.std())
    return replace(
        view,
        commutation_hz=found.value,
        commutation_u_hz=found.expanded,
        ripple_percent=100.0 * peak_to_peak(mean_wave),
        brush_noise=left / ripple_rms if ripple_rms > 0.0 else None,
    )


def _with_turn(view: RippleView, look: Look, counted: Counted) -> RippleView:
    count = counted.count
    per_turn = count.ripples
    turns_per_hz = 60.0 / per_turn
    track_s = np.concatenate([one.t_s for one in look.tracked])
    track_hz = np.concatenate([one.track_hz for one in look.tracked])
    view = replace(
        view,
        bars=count.bars if counted.confidence >= GIVEN else None,
        ripples_per_turn=per_turn,
        bars_confidence=counted.confidence if counted.confidence >= GIVEN else None,
        turns_rpm=turns_per_hz * (view.commutation_hz or 0.0),
        turns_u_rpm=turns_per_hz * (view.commutation_u_hz or 0.0),
        track_s=tuple(track_s.tolist()),
        track_rpm=tuple((turns_per_hz * track_hz).tolist()),
    )
    turn = _turn(look, per_turn)
    turns = 0 if turn is None else turn.repeats * len(turn.waves) // per_turn
    why, needed = _no_bars(look, counted, turns)
    extras = Extras(
        turns,
        None if turn is None else _wobble(turn, per_turn),
        counted.others if counted.confidence >= GIVEN else counted.all,
        None if look.signs is None else look.signs.repeat,
        few=look.rate_hz < SAMPLES_PER_RIPPLE * look.hz,
        why_no_bars=why,
    )
    if turn is not None and not why:
        flaws = bars_of(list(look.odd), len(turn.waves), count)
        view = replace(view, flaws=flaws, profile=_profile(turn, per_turn, look))
    view = replace(view, needed_rate_hz=needed)
    return replace(view, statement=statement(view, extras))


def _no_bars(look: Look, counted: Counted, turns: int) -> tuple[str, float | None]:
    """Give why single bars are not told, and the rate that it would take; empty where they are."""
    count = counted.count
    alike = [bars for bars in counted.others if count.ripples in (bars, 2 * bars)]
    least = min(count.bars, *alike) if alike else count.bars
    per_bar = look.rate_hz / look.hz * count.ripples / least
    if per_bar < SAMPLES_PER_BAR:
        needed = SAMPLES_PER_RIPPLE * look.hz
        why = f"{per_bar:.1f} readings a bar are too few to tell bars apart; it takes"
        return f"{why} {needed:,.0f} readings/s", needed
    if not turns:
        return "at this speed the pattern of the turn doesn't stand out, so no bar is told", None
    if turns < LEAST_TURNS:
        return f"{turns} turns are too few to tell bars apart; it takes {LEAST_TURNS:.0f}", None
    return "", None


def _turn(look: Look, per_turn: int) -> Turn | None:
    """Give the mean pattern, if it is one of the turn."""
    if look.turn is None or look.signs is None or per_turn % look.signs.repeat:
        return None
    return look.turn


def _wobble(turn: Turn, per_turn: int) -> float | None:
    if len(turn.waves) != per_turn or per_turn > LONGEST:
        return None
    return 0.5 * float(np.ptp(once_a_turn(turn.heights)))


def _profile(turn: Turn, per_turn: int, look: Look) -> tuple[float, ...]:
    """Give the whole turn; it begins where the first bar is, without flaws at the lowest."""
    heights = turn.heights
    first = look.odd[0].place if look.odd else int(np.argmin(heights))
    whole = np.tile(np.roll(heights, -first), per_turn // len(heights))
    return tuple((1.0 + whole).tolist())
