"""Against: one recording held against the baselines of its part number."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path

from meterlog.analysis.budgets import budget
from meterlog.analysis.budgets.usual_error import CLAMP_FLOOR_A, CLAMP_PERCENT, usual_half_width
from meterlog.analysis.compare import Ask, Side, side_of
from meterlog.analysis.compare.against_baseline import against_baseline
from meterlog.analysis.compare.at_one_voltage import AtOneVoltage
from meterlog.analysis.compare.summary import baseline_words
from meterlog.model import Budget, ComparedRun, Comparison, Limits, Source, StepDifference
from meterlog.model.errors import UsageError
from meterlog.model.origin_mark import origin_mark
from meterlog.work.amended import Amending, edits_told
from meterlog.work.review import AMENDED, review_folder
from meterlog.work.screening.baselines import Baseline, baselines_of
from meterlog.work.screening.good_runs import RULE, conditions_unlike
from meterlog.work.screening.part_numbers import part_number
from meterlog.work.screening.speed_figures import SpeedFigures, brought, speed_figures

_SHARED = "good motors:measuring"
_NOTES = (
    "The good ones were measured under conditions of their own: what those do to the current is in"
    " their spread. Nothing they were measured with is taken as shared with the new one.",
    RULE,
)


@dataclass(frozen=True, slots=True)
class AgainstRequest:
    """What shall be compared.

    Attributes
    ----------
    table : Path
        Of baselines, or the folder of a screening.
    new : Path
        The recording.
    number : str
        Its part number; empty: out of what it says of its part.
    limits : Limits or None
        None: its own.
    amending : Amending
    """

    table: Path
    new: Path
    number: str = ""
    limits: Limits | None = None
    amending: Amending = AMENDED


def compare_with_baselines(
    request: AgainstRequest, progress: Callable[[float], None] | None = None
) -> Comparison:
    """Hold a recording against the baselines of its part number, speed by speed.

    Nothing that the good ones were measured with is taken as shared with the new one.

    Raises
    ------
    UsageError
        If it does not say its part number, or no baseline of that is in the table.
    EvidenceError
        If the table can't be read.
    RecordingUnreadable
        If the folder holds no recording or it is damaged beyond use.
    """
    recording, review = review_folder(
        request.new, request.limits, progress, amending=request.amending
    )
    about = recording.about
    limits = request.limits or about.limits
    name = request.new.resolve().name
    side = side_of(name, about, review, limits, recording.standing)
    number = " ".join(request.number.split()).upper() or part_number(about.job.part, None)
    found = _found(request, number, origin_mark(about), limits)
    figures = {one.speed: one for one in speed_figures(side)}
    good = [one for each in found if (one := each.without(about.recording_id)) is not None]
    common = [one for one in good if one.speed in figures]
    refusal = _refusal(side, number, common)
    ask = Ask(limits=limits, baseline=True)
    steps = () if refusal else tuple(_step(one, figures[one.speed], side, ask) for one in common)
    return Comparison(
        old=_runs(common or good),
        new=side.run,
        refusal=refusal,
        conditions=(),
        steps=steps,
        overlays=(),
        notes=(*recording.damage, *edits_told(review), *_origin_told(side), *_NOTES),
        summary=_summary(side, number, steps, refusal),
    )


def _found(request: AgainstRequest, number: str, mark: str, limits: Limits) -> tuple[Baseline, ...]:
    subject = str(request.new)
    if not number:
        raise UsageError(
            "does not say which part number it is of.",
            subject=subject,
            remedy="Give it, such as --part FM-20.",
        )
    origin = "simulated" if mark.startswith("SIMULATED") else "measured"
    found = baselines_of(request.table, number, origin=origin, nominal_v=limits.nominal_v)
    if not found:
        raise UsageError(
            f"holds no {origin} baseline of {number} for {limits.nominal_v:g} V nominal.",
            subject=str(request.table),
            remedy="Screen folders with good runs of it, or give its number with --part.",
        )
    return found


def _refusal(side: Side, number: str, common: Sequence[Baseline]) -> str:
    """Give why it can't be compared, as whole sentences; empty where it can."""
    if side.current is None:
        return f"{side.run.name}: no channel read the motor current; there is nothing to compare."
    if side.tenfold is not None:
        return (
            f"{side.run.name}: the current may be off by a factor of ten. {side.tenfold.text} Put"
            f" that right and measure again."
        )
    stated = conditions_unlike(side.about.job.measured_under)
    if stated:
        return f"{side.run.name}: {stated}; the good ones were measured in the vehicle as it runs."
    if not common:
        return (
            f"{side.run.name} and the good ones of {number} have no commanded speed with steady,"
            f" undoubted current in common."
        )
    return ""


