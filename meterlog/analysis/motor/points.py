"""Points: which steps tell of the motor, and what their voltages and currents share."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from meterlog.analysis.budgets import Scatter, budget
from meterlog.analysis.judged import Judged
from meterlog.analysis.off_by import off_words
from meterlog.analysis.past_range import current_parts, step_is_past, volts_are_past
from meterlog.model import (
    Budget,
    Doubt,
    DoubtKind,
    Instrument,
    Role,
    Source,
    Span,
    SpanKind,
    Step,
)

LEAST_READINGS = 3
"""Steady readings below which a step's mean is no point (common practice, no source)."""

_UNSTEADY = 0.1
_LEVELS = 0.1
PULSED = "pulsed"
SEVERAL_LEVELS = "its current was not steady: several speeds are in it, or a contact"
_WHOLE = 0.9
_FOLLOWS = 0.8

_GONE = frozenset({
    SpanKind.DEAD, SpanKind.FEED_LOST, SpanKind.GROUND_LOST, SpanKind.COMMAND_LOST,
    SpanKind.NO_CURRENT, SpanKind.LOCKED,
})  # fmt: skip
_BEYOND = frozenset({SpanKind.OVER, SpanKind.UNDER})
_FALSE = {
    DoubtKind.ZERO_SEEN: "the clamp's zero is off",
    DoubtKind.STUCK: "a meter repeated one reading meanwhile",
    DoubtKind.CLAMP_QUIET: "the clamp is to be doubted",
    DoubtKind.PROBE: "a voltage probe had come off",
    DoubtKind.BEYOND: "a voltage is more than such a circuit can have",
    DoubtKind.NOMINAL: "a voltage is more than such a circuit can have",
    DoubtKind.UNIT: "a meter's dial was turned",
    DoubtKind.BATTERY: "a meter's own battery was low",
}
_TURNED = "a voltage reads negative: its leads are the wrong way round"


@dataclass(frozen=True, slots=True)
class Point:
    """One step with motor voltage and current.

    Attributes
    ----------
    step : Step
    volts, amps : Budget
        Every line has a key, so that what is made of them knows it again.
    """

    step: Step
    volts: Budget
    amps: Budget


def several_levels(step: Step) -> bool:
    """Tell whether the steady readings of a step scatter as of no single level.

    So do steps that were made of found changes where dropouts hid some of them. Ripple and noise,
    however large, go out of a mean of many readings; levels that last do not, as such readings are
    worth but a few (:class:`Scatter`). A tenth of the current: common practice, no source.
    """
    if step.steady_sd_a is None or step.steady_mean_a is None:
        return False
    by_scatter = 2.0 * Scatter(step.steady_n, step.steady_sd_a, step.steady_lag1_a).u
    return by_scatter > _LEVELS * abs(step.steady_mean_a)


def speed_of(step: Step) -> int | None:
    """Give the commanded speed, or the proposed one where none was recorded."""
    return step.proposed_speed if step.speed is None else step.speed


def current_of(step: Step) -> Budget | None:
    """Give the steady current with its budget; made of the bare figures where it has none yet."""
    if step.current is not None or step.steady_mean_a is None:
        return step.current
    name = f"motor current at speed {speed_of(step)}"
    if step.steady_expanded_a is None or not step.steady_coverage:
        return budget(name, abs(step.steady_mean_a), "A", (), "the current's uncertainty")
    u = step.steady_expanded_a / step.steady_coverage
    return budget(name, abs(step.steady_mean_a), "A", (Source("current as read", u, "A"),))


def voltage_of(step: Step) -> Budget | None:
    """Give the steady motor voltage with its budget; a bare one where it has none yet."""
    if step.voltage is not None or step.steady_mean_v is None:
        return step.voltage
    name = f"motor voltage at speed {speed_of(step)}"
    return budget(name, abs(step.steady_mean_v), "V", (), "the voltage's uncertainty")


def keyed(value: Budget, step: Step, what: str) -> Budget:
    """Give every line of a step's budget a key of its own where it has none."""
    lines = tuple(
        source if source.key else replace(source, key=f"step {step.start_ns} {what} {number}")
        for number, source in enumerate(value.sources)
    )
    return replace(value, sources=lines)


def point_of(step: Step) -> Point | None:
    """Give the point of a step; None where voltage or current is missing."""
    volts, amps = voltage_of(step), current_of(step)
    if volts is None or amps is None:
        return None
    return Point(step, keyed(volts, step, "volts"), keyed(amps, step, "amps"))


def points(judged: Judged) -> tuple[tuple[Point, ...], tuple[str, ...]]:
    """Give the steps that can stand on the motor's curve, and why the others were left out.

    Returns
    -------
    tuple of Point, and tuple of str
        One sentence a step left out; steps at off are not spoken of.
    """
    kept, left = [], []
    for step in judged.steps:
        if not speed_of(step) and speed_of(step) is not None:
            continue
        why = left_out(step, judged)
        point = None if why else point_of(step)
        if point is not None:
            kept.append(point)
        else:
            left.append(f"{step_words(step)} left out: {why}.")
    return tuple(kept), tuple(left)


def step_words(step: Step) -> str:
    """Name a step."""
    speed = speed_of(step)
    at = f"{step.start_ns / 1e9:.1f} s"
    return f"Step at {at}" if speed is None else f"Speed {speed} (from {at})"


