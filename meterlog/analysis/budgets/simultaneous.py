"""Simultaneous: the means of quantities that were read together, with what they share."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from meterlog.analysis.budgets.combining import budget
from meterlog.model import Budget, Source


def simultaneous(
    names: Sequence[str], units: Sequence[str], readings: NDArray[np.float64], key: str
) -> tuple[Budget, ...]:
    """Give the budgets of the means of quantities that were read at the same instants.

    Parameters
    ----------
    names, units : sequence of str, length q
    readings : ndarray, float64, shape (q, n), n at least 2
    key : str
        Names this set of readings. What is later made of the means by ``combine`` knows by it how
        they hang together.

    Returns
    -------
    tuple of Budget
        One a quantity, in order.

    Raises
    ------
    ValueError
        If there are fewer than two readings of each, or another number of names than quantities.

    Source
    ------
    Covariance of means: JCGM 100:2008, 5.2.3, equation 17. It is kept as lines with common keys.
    """
    if readings.ndim != 2 or readings.shape[1] < 2 or len(names) != len(readings):
        raise ValueError(f"readings of shape {readings.shape} are no {len(names)} quantities")
    count = readings.shape[1]
    means = readings.mean(axis=1)
    around = readings - means[:, None]
    lines = covariance_lines(
        around @ around.T / (count - 1) / count, units, key, count - 1.0, f"scatter of {count} sets"
    )
    return tuple(
        budget(name, float(mean), unit, own)
        for name, mean, unit, own in zip(names, means, units, lines, strict=True)
    )


def covariance_lines(
    covariance: NDArray[np.float64], units: Sequence[str], key: str, degrees: float, name: str
) -> list[list[Source]]:
    """Write a covariance matrix as lines of budgets.

    Parameters
    ----------
    covariance : ndarray, float64, shape (q, q), products of ``units``
        Symmetric, without negative eigenvalues.
    units : sequence of str, length q
    key : str
    degrees : float
        That all of them have in common.
    name : str
        Of the lines.

    Returns
    -------
    list of list of Source
        For each quantity its lines. The k-th independent part has the key ``<key>#k`` in all of
        them, so that added with their signs they give the covariances back.

    Source
    ------
    Cholesky's factor L of the matrix, L L' = C; a part that nothing is left of is left out.
    """
    size = len(covariance)
    factor = np.zeros((size, size))
    for k in range(size):
        left = float(covariance[k, k] - factor[k, :k] @ factor[k, :k])
        if left <= 1e-14 * float(covariance[k, k]):
            continue
        factor[k, k] = math.sqrt(left)
        below = covariance[k + 1 :, k] - factor[k + 1 :, :k] @ factor[k, :k]
        factor[k + 1 :, k] = below / factor[k, k]
    return [
        [
            Source(
                name=name if k == row else f"{name}, shared",
                standard_u=abs(float(part)),
                unit=units[row],
                sensitivity=math.copysign(1.0, float(part)),
                degrees=degrees,
                key=f"{key}#{k}",
            )
            for k, part in enumerate(factor[row])
            if part != 0.0
        ]
        for row in range(size)
    ]
