"""Hypotheses: everything that may be wrong with a circuit, with its share of the prior."""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np
import numpy.typing as npt

from meterlog.circuit.fault_words import COMES_AND_GOES, NOTHING, SEVERITY_UNITS, fault_words
from meterlog.circuit.figures import Floats
from meterlog.model.circuit import Circuit, Element, ElementFault, FaultMode, FaultPair

Ints = npt.NDArray[np.intp]


@dataclass(frozen=True, slots=True)
class Hypothesis:
    """One thing that may be the case.

    Attributes
    ----------
    units : frozenset of str
        The replaceable units that are bad; empty: nothing electrical.
    faults : tuple of (str, FaultMode)
        Element and mode of each fault, cause first; empty: none.
    prior : float
        Before anything was measured; all sum up to 1.
    comes_and_goes : bool
        The fault is there at one moment and not at another.
    words : str
        Such as ``main fuse open``.
    answers_tap, stiff : float
        As in :class:`~meterlog.model.circuit.ElementFault`; of a pair: that either does.
    """

    units: frozenset[str]
    faults: tuple[tuple[str, FaultMode], ...]
    prior: float
    comes_and_goes: bool
    words: str
    answers_tap: float
    stiff: float


@dataclass(frozen=True, slots=True)
class Cells:
    """The hypotheses with their severities in steps; within a cell what is read is linear in it.

    Attributes
    ----------
    hypotheses : tuple of Hypothesis
    hypothesis : int[cells]
        To which a cell belongs.
    log_prior : float64[cells]
        Natural logarithm of its share of the prior; all sum up to 1.
    severity : float64[cells, 2]
        Of the first and of the second fault, in the middle of the cell; NaN where there is none.
    half_width : float64[cells]
        From the middle of the cell to its edge, in the natural logarithm of the first fault's
        severity; 0 where there is none. The severity is spread evenly in it.
    row : int[cells]
        The row of :class:`~meterlog.circuit.predictions.Predicted` that tells what is read while
        the fault is there. A fault that comes and goes has the rows of the one that stays.
    rows : int
        How many rows there are; row 0 is the circuit in order.
    second_half_width : float64[cells]
        As ``half_width``, of the second fault of a pair; empty where there are no pairs.
    """

    hypotheses: tuple[Hypothesis, ...]
    hypothesis: Ints
    log_prior: Floats
    severity: Floats
    half_width: Floats
    row: Ints
    rows: int
    second_half_width: Floats = field(default_factory=lambda: np.zeros(0))


def hypotheses_of(circuit: Circuit) -> tuple[Hypothesis, ...]:
    """Give everything that may be wrong: nothing, every single fault, the pairs of the profile.

    A fault that comes and goes at times stands there twice: as one that stays, and as one that
    comes and goes, with the shares of its odds that ``comes_and_goes`` gives.

    Parameters
    ----------
    circuit : Circuit

    Returns
    -------
    tuple of Hypothesis
        The one without a fault first, then in the order of elements, faults and pairs; their
        priors sum up to 1.

    Raises
    ------
    ValueError
        A pair names a fault that its element does not have, or there are no odds at all.
    """
    found = [_hypothesis(frozenset(), (), circuit.no_fault_odds, NOTHING)]
    for element in circuit.elements:
        for fault in element.faults:
            found += _single(element, fault)
    found += [_pair(circuit, pair) for pair in circuit.pairs]
    total = sum(item.prior for item in found)
    if not total > 0.0:
        raise ValueError(f"{circuit.name}: no fault has any odds")
    return tuple(
        Hypothesis(
            item.units,
            item.faults,
            item.prior / total,
            item.comes_and_goes,
            item.words,
            item.answers_tap,
            item.stiff,
        )
        for item in found
    )


def fault_of(circuit: Circuit, element: str, mode: FaultMode) -> ElementFault:
    """Give the fault of an element in this mode; ValueError if it has none."""
    for fault in circuit.element(element).faults:
        if fault.mode is mode:
            return fault
    raise ValueError(f"{circuit.name}: {element} has no fault '{mode}'")


def severity_bounds(circuit: Circuit, element: str, mode: FaultMode) -> tuple[float, float] | None:
    """Give least and most of a fault's severity; None where the mode has none.

    Raises
    ------
    ValueError
        The profile states none where one is needed, or none above 0.
    """
    if mode not in SEVERITY_UNITS:
        return None
    fault = fault_of(circuit, element, mode)
    if fault.least is None or fault.most is None or not 0.0 < fault.least < fault.most:
        raise ValueError(
            f"{circuit.name}: {element} {mode} needs 'least' above 0 and 'most' above that"
        )
    return fault.least, fault.most


def _single(element: Element, fault: ElementFault) -> list[Hypothesis]:
    found = []
    for comes_and_goes, part in ((False, 1.0 - fault.comes_and_goes), (True, fault.comes_and_goes)):
        if part > 0.0:
            words = fault_words(element, fault.mode) + COMES_AND_GOES * comes_and_goes
            found.append(
                Hypothesis(
                    frozenset({element.unit}),
                    ((element.name, fault.mode),),
                    fault.odds * part,
                    comes_and_goes,
                    words,
                    fault.answers_tap,
                    fault.stiff,
                )
            )
    return found


def _pair(circuit: Circuit, pair: FaultPair) -> Hypothesis:
    elements = [circuit.element(name) for name, _ in pair.faults]
    faults = [fault_of(circuit, name, mode) for name, mode in pair.faults]
    first, second = (
        fault_words(element, fault.mode) for element, fault in zip(elements, faults, strict=True)
    )
    return Hypothesis(
        frozenset(element.unit for element in elements),
        pair.faults,
        pair.odds,
        comes_and_goes=False,
        words=pair.words or f"{first} and {second}",
        answers_tap=_either(faults[0].answers_tap, faults[1].answers_tap),
        stiff=_either(faults[0].stiff, faults[1].stiff),
    )


def _either(first: float, second: float) -> float:
    return 1.0 - (1.0 - first) * (1.0 - second)


def _hypothesis(
    units: frozenset[str], faults: tuple[tuple[str, FaultMode], ...], odds: float, words: str
) -> Hypothesis:
    return Hypothesis(
        units, faults, odds, comes_and_goes=False, words=words, answers_tap=0.0, stiff=0.0
    )
