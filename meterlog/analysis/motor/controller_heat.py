"""ControllerHeat: what a linear controller turns into heat at each speed, against its limit."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from meterlog.analysis.budgets import combine, conformity
from meterlog.analysis.budgets.followed import maker_of
from meterlog.analysis.budgets.usual_error import cautious
from meterlog.analysis.judged import Judged
from meterlog.analysis.motor.across import Across, OtherVolts, across_high, across_low, carries
from meterlog.analysis.motor.points import (
    LEAST_READINGS,
    SEVERAL_LEVELS,
    current_of,
    doubt_words,
    has_role,
    past_words,
    several_levels,
    speed_of,
    step_words,
    voltage_of,
    voltage_unknown,
)
from meterlog.analysis.past_range import PAST_READING
from meterlog.analysis.rounding import with_uncertainty
from meterlog.analysis.step_edges import step_edge_ns
from meterlog.model import (
    Budget,
    ControllerHeat,
    Finding,
    FindingKind,
    Role,
    Step,
    Verdict,
)

_NO_RUNNING = "no steady running with current and voltage read"
_NO_AMPS = "its current was not read"
_NO_VOLTS = "the voltage across the motor was not read"
_TOO_SHORT = "it did not run steadily for long enough"

Side = Callable[[Judged, Step, OtherVolts | None], Across | None]

_NOT_READ: dict[Side, str] = {
    across_low: "its motor return was not read",
    across_high: "neither its relay output nor its battery voltage was read",
}

_NOT_LINEAR = {
    "resistors": (
        "the controller is a resistor pack: its heat sits in the air stream and is bounded by its"
        " thermal limiter, not by a figure for a linear controller"
    ),
    "pulsed": (
        "the controller is pulsed: means of voltage and current do not give its heat; what it"
        " loses is in its switching"
    ),
}


def controller_heat(
    judged: Judged, other_volts: OtherVolts | None = None
) -> tuple[tuple[ControllerHeat, ...], tuple[Finding, ...], str]:
    """Give the heat in a linear controller at each speed.

    Parameters
    ----------
    judged : Judged
    other_volts : callable or None
        Mean, standard deviation and count of the voltages that are no part of a Step: controller
        ground, relay output, battery.

    Returns
    -------
    tuple of ControllerHeat
        Of steps with steady current and voltages and no doubt against them, nor more read
        than meters and clamp are stated for; empty unless the limits say that the controller is
        linear.
    tuple of Finding
        One a speed that ran where the limits allow only so much, also where that speed tells
        nothing, as something of it was not read or it ran too short; one in all that can't tell
        where nothing could be worked out. None of a speed at which no current flowed.
    str
        What the reader must know, a sentence; empty for nothing.

    Source
    ------
    Power is voltage times current. What is a product has the uncertainty of both (JCGM 100:2008,
    5.1.2). Verdict: JCGM 106:2012, 8.
    """
    kind = judged.limits.controller.kind
    if kind in _NOT_LINEAR:
        return (), _nothing(judged, _NOT_LINEAR[kind]), _sentence(_NOT_LINEAR[kind])
    if kind != "linear":
        return (), (), ""
    steps = [one for one in judged.steps if not _not_told(one, judged)]
    if not steps:
        return _none_told(judged)
    side, why = _side(judged, steps, other_volts)
    if side is None:
        return (), _nothing(judged, why), _sentence(why)
    told: list[ControllerHeat] = []
    findings: list[Finding] = []
    for step in judged.steps:
        why = _not_told(step, judged)
        if why:
            findings += _untold(judged, step, why)
            continue
        across, current = side(judged, step, other_volts), current_of(step)
        if across is None or current is None:
            findings += _untold(judged, step, _NOT_READ[side])
            continue
        heat = _of_step(judged, step, across, current)
        told.append(heat)
        findings += _finding(judged, step, heat, across)
    return tuple(told), tuple(findings), ""


def _sentence(words: str) -> str:
    return f"Heat in the controller: {words}."


def _not_told(step: Step, judged: Judged) -> str:
    """Give why a step tells nothing of the heat; empty where it does.

    Where no current flowed, there was none: that is :data:`_NO_RUNNING`, and no limit was missed.
    """
    if speed_of(step) == 0:
        return _NO_RUNNING
    amps = current_of(step)
    if amps is None or step.steady_n < LEAST_READINGS:
        return _unsettled(step, judged)
    if amps.value < judged.limits.open_current_a:
        return _NO_RUNNING
    doubted = doubt_words(step, judged.doubts)
    if voltage_of(step) is None:
        return doubted or _NO_VOLTS
    if several_levels(step):
        return SEVERAL_LEVELS
    return past_words(step, judged) or doubted


def _unsettled(step: Step, judged: Judged) -> str:
    """Say of a step without steady running what is known of its current.

    A held rotor on a middle speed heats its controller the most, and is not left running.
    """
    if not has_role(judged.instruments, Role.MOTOR_CURRENT):
        return _NO_RUNNING
    if step.mean_a is None:
        return _NO_AMPS if step.speed and step.n else _NO_RUNNING
    if abs(step.mean_a) < judged.limits.open_current_a:
        return _NO_RUNNING
    return doubt_words(step, judged.doubts) or _TOO_SHORT


def _none_told(judged: Judged) -> tuple[tuple[ControllerHeat, ...], tuple[Finding, ...], str]:
    """Say what is wrong with each speed that ran; where none did, that."""
    if not has_role(judged.instruments, Role.MOTOR_FEED):
        why = voltage_unknown(judged, ())
        return (), _nothing(judged, why), _sentence(why)
    whys = [_not_told(step, judged) for step in judged.steps]
    findings = [
        finding
        for step, why in zip(judged.steps, whys, strict=True)
        for finding in _untold(judged, step, why)
    ]
    why = next((why for why in whys if why != _NO_RUNNING), _NO_RUNNING)
    return (), tuple(findings) or _nothing(judged, why), _sentence(why)


def _side(
    judged: Judged, steps: Sequence[Step], other: OtherVolts | None
) -> tuple[Side | None, str]:
    """Tell on which side of the motor the controller sits, by what it holds at the lowest speed."""
    slowest = min(steps, key=lambda step: abs(step.steady_mean_v or 0.0))
    low, high = across_low(judged, slowest, other), across_high(judged, slowest, other)
    if low is not None and carries(low, slowest):
        return across_low, ""
    if high is not None and carries(high, slowest):
        return across_high, ""
    lacking = [
        words
        for words, there in (("motor return", low), ("relay output or battery", high))
        if there is None
    ]
    if lacking:
        return None, (
            f"which side of the motor it sits on was not seen; run it at its lowest speed and read"
            f" {' and '.join(lacking)} as well"
        )
    return None, "no speed was run at which it holds back a real part of the voltage"


def _of_step(judged: Judged, step: Step, across: Across, current: Budget) -> ControllerHeat:
    speed = speed_of(step)
    drop = across.volts
    heat = combine(
        f"heat in the controller at speed {speed}",
        drop.value * current.value,
        "W",
        [(drop, current.value), (current, drop.value)],
    )
    motor = _motor_power(step, current)
    limit = judged.limits.controller.max_heat_w
    verdict, probability = None, None
    if limit is not None:
        usual_w = abs(drop.value) * maker_of(judged).usual_more(current.value, at_rest=False)
        held, _ = cautious(heat, (None, limit), judged.limits, usual_w)
        verdict, probability = held.verdict, held.probability
        if PAST_READING in heat.lacking:
            verdict, probability = Verdict.CANT_TELL, None
    whole = heat.value + motor.value
    return ControllerHeat(
        speed=speed,
        drop_v=drop.value,
        heat_w=heat,
        motor_w=motor,
        efficiency=motor.value / whole if whole > 0.0 else 0.0,
        limit_w=limit,
        verdict=verdict,
        probability=probability,
    )


def _motor_power(step: Step, current: Budget) -> Budget:
    volts = voltage_of(step)
    if step.power is not None or volts is None:
        return step.power or combine("motor power", 0.0, "W", [])
    return combine(
        f"motor power at speed {speed_of(step)}",
        volts.value * current.value,
        "W",
        [(volts, current.value), (current, volts.value)],
    )


def _finding(judged: Judged, step: Step, heat: ControllerHeat, across: Across) -> list[Finding]:
    if heat.limit_w is None or heat.verdict is None:
        return []
    size = with_uncertainty(heat.heat_w.value, heat.heat_w.expanded, "W")
    lacking = f" (not in: {heat.heat_w.lacking})" if heat.heat_w.lacking else ""
    plain = conformity(heat.heat_w, None, heat.limit_w, judged.limits).verdict
    turned = "" if plain is heat.verdict else ", as what is not in could turn the verdict over"
    words = (
        f"{step_words(step)}: the controller turns {size}{lacking} into heat ({heat.drop_v:.2f} V"
        f" over it, {across.words}); allowed up to {heat.limit_w:g} W: {heat.verdict}"
        f"{turned}."
    )
    return [
        Finding(
            kind=FindingKind.CONTROLLER_HEAT,
            verdict=heat.verdict,
            start_ns=step.start_ns,
            end_ns=step.end_ns,
            edge_ns=step_edge_ns(step, judged.limits),
            value=heat.heat_w.value,
            unit="W",
            expanded_uncertainty=heat.heat_w.expanded,
            limit=heat.limit_w,
            speed=heat.speed,
            statement=words,
            coverage_factor=heat.heat_w.coverage,
            probability=heat.probability,
        )
    ]


def _untold(judged: Judged, step: Step, why: str) -> list[Finding]:
    """Say of a speed that ran and tells nothing that its limit was not held against anything."""
    if why == _NO_RUNNING:
        return []
    words = f"{step_words(step)}: heat in the controller: can't tell; {why}."
    during = step.start_ns, step.end_ns, step_edge_ns(step, judged.limits)
    return _open(judged, during, speed_of(step), words)


def _nothing(judged: Judged, why: str) -> tuple[Finding, ...]:
    """Say that a limit was given and nothing can be told about it."""
    first_ns = min((step.start_ns for step in judged.steps), default=0)
    last_ns = max((step.end_ns for step in judged.steps), default=0)
    during = first_ns, last_ns, 0  # the first and the last reading have no edge
    return tuple(_open(judged, during, None, f"Heat in the controller: can't tell; {why}."))


def _open(
    judged: Judged, during: tuple[int, int, int], speed: int | None, words: str
) -> list[Finding]:
    """Give the finding of a limit that is open, where there is a limit.

    ``during``: start, end and the uncertainty of both, nanoseconds.
    """
    limit = judged.limits.controller.max_heat_w
    if limit is None:
        return []
    start_ns, end_ns, edge_ns = during
    return [
        Finding(
            kind=FindingKind.CONTROLLER_HEAT,
            verdict=Verdict.CANT_TELL,
            start_ns=start_ns,
            end_ns=end_ns,
            edge_ns=edge_ns,
            value=None,
            unit="W",
            expanded_uncertainty=None,
            limit=limit,
            speed=speed,
            statement=words,
        )
    ]
