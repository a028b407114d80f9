"""Settling: when a unit is told, and what is said then or while it is still open."""

from __future__ import annotations

from collections.abc import Sequence

from meterlog.circuit.hypotheses import Hypothesis, fault_of
from meterlog.circuit.posterior import Posterior
from meterlog.circuit.unit_sets import NO_FAULT
from meterlog.circuit.wording import any_of, percent, unit_label
from meterlog.model import Circuit, Suspect

TOLD_AT = 0.95
"""From this probability on a unit is told, if nothing else is asked for."""
LEAST_WITHOUT = 0.5
"""What must be left of a unit when any one entry is taken away, or that entry alone carries it:
more probable than all else together.

Found by trying, 250 faults drawn on one shipped circuit, 2 % of the readings slipped: without such
a floor 1.6 % of the verdicts were wrong after 4.7 tests; with 0.3, 0.6 and 0.8 at most one of 250
was, after 4.6, 4.9 and 5.2 tests."""
LEAST_ENTRIES = 2
"""Never by a single entry, nor by what was only seen and heard: parts are ordered on what was
measured."""
PROVING_BITS = 0.06
"""A unit is not told while a test within reach is expected to tell this much of it against all
else."""
_CARRIES = 0.01
_ALSO = 0.1
_RIVAL = 0.005
_OPEN = 0.03
_SHOWN = 4
_RECORD = (
    "If the fan fails only at times, record it for long with the complaint there, and tap and "
    "wiggle while it records (meterlog record)."
)


def told_words(
    circuit: Circuit, posterior: Posterior, suspects: Sequence[Suspect], told_at: float
) -> str:
    """Say which unit it is, what confirms it before parts are ordered, and what to look for."""
    first = suspects[0]
    if first.unit == NO_FAULT:
        return (
            f"Nothing electrical is found wrong at this moment ({percent(first.probability)}). "
            f"{_RECORD} No part is to be ordered on this."
        )
    unit = circuit.unit(first.unit)
    least = f"with any one entry left out still {percent(first.without_best)}, or more"
    if first.probability - first.without_best < _CARRIES:
        least = "whichever entry is left out"
    said = [f"{_capital(unit.label)}: {percent(first.probability)}, {least}."]
    if first.faults:
        said.append(f"Most likely: {first.faults[0].words}.")
    also = [one for one in suspects[1:] if one.probability > told_at and one.unit != NO_FAULT]
    said += [f"Bad as well: {one.label} ({percent(one.probability)})." for one in also]
    left = [one for one in suspects[1:] if _ALSO <= one.probability <= told_at]
    if left:
        labels = any_of([f"{one.label} ({percent(one.probability)})" for one in left], "and")
        said.append(f"Not ruled out beside it: {labels}.")
    said.append(f"Confirm before parts are ordered: {_sentence(unit.confirm)}")
    said += _cause(circuit, posterior, first.unit)
    if unit.repair:
        said.append(f"Then: {_sentence(unit.repair)}")
    return " ".join(said)


def carried_words(suspects: Sequence[Suspect], entry: int, *, confirmed_by: bool) -> str:
    """Say that one entry alone makes a unit as probable as it is."""
    first = suspects[0]
    lead = (
        f"{_capital(first.label)} is likely ({percent(first.probability)}), but entry {entry} "
        f"alone carries that: without it {percent(first.without_best)}."
    )
    if confirmed_by:
        return f"{lead} Confirm it with the next test."
    return f"{lead} Nothing within reach confirms it; repeat it or open another place."


def nothing_fits_words(doubted: int, readings: int) -> str:
    """Say that too many readings contradict each other for any unit to be told."""
    return (
        f"{doubted} of {readings} readings go with no fault that this circuit can have: nothing is "
        "told. Check that it is this circuit, that key, speed, plugs and fuses were as entered, "
        "and where the meter's other lead was; then begin a new check."
    )


def proving_words(suspects: Sequence[Suspect]) -> str:
    """Say that a unit is probable enough to be told, and that one test may still speak for another.

    It has the rivals that the test is about.
    """
    first, rivals = suspects[0], [one for one in suspects[1:] if one.probability >= _RIVAL]
    against = any_of([f"{one.label} ({percent(one.probability)})" for one in rivals[:2]])
    lead = f"{_capital(first.label)} is likely ({percent(first.probability)})"
    return f"{lead}; one more test before parts are ordered tells it from {against or 'the rest'}."


def seen_words(suspects: Sequence[Suspect], *, confirmed_by: bool) -> str:
    """Say that a unit is probable by what was seen and heard alone, with nothing measured."""
    first = suspects[0]
    lead = f"{_capital(first.label)} is likely ({percent(first.probability)}), but nothing was "
    if confirmed_by:
        return f"{lead}measured yet. Confirm it with the next test."
    return f"{lead}measured, and nothing within reach confirms it: open another place."


def open_words(circuit: Circuit, posterior: Posterior, suspects: Sequence[Suspect]) -> str:
    """Say between which units it stays open when no test within reach tells more."""
    named = [one for one in suspects if one.probability >= _OPEN][:_SHOWN]
    labels = any_of([f"{one.label} ({percent(one.probability)})" for one in named])
    said = f"Nothing within reach tells more. It stays open between {labels}."
    hypotheses = posterior.weighed.source.cells.hypotheses
    wandering = sum(
        float(weight)
        for one, weight in zip(hypotheses, posterior.hypothesis_weights, strict=True)
        if one.comes_and_goes
    )
    if any(one.unit == NO_FAULT for one in named) or wandering > _OPEN:
        said += f" {_RECORD}"
    confirms = [
        f"{unit_label(circuit, one.unit)}: {_sentence(circuit.unit(one.unit).confirm)}"
        for one in named[:2]
        if one.unit != NO_FAULT
    ]
    return " ".join([said, *confirms])


def _cause(circuit: Circuit, posterior: Posterior, unit: str) -> list[str]:
    """Give what may have caused the likeliest fault of a unit, if the profile says so."""
    best: tuple[float, Hypothesis] | None = None
    hypotheses = posterior.weighed.source.cells.hypotheses
    for one, weight in zip(hypotheses, posterior.hypothesis_weights, strict=True):
        if unit in one.units and (best is None or weight > best[0]):
            best = float(weight), one
    if best is None:
        return []
    whys = [fault_of(circuit, element, mode).why for element, mode in best[1].faults]
    told = [why for why in dict.fromkeys(whys) if why]
    return [f"Look for the cause: {_sentence('; '.join(told))}"] if told else []


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def _sentence(text: str) -> str:
    return text if text.endswith((".", "?", "!")) else f"{text}."
