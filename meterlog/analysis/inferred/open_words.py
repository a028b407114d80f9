"""OpenWords: an open that was not seen, told as what it is."""

from __future__ import annotations

import math

from meterlog.analysis.inferred.standing_out import Departure, SlowMeter
from meterlog.model import Finding, FindingKind, Inferred, InferredKind, Verdict

_HELD = 3.0
"""A voltage that moved by more deviations than this did move."""


def opened(
    one: Departure,
    kind: InferredKind,
    length: tuple[float, float],
    basis: str,
    after_tap_s: float | None,
) -> Inferred:
    """Give the Inferred of a departure.

    Parameters
    ----------
    one : Departure
    kind : InferredKind
    length : tuple of float, seconds
        Shortest and longest open that explain it.
    basis : str
        What the restart was scaled by.
    after_tap_s : float or None
    """
    return Inferred(
        kind=kind,
        start_ns=one.first_ns,
        end_ns=one.last_ns,
        open_s=length,
        base_a=one.base_a,
        seen_a=one.seen_a,
        sigmas=abs(one.sigmas),
        speed=one.speed,
        after_tap_s=after_tap_s,
        statement=_statement(one, kind, length, basis, after_tap_s),
    )


def opened_finding(one: Inferred, meter: SlowMeter) -> Finding:
    """Give the finding of an Inferred: never more than can't tell."""
    dip = one.kind is InferredKind.DIP
    return Finding(
        kind=FindingKind.DIP if dip else FindingKind.MISSED_DROPOUT,
        verdict=Verdict.CANT_TELL,
        start_ns=one.start_ns,
        end_ns=one.end_ns,
        edge_ns=round((meter.interval_s + meter.window_s) * 1e9),
        value=one.seen_a,
        unit="A",
        expanded_uncertainty=None,
        limit=None,
        speed=one.speed,
        statement=one.statement,
    )


def milliseconds(least_s: float, most_s: float) -> str:
    """Write a range of lengths with two significant digits, in ms or, above a second, in s."""
    low, high = _digits(least_s * 1e3), _digits(most_s * 1e3)
    if most_s >= 1.0:
        low, high = _digits(least_s), _digits(most_s)
        return f"{low} s" if low == high else f"{low} to {high} s"
    return f"{low} ms" if low == high else f"{low} to {high} ms"


def _digits(value: float) -> str:
    places = 1 - math.floor(math.log10(value))
    return f"{round(value, places):.{max(places, 0)}f}"


def _statement(
    one: Departure,
    kind: InferredKind,
    length: tuple[float, float],
    basis: str,
    after_tap_s: float | None,
) -> str:
    at = f"at {one.t_ns / 1e9:.2f} s" + ("" if one.speed is None else f" (speed {one.speed})")
    tap = "" if after_tap_s is None else f", {after_tap_s:.1f} s after a tap"
    how_long = milliseconds(*length)
    if kind is InferredKind.DIP:
        return (
            f"Dip {at}{tap}: the current read {one.seen_a:.2f} A between {one.base_a:.2f} A before"
            f" and after; consistent with an open of about {how_long} that the meter averaged,"
            f" not a measured zero{_side(one)}. Scaled by {basis}."
        )
    alone = "" if _more_than_one(one) else " One reading only: a slip of the meter looks alike."
    return (
        f"Current above its base line {at}{tap} with no dropout seen and no command:"
        f" {one.seen_a:.2f} A on {one.base_a:.2f} A, consistent with the restart after a missed"
        f" dropout of about {how_long}{_side(one)}. Scaled by {basis}.{alone}"
    )


def _more_than_one(one: Departure) -> bool:
    room = 3.0 * one.sigma_a / one.base_a
    return int((abs(one.parts) > room).sum()) > 1


def _side(one: Departure) -> str:
    """Say what the voltages did meanwhile, as far as they were read."""
    dip = one.seen_a < one.base_a
    if dip and not math.isnan(one.back_v) and one.back_v > _HELD * one.back_sigma_v:
        return f"; the return rose by {one.back_v:.2f} V with it: the ground side, not the motor"
    if math.isnan(one.feed_v):
        return "; the feed was not read with it, so that a short sag of the supply is not excluded"
    if abs(one.feed_v) > _HELD * one.feed_sigma_v and one.feed_v * (one.seen_a - one.base_a) > 0.0:
        return "; the feed moved a little the same way, but not enough to explain it"
    return "; the feed held meanwhile"
