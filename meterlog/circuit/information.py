"""Information: how much a reading or a sign is expected to tell about which units are bad.

The expected information of a test is the mutual information between the set of bad units and the
result, I = sum p(units, result) log2(p(units, result) / (p(units) p(result))): MacKay, Information
Theory, Inference, and Learning Algorithms (2003), chapters 2 and 8, and MacKay 1992, Information-
based objective functions for active data selection. Looking one step ahead in a circuit this way:
de Kleer and Williams 1987, Diagnosing multiple faults.

The result of a reading is a mixture of normals, one a cell. It is cut into bins that are narrow
where the mixture has something to tell apart; what falls into a bin comes from the normal
distribution function, so cutting can only lose information, never make any.
"""

from __future__ import annotations

import math

import numpy as np
import numpy.typing as npt

from meterlog.circuit.figures import Floats
from meterlog.circuit.unit_sets import Ints

Singles = npt.NDArray[np.float32]
SLIP = 0.02
"""Part of readings that are of a slipped probe, and of looks that are wrong."""
_FEW = 32
_OFFSETS, _MORE_OFFSETS = (-1.0, 1.0), (-3.0, -2.0, -1.2, -0.4, 0.4, 1.2, 2.0, 3.0)
"""Where in each normal the bins' edges are sought, in standard deviations: of few, of many bins."""
_REACH = 6.0
_STEPS = 512
_TABLE: Singles = np.array(
    [
        0.5 * math.erfc(-(at / _STEPS - _REACH) / math.sqrt(2.0))
        for at in range(int(2 * _REACH * _STEPS) + 1)
    ],
    dtype=np.float32,
)


def below(edges: Floats, mean: Floats, sd: Floats) -> Singles:
    """Give the normal distribution function at edges, from a table (within 0.0004).

    Parameters
    ----------
    edges : float[tests, edges]
    mean, sd : float[tests, cells]

    Returns
    -------
    float32[tests, cells, edges]
    """
    scale = np.asarray(_STEPS / sd, dtype=np.float32)
    shift = np.asarray(_REACH * _STEPS + 0.5 - mean * (_STEPS / sd), dtype=np.float32)
    at = np.asarray(edges, dtype=np.float32)[:, None, :] * scale[:, :, None]
    at += shift[:, :, None]
    np.clip(at, 0.0, len(_TABLE) - 1, out=at)
    return _TABLE.take(at.astype(np.int32))


def bin_edges(mean: Floats, sd: Floats, weights: Floats, count: int) -> Floats:
    """Choose where to cut each test's results into bins.

    Quantiles of the mixture with the square roots of the weights, so that what is improbable has
    some edges too.

    Parameters
    ----------
    mean, sd : float64[tests, cells]
    weights : float64[cells]
    count : int

    Returns
    -------
    float64[tests, count]
    """
    offsets = _OFFSETS if count < _FEW else _MORE_OFFSETS
    places = np.concatenate([mean + one * sd for one in offsets], axis=1).astype(np.float32)
    shares = np.tile(np.sqrt(weights), len(offsets))
    order = np.argsort(places, axis=1)
    places = np.take_along_axis(places, order, axis=1)
    running = np.cumsum(shares[order], axis=1)
    running -= 0.5 * shares[order]
    wanted = (np.arange(count) + 0.5) / count * shares.sum()
    edges = np.empty((len(mean), count))
    for at in range(len(mean)):
        edges[at] = np.interp(wanted, running[at], places[at])
    return edges


def reading_bits(
    mean: Floats, sd: Floats, weights: Floats, parts: Ints, slips: tuple[float, float], count: int
) -> Floats:
    """Give the expected information of readings.

    Parameters
    ----------
    mean, sd : float64[tests, cells]
        Of the reading under each cell, the meter's own included.
    weights : float64[cells]
        Probabilities; they sum up to 1.
    parts : int[cells]
        What is asked: the number of the set of units (or of any other part) of each cell, 0 and
        up, all in use.
    slips : (float, float)
        From where to where a slipped probe may read.
    count : int
        Edges of the bins.

    Returns
    -------
    float64[tests], bits
    """
    edges = bin_edges(mean, sd, weights, count)
    return mutual_bits(binned(edges, mean, sd, weights, parts, slips))


def binned(
    edges: Floats,
    mean: Floats,
    sd: Floats,
    weights: Floats,
    parts: Ints,
    slips: tuple[float, float],
) -> Floats:
    """Give the joint probability of part and bin, float64[tests, parts, edges + 1].

    With a part of :data:`SLIP` a reading is spread evenly over ``slips``, whatever is bad; the
    other parameters are those of :func:`reading_bits`.
    """
    # Sums over neighbours instead of a product of matrices: those of a library that starts threads
    # for it wait for each other longer than all of this takes.
    order = np.argsort(parts, kind="stable")
    first = np.flatnonzero(np.diff(parts[order], prepend=-1))
    share = weights[order].astype(np.float32)
    shown = below(edges, mean[:, order], sd[:, order])
    shown *= share[:, None]
    running = np.add.reduceat(shown, first, axis=1).astype(np.float64)
    whole = np.add.reduceat(share.astype(np.float64), first)
    low, high = slips
    slipped = np.clip((edges - low) / (high - low), 0.0, 1.0)
    running = (1.0 - SLIP) * running + SLIP * slipped[:, None, :] * whole[:, None]
    ends = np.broadcast_to(whole[:, None], (*running.shape[:2], 1))
    joint = np.diff(running, axis=2, prepend=np.zeros_like(ends), append=ends)
    return np.maximum(joint, 0.0)


def mutual_bits(joint: Floats) -> Floats:
    """Give the mutual information of joint probabilities, float64[..., parts, results], in bits."""
    joint = joint / joint.sum(axis=(-2, -1), keepdims=True)
    product = joint.sum(axis=-1, keepdims=True) * joint.sum(axis=-2, keepdims=True)
    ratio = np.divide(joint, product, out=np.ones_like(joint), where=joint > 0.0)
    bits: Floats = (joint * np.log2(ratio)).sum(axis=(-2, -1))
    return np.maximum(bits, 0.0)


def sign_joint(chances: Floats, weights: Floats, parts: Ints) -> Floats:
    """Give the joint probability of part and value of a sign, float64[parts, values].

    Parameters
    ----------
    chances : float64[cells, values]
        Probability of each value under each cell.
    weights : float64[cells]
    parts : int[cells]
    """
    joint = np.zeros((int(parts.max()) + 1, chances.shape[1]))
    np.add.at(joint, parts, chances * weights[:, None])
    return joint
