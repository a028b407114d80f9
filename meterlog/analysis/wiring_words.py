"""Wiring words: where on its side the circuit opened, as far as further channels say.

Source: Kirchhoff's voltage law along battery, relay, feed and along return, controller, ground;
the order of asking is common practice, no source.
"""

from __future__ import annotations

from meterlog.analysis.levels import BIN_NS
from meterlog.analysis.side_volts import SideVolts
from meterlog.model import Limits, Role, Span

LOOK_NS = 3_000_000_000
RISEN = 0.5
"""The controller's ground has risen with the return when it is at this part of it or more."""
FELL = 0.5
"""A voltage is gone below this part of what it was."""


def _inside(side_volts: SideVolts, role: Role, span: Span) -> float | None:
    start_ns = span.start_ns + span.start_edge_ns
    level = side_volts.mean(role, start_ns, min(span.end_ns, start_ns + LOOK_NS))
    return None if level is None else level.mean


def _at_end(side_volts: SideVolts, role: Role, span: Span) -> float | None:
    """Give the level late in the span: what generates has slowed by then."""
    level = side_volts.mean(role, max(span.start_ns, span.end_ns - 5 * BIN_NS), span.end_ns)
    return _inside(side_volts, role, span) if level is None else level.mean


def _before(side_volts: SideVolts, role: Role, span: Span) -> float | None:
    level = side_volts.mean(role, span.start_ns - LOOK_NS // 2, span.start_ns - 2 * BIN_NS)
    return None if level is None else level.mean


def ground_words(side_volts: SideVolts, span: Span, limits: Limits, *, command_stayed: bool) -> str:
    """Say which part of the ground side opened; empty where no channel says it.

    Parameters
    ----------
    side_volts : SideVolts
    span : Span
        Of ground-lost.
    limits : Limits
    command_stayed : bool
        The command is known to have stayed.
    """
    ground = _at_end(side_volts, Role.CONTROLLER_GROUND, span)
    back = _at_end(side_volts, Role.MOTOR_RETURN, span)
    if ground is None:
        return ""
    level = back if back is not None else limits.nominal_v
    if ground >= max(RISEN * level, 1.0):
        return (
            f"the controller's ground rose to {ground:.1f} V: the ground wire is open, not the"
            f" controller"
        )
    if ground > 1.0:
        return f"the controller's ground is at {ground:.1f} V, neither risen with it nor at nothing"
    if command_stayed:
        return (
            f"the controller's ground stayed at {ground:.2f} V and so did its command: consistent"
            f" with an open controller (or its plug)"
        )
    return (
        f"the controller's ground stayed at {ground:.2f} V: the controller or its command, not the"
        f" ground wire"
    )


def feed_words(side_volts: SideVolts, span: Span) -> str:
    """Say how far ahead of the motor the voltage is still there; empty where no channel says it."""
    for role, there, gone in (
        (
            Role.BATTERY,
            "the battery held at {v:.1f} V",
            "the battery's own reading fell to {v:.1f} V: the supply itself went, or that probe",
        ),
        (
            Role.RELAY_OUT,
            "{v:.1f} V stood behind the relay: the wire or plug from there to the motor is open",
            "behind the relay {v:.1f} V were left: fuse, relay or its coil",
        ),
    ):
        was, now = _before(side_volts, role, span), _inside(side_volts, role, span)
        if now is None:
            continue
        known = was if was is not None and was > 1.0 else None
        if known is not None and now < FELL * known:
            return gone.format(v=now)
        if role is Role.RELAY_OUT or not side_volts.has(Role.RELAY_OUT):
            return there.format(v=now)
    return ""


def went_with_it(side_volts: SideVolts, span: Span) -> bool:
    """Tell whether another voltage ahead of the motor went as well: no single probe slipped."""
    for role in (Role.RELAY_OUT, Role.BATTERY):
        was, now = _before(side_volts, role, span), _inside(side_volts, role, span)
        if was is not None and now is not None and was > 1.0 and now < FELL * was:
            return True
    return False


def battery_went(side_volts: SideVolts, span: Span) -> bool:
    """Tell whether the battery's own reading went with the current."""
    was, now = _before(side_volts, Role.BATTERY, span), _inside(side_volts, Role.BATTERY, span)
    return was is not None and now is not None and was > 1.0 and now < FELL * was
