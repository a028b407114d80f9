"""Predictions: what every test point shows under every hypothesis, in one state of the circuit."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace

import numpy as np

from meterlog.circuit.fan_signs import asked_for, back_emf, fan_values, pulled_in, sign_table
from meterlog.circuit.figures import Floats, healthy_figures, set_state
from meterlog.circuit.network import Bools, Network, Solved
from meterlog.circuit.point_readings import PointReadings
from meterlog.circuit.row_figures import RowFigures, StateFigures
from meterlog.circuit.severity_cells import cells_of
from meterlog.circuit.unit_sets import Ints
from meterlog.model.circuit import Circuit
from meterlog.model.circuit_check import METER_OHM, CircuitState, Sign

GHOST = 0.2
"""Standard deviation of what a meter shows of a point that floats, as a part of what would stand
there without it: how well a damp or a dry connector insulates nobody knows. From memory: from some
ten megohms to more than a meter can tell."""
FLOATS = 0.9
"""Where the meter's load leaves less than this part of the voltage, insulation feeds the point: a
megohm and more."""
HELD = 0.5
"""The same of a point that a transistor holds up with next to no current, as a part of the nominal
voltage: what a meter shows there, its own load decides."""
_KEPT = 64
"""How many states are kept: some 5 MB each."""


@dataclass(frozen=True, slots=True)
class Predicted:
    """What is to be read in one state with one meter.

    Attributes
    ----------
    mean : float64[rows, points]
        With all healthy figures at their nominal value and the severity in the middle of its cell.
    slopes : float64[rows, points, nuisances]
        How the reading moves with each nuisance, all of which are independent and standard normal:
        one for each figure of an element that has a tolerance, the same one in every state; the
        last two belong to the row: the place of the second fault's severity within its cell, and,
        last, that of the first's.
    signs : mapping of Sign to float64[rows, values]
        Probability of each value of :data:`~meterlog.model.circuit_check.SIGN_VALUES` while the
        fault is there.
    left : float64[rows, points]
        Which part of the voltage the meter's own load leaves: well below 1 where the point floats
        and what is read is a ghost.
    settled : bool[rows]
        False where no solution was found; such a row tells nothing: any voltage up to the nominal
        one is as good as any other.
    ghost : float64[rows, points]
        Standard deviation of what a meter shows where a point floats, or a transistor holds it up
        with next to no current; 0 elsewhere.
    """

    mean: Floats
    slopes: Floats
    signs: Mapping[Sign, Floats]
    left: Floats = field(default_factory=lambda: np.ones((0, 0)))
    settled: Bools = field(default_factory=lambda: np.ones(0, np.bool_))
    ghost: Floats = field(default_factory=lambda: np.zeros((0, 0)))

    def ghost_sd(self, rows: Ints | int, points: Ints | int) -> Floats:
        """Give how little is known of what a meter shows where a point floats; 0 where none does.

        Parameters
        ----------
        rows, points : int, or int arrays that go together as in indexing

        Returns
        -------
        float64, volts
            A standard deviation.
        """
        if not self.ghost.size:
            return np.zeros_like(self.mean[rows, points])
        ghost: Floats = np.asarray(self.ghost[rows, points])
        return ghost


@dataclass(frozen=True, slots=True)
class _Table:
    """One state: what stands at the points without a meter; slopes float64[rows, points, n]."""

    readings: PointReadings
    shown: Floats
    slopes: Floats
    signs: Mapping[Sign, Floats]
    settled: Bools


class Predictions:
    """What every test point of one circuit shows under every hypothesis.

    Parameters
    ----------
    circuit : Circuit

    Attributes
    ----------
    circuit : Circuit
    network : Network
    cells : Cells
    points : tuple of str
        Names of the test points in the order of the columns of predictions: that of the circuit.
    nuisances : tuple of Nuisance
        In the order of the slopes, before the two severities.
    healthy_row : int
        0, the circuit in order.

    Raises
    ------
    ValueError
        The circuit has no odds, or a severity without bounds.
    """

    healthy_row = 0

    def __init__(self, circuit: Circuit) -> None:
        self.circuit = circuit
        self.network = Network(circuit)
        self.cells = cells_of(self.network)
        self.points = tuple(point.name for point in circuit.points)
        self._rows = RowFigures(circuit, self.network.index, self.cells)
        self.nuisances = self._rows.nuisances
        self._tables: dict[CircuitState, _Table] = {}
        self._predicted: dict[tuple[CircuitState, float], Predicted] = {}
        self._pulled: dict[CircuitState, Floats] = {}
        self._top: dict[str, float] = {}
        by_row = np.zeros((self.cells.rows, 2))
        for cell, row in enumerate(self.cells.row):
            hypothesis = self.cells.hypotheses[self.cells.hypothesis[cell]]
            by_row[row] = hypothesis.answers_tap, hypothesis.stiff
        self._answers_tap, self._stiff = by_row.T

    def at(self, state: CircuitState, meter_ohm: float = METER_OHM) -> Predicted:
        """Give what is to be read in one state with one meter.

        Parameters
        ----------
        state : CircuitState
        meter_ohm : float, ohms
            Input resistance of the meter; infinite: none.

        Returns
        -------
        Predicted
            Kept: the same arrays for the same state and meter; not to be changed.

        Raises
        ------
        KeyError
            A jumper lies at a node that the circuit does not have.
        """
        key = state, meter_ohm
        if key not in self._predicted:
            table = self._table(state)
            left = table.readings.left_by(meter_ohm)
            held = (left >= FLOATS) & (table.readings.left_without_idle(meter_ohm) < FLOATS)
            ghost = np.where(left < FLOATS, GHOST * np.abs(table.shown), 0.0)
            ghost[held] = HELD * self.circuit.nominal_v
            _forget_oldest(self._predicted)
            self._predicted[key] = Predicted(
                mean=table.shown * left,
                slopes=table.slopes * left[:, :, None],
                signs=table.signs,
                left=left,
                settled=table.settled,
                ghost=ghost,
            )
        return self._predicted[key]

    def prepare(self, states: Iterable[CircuitState]) -> None:
        """Work out some states beforehand, for the usual meter."""
        for state in states:
            self.at(state)

    def _table(self, state: CircuitState) -> _Table:
        if state not in self._tables:
            made = self._rows.in_state(state)
            solved = self.network.solve(made.figures, state.jumpers)
            readings = PointReadings(
                self.network, made.figures, solved, state.jumpers, self.circuit.points
            )
            shown = readings.shown()
            slopes = self._slopes(readings, made)
            lost = ~solved.settled
            shown[lost] = self.circuit.nominal_v / 2.0
            slopes[lost] = 0.0
            slopes[lost, :, -1] = self.circuit.nominal_v / 2.0
            _forget_oldest(self._tables)
            self._tables[state] = _Table(
                readings, shown, slopes, self._signs(state, made.figures, solved), solved.settled
            )
        return self._tables[state]

    def _slopes(self, readings: PointReadings, made: StateFigures) -> Floats:
        """Give the slopes with all nuisances and both severities, no meter attached."""
        count = len(self.nuisances)
        slopes = np.zeros((self.cells.rows, len(self.points), count + 2))
        by_severity = made.by_severity[::-1]
        moved = np.flatnonzero(by_severity.any(axis=(0, 1)))
        for column in sorted({*made.columns.tolist(), *moved.tolist()}):
            by = readings.by_figure(column)
            for nuisance in np.flatnonzero(made.columns == column):
                slopes[:, :, nuisance] += by * made.by_nuisance[:, nuisance, None]
            for which in (0, 1):
                slopes[:, :, count + which] += by * by_severity[which, :, column, None]
        return slopes

    def _signs(self, state: CircuitState, figures: Floats, solved: Solved) -> Mapping[Sign, Floats]:
        emf = back_emf(self.network, figures, solved.volts)
        top_v = self._top_emf(state)
        click = self._click(state, pulled_in(self.network, figures, solved))
        table = sign_table(
            fan_values(emf, top_v, state, max(self.circuit.speeds)),
            asked_for(emf, top_v),
            click,
            self._answers_tap,
            self._stiff,
        )
        lost = ~solved.settled
        for values in table.values():
            values[lost] = 1.0 / values.shape[1]
        return table

    def _click(self, state: CircuitState, pulled: Floats) -> Floats:
        """Give how probably a relay pulls in as this state is switched on, the key off before."""
        off = replace(state, key="off")
        if off not in self._pulled:
            figures = self._rows.in_state(off).figures
            solved = self.network.solve(figures, off.jumpers)
            self._pulled[off] = pulled_in(self.network, figures, solved)
        click: Floats = 1.0 - np.prod(1.0 - pulled * (1.0 - self._pulled[off]), axis=1)
        return click

    def _top_emf(self, state: CircuitState) -> float:
        """Give the back-EMF of the circuit in order at the highest speed, with all plugged in."""
        key = "on" if state.key == "off" else state.key
        if key not in self._top:
            figures = set_state(
                self.circuit,
                self.network.index,
                healthy_figures(self.circuit, self.network.index)[None],
                CircuitState(key, max(self.circuit.speeds)),
            )
            volts = self.network.solve(figures).volts
            self._top[key] = float(back_emf(self.network, figures, volts)[0])
        return self._top[key]


def _forget_oldest(
    kept: dict[CircuitState, _Table] | dict[tuple[CircuitState, float], Predicted],
) -> None:
    while len(kept) >= _KEPT:
        del kept[next(iter(kept))]  # type: ignore[arg-type]
