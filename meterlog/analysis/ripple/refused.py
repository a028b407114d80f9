"""Refused: why the ripple of a stretch can't be looked at, in words."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from meterlog.analysis.ripple.plausible import (
    LEAST_RIPPLE_HZ,
    LOWEST_RATE_HZ,
    NEEDED_RATE_HZ,
    SAMPLES_PER_RIPPLE,
)
from meterlog.analysis.ripple.tracking import Tracked
from meterlog.analysis.ripple.windows import Window
from meterlog.model import Channel, Limits, Step

_PULSING = 0.8
"""A voltage that falls to less than a fifth of its height, again and again, is switched."""
_SOON_S, JUMP = 0.5, 0.03
"""A fan's speed does not change by this part in so short a time once it has settled."""
_JUMPING = (
    "The strongest line is now one, now another of the turn's: the ripple does not stand out from"
    " the noise and the notches. More readings a second, or a clamp of more volts an ampere, would"
    " help."
)


def too_slow(rate_hz: float, channel: Channel) -> str:
    """Give why such readings show no ripple, however it is; empty where they may."""
    if channel.integration_s * LEAST_RIPPLE_HZ > 1.0:
        return averaged(channel)
    if rate_hz >= LOWEST_RATE_HZ * 0.999:
        return ""
    rate = f"{rate_hz:,.0f}" if rate_hz >= 10.0 else f"{rate_hz:.2g}"
    return (
        f"Too slow for the commutator's ripple: {rate} readings/s; it takes {LOWEST_RATE_HZ:,.0f}"
        f" at the least, and {NEEDED_RATE_HZ:,.0f} to have {SAMPLES_PER_RIPPLE:g} on each ripple"
        f" of any cabin fan."
    )


def averaged(channel: Channel) -> str:
    """Give what is said of a meter that averages over more than a ripple."""
    return (
        f"The meter averages over {channel.integration_s * 1e3:.3g} ms, longer than a ripple"
        f" lasts: whatever ripple there is, it doesn't show it."
    )


def no_windows(windows: Sequence[Window], limits: Limits) -> str:
    """Give why nothing of a step can be looked at; empty where there are windows to look at."""
    if not windows:
        return (
            "No steady running of a quarter of a second, evenly read and without a break, to look"
            " at the ripple."
        )
    if any(one.pulsing > _PULSING for one in windows):
        return (
            "The motor's voltage is switched on and off: the chopping hides the ripple. Feed the"
            " motor with plain direct current and record again."
        )
    if limits.controller.kind == "pulsed" and not any(one.pulsing > 0.0 for one in windows):
        return (
            "The controller is stated to be a pulsed one, and its voltage was not read with the"
            " current: chopping can't be told from ripple. Feed the motor with plain direct"
            " current, or record the motor's voltage at the same rate."
        )
    return ""


def unclear(
    step: Step,
    tracked: Sequence[Tracked],
    windows: Sequence[Window],
    channel: Channel,
    limits: Limits,
) -> str:
    """Give why what was followed is no ripple to be looked at; empty where it is."""
    if 2 * len(tracked) < len(windows):
        return _no_ripple(step, limits)
    if jumps(tracked):
        return _JUMPING
    return averaged(channel) if channel.integration_s * tracked[0].hz > 1.0 else ""


def jumps(tracked: Sequence[Tracked]) -> bool:
    """Tell whether the line is another one from one window to the next, as no shaft's can be."""
    return any(
        after.t_s[0] - before.t_s[-1] < _SOON_S
        and abs(after.track_hz[0] / before.track_hz[-1] - 1.0) > JUMP
        for before, after in pairwise(tracked)
    )


def _no_ripple(step: Step, limits: Limits) -> str:
    amps = abs(step.steady_mean_a or 0.0)
    if amps >= limits.locked_current_a:
        return (
            f"No ripple although {amps:.3g} A flow: consistent with a rotor that does not turn. A"
            f" clamp too slow to show ripple would look the same."
        )
    return (
        f"No regular ripple stands out in {amps:.3g} A: the motor does not turn, its ripple is too"
        f" small for this clamp and range, or the clamp is too slow to show it."
    )
