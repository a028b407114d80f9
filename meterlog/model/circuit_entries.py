"""CircuitEntries: what is entered in a check of a circuit, as text of ``circuit`` events, and back.

Nothing that was entered is ever taken out: undo is an entry of its own.
"""

from __future__ import annotations

import hashlib
import json
import math
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace
from typing import Any

from meterlog.model.circuit_check import (
    KEYS,
    SIGN_VALUES,
    CircuitCheck,
    CircuitReading,
    CircuitSign,
    CircuitState,
    Sign,
)


@dataclass(frozen=True, slots=True)
class Chosen:
    """A circuit profile was chosen; a new check begins.

    Attributes
    ----------
    circuit : str
        Its name.
    file : str
        Where the profile lies in the recording, under ``data/``.
    sha256 : str
        :func:`text_digest` of the profile; empty in recordings made before it was kept.
    """

    circuit: str
    file: str = ""
    sha256: str = ""


@dataclass(frozen=True, slots=True)
class Reach:
    """A place or a test point can't be reached, or can be after all."""

    name: str
    reached: bool


@dataclass(frozen=True, slots=True)
class Opened:
    """A place was laid open."""

    place: str


@dataclass(frozen=True, slots=True)
class Undone:
    """An entry was taken back, or put in again; ``id`` is that of the reading or sign."""

    id: int
    undone: bool = True


MOST = 1e12
"""No number of an entry lies further out: beyond any volt, ampere, ohm or count that there is, and
its square can still be formed."""
Entry = Chosen | CircuitReading | CircuitSign | Reach | Opened | Undone


def text_digest(text: str) -> str:
    """Give the SHA-256 (FIPS 180-4) of a profile's text in hex, whatever ends its lines."""
    plain = text.replace("\r\n", "\n").replace("\r", "\n")
    return hashlib.sha256(plain.encode("utf-8", "surrogatepass")).hexdigest()


def entry_text(entry: Entry) -> str:
    """Give an entry as one line of JSON (RFC 8259).

    Raises
    ------
    ValueError
        If a reading's value or uncertainty is not finite.
    """
    return json.dumps(_fields(entry), ensure_ascii=False, allow_nan=False)


def _fields(entry: Entry) -> dict[str, Any]:
    match entry:
        case Chosen():
            return {
                "entry": "chosen",
                "circuit": entry.circuit,
                "file": entry.file,
                "sha256": entry.sha256,
            }
        case CircuitReading():
            return {"entry": "reading", **_reading(entry)}
        case CircuitSign():
            return {
                "entry": "sign",
                "id": entry.id,
                "state": state_fields(entry.state),
                "sign": entry.sign.value,
                "value": entry.value,
                "t_utc": entry.t_utc,
            }
        case Reach():
            return {"entry": "reach", "name": entry.name, "reached": entry.reached}
        case Opened():
            return {"entry": "opened", "place": entry.place}
        case Undone():
            return {"entry": "undone", "id": entry.id, "undone": entry.undone}


def _reading(reading: CircuitReading) -> dict[str, Any]:
    return {
        "id": reading.id,
        "state": state_fields(reading.state),
        "point": reading.point,
        "value": float(reading.value),
        "standard_u": float(reading.standard_u),
        "shared_u": float(reading.shared_u),
        "meter_ohm": float(reading.meter_ohm) if math.isfinite(reading.meter_ohm) else None,
        "complaint": reading.complaint,
        "source": reading.source,
        "basis": reading.basis,
        "t_utc": reading.t_utc,
    }


def state_fields(state: CircuitState) -> dict[str, Any]:
    """Give a state as what JSON can hold, in an order that never changes."""
    return {
        "key": state.key,
        "speed": state.speed,
        "unplugged": sorted(state.unplugged),
        "pulled": sorted(state.pulled),
        "jumpers": [list(pair) for pair in sorted(state.jumpers)],
    }


def parse_entry(text: str) -> Entry | None:
    """Read the text of a ``circuit`` event.

    Parameters
    ----------
    text : str
        Any text at all.

    Returns
    -------
    Entry or None
        None where it is none that this program knows.
    """
    try:
        found = json.loads(text)
        return _entry(found)
    except (ValueError, KeyError, TypeError, OverflowError, RecursionError):
        # A whole number of 400 digits is JSON, and no float.
        return None


def _entry(found: Mapping[str, Any]) -> Entry | None:
    parse = _PARSERS.get(found["entry"])
    return None if parse is None else parse(found)


def _parse_chosen(found: Mapping[str, Any]) -> Chosen:
    file = found["file"]
    digest = _text(found.get("sha256", ""))
    return Chosen(_name(found["circuit"]), "" if file == "" else _name(file), digest)


