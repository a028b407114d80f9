"""Against: one recording held against the baselines of its part number."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from pathlib import Path

from meterlog.analysis.compare import side_of
from meterlog.model import Comparison, Limits
from meterlog.model.errors import UsageError
from meterlog.model.origin_mark import origin_mark
from meterlog.profile.full_path import full_path
from meterlog.recording import Recording
from meterlog.work.amended import Amending, edits_told
from meterlog.work.compare import not_whole
from meterlog.work.drawn import Drawn, drawn_of, origin_of
from meterlog.work.review import AMENDED, review_folder
from meterlog.work.screening.baselines import Baseline, baselines_of
from meterlog.work.screening.held import Held, held_against
from meterlog.work.screening.part_numbers import part_number


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
    """Give the comparison of :func:`hold_folder`; raises as that does."""
    return hold_folder(request, progress).comparison


def hold_folder(request: AgainstRequest, progress: Callable[[float], None] | None = None) -> Held:
    """Hold a recording against the baselines of its part number, speed by speed.

    Raises
    ------
    UsageError
        If it does not say its part number, or no baseline of that is in the table.
    EvidenceError
        If the table can't be read.
    RecordingUnreadable
        If the folder holds no recording or it is damaged beyond use.
    """
    _refuse_unknown(request)
    recording, review = review_folder(
        request.new, request.limits, progress, amending=request.amending
    )
    about = recording.about
    limits = request.limits or about.limits
    name = full_path(request.new).name
    drawn = drawn_of(side_of(name, about, review, limits, recording.standing))
    number = number_of(about.job.part, request.number)
    told = held_against(drawn, _found(request, number, drawn), number)
    notes = (*not_whole(name, recording, review), *edits_told(review), *told.comparison.notes)
    return replace(told, comparison=replace(told.comparison, notes=notes))


def _refuse_unknown(request: AgainstRequest) -> None:
    """Refuse what the table has nothing of, before it is reviewed: that may take long."""
    about = Recording.open(request.new).about
    number = number_of(about.job.part, request.number)
    _refuse_no_number(request, number)
    origin = origin_of(origin_mark(about))
    if not baselines_of(request.table, number, origin=origin):
        raise _no_baseline(request, f"holds no {origin} baseline of {number}.")


def number_of(part: str, stated: str) -> str:
    """Give a part number as baselines are found by it; empty where there is none.

    Parameters
    ----------
    part : str
        As a recording says it.
    stated : str
        The number, by who asks or by the job's card; empty where nobody says it.
    """
    return " ".join(stated.split()).upper() or part_number(part, None)


def _found(request: AgainstRequest, number: str, drawn: Drawn) -> tuple[Baseline, ...]:
    _refuse_no_number(request, number)
    found = baselines_of(request.table, number, origin=drawn.origin)
    fit = tuple(one for one in found if one.nominal_v == drawn.nominal_v)
    if not fit:
        volts = " and ".join(dict.fromkeys(f"{one.nominal_v:g} V" for one in found))
        raise _no_baseline(
            request,
            f"holds {drawn.origin} baselines of {number} for {volts} nominal only, not for"
            f" {drawn.nominal_v:g} V.",
        )
    return fit


def _refuse_no_number(request: AgainstRequest, number: str) -> None:
    if not number:
        raise UsageError(
            "does not say which part number it is of.",
            subject=str(request.new),
            remedy="Give it, such as --part FM-20.",
        )


def _no_baseline(request: AgainstRequest, why: str) -> UsageError:
    return UsageError(
        why,
        subject=str(request.table),
        remedy="Screen folders with good runs of it, or give its number with --part.",
    )
