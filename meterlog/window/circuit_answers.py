"""CircuitAnswers: what is said after a key that did nothing, or that took an entry back."""

from __future__ import annotations

from meterlog.model import Circuit, CircuitCheck, CircuitReading, CircuitSign, CircuitVerdict
from meterlog.model.circuit_words import label_of, unit_of
from meterlog.window.numbers import number
from meterlog.window.sentences import sentence
from meterlog.window.words import say


def nothing_words(verdict: CircuitVerdict | None) -> str:
    """Say why no test is proposed; ``verdict`` is None while it is being worked out."""
    if verdict is None:
        return say("The next test is being worked out.")
    if verdict.settled:
        return say("Nothing more is proposed: the verdict stands, with what confirms it.")
    return say("Nothing within reach would tell more: see the verdict.")


def turned_words(circuit: Circuit, before: CircuitCheck | None, after: CircuitCheck | None) -> str:
    """Say which entry undo took back or redo put in: hands slip, and the eye was elsewhere.

    Parameters
    ----------
    circuit : Circuit
    before, after : CircuitCheck or None
        The check before and after the key; None: there is none.
    """
    had, has = _entries(before), _entries(after)
    back = [
        say("Taken back: {words}.", words=_words(circuit, had[at])) for at in had if at not in has
    ]
    again = [
        say("Put in again: {words}.", words=_words(circuit, has[at])) for at in has if at not in had
    ]
    away, there = _out_of_reach(before), _out_of_reach(after)
    back += [
        say("Within reach again: {place}.", place=_place(circuit, one))
        for one in sorted(away - there)
    ]
    again += [
        say("Out of reach: {place}.", place=_place(circuit, one)) for one in sorted(there - away)
    ]
    return " ".join([*back, *again]) or say("There is nothing to take back or to put in again.")


def _out_of_reach(check: CircuitCheck | None) -> frozenset[str]:
    return frozenset() if check is None else check.no_reach


def _place(circuit: Circuit, name: str) -> str:
    """Give a place or a test point in words."""
    labels = {one.name: one.label for one in circuit.places}
    return sentence(labels.get(name) or label_of(circuit, name))


def _entries(check: CircuitCheck | None) -> dict[int, CircuitReading | CircuitSign]:
    if check is None:
        return {}
    entered: list[CircuitReading | CircuitSign] = [*check.readings, *check.signs]
    return {one.id: one for one in entered}


def _words(circuit: Circuit, entry: CircuitReading | CircuitSign) -> str:
    if isinstance(entry, CircuitSign):
        return say(
            "entry {id}, {sign}: {entry}",
            id=entry.id,
            sign=say(entry.sign.value),
            entry=say(entry.value, "sign"),
        )
    unit = unit_of(circuit, entry.point)
    return say(
        "entry {id}, {point}: {entry} {unit}",
        id=entry.id,
        point=sentence(label_of(circuit, entry.point)),
        entry=number(entry.value, ".4g"),
        unit=unit,
    )
