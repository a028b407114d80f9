"""RippleView: what the commutation ripple shows of the motor's turning and its bars."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class BarFlaw:
    """One commutator bar that carries less than its neighbours, or more.

    Attributes
    ----------
    bar : int
        Counted from 1 at the deepest notch, in the direction of turning.
    depth : float
        Fall of the current at this bar, as part of the mean; negative for a rise.
    dead : bool
        True for a notch as deep as an open bar makes; else weak.
    confidence : float
        0 to 1, that it is no chance.
    """

    bar: int
    depth: float
    dead: bool
    confidence: float


@dataclass(frozen=True, slots=True)
class RippleView:
    """The ripple of one steady stretch.

    Attributes
    ----------
    speed : int or None
    start_ns, end_ns : int, nanoseconds
    rate_hz : float, readings per second
    refusal : str
        Why nothing can be told (too slow, too short, pulsed, no ripple), in a sentence; else empty.
    needed_rate_hz : float or None
        With a refusal for the rate: what would be needed.
    commutation_hz, commutation_u_hz : float or None, hertz
    bars : int or None
        None where the turn can't be made out; then no speed is given either.
    ripples_per_turn : int or None
        Bars, or twice the bars of an odd count.
    bars_confidence : float or None
        0 to 1, that there are so many bars; None when no count is given.
    turns_rpm, turns_u_rpm : float or None, revolutions per minute
    track_s, track_rpm : tuple of float
        Speed against time (seconds since the recording's zero).
    profile : tuple of float
        Mean current of each ripple of one turn, order-tracked, as part of the overall mean.
    flaws : tuple of BarFlaw
    ripple_percent : float or None, percent
        Peak to peak of the regular ripple, of the mean.
    brush_noise : float or None
        What is left after ripple and turn are taken out, rms over the rms of the ripple.
    statement : str
        Worded "pattern consistent with": a pattern alone proves nothing.
    """

    speed: int | None
    start_ns: int
    end_ns: int
    rate_hz: float
    refusal: str
    needed_rate_hz: float | None = None
    commutation_hz: float | None = None
    commutation_u_hz: float | None = None
    bars: int | None = None
    ripples_per_turn: int | None = None
    bars_confidence: float | None = None
    turns_rpm: float | None = None
    turns_u_rpm: float | None = None
    track_s: tuple[float, ...] = ()
    track_rpm: tuple[float, ...] = ()
    profile: tuple[float, ...] = ()
    flaws: tuple[BarFlaw, ...] = ()
    ripple_percent: float | None = None
    brush_noise: float | None = None
    statement: str = ""