def _step(good: Baseline, figures: SpeedFigures, side: Side, ask: Ask) -> StepDifference:
    new = brought(figures, good.reference_v)
    volts = (*good.motor_v, figures.motor_v)
    as_read = _as_read(figures)
    if new is None:
        told = "unknown" if figures.motor_v is None else f"{figures.motor_v:.1f} V"
        words = f"its motor voltage is {told}, the good ones' currents stand at"
        words += f" {good.reference_v:.3g} V, and no current can be brought from there to here"
        at = AtOneVoltage(volts, None, (*_goods(good), as_read), (), words, too_far=True)
    else:
        words = f"at {good.reference_v:.3g} V, by the exponent of each"
        unstated = _unstated_a(side, new.value)
        amps = (*_goods(good), new)
        unknown = figures.current_u_a <= 0.0
        at = AtOneVoltage(
            volts, good.reference_v, amps, (), words, unstated_a=unstated, unknown=unknown
        )
    return against_baseline(good.speed, at, (), ask)


def _goods(good: Baseline) -> tuple[Budget, ...]:
    """Give the good ones' currents; what they were measured with is one error of all.

    So it does not become small in a mean of many, as it would were each meter's its own.
    """
    name = f"motor current at speed {good.speed}"
    return tuple(
        budget(name, amps, "A", (Source("measuring the good ones", u, "A", key=_SHARED),))
        for amps, u in zip(good.currents_a, good.currents_u_a, strict=True)
    )


def _as_read(figures: SpeedFigures) -> Budget:
    name = f"motor current at speed {figures.speed}"
    known = figures.current_u_a > 0.0
    sources = (Source("current as read", figures.current_u_a, "A"),) if known else ()
    return budget(name, figures.current_a, "A", sources)


def _unstated_a(side: Side, amps: float) -> float:
    """Give the usual error of a clamp of which nobody has stated one; of good ones it is stated."""
    home = side.current
    if home is None:
        return 0.0
    half = usual_half_width(home, amps, at_rest=False)
    if home.channel.accuracy is None:
        half = math.hypot(half, amps * CLAMP_PERCENT / 100.0 + CLAMP_FLOOR_A)
    return half


def _origin_told(side: Side) -> tuple[str, ...]:
    mark = origin_mark(side.about)
    if not mark or side.run.origin == "simulated":
        return ()
    return (f"{side.run.name} is {mark.lower()}; the good ones were read by meters.",)


def _runs(good: Sequence[Baseline]) -> tuple[ComparedRun, ...]:
    """Give the recordings of good motors, each once."""
    found: dict[str, ComparedRun] = {}
    for one in good:
        each = zip(one.recording_ids, one.folders, one.motors, one.started_utc, strict=True)
        for recording_id, folder, motor, started in each:
            part = f"{one.part_number}, {motor}"
            found[recording_id] = ComparedRun(folder, recording_id, part, started, one.origin)
    return tuple(found.values())


def _summary(side: Side, number: str, steps: Sequence[StepDifference], refusal: str) -> str:
    if refusal:
        return f"This recording can't be compared. {refusal}"
    many = max(step.count for step in steps)
    motors = "1 motor" if many == 1 else f"up to {many} motors"
    simulated = " All are simulated." if side.run.origin == "simulated" else ""
    lead = f"{side.label} against {motors} of {number} taken as good.{simulated}"
    return f"{lead} {baseline_words(steps)}"
