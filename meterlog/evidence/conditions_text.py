"""ConditionsText: under what conditions it was measured, in the words in which they are entered."""

from __future__ import annotations

from meterlog.model import Conditions, Job
from meterlog.model.condition_fields import CONDITION_FIELDS, condition_text

_LABELS = {field.name: field.label for field in CONDITION_FIELDS}
_CALLED = {"ambient": "ambient_c", "running": "running_min"}
"""What a comparison calls two of them."""


def condition_label(name: str) -> str:
    """Give what a person reads for a condition, by the field or the comparison's name of it."""
    return _LABELS.get(_CALLED.get(name, name), name)


def conditions_words(conditions: Conditions) -> str:
    """Say all that was stated, with units; empty where nothing was.

    Parameters
    ----------
    conditions : Conditions

    Returns
    -------
    str
        Such as ``engine: off; battery, fan off: 12.6 V``.
    """
    said = []
    for field in CONDITION_FIELDS:
        text = condition_text(conditions, field)
        if text:
            said.append(f"{field.label}: {text} {field.unit}".rstrip())
    return "; ".join(said)


def stated_conditions(job: Job) -> str:
    """Say what was stated one by one, and what was written besides."""
    return "; ".join(filter(None, (conditions_words(job.measured_under), job.conditions.strip())))
