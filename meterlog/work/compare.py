"""The comparison of recorded folders: each reviewed, then set side by side."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from meterlog.analysis.compare import (
    Ask,
    OverlayGrid,
    Paired,
    Side,
    bins_for,
    compare,
    overlay,
    side_of,
)
from meterlog.model import Comparison, EventKind, Limits, Overlay, Review, Role, Step
from meterlog.model.errors import UsageError
from meterlog.profile.full_path import full_path
from meterlog.recording import Recording
from meterlog.work.amended import Amending, edits_told
from meterlog.work.review import AMENDED, review_folder


@dataclass(frozen=True, slots=True)
class CompareRequest:
    """What shall be compared.

    Attributes
    ----------
    old : tuple of Path
        One folder; or, with ``baseline``, those of good motors.
    new : Path
    limits : Limits or None
        None: each is judged by its own, and compared by the new one's.
    baseline, by_current : bool
    max_difference_percent : float or None
        See :class:`meterlog.analysis.compare.Ask`.
    amending : Amending
        What becomes of edits on top of the recordings.
    """

    old: tuple[Path, ...]
    new: Path
    limits: Limits | None = None
    baseline: bool = False
    by_current: bool = False
    max_difference_percent: float | None = None
    amending: Amending = AMENDED


@dataclass(frozen=True, slots=True)
class Stretch:
    """What is laid over each other, from the command on.

    Attributes
    ----------
    name : str
        As of the :class:`~meterlog.model.Overlay`: ``time`` or ``speed <n>``.
    speed : int or None
        None: the whole run.
    ends_ns : tuple of (int, int), nanoseconds since each recording's zero
        Start and end in each recording, the old ones first.
    """

    name: str
    speed: int | None
    ends_ns: tuple[tuple[int, int], ...]


@dataclass(frozen=True, slots=True)
class Laid:
    """A comparison, and the recordings behind it for those who draw them.

    Attributes
    ----------
    comparison : Comparison
    recordings : tuple of Recording
        As amended; the old ones first.
    stretches : tuple of Stretch
        The whole run, then each speed that is compared; of a refused comparison the whole run
        alone.
    signs : tuple of float
        Of each recording: -1 where the clamp was the other way round.
    """

    comparison: Comparison
    recordings: tuple[Recording, ...]
    stretches: tuple[Stretch, ...]
    signs: tuple[float, ...]


def compare_folders(
    request: CompareRequest, progress: Callable[[float], None] | None = None
) -> Comparison:
    """Give the comparison of :func:`lay_folders`; raises as that does."""
    return lay_folders(request, progress).comparison


def lay_folders(request: CompareRequest, progress: Callable[[float], None] | None = None) -> Laid:
    """Compare recordings, and tell which stretches of them lie over each other.

    Parameters
    ----------
    request : CompareRequest
    progress : callable or None
        Called with the part done, 0 to 1.

    Returns
    -------
    Laid
        Its comparison has a refusal where they can't be compared.

    Raises
    ------
    UsageError
        If one recording is given twice.
    RecordingUnreadable
        If a folder holds no recording or it is damaged beyond use.
    """
    folders = (*request.old, request.new)
    reviewed: list[tuple[Recording, Review]] = []
    for place, folder in enumerate(folders):
        share = _share(progress, place, len(folders))
        one = review_folder(folder, request.limits, share, amending=request.amending)
        _refuse_twice(one[0], [recording for recording, _ in reviewed])
        reviewed.append(one)
    return _laid(request, reviewed)


def compare_reviewed(
    request: CompareRequest, reviewed: Sequence[tuple[Recording, Review]]
) -> Comparison:
    """Compare recordings that have been reviewed, by the request's limits where it has some.

    Parameters
    ----------
    request : CompareRequest
    reviewed : sequence of (Recording, Review)
        Of the old folders, then of the new one.

    Returns
    -------
    Comparison

    Raises
    ------
    UsageError
        If one recording is given twice.
    """
    return _laid(request, reviewed).comparison


def _laid(request: CompareRequest, reviewed: Sequence[tuple[Recording, Review]]) -> Laid:
    names = _names((*request.old, request.new))
    recordings: list[Recording] = []
    sides: list[Side] = []
    for (recording, review), name in zip(reviewed, names, strict=True):
        _refuse_twice(recording, recordings)
        recordings.append(recording)
        sides.append(side_of(name, recording.about, review, request.limits, recording.standing))
    ask = Ask(
        limits=sides[-1].limits,
        baseline=request.baseline,
        by_current=request.by_current,
        max_difference_percent=request.max_difference_percent,
    )
    paired = compare(sides[:-1], sides[-1], ask)
    lacks = tuple(
        told
        for name, (recording, review) in zip(names, reviewed, strict=True)
        for told in not_whole(name, recording, review)
    )
    edited = tuple(
        f"{name}: {text}"
        for name, (_, review) in zip(names, reviewed, strict=True)
        for text in edits_told(review)
    )
    notes = (*lacks, *edited, *paired.comparison.notes)
    stretches = _stretches(recordings, paired)
    signs = tuple(
        _sign([steps[place] for steps in paired.steps.values()]) for place in range(len(sides))
    )
    refused = bool(paired.comparison.refusal)
    overlays = () if refused else _overlays(recordings, sides, stretches, signs)
    comparison = replace(paired.comparison, overlays=overlays, notes=notes)
    return Laid(comparison, tuple(recordings), stretches, signs)


def not_whole(name: str, recording: Recording, review: Review) -> tuple[str, ...]:
    """Say of a recording that is compared what of it is damaged, or that it is one part."""
    damage = (f"{name}: NOT WHOLE: {text}" for text in recording.damage)
    return (*damage, *([f"{name}: ONE PART: {review.part}"] if review.part else []))


def _names(folders: Sequence[Path]) -> list[str]:
    """Give a short name of each folder: its last part, more where that is not enough."""
    last = [full_path(folder).name for folder in folders]
    if len(set(last)) == len(last):
        return last
    return [str(folder) for folder in folders]


def _share(
    progress: Callable[[float], None] | None, place: int, count: int
) -> Callable[[float], None] | None:
    if progress is None:
        return None
    return lambda part: progress((place + part) / count)


def _refuse_twice(recording: Recording, others: Sequence[Recording]) -> None:
    for other in others:
        if other.about.recording_id == recording.about.recording_id:
            raise UsageError(
                f"is the same recording as {other.folder}.",
                subject=str(recording.folder),
                remedy="Give two different recordings; a copy says nothing new.",
            )


def _stretches(recordings: Sequence[Recording], paired: Paired) -> tuple[Stretch, ...]:
    """Give what is laid over each other: the whole run, then each speed."""
    each = [
        Stretch(f"speed {common}", common, tuple((step.start_ns, step.end_ns) for step in steps))
        for common, steps in paired.steps.items()
    ]
    return (Stretch("time", None, tuple(_run(one) for one in recordings)), *each)


def _overlays(
    recordings: Sequence[Recording],
    sides: Sequence[Side],
    stretches: Sequence[Stretch],
    signs: Sequence[float],
) -> tuple[Overlay, ...]:
    """Lay the currents over each other, from the command on, each to the end of its own step."""
    interval_s = max(_interval_s(side) for side in sides)
    rows = []
    for stretch in stretches:
        length_s = max(1e-3, *((end - start) / 1e9 for start, end in stretch.ends_ns))
        bins = bins_for(length_s, interval_s)
        rows.append([OverlayGrid(start, length_s, bins, end) for start, end in stretch.ends_ns])
    for place, (recording, side) in enumerate(zip(recordings, sides, strict=True)):
        _fill(recording, side, [grids[place] for grids in rows])
    return tuple(
        overlay(one.name, one.speed, grids, signs)
        for one, grids in zip(stretches, rows, strict=True)
    )


def _run(recording: Recording) -> tuple[int, int]:
    """Give from when to when the fan was to run: from the first command other than off."""
    starts = [
        event.t_ns
        for event in recording.standing
        if event.kind is EventKind.SPEED and event.value.isdigit() and event.speed > 0
    ]
    return (starts[0] if starts else 0), recording.end_ns


def _interval_s(side: Side) -> float:
    home = _home(side)
    return 0.0 if home is None else side.about.instruments[home[0]].channels[home[1]].interval_s


def _home(side: Side) -> tuple[int, int] | None:
    """Give instrument and column of the motor current."""
    for place, instrument in enumerate(side.about.instruments):
        column = instrument.column(Role.MOTOR_CURRENT)
        if column is not None:
            return place, column
    return None


def _fill(recording: Recording, side: Side, grids: Sequence[OverlayGrid]) -> None:
    home = _home(side)
    if home is None:
        return
    for block in recording.blocks(side.about.instruments[home[0]].key):
        for grid in grids:
            grid.take(block.t_ns, block.values[:, home[1]])


def _sign(steps: Sequence[Step]) -> float:
    """Tell whether the clamp was the other way round."""
    return -1.0 if sum(step.steady_mean_a or 0.0 for step in steps) < 0.0 else 1.0
