"""Words: what the ripple of one step says, worded as a pattern that proves nothing by itself."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from meterlog.analysis.rounding import places_for
from meterlog.model import BarFlaw, RippleView

CAUTION = (
    "A pattern alone is no ground to replace a motor: it counts together with the complaint and"
    " with dead segments that were seen."
)
WOBBLES = 0.02
"""A rise and fall once a turn of this part of the mean is told."""
NOISY = 1.0
"""Where what is left is as strong as the ripple itself, it is told."""


@dataclass(frozen=True, slots=True)
class Extras:
    """What the words tell beyond the view's own figures.

    Attributes
    ----------
    turns : int
        Turns that were averaged.
    wobble : float or None
        Rise and fall once a turn, half of peak to peak, as part of the mean.
    other_bars : tuple of int
        Counts that can't be ruled out; where none is given, all that come into question.
    repeat : int or None
        Ripples after which the pattern comes again.
    few : bool
        There are less than ten readings a ripple.
    why_no_bars : str
        Why single bars are not told; else empty.
    """

    turns: int = 0
    wobble: float | None = None
    other_bars: tuple[int, ...] = ()
    repeat: int | None = None
    few: bool = False
    why_no_bars: str = ""


def statement(view: RippleView, extras: Extras) -> str:
    """Say what one step's ripple shows.

    Parameters
    ----------
    view : RippleView
        Without refusal.
    extras : Extras
    """
    hz, wide = _figure(view.commutation_hz or 0.0, view.commutation_u_hz, 1)
    u = f" \u00b1 {wide}" if wide else ""
    parts = [f"Ripple of {hz}{u} Hz, {view.ripple_percent:.2g} % of the mean"]
    if view.turns_rpm is None:
        return f"{parts[0]}. {_no_turn(extras)}{_noise(view)}"
    parts.append(_turn(view, extras))
    if extras.why_no_bars:
        parts.append(f"{_capital(extras.why_no_bars)}.")
    elif view.flaws:
        parts.append(f"Pattern consistent with {flaw_words(view.flaws)}. {CAUTION}")
    else:
        parts.append(
            f"Over {extras.turns} turns no bar stands out: pattern consistent with a commutator"
            f" in order."
        )
    return f"{parts[0]}; {parts[1]}. {parts[2]}{_more(view, extras)}"


def _figure(value: float, u: float | None, places: int) -> tuple[str, str]:
    """Write a figure and its uncertainty to one place (JCGM 100:2008, 7.2.6).

    Where no uncertainty is known, the figure has so many decimals as ``places`` says.
    """
    if u is None or not math.isfinite(u):
        return f"{value:,.{places}f}", ""
    places = places_for(u)
    return f"{value:,.{places}f}", f"{u:,.{places}f}"


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]


def _no_turn(extras: Extras) -> str:
    if extras.repeat is None:
        return (
            "The ripples are alike within their scatter, so nothing marks the turn: neither bars"
            " nor speed can be told. It could also be a pulsed feed; see whether the frequency"
            " follows the speed of the fan."
        )
    return (
        f"Their pattern comes again every {extras.repeat} ripples, which may be a whole turn,"
        f" half of one or less: neither bars nor speed is told."
    )


def _turn(view: RippleView, extras: Extras) -> str:
    turns, wide = _figure(view.turns_rpm or 0.0, view.turns_u_rpm, 0)
    rpm = f"{turns} \u00b1 {wide} turns a minute"
    turn = f"{view.ripples_per_turn} ripples a turn, hence {rpm}"
    if view.bars is None:
        if len(extras.other_bars) < 2:
            return f"{turn}; how many bars make them is not sure"
        which = " or ".join(map(str, extras.other_bars))
        return f"{turn}: {which} bars make as many, and nothing here tells which"
    sure = "" if view.bars_confidence is None else f", confidence {_percent(view.bars_confidence)}"
    others = ""
    if extras.other_bars:
        others = f"; {' or '.join(map(str, extras.other_bars))} not ruled out"
    return f"{turn}: consistent with {view.bars} bars ({sure.lstrip(', ')}{others})"


def _percent(part: float) -> str:
    return "above 99 %" if part > 0.99 else f"{100.0 * part:.0f} %"


def flaw_words(flaws: Sequence[BarFlaw]) -> str:
    """Say which bars stand out, and by how much."""
    dead = [one for one in flaws if one.dead]
    weak = [one for one in flaws if not one.dead and one.depth > 0.0]
    high = [one for one in flaws if one.depth <= 0.0]
    told = []
    if dead:
        told.append(f"{_bars(dead, 'dead')}: current down by {_depths(dead)} at each passage")
    if weak:
        told.append(f"{_bars(weak, 'weak')}: current down by {_depths(weak)} at each passage")
    if high:
        what = _bars(high, "shorted")
        told.append(f"{what} or a shorted turn: current up by {_depths(high)} at each passage")
    return "; ".join(told)


def _bars(flaws: Sequence[BarFlaw], kind: str) -> str:
    numbers = ", ".join(str(one.bar) for one in flaws)
    if len(flaws) == 1:
        return f"one {kind} bar (bar {numbers}, counted from the deepest notch)"
    return f"{len(flaws)} {kind} bars (bars {numbers}, counted from the deepest notch)"


def _depths(flaws: Sequence[BarFlaw]) -> str:
    return ", ".join(f"{100.0 * abs(one.depth):.0f} %" for one in flaws)


def _more(view: RippleView, extras: Extras) -> str:
    told = _noise(view)
    if extras.wobble is not None and extras.wobble >= WOBBLES:
        told += (
            f" The current rises and falls once a turn by \u00b1 {100.0 * extras.wobble:.2g} %:"
            f" consistent with a tight bearing, a bent shaft or a commutator out of round, not with"
            f" a bar."
        )
    if extras.few:
        told += " There are fewer than ten readings a ripple: its height is shown too low."
    return told


def _noise(view: RippleView) -> str:
    if view.brush_noise is None or view.brush_noise < NOISY:
        return ""
    return (
        f" What is left without ripple and turn is {view.brush_noise:.2g} times the ripple:"
        f" consistent with brushes that bounce, stick or are worn, or with a noisy clamp."
    )
