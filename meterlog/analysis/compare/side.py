"""Side: one reviewed recording as a comparison needs it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from meterlog.analysis.judged import Judged
from meterlog.analysis.motor import motor_fit
from meterlog.analysis.motor.points import (
    LEAST_READINGS,
    current_of,
    doubt_words,
    finite,
    points,
    several_levels,
    speed_of,
    voltage_unknown,
)
from meterlog.analysis.past_range import current_parts, step_is_past
from meterlog.analysis.stated_channel import StatedChannel
from meterlog.model import (
    UNDATED,
    About,
    ComparedRun,
    Doubt,
    DoubtKind,
    Event,
    Limits,
    MotorFit,
    Review,
    Role,
    Step,
)

_ALWAYS_FALSE = (DoubtKind.DECADE,)


@dataclass(frozen=True, slots=True)
class Side:
    """One recording with its review.

    Attributes
    ----------
    run : ComparedRun
    about : About
    limits : Limits
        By which it was judged.
    review : Review
    fit : MotorFit
        Or its refusal.
    no_voltage : str
        Why the motor voltage is not known; empty where it is.
    current : StatedChannel or None
        What is known of how well the motor current was read; None where no channel read it.
    """

    run: ComparedRun
    about: About
    limits: Limits
    review: Review
    fit: MotorFit
    no_voltage: str
    current: StatedChannel | None

    @property
    def label(self) -> str:
        """Name the motor: by its part where somebody stated it, else by the folder."""
        return self.run.part or self.run.name

    @property
    def tenfold(self) -> Doubt | None:
        """The doubt that the current is off by a factor of ten or more; None without one."""
        found = (one for one in self.review.doubts if one.kind in _ALWAYS_FALSE)
        return next(found, None)


def side_of(
    name: str,
    about: About,
    review: Review,
    limits: Limits | None = None,
    events: Sequence[Event] = (),
) -> Side:
    """Make a side of a recording.

    Parameters
    ----------
    name : str
        Of its folder.
    about : About
    review : Review
    limits : Limits or None
        By which it was judged; None: those of the recording.
    events : sequence of Event
        Of the recording: zeros taken meanwhile are among them.
    """
    by = limits or about.limits
    judged = Judged(
        instruments=about.instruments,
        limits=by,
        conditions=about.job.measured_under,
        spans=review.spans,
        steps=review.steps,
        findings=review.findings,
        doubts=review.doubts,
    )
    used, _ = points(judged)
    return Side(
        run=ComparedRun(
            name=name,
            recording_id=about.recording_id,
            part=about.job.part,
            started_utc="" if about.started_utc == UNDATED else about.started_utc.isoformat(),
            origin=about.origin.value,
        ),
        about=about,
        limits=by,
        review=review,
        fit=motor_fit(judged) if review.motor is None else review.motor,
        no_voltage=voltage_unknown(judged, used),
        current=_current(about, events),
    )


def _current(about: About, events: Sequence[Event]) -> StatedChannel | None:
    for instrument in about.instruments:
        column = instrument.column(Role.MOTOR_CURRENT)
        if column is not None:
            home = StatedChannel(instrument, column)
            for event in events:
                home.take(event)
            return home
    return None


def comparable_steps(side: Side, *, by_current: bool) -> dict[int, Step]:
    """Give the step that stands for each speed: of several the one with most steady readings.

    Parameters
    ----------
    side : Side
    by_current : bool
        Speeds are ranks by order of current, 1 for the least, whatever was commanded.

    Returns
    -------
    dict of int to Step
        Only steps with steady current and no doubt about it, nor more of it than the meter or
        the clamp is stated for.
    """
    by_speed: dict[int, Step] = {}
    for step in side.review.steps:
        speed = speed_of(step) if by_current else step.speed
        if speed is None or speed == 0 or not _is_usable(step, side):
            continue
        other = by_speed.get(speed)
        if other is None or step.steady_n > other.steady_n:
            by_speed[speed] = step
    if not by_current:
        return by_speed
    ranked = sorted(by_speed.values(), key=lambda step: abs(step.steady_mean_a or 0.0))
    return dict(enumerate(ranked, start=1))


def _is_usable(step: Step, side: Side) -> bool:
    amps = current_of(step)
    if amps is None or step.steady_n < LEAST_READINGS or not finite(amps):
        return False
    start_up_ns = round(side.limits.inrush_window_s * 1e9)
    parts = current_parts(side.review.doubts)
    if step_is_past(side.about.instruments, step, parts, start_up_ns):
        return False
    running = amps.value >= side.limits.open_current_a and not several_levels(step)
    return running and not doubt_words(step, side.review.doubts, current_only=True)