def left_out(step: Step, judged: Judged) -> str:
    """Give why a step is no point on the motor's curve; empty where it is one."""
    amps, volts = current_of(step), voltage_of(step)
    if amps is None or step.steady_n < LEAST_READINGS:
        return "no steady current"
    if volts is None:
        return "no motor voltage"
    if amps.value < judged.limits.open_current_a:
        return "next to no current"
    if volts.value <= max(judged.limits.driven_v, 1.2 * judged.limits.brush_v):
        return "next to no voltage across the motor"
    return past_words(step, judged) or _unsteady(step, volts.value) or _happened(step, judged)


def current_is_past(step: Step, judged: Judged) -> bool:
    """Tell whether the steady current of a step reaches beyond its meter's or clamp's range."""
    start_up_ns = round(judged.limits.inrush_window_s * 1e9)
    return step_is_past(judged.instruments, step, current_parts(judged.doubts), start_up_ns)


def past_words(step: Step, judged: Judged) -> str:
    """Say what of a step lies beyond what its meters are stated for; empty for nothing."""
    if current_is_past(step, judged):
        return "more current than the meter or the clamp is stated for"
    if volts_are_past(judged.instruments, step):
        return "more volts than a meter is stated for"
    return ""


def _unsteady(step: Step, volts: float) -> str:
    if several_levels(step):
        return SEVERAL_LEVELS
    if step.steady_sd_v is not None and step.steady_sd_v > _UNSTEADY * volts:
        return "its voltage was not steady (a pulsed feed, or a contact)"
    return ""


def _happened(step: Step, judged: Judged) -> str:
    since_ns = step.start_ns + round(judged.limits.inrush_window_s * 1e9)
    return _fault(step, since_ns, judged.spans) or doubt_words(step, judged.doubts)


def _fault(step: Step, since_ns: int, spans: Sequence[Span]) -> str:
    """Say what happened in a step that makes its mean no point.

    A dropout leaves no point although the steady mean holds none of it: what opens may close with
    another resistance. A current beyond its limit all the time is as good a point as one within;
    as nothing is beyond a limit while the motor starts, only what follows counts.
    """
    since_ns = min(since_ns, step.end_ns)
    lengths: dict[SpanKind, int] = {}
    for span in spans:
        if span.kind in _GONE and _shared(span, step.start_ns, step.end_ns):
            return f"a fault in it ({span.kind.value} at {span.start_ns / 1e9:.1f} s)"
        after = _shared(span, since_ns, step.end_ns)
        lengths[span.kind] = lengths.get(span.kind, 0) + after
    known = step.end_ns - since_ns - lengths.get(SpanKind.NO_DATA, 0)
    for kind in sorted(_BEYOND):
        if 0 < lengths.get(kind, 0) < _WHOLE * known:
            return f"the current changed within it ({kind.value})"
    return ""


def _shared(span: Span, start_ns: int, end_ns: int) -> int:
    return max(min(end_ns, span.end_ns) - max(start_ns, span.start_ns), 0)


def doubt_words(step: Step, doubts: Sequence[Doubt], *, current_only: bool = False) -> str:
    """Give why what was read in a step is not to be believed; empty where it is.

    Parameters
    ----------
    step : Step
    doubts : sequence of Doubt
    current_only : bool
        Doubts about a voltage do not count.
    """
    for doubt in doubts:
        if current_only and doubt.role not in {None, Role.MOTOR_CURRENT}:
            continue
        always = doubt.start_ns == doubt.end_ns == 0
        reaches = doubt.start_ns < step.end_ns and doubt.end_ns > step.start_ns
        if _why(doubt) and (always or reaches):
            return _why(doubt)
    return ""


def _why(doubt: Doubt) -> str:
    """Say what a doubt takes away; of a current that is negative the size is judged."""
    if doubt.kind is DoubtKind.SIGN and doubt.role is not Role.MOTOR_CURRENT:
        return _TURNED
    if doubt.kind is DoubtKind.DECADE:
        return off_words(doubt.factor)
    return _FALSE.get(doubt.kind, "")


def has_role(instruments: Sequence[Instrument], role: Role) -> bool:
    """Tell whether any channel plays ``role``."""
    return any(one.column(role) is not None for one in instruments)


def voltage_unknown(judged: Judged, used: Sequence[Point]) -> str:
    """Give why what was read is not the voltage across the motor; empty where it is.

    The feed alone is the motor's voltage only where the controller sits in it; there the feed
    falls with the speed. Where it does not, the controller is in the return.
    """
    if not has_role(judged.instruments, Role.MOTOR_FEED):
        return "the motor voltage was not read; read motor feed and motor return"
    if has_role(judged.instruments, Role.MOTOR_RETURN) or not used:
        return ""
    by_amps = sorted(used, key=lambda one: one.amps.value)
    if by_amps[0].volts.value < _FOLLOWS * by_amps[-1].volts.value:
        return ""
    return (
        "only the motor's feed was read, and it does not follow the speed: with a controller in"
        " the return that is not the voltage across the motor; read the motor's return as well"
    )


def finite(value: Budget) -> bool:
    """Tell whether a budget holds a number that can be worked with."""
    return math.isfinite(value.value) and math.isfinite(value.combined_u) and value.value > 0.0
