"""What is typed for states, readings and signs of a circuit."""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from dataclasses import replace
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from meterlog.model import Circuit, CircuitState, Sign

_NUMBER = r"[+\-\N{MINUS SIGN}]?(?:[0-9]+(?:[.,][0-9]*)?|[.,][0-9]+)"
_READING = re.compile(
    rf"(?P<value>{_NUMBER})\s*(?P<unit>[VA])?"
    rf"(?:\s*(?:±|\+-|\+/-)\s*(?P<u>{_NUMBER})\s*(?P<u_unit>[VA])?)?"
)
_MOST_U = 1000.0
_LONGEST_SHOWN = 60
_ONCE = ("key", "speed")
"""Parts of a state of which there is one only."""
_STATE = "Expected such as key=on,speed=4,unplugged=motor,pulled=main-fuse,jumper=node+node."
_FORM = (
    "Expected POINT=VALUE, such as motor-feed=12.1, or with its uncertainty motor-feed=12.1+-0.1."
)


def number(text: str) -> float:
    """Read a number with point or comma; -0, as meters show it, is 0."""
    return float(text.replace(",", ".").replace("\N{MINUS SIGN}", "-")) + 0.0


def parse_state(text: str, circuit: Circuit) -> CircuitState:
    """Read ``key=on,speed=4,unplugged=…,pulled=…,jumper=…+…``.

    What is not named is: key on, speed 0, everything plugged in.

    Raises
    ------
    UsageError
        If a word or a name is not known, says which are; if it contradicts itself.
    """
    from meterlog.model import CircuitState

    state, named = CircuitState(), set()
    for part in filter(None, (word.strip() for word in text.split(","))):
        name, _, value = part.partition("=")
        name = name.strip()
        setter = _SETTERS.get(name)
        if setter is None:
            raise _wrong("is no part of a state.", part, _STATE)
        if name in named and name in _ONCE:
            raise _wrong(f"names the {name} twice.", text, "A reading is taken in one state.")
        named.add(name)
        state = setter(state, value.strip(), circuit)
    return state


def _key(state: CircuitState, value: str, circuit: Circuit) -> CircuitState:
    from meterlog.model.circuit_check import KEYS

    del circuit
    if value not in KEYS:
        raise _wrong("is no position of the key.", f"key={value}", f"There are: {', '.join(KEYS)}.")
    return replace(state, key=value)


def _speed(state: CircuitState, value: str, circuit: Circuit) -> CircuitState:
    known = ", ".join(str(speed) for speed in circuit.speeds)
    if value not in {str(speed) for speed in circuit.speeds}:
        raise _wrong("is no speed of this circuit.", f"speed={value}", f"There are: {known}.")
    return replace(state, speed=int(value))


def _unplugged(state: CircuitState, value: str, circuit: Circuit) -> CircuitState:
    if value not in circuit.plugs:
        known = f"There are: {', '.join(circuit.plugs)}."
        raise _wrong("is no plug of this circuit.", f"unplugged={value}", known)
    return replace(state, unplugged=state.unplugged | {value})


def _pulled(state: CircuitState, value: str, circuit: Circuit) -> CircuitState:
    if value not in circuit.fuses:
        known = f"There are: {', '.join(circuit.fuses)}."
        raise _wrong("is no fuse of this circuit.", f"pulled={value}", known)
    return replace(state, pulled=state.pulled | {value})


def _jumper(state: CircuitState, value: str, circuit: Circuit) -> CircuitState:
    names = [node.name for node in circuit.nodes]
    first, _, second = value.partition("+")
    if first not in names or second not in names or first == second:
        known = f"Expected NODE+NODE. There are: {', '.join(names)}."
        raise _wrong("joins no two nodes of this circuit.", f"jumper={value}", known)
    pair = (min(first, second), max(first, second))
    return replace(state, jumpers=state.jumpers | {pair})


_SETTERS: dict[str, Callable[[CircuitState, str, Circuit], CircuitState]] = {
    "key": _key,
    "speed": _speed,
    "unplugged": _unplugged,
    "pulled": _pulled,
    "jumper": _jumper,
}


def parse_reading(text: str, circuit: Circuit) -> tuple[str, float, float | None]:
    """Read ``POINT=VALUE`` or ``POINT=VALUE+-U``.

    Returns
    -------
    tuple of (str, float, float or None)
        Test point, value, and the expanded uncertainty where it was stated.

    Raises
    ------
    UsageError
        If there is no such point or no number, or it is in another unit than is read there.
    """
    from meterlog.model.circuit_words import unit_of

    name, _, words = text.partition("=")
    name = name.strip()
    points = [point.name for point in circuit.points]
    if name not in points:
        known = f"There are: {', '.join(points)}."
        raise _wrong("is no test point of this circuit.", name or text, known)
    match = _READING.fullmatch(words.strip())
    if match is None:
        raise _wrong("is no reading.", text, _FORM)
    unit, value = unit_of(circuit, name), number(match["value"])
    for said in (match["unit"], match["u_unit"]):
        if said not in {None, unit}:
            raise _wrong(f"is in {said}, but {name} is read in {unit}.", text, "Correct one.")
    if not math.isfinite(value):
        raise _wrong("is no reading.", text, _FORM)
    expanded = None if match["u"] is None else number(match["u"])
    if expanded is not None and not 0.0 < expanded <= _MOST_U:
        remedy = f"No meter is without error: above 0, at most {_MOST_U:g} {unit}."
        raise _wrong("states an uncertainty that can't be.", text, remedy)
    return name, value, expanded


def parse_accuracy(text: str, what: str) -> tuple[float, float]:
    """Read ``PERCENT+AMOUNT``, such as ``0.5+0.02``.

    Raises
    ------
    UsageError
        If it reads otherwise, or both are nothing.
    """
    match = re.fullmatch(rf"({_NUMBER})%?\+({_NUMBER})", text.replace(" ", ""))
    form = f"Expected {what} PERCENT+AMOUNT, such as {what} 0.5+0.02."
    if match is None:
        raise _wrong("is no accuracy.", text, form)
    percent, absolute = number(match[1]), number(match[2])
    if not (0.0 <= percent <= 100.0 and 0.0 <= absolute <= 1000.0) or percent == absolute == 0.0:
        raise _wrong("is no accuracy.", text, f"No meter is without error. {form}")
    return percent, absolute


def parse_sign(text: str) -> tuple[Sign, str]:
    """Read ``fan=dead`` and the like.

    Raises
    ------
    UsageError
        If there is no such sign or value.
    """
    from meterlog.model import Sign
    from meterlog.model.circuit_check import SIGN_VALUES

    name, _, value = (part.strip() for part in text.partition("="))
    known = "; ".join(f"{sign.value}={'|'.join(SIGN_VALUES[sign])}" for sign in Sign)
    if name not in [sign.value for sign in Sign] or value not in SIGN_VALUES[Sign(name)]:
        raise _wrong("is no sign.", text, f"There are: {known}.")
    return Sign(name), value


def _wrong(message: str, subject: str, remedy: str) -> Exception:
    from meterlog.model.errors import UsageError

    if len(subject) > _LONGEST_SHOWN:
        subject = f"{subject[:_LONGEST_SHOWN]}..."
    return UsageError(message, subject=subject, remedy=remedy)
