"""Figures: all numbers of a circuit in one flat array, as state and faults make them."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from meterlog.model.circuit import Circuit, Element, ElementKind, FaultMode
from meterlog.model.circuit_check import CircuitState
from meterlog.model.element_kinds import KINDS, OPEN_OHM

Floats = npt.NDArray[np.float64]
NEVER_TURNS_A = 1e6
"""Current without load of a seized motor: more than any supply gives, so it is a plain resistor."""
SHORTED_OHM = 0.02
"""Of a transistor burnt through. From memory."""
CUT_GAIN = 1e-12
"""Of a transistor that is open, in A/V²."""
JUMPER_OHM = 0.02
"""Of a fused jumper with its clips. From memory."""
UNPOWERED_OHM = 1e5
"""Output resistance of a control head without supply: a pull-down. From memory."""


@dataclass(frozen=True, slots=True)
class FigureIndex:
    """Where each figure of each element stands in the flat array.

    Attributes
    ----------
    columns : dict of (str, str) to int
        Column of (element, figure).
    """

    columns: dict[tuple[str, str], int]

    def __len__(self) -> int:
        """How many figures there are."""
        return len(self.columns)

    def __getitem__(self, key: tuple[str, str]) -> int:
        """Column of (element, figure); KeyError if there is none."""
        return self.columns[key]

    def of(self, element: str) -> dict[str, int]:
        """Columns of the figures of one element."""
        return {figure: at for (owner, figure), at in self.columns.items() if owner == element}


def index_of(circuit: Circuit) -> FigureIndex:
    """Give each figure of each element, usual ones included, and ``drive_v`` of heads, a column."""
    columns: dict[tuple[str, str], int] = {}
    for element in circuit.elements:
        facts = KINDS[element.kind]
        extra = ("drive_v", "closed_loop") if element.kind is ElementKind.HEAD else ()
        for name in (*facts.figures, *facts.usual, *extra):
            columns[element.name, name] = len(columns)
    return FigureIndex(columns)


def healthy_figures(circuit: Circuit, index: FigureIndex) -> Floats:
    """Give the figures of a circuit in order, shape (figures,), before any state is set."""
    figures = np.zeros(len(index))
    for element in circuit.elements:
        for name, value in {**KINDS[element.kind].usual, **element.figures}.items():
            figures[index[element.name, name]] = value
        if element.kind is ElementKind.HEAD:
            figures[index[element.name, "closed_loop"]] = float(len(element.nodes) > 2)
    return figures


def set_state(circuit: Circuit, index: FigureIndex, figures: Floats, state: CircuitState) -> Floats:
    """Give figures as a state makes them.

    Parameters
    ----------
    circuit : Circuit
    index : FigureIndex
    figures : float64[..., figures]
        With the faults in them already; not changed.
    state : CircuitState

    Returns
    -------
    float64[..., figures]
    """
    made = figures.copy()
    for element in circuit.elements:
        if element.kind is ElementKind.BATTERY and state.key == "engine":
            made[..., index[element.name, "emf_v"]] = made[..., index[element.name, "charging_v"]]
        if element.kind is ElementKind.HEAD:
            _ask(element, index, made, state)
        if not _closed(element, state):
            made[..., index[element.name, "ohm"]] = OPEN_OHM
    return made


def _ask(element: Element, index: FigureIndex, made: Floats, state: CircuitState) -> None:
    """Set what the head asks for; a fault may have fixed it (``loop_gain`` 0 or below)."""
    drive = index[element.name, "drive_v"]
    closed_loop = index[element.name, "closed_loop"]
    if state.key == "off":
        made[..., drive] = 0.0
        made[..., closed_loop] = 0.0
        made[..., index[element.name, "ohm"]] = UNPOWERED_OHM
        return
    stuck = made[..., index[element.name, "loop_gain"]] <= 0.0
    made[..., drive] = np.where(stuck, made[..., drive], element.speeds.get(state.speed, 0.0))
    if state.speed == 0:
        made[..., closed_loop] = 0.0


def _closed(element: Element, state: CircuitState) -> bool:
    if element.plug and element.plug in state.unplugged:
        return False
    if element.name in state.pulled:
        return False
    if element.kind is not ElementKind.SWITCH:
        return True
    by_key = not element.closed_keys or state.key in element.closed_keys
    by_speed = not element.closed_speeds or state.speed in element.closed_speeds
    return by_key and by_speed


def set_fault(
    index: FigureIndex,
    figures: Floats,
    element: Element,
    mode: FaultMode,
    severity: float | None,
    rows: slice | npt.NDArray[np.intp] = slice(None),
) -> None:
    """Put a fault into figures, in place.

    Parameters
    ----------
    index : FigureIndex
    figures : float64[n, figures]
    element : Element
    mode : FaultMode
    severity : float or None
        In the unit of the mode (see :class:`~meterlog.model.circuit.FaultMode`).
    rows : slice or array
        Which rows have it.

    Raises
    ------
    ValueError
        No element of this kind fails so, or a severity is needed.
    """
    if mode not in KINDS[element.kind].modes:
        known = ", ".join(each.value for each in KINDS[element.kind].modes)
        raise ValueError(
            f"{element.name}: a {element.kind.value} can't be {mode.value!r}, only: {known}"
        )
    if mode is FaultMode.RESISTIVE:
        figures[rows, index[element.name, "ohm"]] += _needed(severity, element, mode)
    elif mode is FaultMode.DRAGGING:
        figures[rows, index[element.name, "no_load_a"]] *= _needed(severity, element, mode)
    else:
        for figure, value in _set_to(element, mode, severity).items():
            figures[rows, index[element.name, figure]] = value


def _set_to(element: Element, mode: FaultMode, severity: float | None) -> dict[str, float]:
    """Give the figures that a fault sets, whatever they were."""
    if mode is FaultMode.OPEN:
        if element.kind is ElementKind.TRANSISTOR:
            return {"gain_a_per_v2": CUT_GAIN}
        return {"ohm": OPEN_OHM}
    if mode is FaultMode.SHORTED:
        return {"held": 1.0} if element.kind is ElementKind.CONTACT else {"bypass_ohm": SHORTED_OHM}
    if mode is FaultMode.SEIZED:
        return {"no_load_a": NEVER_TURNS_A}
    if mode is FaultMode.FLAT:
        volts = _needed(severity, element, mode)
        return {"emf_v": volts, "charging_v": volts}
    # The head: no drive, or the same all the time.
    asked = 0.0 if mode is FaultMode.NO_DRIVE else _needed(severity, element, mode)
    return {"loop_gain": 0.0, "closed_loop": 0.0, "drive_v": asked}


def _needed(severity: float | None, element: Element, mode: FaultMode) -> float:
    if severity is None:
        raise ValueError(f"{element.name} {mode.value}: a severity is needed, as a number")
    return severity
