"""Slipped: readings of a probe that slipped or sat elsewhere, summed over which they may be."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from meterlog.analysis.student import NORMAL
from meterlog.circuit.figures import Floats
from meterlog.circuit.joint import LOG_TWO_PI, Joint
from meterlog.model.circuit import PointKind

SLIP = 0.02
"""Part of the readings taken with a probe that slipped, at a wrong point or in a wrong state. From
memory, no source."""
_LOG_SLIP = math.log(SLIP)
_LOG_HELD = math.log1p(-SLIP)
_OFF_V, _OFF_A = 0.05, 0.3
"""Spread of what a meter shows whose probe is off, or a clamp that is round the wrong wire."""
_BROAD = 20.0
"""A tenth of those is spread so many times wider."""
_CHARGED = 1.25
"""Highest voltage at the circuit as a part of the nominal one: charging."""
_BELOW_V = -1.0
_MOST_A = 60.0
_NEVER = 1e-12
"""So that nothing is ever impossible, per volt or ampere."""
_BLOCK = 256


def log_slip_density(kind: PointKind, nominal_v: float, value: float, standard_u: float) -> float:
    """Give the logarithm of the density of what a slipped reading shows.

    Half are about 0 (the probe touches nothing, the clamp has nothing in it), four tenths lie
    anywhere from -1 V to 1.25 times the nominal voltage, or from 0 A to 60 A (another point); a
    tenth anywhere with the leads, or the clamp, the wrong way round as well. From memory, no
    source. All are blurred by the meter's own standard uncertainty.

    Parameters
    ----------
    kind : PointKind
    nominal_v : float, volts
    value : float, volts or amperes
    standard_u : float, same unit

    Returns
    -------
    float
        Natural logarithm of the density per volt or ampere.
    """
    current = kind is PointKind.CURRENT
    off = _OFF_A if current else _OFF_V
    low, high = (0.0, _MOST_A) if current else (_BELOW_V, _CHARGED * nominal_v)
    density = (
        0.45 * _normal(value, math.hypot(off, standard_u))
        + 0.05 * _normal(value, math.hypot(_BROAD * off, standard_u))
        + 0.4 * _level(value, low, high, standard_u)
        + 0.1 * _level(value, -high, high, standard_u)
    )
    return math.log(density + _NEVER)


def _normal(value: float, sd: float) -> float:
    return math.exp(-0.5 * (value / sd) ** 2) / (sd * math.sqrt(2.0 * math.pi))


def _level(value: float, low: float, high: float, blur: float) -> float:
    """Density of what is spread evenly between two bounds and blurred."""
    if blur <= 0.0:
        return float(low <= value <= high) / (high - low)
    part = NORMAL.cdf((value - low) / blur) - NORMAL.cdf((value - high) / blur)
    return max(part, 0.0) / (high - low)


@dataclass(frozen=True, slots=True)
class SlipSums:
    """Sums over which of n readings slipped, none, one or two of them, in each of many cases.

    Attributes
    ----------
    log_total : float64[cases]
        Natural logarithm of the density of the readings, slips and all.
    slipped : float64[cases, n]
        Probability that each slipped.
    likeliest : int[cases, 2]
        Places of those that slipped in the likeliest of the sets; -1 for none.
    both : float64[cases, n, n]
        Probability that two slipped together; 0 on the diagonal.
    """

    log_total: Floats
    slipped: Floats
    likeliest: npt.NDArray[np.intp]
    both: Floats


def sum_over_slips(joint: Joint, log_slip: Floats) -> SlipSums:
    """Sum the density of readings over all sets of at most two that slipped.

    With P the inverse of the covariance of all, r what was read less what was expected, b = P r,
    and J those left out: log N(y without J) = log N(y) + (b_J' P_JJ^-1 b_J - log det P_JJ + |J| log
    2 pi) / 2 (:class:`~meterlog.circuit.joint.Joint` has the source). Each reading slips with
    probability :data:`SLIP` and then has the density that ``log_slip`` gives. Three slips among ten
    readings have a probability of 0.1 %.

    Parameters
    ----------
    joint : Joint
    log_slip : float64[n]
        Of :func:`log_slip_density` for each reading.

    Returns
    -------
    SlipSums
    """
    blocks = [_sum(part, log_slip) for part in _blocks(joint)]
    return SlipSums(
        np.concatenate([one.log_total for one in blocks]),
        np.concatenate([one.slipped for one in blocks]),
        np.concatenate([one.likeliest for one in blocks]),
        np.concatenate([one.both for one in blocks]),
    )


def log_total_over_slips(joint: Joint, log_slip: Floats) -> Floats:
    """Give only :attr:`SlipSums.log_total` of :func:`sum_over_slips`."""
    totals = []
    for part in _blocks(joint):
        base, sets, _ = _log_sets(part, log_slip)
        top = sets.max(axis=1)
        totals.append(base + top + np.log(np.exp(sets - top[:, None]).sum(axis=1)))
    return np.concatenate(totals)


def _blocks(joint: Joint) -> Iterator[Joint]:
    """Cut the cases into blocks that stay in the processor's cache."""
    cases = len(joint.log_density)
    for start in range(0, max(cases, 1), _BLOCK):
        yield joint.of(slice(start, start + _BLOCK))


def _sum(joint: Joint, log_slip: Floats) -> SlipSums:
    cases, count = joint.pull.shape
    base, sets, members = _log_sets(joint, log_slip)
    best = sets.argmax(axis=1)
    top = sets[np.arange(cases), best]
    part = np.exp(sets - top[:, None])
    whole = part.sum(axis=1)
    part /= whole[:, None]
    table = np.zeros((cases, count, count))
    first, second = members[1 + count :].T
    table[:, first, second] = part[:, 1 + count :]
    table += table.transpose(0, 2, 1)
    return SlipSums(
        base + top + np.log(whole),
        part[:, 1 : 1 + count] + table.sum(axis=2),
        members[best],
        table,
    )


def _log_sets(joint: Joint, log_slip: Floats) -> tuple[Floats, Floats, npt.NDArray[np.intp]]:
    """Give the logarithm of the density if none slipped, what each set adds, and who is in it."""
    cases, count = joint.pull.shape
    first, second = np.triu_indices(count, 1)
    members = np.full((1 + count + len(first), 2), -1, dtype=np.intp)
    members[1 : 1 + count, 0] = np.arange(count)
    members[1 + count :, 0], members[1 + count :, 1] = first, second
    price = log_slip + _LOG_SLIP - _LOG_HELD
    sets = np.zeros((cases, len(members)))
    if count:
        sets[:, 1 : 1 + count] = joint.log_left() + price
        sets[:, 1 + count :] = _log_left_pairs(joint, first, second) + price[first] + price[second]
    return joint.log_density + count * _LOG_HELD, sets, members


def _log_left_pairs(
    joint: Joint, first: npt.NDArray[np.intp], second: npt.NDArray[np.intp]
) -> Floats:
    own = np.einsum("cii->ci", joint.inverse)
    a, b, c = own[:, first], own[:, second], joint.inverse[:, first, second]
    x, y = joint.pull[:, first], joint.pull[:, second]
    det = np.maximum(a * b - c * c, np.finfo(float).tiny)
    square = (x * x * b - 2.0 * x * y * c + y * y * a) / det
    gain: Floats = 0.5 * (square - np.log(det)) + LOG_TWO_PI
    return gain