def _parse_sign(found: Mapping[str, Any]) -> CircuitSign:
    sign, value = Sign(found["sign"]), _text(found["value"])
    if value not in SIGN_VALUES[sign]:
        raise ValueError(value)
    return CircuitSign(
        _count(found["id"]), _state(found["state"]), sign, value, _text(found["t_utc"])
    )


def _parse_reach(found: Mapping[str, Any]) -> Reach:
    return Reach(_name(found["name"]), _truth(found["reached"]))


def _parse_opened(found: Mapping[str, Any]) -> Opened:
    return Opened(_name(found["place"]))


def _parse_undone(found: Mapping[str, Any]) -> Undone:
    return Undone(_count(found["id"]), _truth(found["undone"]))


def _parse_reading(found: Mapping[str, Any]) -> CircuitReading:
    ohm = found["meter_ohm"]
    complaint = found["complaint"]
    return CircuitReading(
        id=_count(found["id"]),
        state=_state(found["state"]),
        point=_name(found["point"]),
        value=_number(found["value"]),
        standard_u=_number(found["standard_u"], least=0.0),
        shared_u=_number(found["shared_u"], least=0.0),
        meter_ohm=math.inf if ohm is None else _number(ohm, least=1e-3),
        complaint=None if complaint is None else _truth(complaint),
        source=_text(found["source"]),
        basis=_text(found["basis"]),
        t_utc=_text(found["t_utc"]),
    )


_PARSERS: dict[str, Callable[[Mapping[str, Any]], Entry]] = {
    "chosen": _parse_chosen,
    "reading": _parse_reading,
    "sign": _parse_sign,
    "reach": _parse_reach,
    "opened": _parse_opened,
    "undone": _parse_undone,
}


def _state(found: Mapping[str, Any]) -> CircuitState:
    key = _text(found["key"])
    if key not in KEYS:
        raise ValueError(key)
    jumpers = [tuple(sorted(_names(pair))) for pair in _list(found["jumpers"])]
    if any(first == second for first, second in jumpers):
        raise ValueError(jumpers)
    return CircuitState(
        key=key,
        speed=_count(found["speed"]),
        unplugged=frozenset(_names(found["unplugged"])),
        pulled=frozenset(_names(found["pulled"])),
        jumpers=frozenset((first, second) for first, second in jumpers),
    )


def _text(value: object) -> str:
    if not isinstance(value, str):
        raise TypeError(type(value).__name__)
    return value


def _name(value: object) -> str:
    """Give a name that can stand in a line for people: no line ends, no orders to a terminal."""
    text = _text(value)
    if not text or not text.isprintable():
        raise ValueError(text)
    return text


def _names(value: object) -> list[str]:
    return [_name(one) for one in _list(value)]


def _list(value: object) -> list[object]:
    if not isinstance(value, list):
        raise TypeError(type(value).__name__)
    return value


def _truth(value: object) -> bool:
    if not isinstance(value, bool):
        raise TypeError(type(value).__name__)
    return value


def _count(value: object) -> int:
    if isinstance(value, bool) or not isinstance(value, int) or not 0 <= value <= MOST:
        raise ValueError(value)
    return value


def _number(value: object, least: float = -math.inf) -> float:
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise TypeError(type(value).__name__)
    number = float(value)
    if not least <= number <= MOST or number < -MOST:
        raise ValueError(value)
    return number


def check_of(circuit: str, entries: Iterable[Entry], text: str = "") -> CircuitCheck:
    """Put the entries of one check together.

    Parameters
    ----------
    circuit : str
    entries : iterable of Entry
        In the order in which they were made. Those taken back are left out; of two with one id the
        later counts.
    text : str
        The circuit's profile.

    Returns
    -------
    CircuitCheck
        Readings and signs in the order of their ids.
    """
    readings: dict[int, CircuitReading] = {}
    signs: dict[int, CircuitSign] = {}
    gone: set[int] = set()
    check = CircuitCheck(circuit, text)
    for entry in entries:
        match entry:
            case CircuitReading():
                readings[entry.id] = entry
            case CircuitSign():
                signs[entry.id] = entry
            case Reach():
                others = check.no_reach - {entry.name}
                out = others if entry.reached else others | {entry.name}
                check = replace(check, no_reach=out)
            case Opened():
                check = replace(check, opened=check.opened | {entry.place})
            case Undone():
                (gone.add if entry.undone else gone.discard)(entry.id)
            case Chosen():
                pass
    return replace(
        check,
        readings=tuple(readings[at] for at in sorted(readings) if at not in gone),
        signs=tuple(signs[at] for at in sorted(signs) if at not in gone),
    )
