"""Taken: the readings of a check, laid beside what is expected of them."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Protocol

import numpy as np
import numpy.typing as npt

from meterlog.circuit.figures import Floats
from meterlog.circuit.hypotheses import Cells
from meterlog.circuit.joint import Joint, joint_of
from meterlog.circuit.predictions import Predicted
from meterlog.circuit.slipped import log_slip_density
from meterlog.model.circuit import Circuit, PointKind
from meterlog.model.circuit_check import METER_OHM, CircuitReading, CircuitState

Rows = npt.NDArray[np.intp]


class PredictionSource(Protocol):
    """What tells what to expect: :class:`~meterlog.circuit.predictions.Predictions`."""

    @property
    def circuit(self) -> Circuit:
        """The circuit."""

    @property
    def cells(self) -> Cells:
        """Its hypotheses in cells."""

    @property
    def points(self) -> tuple[str, ...]:
        """Names of the test points, in the order of their columns."""

    def at(self, state: CircuitState, meter_ohm: float = METER_OHM) -> Predicted:
        """Give what is to be read in a state."""


@dataclass(frozen=True, slots=True)
class Misfit:
    """By how much a circuit in order, or with a fault, differs from its model.

    Attributes
    ----------
    model, model_part : float
        Standard deviation in V or A, and as a part of what is expected; the same each time that
        the same is measured in the same state.
    scatter, scatter_part : float
        The same of what differs from one time to the next.
    """

    model: float
    model_part: float
    scatter: float
    scatter_part: float


MISFITS: Mapping[bool, Misfit] = {
    False: Misfit(0.02, 0.005, 0.01, 0.001),
    True: Misfit(0.05, 0.01, 0.02, 0.005),
}
"""Of voltages, and (True) of currents. From memory, no source."""

_NOTHING = 1e-4
"""A difference, in V or A, that is none."""


@dataclass(frozen=True, slots=True)
class Expected:
    """What is expected of the readings of a check in each of many cases.

    Attributes
    ----------
    mean : float64[cases, n]
    slopes : float64[cases, n, nuisances]
        As in :class:`~meterlog.circuit.predictions.Predicted`.
    model_sd : float64[cases, n]
        Of the model's misfit, and of what insulates where a point floats; common to readings of the
        same.
    """

    mean: Floats
    slopes: Floats
    model_sd: Floats

    def only(self, places: Sequence[int]) -> Expected:
        """Give that of some of the readings."""
        return Expected(self.mean[:, places], self.slopes[:, places], self.model_sd[:, places])


@dataclass(frozen=True, slots=True)
class Taken:
    """The readings of a check that tell something, in the order of their ids.

    Attributes
    ----------
    readings : tuple of CircuitReading
    predicted : tuple of Predicted
        For each reading's state and meter.
    column : int[n]
        Of each reading's point in the predictions.
    log_slip : float64[n]
        Of :func:`~meterlog.circuit.slipped.log_slip_density`.
    misfit : float64[4, n]
        Of :func:`misfit_table`.
    same : float64[n, n]
        1 where two were taken of the same point in the same state with an equal meter; else 0.
    meter : float64[n, n]
        Covariance of the errors of the meters.
    """

    readings: tuple[CircuitReading, ...]
    predicted: tuple[Predicted, ...]
    column: Rows
    log_slip: Floats
    misfit: Floats
    same: Floats
    meter: Floats

    @property
    def ids(self) -> tuple[int, ...]:
        """Ids of the readings."""
        return tuple(one.id for one in self.readings)

    @property
    def value(self) -> Floats:
        """What was read, shape (n,), volts or amperes."""
        return np.array([one.value for one in self.readings], dtype=np.float64)

    def __len__(self) -> int:
        """How many readings there are."""
        return len(self.readings)

    def only(self, ids: Sequence[int]) -> Taken:
        """Give those readings that have one of these ids."""
        at = [place for place, number in enumerate(self.ids) if number in ids]
        return Taken(
            tuple(self.readings[place] for place in at),
            tuple(self.predicted[place] for place in at),
            self.column[at],
            self.log_slip[at],
            self.misfit[:, at],
            self.same[np.ix_(at, at)],
            self.meter[np.ix_(at, at)],
        )

    def expected(self, rows: Rows) -> Expected:
        """Give what is expected.

        Parameters
        ----------
        rows : int[cases, n]
            The row of the predictions that holds for each reading.
        """
        cases = len(rows)
        if not len(self):
            return Expected(np.zeros((cases, 0)), np.zeros((cases, 0, 1)), np.zeros((cases, 0)))
        mean = np.empty((cases, len(self)))
        slopes = np.empty((cases, len(self), self.predicted[0].slopes.shape[2]))
        ghost = np.empty((cases, len(self)))
        for at, (predicted, column) in enumerate(zip(self.predicted, self.column, strict=True)):
            mean[:, at] = predicted.mean[rows[:, at], column]
            slopes[:, at] = predicted.slopes[rows[:, at], column]
            ghost[:, at] = predicted.ghost_sd(rows[:, at], column)
        # The circuit in order has no severity.
        slopes[:, :, -1] *= rows > 0
        return Expected(mean, slopes, self.misfit[0] + self.misfit[1] * np.abs(mean) + ghost)

    def joint(self, expected: Expected) -> Joint:
        """Give the joint density of what was read.

        The covariance is that of the nuisances, which all readings share; of the model's misfit,
        which those share that were taken of the same point in the same state with an equal meter;
        of the meter's error (:func:`meter_covariance`); and of the scatter of each by itself.
        """
        covariance = expected.slopes @ expected.slopes.transpose(0, 2, 1)
        covariance += self.same * (expected.model_sd[:, :, None] * expected.model_sd[:, None, :])
        covariance += self.meter
        at = np.arange(len(self))
        covariance[:, at, at] += self.scatter(expected.mean) ** 2
        return joint_of(self.value - expected.mean, covariance)

    def scatter(self, mean: Floats) -> Floats:
        """Give the standard deviation of each reading by itself, shape of ``mean``."""
        scatter: Floats = self.misfit[2] + self.misfit[3] * np.abs(mean)
        return scatter

    def same_in(self, rows: Rows) -> npt.NDArray[np.bool_]:
        """Tell in which rows the same is expected of all readings as in a circuit in order.

        Returns
        -------
        bool[rows]
        """
        same = np.ones(len(rows), dtype=np.bool_)
        for predicted, column in zip(self.predicted, self.column, strict=True):
            off = np.abs(predicted.mean[rows, column] - predicted.mean[0, column])
            bent = np.abs(predicted.slopes[rows, column] - predicted.slopes[0, column])
            same &= (off < _NOTHING) & (bent.max(axis=1) < _NOTHING)
        return same

    def of_the_same(
        self, source: PredictionSource, state: CircuitState, meter_ohm: float
    ) -> Floats:
        """Tell which readings were taken of each point in a state with an equal meter.

        Returns
        -------
        float64[points, n]
            1 or 0.
        """
        same = np.zeros((len(source.points), len(self)))
        for at, one in enumerate(self.readings):
            if one.state == state and one.meter_ohm == meter_ohm:
                same[self.column[at], at] = 1.0
        return same


def taken_of(source: PredictionSource, readings: Sequence[CircuitReading]) -> Taken:
    """Lay readings beside what is expected of them.

    Parameters
    ----------
    source : PredictionSource
    readings : sequence of CircuitReading
        In any order; those whose standard uncertainty is not finite are passed over.

    Raises
    ------
    ValueError
        For a point that the circuit hasn't, a value that is no number, an uncertainty below 0.
    """
    told = tuple(sorted((one for one in readings if _tells(one)), key=lambda one: one.id))
    column = np.array([_column(source, one) for one in told], dtype=np.intp)
    kinds = [source.circuit.point(one.point).kind for one in told]
    log_slip = [
        log_slip_density(kind, source.circuit.nominal_v, one.value, one.standard_u)
        for kind, one in zip(kinds, told, strict=True)
    ]
    shape = (len(told), len(told))
    same = np.array([[_same(a, b) for b in told] for a in told], dtype=np.float64).reshape(shape)
    return Taken(
        told,
        tuple(source.at(one.state, one.meter_ohm) for one in told),
        column,
        np.array(log_slip, dtype=np.float64),
        misfit_table(kinds),
        same,
        meter_covariance(told, kinds, same),
    )


def misfit_table(kinds: Sequence[PointKind]) -> Floats:
    """Give the figures of :class:`Misfit` for points of these kinds, shape (4, points)."""
    chosen = [MISFITS[kind is PointKind.CURRENT] for kind in kinds]
    return np.array(
        [
            [one.model for one in chosen],
            [one.model_part for one in chosen],
            [one.scatter for one in chosen],
            [one.scatter_part for one in chosen],
        ]
    )


def meter_covariance(
    readings: Sequence[CircuitReading], kinds: Sequence[PointKind], same: Floats
) -> Floats:
    """Give the covariance of the errors of the meters.

    The part of the uncertainty that belongs to the gain is one error in all readings of one meter.
    The rest of it is the same each time that the same is read with the same meter: a repeat does
    not make a meter any better.

    Parameters
    ----------
    readings : sequence of CircuitReading
        n of them.
    kinds : sequence of PointKind
        Volts and amperes of one source don't share a gain.
    same : float64[n, n]
        As :attr:`Taken.same`.

    Returns
    -------
    float64[n, n]
    """
    count = len(readings)
    whole = np.array([one.standard_u for one in readings], dtype=np.float64)
    gain = np.array(
        [math.copysign(min(one.shared_u, one.standard_u), one.value) for one in readings]
    )
    rest = np.sqrt(whole**2 - gain**2)
    current = [kind is PointKind.CURRENT for kind in kinds]
    one_meter = np.array(
        [
            [a.source == b.source and current[i] == current[j] for j, b in enumerate(readings)]
            for i, a in enumerate(readings)
        ],
        dtype=np.float64,
    ).reshape(count, count)
    covariance: Floats = one_meter * (np.outer(gain, gain) + same * np.outer(rest, rest))
    return covariance


def _same(one: CircuitReading, other: CircuitReading) -> bool:
    return (one.point, one.state, one.meter_ohm) == (other.point, other.state, other.meter_ohm)


def _tells(one: CircuitReading) -> bool:
    if not math.isfinite(one.value):
        raise ValueError(f"reading {one.id} at {one.point}: {one.value} is no number")
    if math.isnan(one.standard_u) or one.standard_u < 0.0:
        raise ValueError(f"reading {one.id} at {one.point}: uncertainty {one.standard_u}")
    return math.isfinite(one.standard_u)


def _column(source: PredictionSource, one: CircuitReading) -> int:
    if one.point not in source.points:
        raise ValueError(f"reading {one.id}: {source.circuit.name} has no point {one.point!r}")
    return source.points.index(one.point)
