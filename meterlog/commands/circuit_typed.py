"""What was typed for a check of a circuit, put in order as entries."""

from __future__ import annotations

import math

from meterlog.commands.circuit_words import (
    number,
    parse_accuracy,
    parse_reading,
    parse_sign,
    parse_state,
)
from meterlog.model import Circuit, CircuitReading, CircuitSign, CircuitState, PointKind
from meterlog.model.circuit_check import METER_OHM
from meterlog.model.circuit_entries import Entry, Opened, Reach
from meterlog.model.errors import UsageError
from meterlog.model.stated_reading import StatedAccuracy, usual_accuracy

_DESCRIBING = {
    "state": "--state",
    "complaint": "--complaint",
    "accuracy": "--accuracy",
    "meter_ohm": "--meter-ohm",
}
"""Options that say something of the readings after them."""


class TypedEntries:
    """Takes the options in their order; each that describes a reading holds for those after it.

    Parameters
    ----------
    circuit : Circuit

    Attributes
    ----------
    entries : list of Entry
    """

    def __init__(self, circuit: Circuit) -> None:
        self.entries: list[Entry] = []
        self._circuit = circuit
        self._state = CircuitState()
        self._complaint: bool | None = None
        self._accuracy: StatedAccuracy | None = None
        self._meter_ohm = METER_OHM
        self._idle = ""

    def take(self, option: str, text: str) -> None:
        """Take one option.

        Parameters
        ----------
        option : str
            Its name, as argparse spells it.
        text : str

        Raises
        ------
        UsageError
            If the text can't be understood; says what was expected.
        """
        if option in _DESCRIBING:
            self._idle = f"{_DESCRIBING[option]} {text}"
        elif option in {"reading", "sign"}:
            self._idle = ""
        match option:
            case "state":
                self._state = parse_state(text, self._circuit)
            case "reading":
                self._read(text)
            case "sign":
                sign, value = parse_sign(text)
                self.entries.append(CircuitSign(self._next(), self._state, sign, value))
            case "complaint":
                self._complaint = _yes_or_no(text)
            case "accuracy":
                percent, absolute = parse_accuracy(text, "--accuracy")
                basis = f"stated by hand, ±({percent:g} % + {absolute:g})"
                self._accuracy = StatedAccuracy(percent, absolute, basis)
            case "meter_ohm":
                self._meter_ohm = _ohms(text)
            case "no_reach":
                self.entries.append(Reach(self._place_or_point(text), reached=False))
            case _:
                self.entries.append(Opened(self._place(text)))

    def finish(self) -> None:
        """Refuse an option that describes no reading: who typed it believes that it counts.

        Raises
        ------
        UsageError
            If no reading or sign follows the last --state, --complaint, --accuracy or --meter-ohm.
        """
        if self._idle:
            raise UsageError(
                "describes nothing: no reading or sign comes after it.",
                subject=self._idle,
                remedy="Put it before the readings for which it holds, or leave it out.",
            )

    def _next(self) -> int:
        numbered = (CircuitReading, CircuitSign)
        return 1 + sum(isinstance(entry, numbered) for entry in self.entries)

    def _read(self, text: str) -> None:
        point, value, expanded = parse_reading(text, self._circuit)
        clamp = self._circuit.point(point).kind is PointKind.CURRENT
        accuracy = self._accuracy or usual_accuracy(clamp=clamp)
        standard_u, shared_u = accuracy.standard_u(value)
        basis = accuracy.basis
        if expanded is not None:
            standard_u, shared_u = expanded / 2.0, 0.0
            basis = "stated by hand with the reading, k = 2"
        self.entries.append(
            CircuitReading(
                id=self._next(),
                state=self._state,
                point=point,
                value=value,
                standard_u=standard_u,
                shared_u=shared_u,
                meter_ohm=math.inf if clamp else self._meter_ohm,
                complaint=self._complaint,
                basis=basis,
            )
        )

    def _place(self, name: str) -> str:
        places = [place.name for place in self._circuit.places]
        if name not in places:
            known = f"There are: {', '.join(places)}."
            raise UsageError("is no place of this circuit.", subject=name, remedy=known)
        return name

    def _place_or_point(self, name: str) -> str:
        points = [point.name for point in self._circuit.points]
        return name if name in points else self._place(name)


def _yes_or_no(text: str) -> bool:
    if text not in {"yes", "no"}:
        raise UsageError("is neither yes nor no.", subject=text, remedy="Expected yes or no.")
    return text == "yes"


def _ohms(text: str) -> float:
    try:
        ohms = number(text)
    except ValueError:
        ohms = math.nan
    if not 1.0 <= ohms <= 1e12:
        raise UsageError(
            "is no input resistance.", subject=text, remedy="Expected ohms, such as 10e6."
        )
    return ohms
