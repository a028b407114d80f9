"""At one voltage: the currents of all sides at one speed, brought to the same motor voltage."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from statistics import fmean

from meterlog.analysis.budgets import combine
from meterlog.analysis.compare.shared_errors import across_recordings
from meterlog.analysis.compare.side import Side
from meterlog.analysis.compare.unstated import unstated_a
from meterlog.analysis.motor import brought_to
from meterlog.analysis.motor.points import current_of, doubt_words, keyed, voltage_of
from meterlog.analysis.past_range import volts_are_past
from meterlog.model import Budget, Limits, Shape, Source, Step

_NEAR = 0.2
_SUPPLY, _SUPPLY_WORDS = 0.35, "11.8 V to 14.7 V makes 40 % of current"
_SUPPLY_SAME = 0.15


@dataclass(frozen=True, slots=True)
class AtOneVoltage:
    """Currents of one speed.

    Attributes
    ----------
    volts : tuple of float or None
        Motor voltages as measured, in the order of the sides.
    reference_v : float or None, volts
        None where the currents stand as measured.
    amps : tuple of Budget
        Keys mean the same error on all sides.
    loose : tuple of Source
        What a difference of these currents holds besides, in A.
    words : str
        How they were brought there, or why not, as a clause.
    too_far : bool
        The voltages differ so much that no difference can be told.
    unstated_a : float, amperes
        Half-width of what a clamp of the usual kind adds to a difference that nobody has stated.
    unknown : bool
        Of one of the currents no uncertainty is known at all.
    """

    volts: tuple[float | None, ...]
    reference_v: float | None
    amps: tuple[Budget, ...]
    loose: tuple[Source, ...]
    words: str
    too_far: bool = False
    unstated_a: float = 0.0
    unknown: bool = False


def at_one_voltage(sides: Sequence[Side], steps: Sequence[Step], limits: Limits) -> AtOneVoltage:
    """Bring the currents of one speed to one motor voltage.

    Parameters
    ----------
    sides : sequence of Side
    steps : sequence of Step
        The step of each side.
    limits : Limits
        Where all are near ``compared_at_v`` and on curves of their own that is the voltage; else
        it is their mean.
    """
    brought = _brought(sides, steps, limits)
    read = [current_of(step) for step in steps]
    return replace(
        brought,
        unstated_a=unstated_a(sides, brought.amps),
        unknown=any(one is None or not one.sources for one in read),
    )


def _brought(sides: Sequence[Side], steps: Sequence[Step], limits: Limits) -> AtOneVoltage:
    compared_at_v = limits.compared_at_v
    volts = tuple(_volts(side, step) for side, step in zip(sides, steps, strict=True))
    known = [one for one in volts if one is not None and one > 0.0]
    if len(known) < len(sides):
        return _as_measured(sides, steps, volts)
    fitted = all(not side.fit.refusal for side in sides)
    near = all(abs(one - compared_at_v) <= _NEAR * compared_at_v for one in known)
    # An exponent is the less to be trusted the farther a current is brought.
    reference_v = compared_at_v if near and fitted else fmean(known)
    brought = [
        brought_to(step, side.fit if fitted else None, reference_v, limits)
        for side, step in zip(sides, steps, strict=True)
    ]
    amps = [one for one in brought if one is not None]
    if len(amps) < len(sides):
        words = (
            f"the motor voltages ({_span(known)}) are too far apart to bring the currents to one"
        )
        bare = _bare(sides, steps)
        return AtOneVoltage(volts, None, bare, (), words, too_far=True)
    how = "by each motor's own curve" if fitted else "by the usual exponent"
    shared = tuple(
        across_recordings(one, side.about) for one, side in zip(amps, sides, strict=True)
    )
    return AtOneVoltage(volts, reference_v, shared, (), f"at {reference_v:.3g} V, {how}")


def _volts(side: Side, step: Step) -> float | None:
    """Give the motor voltage; None where it is not known or to be doubted."""
    read = voltage_of(step)
    if read is None or side.no_voltage or doubt_words(step, side.review.doubts):
        return None
    return None if volts_are_past(side.about.instruments, step) else read.value


def _span(volts: Sequence[float]) -> str:
    return f"{min(volts):.1f} V to {max(volts):.1f} V"


def _bare(sides: Sequence[Side], steps: Sequence[Step]) -> tuple[Budget, ...]:
    found = [
        across_recordings(keyed(amps, step, "amps"), side.about)
        for side, step in zip(sides, steps, strict=True)
        if (amps := current_of(step)) is not None
    ]
    return tuple(found)


def _as_measured(
    sides: Sequence[Side], steps: Sequence[Step], volts: tuple[float | None, ...]
) -> AtOneVoltage:
    """Leave the currents as they are: what the supply may have done is uncertainty then."""
    amps = _bare(sides, steps)
    engines = {side.about.job.measured_under.engine.lower() for side in sides}
    half = _SUPPLY_SAME if len(engines) == 1 and "" not in engines else _SUPPLY
    line = Source(
        "supply not known to be the same",
        half * fmean(one.value for one in amps) / math.sqrt(3.0),
        "A",
        shape=Shape.RECTANGULAR,
        basis=f"± {100.0 * half:.0f} %: {_SUPPLY_WORDS}, with the engine the same less; calculated",
    )
    words = (
        f"as measured: the motor voltage is not known on all sides, so that the supply alone may"
        f" make {100.0 * half:.0f} %"
    )
    return AtOneVoltage(volts, None, amps, (line,), words)


def difference(
    new: Budget, old: Budget, name: str, loose: Sequence[Source]
) -> tuple[Budget, Budget]:
    """Give new less old and new over old; what both share is taken as such.

    Parameters
    ----------
    new, old : Budget, amperes
        With keys that mean the same on both sides.
    name : str
    loose : sequence of Source, amperes
        What the difference holds besides.

    Source
    ------
    JCGM 100:2008, 5.2.2; for a common gain error of the meter F.1.2.3 (correlated readings of one
    instrument).
    """
    apart = combine(
        f"difference {name}", new.value - old.value, "A", [(new, 1.0), (old, -1.0)], loose
    )
    ratio = combine(
        f"ratio {name}",
        new.value / old.value,
        "",
        [(new, 1.0 / old.value), (old, -new.value / old.value**2)],
        [_per(one, old.value) for one in loose],
    )
    return apart, ratio


def _per(source: Source, amps: float) -> Source:
    return Source(
        source.name,
        source.standard_u,
        source.unit,
        source.sensitivity / amps,
        source.shape,
        source.degrees,
        source.key,
        source.basis,
    )
