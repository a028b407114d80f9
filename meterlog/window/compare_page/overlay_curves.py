"""OverlayCurves: what the picture shows of every recording, at the columns of its pixels."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from meterlog.evidence.speed_bands import SpeedBand, speed_bands
from meterlog.evidence.ticks import ceiling
from meterlog.model import Quantity
from meterlog.window.compare_page.overlay_axis import OverlayAxis, Piece
from meterlog.window.second_run import SecondRun

_NOTHING = np.empty(0, np.int64), np.empty(0)


@dataclass(frozen=True, slots=True)
class Curve:
    """One recording's readings of one quantity in the stretch shown.

    Attributes
    ----------
    new : bool
        Of the side after.
    typed : bool
        Each reading stands for itself.
    t_ns : ndarray, int64, shape (n,), nanoseconds of the axis
    values : ndarray, float64, shape (n,), volts or amperes
        NaN where nothing was read, and between pieces of the axis.
    """

    new: bool
    typed: bool
    t_ns: NDArray[np.int64]
    values: NDArray[np.float64]


def curves_of(
    runs: Sequence[SecondRun],
    axis: OverlayAxis,
    quantity: Quantity,
    stretch: tuple[int, int],
    columns: int,
) -> tuple[Curve, ...]:
    """Give the curves of all recordings, the new one last.

    Parameters
    ----------
    runs : sequence of SecondRun
        The new one last.
    axis : OverlayAxis
    quantity : Quantity
    stretch : tuple of int, nanoseconds of the axis
        Start and end of what is shown.
    columns : int
        Device pixels for it.
    """
    return tuple(
        _curve(run, place, axis, quantity, stretch, columns, new=place == len(runs) - 1)
        for place, run in enumerate(runs)
    )


def _curve(
    run: SecondRun,
    place: int,
    axis: OverlayAxis,
    quantity: Quantity,
    stretch: tuple[int, int],
    columns: int,
    *,
    new: bool,
) -> Curve:
    line = run.line(quantity)
    if line is None:
        return Curve(new, False, *_NOTHING)  # noqa: FBT003 - nothing was typed
    times: list[NDArray[np.int64]] = []
    values: list[NDArray[np.float64]] = []
    for piece in _visible(axis, stretch):
        own_start, own_end = piece.own_ns[place]
        start_ns = max(piece.start_ns, stretch[0])
        end_ns = min(piece.start_ns + own_end - own_start, stretch[1])
        if end_ns <= start_ns:
            continue
        share = (end_ns - start_ns) / max(stretch[1] - stretch[0], 1)
        laid = run.laid(own_start, piece.start_ns)
        found = laid.curve(quantity, start_ns, end_ns, max(round(columns * share), 2))
        if found is None:
            continue
        # What lies beyond belongs to another command, but in a look into the middle of a piece
        # the readings just outside carry the line to the edge.
        ends = piece.start_ns, piece.start_ns + own_end - own_start
        inside = (found[0] >= ends[0]) & (found[0] < ends[1])
        times += [found[0][inside], np.array([ends[1]])]
        values += [found[1][inside], np.array([np.nan])]
    if not times:
        return Curve(new, line.typed, *_NOTHING)
    return Curve(new, line.typed, np.concatenate(times), np.concatenate(values))


def _visible(axis: OverlayAxis, stretch: tuple[int, int]) -> list[Piece]:
    return [one for one in axis.pieces if one.end_ns > stretch[0] and one.start_ns < stretch[1]]


def range_of(curves: Sequence[Curve], least: float) -> tuple[float, float]:
    """Give the range of a plot's axis: from 0 or below to a round top above all that is shown."""
    low, high = 0.0, least
    for curve in curves:
        real = curve.values[np.isfinite(curve.values)]
        if real.size:
            low, high = min(low, float(real.min())), max(high, float(real.max()))
    top = ceiling(high * 1.02)
    bottom = -ceiling(-low * 1.02) if low < -0.02 * top else -0.02 * top
    return bottom, top


def bands_of(run: SecondRun, axis: OverlayAxis, place: int) -> tuple[SpeedBand, ...]:
    """Give the current limits of one recording where they lie on the axis.

    Parameters
    ----------
    run : SecondRun
        By whose limits both are judged: the new one.
    axis : OverlayAxis
    place : int
        Of the run among all.
    """
    own = speed_bands(run.events, run.about.limits, run.traces.end_ns)
    laid = []
    for piece in axis.pieces:
        start_ns, end_ns = piece.own_ns[place]
        for band in own:
            left, right = max(band.start_ns, start_ns), min(band.end_ns, end_ns)
            if right > left:
                shift = piece.start_ns - start_ns
                laid.append(
                    SpeedBand(band.speed, left + shift, right + shift, band.min_a, band.max_a)
                )
    return tuple(laid)
