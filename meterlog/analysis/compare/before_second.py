"""BeforeSecond: what differs from the first run's conditions, told before the second one starts."""

from __future__ import annotations

from meterlog.analysis.compare.condition_checks import DIFFERS, FORBIDS, NOT_STATED, weigh
from meterlog.model import ConditionCheck, Conditions
from meterlog.model.condition_fields import CONDITION_FIELDS

_LABELS = {one.name: one.label for one in CONDITION_FIELDS} | {
    "ambient": "ambient",
    "warm-up": "fan ran before",
}
_NEAR_V = 0.3
"""A battery at rest moves by as much within an hour."""


def condition_warnings(
    before: Conditions, now: Conditions, *, voltage_known: bool = False
) -> tuple[str, ...]:
    """Say which conditions are not those of the run that the next one will be compared with.

    Parameters
    ----------
    before : Conditions
        Of the run with the old part. What nobody stated there can't be put right any more and is
        passed over.
    now : Conditions
        Under which the next run would be made.
    voltage_known : bool
        The motor voltage is read in both, so that the supply's part can be taken out.

    Returns
    -------
    tuple of str
        A sentence each: what it was, what it is, and what that may do to the current. First what
        would forbid the comparison, last what is only not stated.
    """
    checks = [one.check for one in weigh(before, now, voltage_known=voltage_known)]
    told = [one for one in checks if one.weight in (FORBIDS, DIFFERS)]
    told.sort(key=lambda one: one.weight != FORBIDS)
    unsaid = [one for one in checks if one.weight == NOT_STATED and one.old and not one.new]
    battery = _battery(before.battery_v, now.battery_v, voltage_known=voltage_known)
    return (
        *(_differs(one) for one in told),
        *([battery] if battery else []),
        *(_unsaid(one) for one in unsaid),
    )


def _differs(check: ConditionCheck) -> str:
    head = "NOT COMPARABLE" if check.weight == FORBIDS else "Differs"
    was = f"{_LABELS[check.name]} was {check.old!r}, now {check.new!r}"
    return f"{head}: {was}: {check.words}."


def _unsaid(check: ConditionCheck) -> str:
    return f"Not stated: {_LABELS[check.name]} was {check.old!r}; say what it is now."


def _battery(old: float | None, new: float | None, *, voltage_known: bool) -> str:
    if old is None:
        return ""
    if new is None:
        return f"Not stated: the battery had {old:g} V; say what it has now."
    if abs(new - old) < _NEAR_V:
        return ""
    does = "the current goes with the voltage"
    does += (
        "; brought to the same motor voltage, that is taken out"
        if voltage_known
        else ", and the motor voltage is not read in both: charge it, or measure the motor voltage"
    )
    return f"Differs: the battery had {old:g} V, now {new:g} V: {does}."
