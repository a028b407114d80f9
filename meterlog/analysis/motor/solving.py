"""Solving: the curve through points whose voltages and currents are both uncertain."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.motor.curve import Curve

Array = NDArray[np.float64]

_ROUNDS = 200
_STARTS = 60
_TINY = 1e-12


@dataclass(frozen=True, slots=True, eq=False)
class Solved:
    """The curve that lies nearest to the points.

    Attributes
    ----------
    curve : Curve
    influence : ndarray, shape (3, 2 n)
        What R, I0 and c change for one unit of each voltage, then of each current.
    leftover : ndarray, shape (n, 2 n)
        What each residual current (measured less curve at the measured voltage) changes for one
        unit of each voltage, then of each current.
    residuals_a : ndarray, shape (n,), amperes
    """

    curve: Curve
    influence: Array
    leftover: Array
    residuals_a: Array


def solve(
    volts: Array, amps: Array, u_volts: Array, u_amps: Array, brush_v: float
) -> Solved | None:
    """Fit the curve by least squares in both directions.

    Parameters
    ----------
    volts, amps, u_volts, u_amps : ndarrays, shape (n,), n at least 3
        Points and the standard uncertainties by which they are weighted, all above zero.
    brush_v : float, volts

    Returns
    -------
    Solved or None
        None where the points leave a figure undetermined.

    Source
    ------
    Orthogonal distance regression: P. T. Boggs, J. E. Rogers, "Orthogonal Distance Regression",
    Contemporary Mathematics 112 (1990), 183-194: each point brings its true voltage as one more
    unknown. Steps: Levenberg-Marquardt (D. W. Marquardt, SIAM J. Appl. Math. 11 (1963), 431-441).
    """
    start = _start(volts, amps, brush_v)
    if start is None:
        return None
    weights = 1.0 / np.concatenate((u_volts, u_amps))
    target = np.concatenate((volts, amps))
    scale = np.maximum(np.abs(start), _TINY)
    scale[3:] = volts.max()
    scale[1] = amps.max()
    found = _descend(start, scale, target, weights, brush_v)
    if found is None:
        return None
    jacobian = _jacobian(found, brush_v) * weights[:, None] * scale
    if np.linalg.matrix_rank(jacobian, tol=1e-9 * float(np.linalg.norm(jacobian))) < len(found):
        return None
    influence = np.linalg.pinv(jacobian)[:3] * scale[:3, None] * weights
    curve = _curve(found, brush_v)
    fitted = np.array([curve.amps_at(one) for one in volts])
    slopes = np.array([curve.slope(one) for one in volts])
    by_figures = np.array([curve.by_figures(one)[:3] for one in volts])
    direct = np.hstack((-np.diag(slopes), np.eye(len(volts))))
    return Solved(curve, influence, direct - by_figures @ influence, amps - fitted)


def _start(volts: Array, amps: Array, brush_v: float) -> Array | None:
    """Give the best of many resistances, with the straight line of I over E^2 for each."""
    most = float(np.min((volts - brush_v) / amps))
    tried = np.linspace(0.0, 0.98, _STARTS) * most
    own = volts - brush_v - tried[:, None] * amps
    # By share of the current: a low speed counts as much as a high one.
    flat, bent = np.broadcast_to(1.0 / amps, own.shape), own**2 / amps
    ff, fb, bb = (flat * flat).sum(1), (flat * bent).sum(1), (bent * bent).sum(1)
    f, b = flat.sum(1), bent.sum(1)
    whole = ff * bb - fb * fb
    rises = whole > _TINY * ff * bb
    whole = np.where(rises, whole, 1.0)
    no_load, constant = (f * bb - b * fb) / whole, (b * ff - f * fb) / whole
    misses = np.square(no_load[:, None] * flat + constant[:, None] * bent - 1.0).sum(1)
    usable = rises & (constant > 0.0)
    if not usable.any():
        return None
    best = int(np.where(usable, misses, np.inf).argmin())
    figures = (max(float(tried[best]), 0.02 * most), no_load[best], constant[best])
    return np.concatenate((figures, volts))


def _model(params: Array, brush_v: float) -> Array:
    curve = _curve(params, brush_v)
    return np.concatenate((params[3:], [curve.amps_at(float(one)) for one in params[3:]]))


def _jacobian(params: Array, brush_v: float) -> Array:
    curve, volts = _curve(params, brush_v), params[3:]
    n = len(volts)
    table = np.zeros((2 * n, 3 + n))
    table[:n, 3:] = np.eye(n)
    for row, one in enumerate(volts):
        table[n + row, :3] = curve.by_figures(float(one))[:3]
        table[n + row, 3 + row] = curve.slope(float(one))
    return table


def _curve(params: Array, brush_v: float) -> Curve:
    return Curve(float(params[0]), float(params[1]), float(params[2]), brush_v)


def _descend(
    start: Array, scale: Array, target: Array, weights: Array, brush_v: float
) -> Array | None:
    params, damping = start, 1e-3
    step: Array
    misses = weights * (target - _model(params, brush_v))
    square = float(misses @ misses)
    for _ in range(_ROUNDS):
        table = _jacobian(params, brush_v) * weights[:, None] * scale
        # By the table itself, not by its square: weights may differ by many powers of ten.
        damper = np.diag(math.sqrt(damping) * (np.linalg.norm(table, axis=0) + _TINY))
        longer = np.concatenate((misses, np.zeros(len(params))))
        step = np.linalg.lstsq(np.vstack((table, damper)), longer, rcond=None)[0] * scale
        tried = params + step
        new = weights * (target - _model(tried, brush_v))
        new_square = float(new @ new)
        if np.isfinite(new_square) and new_square <= square:
            still = bool(np.all(np.abs(step) <= 1e-11 * scale))
            params, misses, square, damping = tried, new, new_square, max(damping / 10.0, 1e-14)
            if still:
                return params
        elif damping > 1e12:
            # No step, however short, makes it better: this is the bottom.
            return params
        else:
            damping *= 10.0
    return params if np.all(np.isfinite(params)) else None
