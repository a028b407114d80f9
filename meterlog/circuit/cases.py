"""Cases: each cell in each way in which its fault may have been there."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from meterlog.circuit.figures import Floats
from meterlog.circuit.hypotheses import Cells
from meterlog.circuit.seen import Seen
from meterlog.circuit.sittings import Patterns, Sitting, patterns_of, sittings_of
from meterlog.circuit.slipped import log_total_over_slips
from meterlog.circuit.taken import Rows, Taken


@dataclass(frozen=True, slots=True)
class Cases:
    """What may have been the case, cell by cell and sitting by sitting.

    Attributes
    ----------
    cell : int[cases]
    there : float64[cases, sittings]
        1 where the fault was there, 0 where it was away, 1/2 where that makes no difference.
    log_prior : float64[cases]
    sittings : tuple of Sitting
    reading_rows, sign_rows : int[cases, n]
        Which row of the predictions holds for each reading and each sign.
    """

    cell: npt.NDArray[np.intp]
    there: Floats
    log_prior: Floats
    sittings: tuple[Sitting, ...]
    reading_rows: Rows
    sign_rows: Rows


def comes_and_goes(cells: Cells) -> npt.NDArray[np.bool_]:
    """Tell of each cell whether its fault comes and goes."""
    by_hypothesis = np.array([one.comes_and_goes for one in cells.hypotheses], dtype=np.bool_)
    return by_hypothesis[cells.hypothesis]


def cases_of(cells: Cells, taken: Taken, seen: Seen) -> Cases:
    """Lay out the cases.

    A fault that stays was there always. One that comes and goes was there where somebody said so,
    and else with probability 1/2 in each sitting (:func:`~meterlog.circuit.sittings.patterns_of`).

    Parameters
    ----------
    cells : Cells
    taken : Taken
    seen : Seen

    Returns
    -------
    Cases
    """
    sittings = sittings_of((*taken.readings, *seen.signs))
    wandering = comes_and_goes(cells)
    stays, wanders = np.flatnonzero(~wandering), np.flatnonzero(wandering)
    patterns = _patterns(cells.row[wanders], sittings, taken, seen)
    cell = np.concatenate([stays, wanders[patterns.which]])
    there = np.concatenate([np.ones((len(stays), len(sittings))), patterns.there])
    log_prior = cells.log_prior[cell]
    log_prior[len(stays) :] += patterns.log_share
    row = cells.row[cell]
    return Cases(
        cell,
        there,
        log_prior,
        sittings,
        _rows(row, there, sittings, taken.ids),
        _rows(row, there, sittings, seen.ids),
    )


def _rows(
    row: npt.NDArray[np.intp], there: Floats, sittings: tuple[Sitting, ...], ids: tuple[int, ...]
) -> Rows:
    where = {number: at for at, sitting in enumerate(sittings) for number in sitting.ids}
    rows = np.zeros((len(row), len(ids)), dtype=np.intp)
    for at, number in enumerate(ids):
        rows[:, at] = np.where(there[:, where[number]] > 0.0, row, 0)
    return rows


def _patterns(
    row: npt.NDArray[np.intp], sittings: tuple[Sitting, ...], taken: Taken, seen: Seen
) -> Patterns:
    """Give the patterns of the faults that come and go, whose rows are given."""
    chosen, back = np.unique(row, return_inverse=True)
    alone = np.empty((len(chosen), len(sittings), 2))
    same = np.empty((len(chosen), len(sittings)), dtype=np.bool_)
    for at, sitting in enumerate(sittings):
        readings, signs = taken.only(sitting.ids), seen.only(sitting.ids)
        alone[:, at, 1] = _alone(chosen, readings, signs)
        alone[:, at, 0] = _alone(np.zeros(1, dtype=np.intp), readings, signs)[0]
        same[:, at] = readings.same_in(chosen) & signs.same_in(chosen)
        if sitting.complaint is not None:
            alone[:, at, int(not sitting.complaint)] = -math.inf
    open_ = np.array([one.complaint is None for one in sittings], dtype=np.bool_)
    return patterns_of(alone[back], open_, same[back])


def _alone(row: npt.NDArray[np.intp], readings: Taken, signs: Seen) -> Floats:
    """Give the logarithm of the probability of one sitting's entries by themselves, per row."""
    rows = np.repeat(row[:, None], len(readings), axis=1)
    joint = readings.joint(readings.expected(rows))
    log = log_total_over_slips(joint, readings.log_slip)
    log += signs.log_probability(np.repeat(row[:, None], len(signs), axis=1)).sum(axis=1)
    return log
