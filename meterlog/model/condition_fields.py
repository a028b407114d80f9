"""Condition fields: each condition with the words it is chosen from, or its unit and range."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import Any

from meterlog.model.conditions import Conditions
from meterlog.model.errors import UsageError


@dataclass(frozen=True, slots=True)
class ConditionField:
    """One condition.

    Attributes
    ----------
    name : str
        Of the attribute of :class:`~meterlog.model.conditions.Conditions`.
    label : str
        What a person reads.
    choices : tuple of str
        The words to choose from; empty for a number.
    unit : str
        Of a number.
    low, high : float, in the unit
        What a number can be at all.
    """

    name: str
    label: str
    choices: tuple[str, ...] = ()
    unit: str = ""
    low: float = -math.inf
    high: float = math.inf

    @property
    def is_number(self) -> bool:
        """True for what is measured, and so is another one the next time."""
        return not self.choices


CONDITION_FIELDS = (
    ConditionField("engine", "engine", ("off", "running")),
    ConditionField("control", "control of the fan", ("manual", "automatic")),
    ConditionField("air", "air goes to", ("face", "floor", "defrost", "mixed")),
    ConditionField("intake", "air comes from", ("fresh", "recirculated")),
    ConditionField("filter", "cabin filter", ("new", "used", "clogged", "none")),
    ConditionField("windows", "windows", ("open", "closed")),
    ConditionField("housing", "fan housing", ("closed", "open")),
    ConditionField("place", "motor is in", ("vehicle", "bench", "bench, no wheel")),
    ConditionField("battery_v", "battery, fan off", (), "V", 0.0, 60.0),
    ConditionField("ambient_c", "ambient", (), "°C", -60.0, 80.0),
    ConditionField("running_min", "fan ran before", (), "min", 0.0, 1440.0),
)
"""In the order in which they are looked at on the vehicle; numbers last."""


def condition_text(conditions: Conditions, field: ConditionField) -> str:
    """Give a condition as it is entered; empty where nobody said."""
    value = getattr(conditions, field.name)
    return "" if value is None else f"{value:g}" if field.is_number else str(value)


def with_condition(conditions: Conditions, field: ConditionField, text: str) -> Conditions:
    """Give conditions with one of them as it was entered.

    Parameters
    ----------
    conditions : Conditions
    field : ConditionField
    text : str
        Of a number its digits, with point or comma; empty: nobody said.

    Raises
    ------
    UsageError
        If it is no number, or none that can be.
    """
    value: str | float | None = " ".join(text.split())
    if field.is_number:
        value = _number(field, str(value)) if value else None
    # Any: the type checker can't tell which field this is.
    stated: dict[str, Any] = {field.name: value}
    return replace(conditions, **stated)


def _number(field: ConditionField, text: str) -> float:
    try:
        number = float(text.replace(",", "."))
    except ValueError:
        number = math.nan
    if not field.low <= number <= field.high:
        raise UsageError(
            f"can't be {text!r}.",
            subject=field.label,
            remedy=f"Give digits from {field.low:g} to {field.high:g}, in {field.unit}.",
        )
    return number
