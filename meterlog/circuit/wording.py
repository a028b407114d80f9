"""Wording: suspects, tests and what their results would mean, in plain words."""

from __future__ import annotations

from collections.abc import Sequence

from meterlog.circuit.unit_sets import NO_FAULT
from meterlog.model import Circuit, CircuitState, PointKind, Sign
from meterlog.model.circuit_words import state_words

NO_FAULT_LABEL = "nothing electrical"
_NAMED = 0.12
"""A suspect less probable than this is not named in what a result would mean."""
_MOST_NAMED = 3
_SURE = 0.9
SIGN_WORDS: dict[tuple[Sign, str], str] = {
    (Sign.FAN, "runs"): "fan runs as it should at this speed",
    (Sign.FAN, "slow"): "fan runs, but too slowly",
    (Sign.FAN, "dead"): "fan stands",
    (Sign.FAN, "full"): "fan runs at full speed",
    (Sign.TAP, "starts"): "a tap starts it",
    (Sign.TAP, "nothing"): "a tap changes nothing",
    (Sign.WHEEL, "free"): "wheel spins freely",
    (Sign.WHEEL, "stiff"): "wheel does not spin freely",
    (Sign.CLICK, "heard"): "click heard",
    (Sign.CLICK, "none"): "no click",
}
_SIGN_TASKS = {
    Sign.FAN: "Look and listen: does the fan run?",
    Sign.TAP: "Tap the motor's housing lightly, three to five times: does the fan start?",
    Sign.WHEEL: "Turn the wheel by hand: does it spin freely?",
    Sign.CLICK: "Switch to this from key off and listen: does the relay click?",
}


def unit_label(circuit: Circuit, unit: str) -> str:
    """Give the label of a unit, of ``no-fault`` too."""
    return NO_FAULT_LABEL if unit == NO_FAULT else circuit.unit(unit).label


def any_of(labels: Sequence[str], joint: str = "or") -> str:
    """Put labels together, such as ``main fuse, relay or motor``."""
    if len(labels) < 2:
        return "".join(labels)
    return f"{', '.join(labels[:-1])} {joint} {labels[-1]}"


def suspects_words(circuit: Circuit, units: Sequence[tuple[str, float]]) -> str:
    """Say whom a result would leave, from the units with their probabilities, likeliest first."""
    named = [unit for unit, share in units if share >= _NAMED][:_MOST_NAMED]
    if not named:
        named = [unit for unit, _ in units[:_MOST_NAMED]]
    labels = any_of([unit_label(circuit, unit) for unit in named])
    if units and units[0][1] >= _SURE:
        return f"points to {labels}"
    rest = 1.0 - sum(share for unit, share in units if unit in named)
    others = ", or another" if rest > 2.0 * _NAMED else ""
    return f"leaves {labels}{others}"


def test_words(
    circuit: Circuit, state: CircuitState, point: str, sign: Sign | None, repeat_of: int | None
) -> str:
    """Say what to do, in a sentence or two."""
    setting = state_words(circuit, state)
    setting = setting[0].upper() + setting[1:]
    if sign is not None:
        return f"{setting}. {_SIGN_TASKS[sign]}"
    one = circuit.point(point)
    place = next((p.label for p in circuit.places if p.name == one.place), one.place)
    lead = "" if repeat_of is None else f"Repeat reading {repeat_of}. "
    if one.kind is PointKind.VOLTAGE:
        task = f"Measure {one.label} against the battery negative post"
    elif one.kind is PointKind.DROP:
        task = f"Measure {one.label}, a probe at each end"
    else:
        task = f"Clamp: {one.label}"
    return f"{lead}{setting}. {task} ({place}). {one.reach}".rstrip()


def percent(probability: float) -> str:
    """Say a probability in percent, never more surely than it is known: 100 % and 0 % are not."""
    if probability > 0.995:
        return "over 99 %"
    return "under 1 %" if probability < 0.01 else f"{100 * probability:.0f} %"
