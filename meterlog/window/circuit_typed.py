"""CircuitTyped: what is typed for a reading at a test point."""

from __future__ import annotations

import re

from meterlog.model.errors import UsageError
from meterlog.window.numbers import in_numbers, typed_number
from meterlog.window.words import say

_TYPED = re.compile(r"\s*([+\-\N{MINUS SIGN}]?[0-9.,]+)\s*(mV|V|mA|A)?\s*")


def parse_value(words: str, unit: str) -> float:
    """Give the number of a typed reading, in volts or amperes.

    Parameters
    ----------
    words : str
        Such as ``12.43``, ``12,43 V`` or ``85 mV``.
    unit : str
        ``V`` or ``A``, as is read at the test point.

    Raises
    ------
    UsageError
        If it is no number, or has the other unit.
    """
    match = _TYPED.fullmatch(words)
    if match is None:
        raise UsageError(
            say("is no reading."),
            subject=words.strip() or say("nothing"),
            remedy=say("Such as {number} {unit}.", number=in_numbers("12.43"), unit=unit),
        )
    said = match[2] or unit
    if not said.endswith(unit):
        raise UsageError(
            say("is not in {unit}.", unit=unit),
            subject=words.strip(),
            remedy=say("Here {unit} are read.", unit=unit),
        )
    value = typed_number(match[1])
    return value / 1000.0 if said.startswith("m") else value
