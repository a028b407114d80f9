"""VIN: the check digit of a vehicle identification number, and what looks wrong with one.

Source
------
49 CFR 565.15 (from memory): (b) seventeen characters; (c) the check digit in position 9, by table
III (values of the letters) and table IV (weights), the sum modulo 11, ``X`` for ten. The letters
I, O and Q are not used (565.13; ISO 3779 likewise, which asks for no check digit). Only vehicles
for North America must have one. All that is found here is therefore a warning.
"""

from __future__ import annotations

import re
from types import MappingProxyType

LENGTH = 17
_CHECK_PLACE = 8
_VALUES = MappingProxyType(
    {
        **{digit: int(digit) for digit in "0123456789"},
        **dict(zip("ABCDEFGH", range(1, 9), strict=True)),
        **dict(zip("JKLMN", range(1, 6), strict=True)),
        "P": 7,
        "R": 9,
        **dict(zip("STUVWXYZ", range(2, 10), strict=True)),
    }
)
_WEIGHTS = (8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2)
_CHECK_DIGITS = "0123456789X"
_LIKELY = MappingProxyType({"I": "1", "O": "0", "Q": "0"})
_NORTH_AMERICA = "12345"
"""First characters given to North America: ISO 3780, from memory."""


def plain_vin(text: str) -> str:
    """Give a VIN as it is compared: capitals, without blanks and hyphens."""
    return re.sub(r"[\s-]+", "", text).upper()


def check_digit(vin: str) -> str:
    """Compute the check digit that belongs into position 9.

    Parameters
    ----------
    vin : str
        Seventeen characters of 0-9 and A-Z without I, O, Q. What stands at position 9 does not
        matter, if it is such a character.

    Returns
    -------
    str
        ``0`` to ``9``, or ``X``.

    Raises
    ------
    ValueError
        If it is not of that form.
    """
    if len(vin) != LENGTH or any(letter not in _VALUES for letter in vin):
        raise ValueError(f"{vin!r} has not the form of a VIN.")
    total = sum(weight * _VALUES[one] for weight, one in zip(_WEIGHTS, vin, strict=True))
    return _CHECK_DIGITS[total % 11]


def vin_words(text: str) -> tuple[str, ...]:
    """Say what looks wrong with a VIN, in sentences; none when nothing does, or it is empty.

    Parameters
    ----------
    text : str
        As typed.

    Returns
    -------
    tuple of str
        Warnings only: a vehicle from outside North America, or an old one, can have such a VIN.
    """
    vin = plain_vin(text)
    if not vin:
        return ()
    said = []
    strange = sorted({letter for letter in vin if letter not in _VALUES})
    for letter in strange:
        likely = _LIKELY.get(letter)
        hint = f"; {likely} is probably meant" if likely else ""
        said.append(f"The VIN has the character {letter}, which no VIN has{hint}.")
    if len(vin) != LENGTH:
        said.append(
            f"The VIN has {len(vin)} characters; since 1981 a road vehicle's has {LENGTH}. "
            "Compare it with the vehicle."
        )
    if not said:
        said += _check_digit_words(vin)
    return tuple(said)


def _check_digit_words(vin: str) -> list[str]:
    found, due = vin[_CHECK_PLACE], check_digit(vin)
    if found == due:
        return []
    lead = f"The VIN's check digit (position 9) is {found}, but by the others it would be {due}"
    if vin[0] in _NORTH_AMERICA:
        return [f"{lead}: a character is probably mistyped. Compare it with the vehicle."]
    if found not in _CHECK_DIGITS:
        return []  # it has none, as is usual there
    return [f"{lead}. Outside North America it need not have one: compare it with the vehicle."]
