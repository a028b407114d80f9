"""Row figures: the figures of every row of a table of predictions, and how they may be off."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from meterlog.circuit.figures import FigureIndex, Floats, healthy_figures, set_fault, set_state
from meterlog.circuit.hypotheses import Cells, Ints
from meterlog.model.circuit import Circuit, ElementKind
from meterlog.model.circuit_check import CircuitState

SPREAD = float(1.0 / np.sqrt(3.0))
"""Standard deviation of what is spread evenly over a half width of 1 (JCGM 100:2008, 4.3.7)."""
_MOVES_NOTHING = frozenset({"rating_a", "pull_in_v"})
"""Figures no voltage depends on, but by a relay that drops out."""


@dataclass(frozen=True, slots=True)
class Nuisance:
    """A healthy figure that is not exactly known.

    Attributes
    ----------
    element, figure : str
    relative_u : float
        Its standard deviation as a part of the figure: half of the tolerance, which stands for
        about 95 %.
    """

    element: str
    figure: str
    relative_u: float


@dataclass(frozen=True, slots=True)
class StateFigures:
    """The figures of all rows in one state.

    Attributes
    ----------
    figures : float64[rows, figures]
        Nuisances at their nominal value, severities in the middle of their cells.
    by_nuisance : float64[rows, nuisances]
        How far the figure in ``columns`` moves with one standard deviation of each nuisance; 0
        where a fault or the state has replaced the figure.
    columns : int[nuisances]
        Which figure each nuisance moves in this state.
    by_severity : float64[2, rows, figures]
        How far each figure moves with one standard deviation of the place of the first and of the
        second fault's severity in the cell.
    """

    figures: Floats
    by_nuisance: Floats
    columns: Ints
    by_severity: Floats


def nuisances_of(circuit: Circuit) -> tuple[Nuisance, ...]:
    """Give every figure with a tolerance, in the order of the elements."""
    return tuple(
        Nuisance(element.name, figure, tolerance / 2.0)
        for element in circuit.elements
        for figure, tolerance in element.tolerance.items()
        if tolerance > 0.0 and figure not in _MOVES_NOTHING
    )


class RowFigures:
    """The figures of the rows of some cells, for any state.

    Faults and states only replace figures, add to them or multiply them, so the figures are lines
    in every nuisance and every severity, and differences give their slopes exactly.

    Parameters
    ----------
    circuit : Circuit
    index : FigureIndex
    cells : Cells
    """

    def __init__(self, circuit: Circuit, index: FigureIndex, cells: Cells) -> None:
        self.circuit = circuit
        self.nuisances = nuisances_of(circuit)
        self._index = index
        _, first = np.unique(cells.row, return_index=True)
        self._faults = [cells.hypotheses[cells.hypothesis[cell]].faults for cell in first]
        self._severity = cells.severity[first]
        healthy = healthy_figures(circuit, index)
        bump = np.zeros_like(healthy)
        for item in self.nuisances:
            column = index[item.element, item.figure]
            bump[column] = item.relative_u * healthy[column]
        self._faulted = self._with_faults(healthy, self._severity)
        self._bumped = self._with_faults(healthy + bump, self._severity)
        widths = np.stack([cells.half_width[first], cells.second_half_width[first]])
        self._moved = np.zeros((2, *self._faulted.shape))
        for which in (0, 1):
            doubled = self._severity.copy()
            doubled[:, which] *= 2.0
            by_log = self._with_faults(healthy, doubled) - self._faulted
            self._moved[which] = by_log * widths[which][:, None] * SPREAD

    def in_state(self, state: CircuitState) -> StateFigures:
        """Give the figures of all rows in one state, and how far they may be off."""
        figures = self._set(self._faulted, state)
        moved = self._set(self._bumped, state) - figures
        columns = np.array([self._column(item, state) for item in self.nuisances], dtype=np.intp)
        by_nuisance = moved[:, columns]
        by_nuisance[:, self._idle(state)] = 0.0
        for at, item in enumerate(self.nuisances):
            if item.figure == "drive_v":
                # What the head asks for is set by the state; a fault that fixes it has no gain.
                free = self._faulted[:, self._index[item.element, "loop_gain"]] > 0.0
                by_nuisance[:, at] = free * item.relative_u * figures[:, columns[at]]
        by_severity = np.stack([self._set(self._faulted + part, state) for part in self._moved])
        return StateFigures(figures, by_nuisance, columns, by_severity - figures)

    def _set(self, figures: Floats, state: CircuitState) -> Floats:
        return set_state(self.circuit, self._index, figures, state)

    def _column(self, item: Nuisance, state: CircuitState) -> int:
        """Give the figure that a nuisance moves: while charging, the battery's other voltage."""
        charges = item.figure == "charging_v" and state.key == "engine"
        return self._index[item.element, "emf_v" if charges else item.figure]

    def _idle(self, state: CircuitState) -> list[int]:
        """Give the nuisances that are out of play: one of the battery's two voltages."""
        unused = "emf_v" if state.key == "engine" else "charging_v"
        batteries = {e.name for e in self.circuit.elements if e.kind is ElementKind.BATTERY}
        return [
            at
            for at, item in enumerate(self.nuisances)
            if item.element in batteries and item.figure == unused
        ]

    def _with_faults(self, healthy: Floats, severity: Floats) -> Floats:
        figures = np.tile(healthy, (len(self._faults), 1))
        for row, faults in enumerate(self._faults):
            for (element, mode), value in zip(faults, severity[row], strict=False):
                set_fault(
                    self._index,
                    figures,
                    self.circuit.element(element),
                    mode,
                    None if np.isnan(value) else float(value),
                    slice(row, row + 1),
                )
        return figures
