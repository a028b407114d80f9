"""Trouble: what is done to a meter on the bench, as orders of one line."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType

from meterlog.model.errors import UsageError

LONGEST_S = 86_400.0
MOST_GARBAGE = 65_536
_SWITCH = ("on", "off")
_DIAL = ("V", "A", "OHM")


@dataclass(frozen=True, slots=True)
class Trouble:
    """One thing done to a meter; also what a meter does by itself.

    Attributes
    ----------
    elapsed_s : float, seconds since the scenario's zero
    meter : str
        Its name on the bench.
    kind : str
        The order's first word. By itself a meter does: ``plugged`` (value: its address),
        ``ranged`` (value: the range), ``overrun`` (value: what was lost).
    value : str
        The rest of the order.
    """

    elapsed_s: float
    meter: str
    kind: str
    value: str = ""


def _nothing(words: str) -> str | None:
    return None if words else ""


def _switch(words: str) -> str | None:
    word = words.lower() or "on"
    return word if word in _SWITCH else None


def _dial(words: str) -> str | None:
    return words.upper() if words.upper() in _DIAL else None


def _range(words: str) -> str | None:
    word = words.lower() or "next"
    return word if word in {"next", "auto"} else None


def _seconds(words: str) -> str | None:
    try:
        seconds = float(words)
    except ValueError:
        return None
    return f"{seconds:g}" if 0.0 < seconds <= LONGEST_S else None


def _count(words: str) -> str | None:
    # isdecimal lets digits of other scripts through, which int() takes too.
    return str(int(words)) if words.isdecimal() and 0 < int(words) <= MOST_GARBAGE else None


def _perhaps_seconds(words: str) -> str | None:
    return _seconds(words) if words else ""


@dataclass(frozen=True, slots=True)
class _Order:
    form: str
    read: Callable[[str], str | None]


_ORDERS: Mapping[str, _Order] = MappingProxyType(
    {
        "unplug": _Order("unplug [METER] [SECONDS]", _perhaps_seconds),
        "plug": _Order("plug [METER]", _nothing),
        "off": _Order("off [METER]", _nothing),
        "on": _Order("on [METER]", _nothing),
        "dial": _Order("dial [METER] V|A|OHM", _dial),
        "hold": _Order("hold [METER] [on|off]", _switch),
        "battery-low": _Order("battery-low [METER] [on|off]", _switch),
        "clamp-dead": _Order("clamp-dead [METER] [on|off]", _switch),
        "garble": _Order("garble [METER] BYTES", _count),
        "stall": _Order("stall [METER] SECONDS", _seconds),
        "range": _Order("range [METER] [next|auto]", _range),
    }
)
TROUBLE_WORDS = ", ".join(_ORDERS)


def trouble(line: str, elapsed_s: float, meters: Sequence[str]) -> Trouble | None:
    """Give the trouble that a line orders; None when its first word is no order of this kind.

    Parameters
    ----------
    line : str
        Such as ``stall line-logger 2.5``; the meter may be left out where there is but one.
    elapsed_s : float, seconds
    meters : sequence of str
        Their names on the bench.

    Raises
    ------
    UsageError
        If the meter is not there or not named, or the rest is not what the order needs.
    """
    word, _, rest = line.strip().partition(" ")
    order = _ORDERS.get(word.lower())
    if order is None:
        return None
    meter, words = _named(rest.strip(), meters)
    if not meter and len(meters) == 1:
        meter = meters[0]
    value = order.read(words) if meter else None
    if value is None:
        raise UsageError(
            "is not understood." if meter else "does not say which meter.",
            subject=repr(line.strip()[:80]),
            remedy=f"Expected {order.form}; METER is {' or '.join(meters)}.",
        )
    return Trouble(elapsed_s, meter, word.lower(), value)


def _named(rest: str, meters: Sequence[str]) -> tuple[str, str]:
    # The longest first: one name may begin another.
    for meter in sorted(meters, key=len, reverse=True):
        if rest == meter or rest.startswith(f"{meter} "):
            return meter, rest[len(meter) :].strip()
    return "", rest
