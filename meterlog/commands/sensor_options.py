"""The options that say what stands between the circuit and the meters, and where zero is."""

from __future__ import annotations

import argparse
import math
from collections.abc import Sequence
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from meterlog.model import Role
    from meterlog.work import Wiring

_KEPT = "kept"

_OPTIONS = (
    ("clamp", "ROLE=10mV/A", "a current clamp on a voltage input, with its output"),
    ("turns", "ROLE=N", "the wire goes through the clamp N times"),
    ("shunt", "ROLE=100A/60mV", "a shunt; or its resistance: ROLE=0.6mOhm"),
    ("divider", "ROLE=10", "a divider: the meter reads a tenth"),
    ("invert", "ROLE", "the leads or the clamp's arrow are the other way round"),
    ("scale", "ROLE=FACTOR", "anything else: A or V per unit the meter reads"),
    (
        "sensor-accuracy",
        "ROLE=PERCENT+ABSOLUTE",
        "of the clamp, shunt or divider itself, such as motor-current=1.5+0.3; added to the"
        " meter's. Where its data sheet says how far it goes: 'motor-current=1.5+0.3 up to 40'",
    ),
    (
        "zero",
        "ROLE=VALUE|kept",
        "reading with nothing connected, in A or V, subtracted; kept: the zero last taken of this"
        " meter and sensor",
    ),
    (
        "take-zero",
        "ROLE",
        "take the zero in the first three seconds: clamp empty and shut, off the wire; kept for"
        " later recordings",
    ),
)


def add_sensor_options(parser: argparse.ArgumentParser) -> None:
    """Add the options; each may be repeated, once for each role."""
    group = parser.add_argument_group("sensors and zero (repeat for each role)")
    for name, metavar, words in _OPTIONS:
        group.add_argument(f"--{name}", metavar=metavar, action="append", default=[], help=words)


def wiring_from(options: argparse.Namespace) -> Wiring:
    """Give the wiring that the options describe.

    Raises
    ------
    UsageError
        If a number or a role does not read as one, or is given twice.
    """
    from meterlog.work import SensorWords, Wiring, role_named

    kept = [text for text in options.zero if text.partition("=")[2].strip().lower() == _KEPT]
    return Wiring(
        meters=options.meter,
        roles=options.assign,
        scales=_by_role(options.scale, "scale"),
        zeros=_by_role([text for text in options.zero if text not in kept], "zero"),
        sensors=SensorWords(
            clamps=options.clamp,
            shunts=options.shunt,
            dividers=options.divider,
            turns=options.turns,
            inverted=options.invert,
            accuracies=options.sensor_accuracy,
        ),
        kept_zeros=tuple(role_named(text.partition("=")[0]) for text in kept),
    )


def zeros_to_take(options: argparse.Namespace, wiring: Wiring) -> tuple[Role, ...]:
    """Give the roles whose zero is to be taken at the beginning, each once.

    Raises
    ------
    UsageError
        If a role is unknown, no channel plays it, or its zero is given as well.
    """
    from meterlog.model.errors import UsageError
    from meterlog.work import role_named

    roles = tuple(dict.fromkeys(role_named(name) for name in options.take_zero))
    assigned = {words.partition("=")[0] for words in wiring.roles}
    for role in roles:
        if role.value not in assigned:
            raise UsageError(
                "no channel plays this role, so it has no zero.",
                subject=f"--take-zero {role.value}",
                remedy=f"Add --assign {role.value}=PROFILE.CHANNEL.",
            )
        if role in wiring.zeros or role in wiring.kept_zeros:
            raise UsageError(
                "its zero is given as well as to be taken.",
                subject=role.value,
                remedy="Say one of --zero and --take-zero.",
            )
    return roles


def _by_role(words: Sequence[str], option: str) -> dict[Role, float]:
    from meterlog.model.errors import UsageError
    from meterlog.work import role_named

    numbers: dict[Role, float] = {}
    for text in words:
        role, _, number = text.partition("=")
        try:
            value = float(number)
        except ValueError:
            value = math.nan
        if not math.isfinite(value):
            hint = " Write a point as decimal mark, such as 0.12." if "," in number else ""
            raise UsageError(
                f"is no {option}.", subject=text, remedy=f"Expected ROLE=NUMBER.{hint}"
            )
        if role_named(role) in numbers:
            raise UsageError(f"gives a second {option}.", subject=text, remedy="One for each role.")
        numbers[role_named(role)] = value
    return numbers
