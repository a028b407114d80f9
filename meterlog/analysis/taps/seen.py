"""Seen: everything about the taps of a recording that the points of the form are judged by."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from meterlog.analysis.judged import Judged
from meterlog.analysis.levels import Levels
from meterlog.analysis.taps.attempts import Attempt
from meterlog.analysis.taps.gone_readings import GoneFigures
from meterlog.analysis.taps.gone_stretches import GoneStretch
from meterlog.analysis.timeline import SpeedTimeline
from meterlog.model import Event, EventKind, Instrument, Role, Step


@dataclass(frozen=True, slots=True)
class Seen:
    """What was seen.

    Attributes
    ----------
    judged : Judged
    levels : Levels
    timeline : SpeedTimeline
    stretches : tuple of GoneStretch
    attempts : tuple of Attempt
    figures : tuple of GoneFigures
        Of the stretches that the tried attempts met, in the order of ``tried``.
    """

    judged: Judged
    levels: Levels
    timeline: SpeedTimeline
    stretches: tuple[GoneStretch, ...]
    attempts: tuple[Attempt, ...]
    figures: tuple[GoneFigures, ...]

    @property
    def tried(self) -> list[Attempt]:
        """Attempts made while the current was gone for what may be the motor's own fault."""
        return [one for one in self.attempts if one.tried]

    @property
    def taps_ns(self) -> list[int]:
        """Times of all taps, in order."""
        return [t_ns for one in self.attempts for t_ns in one.times_ns]

    @property
    def moved(self) -> list[Event]:
        """Marks of something moved by hand."""
        return [event for event in self.judged.events if event.kind is EventKind.WIGGLE]

    def base_a(self, t_ns: int, speed: int | None) -> float | None:
        """Give the steady current of the step that holds ``t_ns``, or of another at its speed."""
        steps = [step for step in self.judged.steps if step.steady_mean_a is not None]
        here = [step for step in steps if step.start_ns <= t_ns <= step.end_ns]
        same = here or [step for step in steps if step.speed == speed and speed is not None]
        best = max(same, key=lambda step: step.steady_n, default=None)
        return None if best is None or best.steady_mean_a is None else abs(best.steady_mean_a)

    def supply_v(self, index: int) -> tuple[float | None, str]:
        """Give the battery voltage at one tried attempt and its name; else the feed's."""
        t_ns = self.tried[index].times_ns[0]
        step = self._step(t_ns)
        if step is not None and step.steady_battery_v is not None:
            return step.steady_battery_v, "battery"
        return self.figures[index].feed_v, "feed"

    def _step(self, t_ns: int) -> Step | None:
        held = [one for one in self.judged.steps if one.start_ns <= t_ns <= one.end_ns]
        return held[0] if held else None

    def read_ns(self) -> tuple[int, int]:
        """Give from when to when there are readings."""
        spans = self.judged.spans
        return (spans[0].start_ns, spans[-1].end_ns) if spans else (0, 0)


def instrument_of(instruments: Sequence[Instrument], role: Role) -> Instrument | None:
    """Give the instrument that plays a role; None where none does."""
    return next((one for one in instruments if one.column(role) is not None), None)
