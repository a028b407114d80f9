"""Held rotor: a motor that stands although current flows, told on low speeds too.

On high a held rotor draws so much that the current alone tells. On low, behind resistors or a
linear controller, it draws only half as much again as usual, but at a small voltage: what is left
of that after the brushes, by the current, is the resistance of the winding. A motor that turns
generates against its supply and seems to have several times that.

Source: V = I R + Vb + Ke w with w = 0 (textbook, permanent-magnet motor); that a held
rotor on low draws only half as much again: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from meterlog.analysis.excess import highest_a
from meterlog.analysis.pieces import Figures, Piece
from meterlog.model import Limits, SpanKind

STEADY = 0.05
"""A held rotor's current scatters by no more than this part of itself, or twice its noise: one that
is still starting up falls meanwhile."""
FELL = 0.9
FEW = 8
"""Of fewer readings their scatter can't be told from their fall."""
LEAST_NS = 300_000_000
LEAST_BRUSH = 0.5
"""Less than this part of the brushes' voltage can't drive the current: a probe is off."""


def held_scale_ohm(limits: Limits) -> float:
    """Give the resistance up to which a motor seems to stand, ohms.

    That at which the nominal voltage drives the current from which a rotor counts as held.
    """
    return max(limits.nominal_v - limits.brush_v, 0.0) / limits.locked_current_a


def standing_ohm(volts: float, amps: float, limits: Limits) -> float | None:
    """Give what resistance a motor seems to have, ohms; None where it can't be told.

    Parameters
    ----------
    volts : float, volts
        Across the motor. The feed alone is more than that, so the answer is then too large.
    amps : float, amperes
    limits : Limits
        For the brushes' voltage.
    """
    if amps <= 0.0 or volts < LEAST_BRUSH * limits.brush_v:
        return None
    return max(volts - limits.brush_v, 0.0) / amps


def _steady(figures: Figures) -> bool:
    sd_a, noise_a = figures.sd_a, figures.noise_a
    if sd_a is None or noise_a is None:
        return False
    return sd_a <= max(2.0 * noise_a, STEADY * abs(figures.mean_a))


def falls(piece: Piece) -> bool:
    """Tell whether the current fell as that of a motor that gathers speed."""
    figures = piece.figures
    first, last = abs(figures.first_a or 0.0), abs(figures.last_a or 0.0)
    if piece.length_ns < LEAST_NS:
        return True
    if figures.n < FEW:
        return last < first
    return not _steady(figures) and last < FELL * first


def held(piece: Piece, limits: Limits) -> Piece:
    """Give a piece with too much current as locked where the motor must have stood."""
    figures = piece.figures
    if piece.kind is not SpanKind.OVER or not piece.speed or not figures.volts_n:
        return piece
    if piece.length_ns < LEAST_NS or not _steady(figures):
        return piece
    ohm = standing_ohm(figures.mean_v, abs(figures.mean_a), limits)
    if ohm is None or ohm > held_scale_ohm(limits):
        return piece
    return replace(piece, kind=SpanKind.LOCKED, held_ohm=ohm)


def slow_start(pieces: Sequence[Piece], limits: Limits) -> list[Piece]:
    """Take a start that outlasts the inrush window, its current falling, for no held rotor.

    It stays too much current where the speed has a limit.
    """
    result = list(pieces)
    for index, piece in enumerate(pieces[:-1]):
        if piece.kind is not SpanKind.LOCKED or not piece.after_quiet or not falls(piece):
            continue
        limited = highest_a(limits, piece.speed) < float("inf")
        result[index] = replace(piece, kind=SpanKind.OVER if limited else SpanKind.RUNNING)
    return result
