"""Other figures: start-up and fuse load of two motors, where both recordings hold them."""

from __future__ import annotations

from collections.abc import Sequence

from meterlog.analysis.compare.at_one_voltage import difference
from meterlog.analysis.compare.shared_errors import across_recordings
from meterlog.analysis.compare.side import Side
from meterlog.analysis.rounding import with_uncertainty
from meterlog.analysis.startup import peak_words
from meterlog.model import Budget, FigureDifference, FuseCheck, StartUp


def other_figures(old: Side, new: Side) -> tuple[FigureDifference, ...]:
    """Set side by side what else both recordings hold; nothing where one lacks it.

    Parameters
    ----------
    old, new : Side

    Returns
    -------
    tuple of FigureDifference
        Per speed at which both were started by command: peak and peak over steady current, of the
        highest start each; and the fuse's load.
    """
    starts = _starts(old.review.startups, new.review.startups)
    return (*starts, *_fuse(old, new))


def _highest(starts: Sequence[StartUp]) -> dict[int, StartUp]:
    highest: dict[int, StartUp] = {}
    for one in starts:
        if one.speed and one.cause == "command":
            known = highest.get(one.speed)
            if known is None or one.peak_a > known.peak_a:
                highest[one.speed] = one
    return highest


def _starts(old: Sequence[StartUp], new: Sequence[StartUp]) -> list[FigureDifference]:
    by_old, by_new = _highest(old), _highest(new)
    told = []
    for speed in sorted(by_old.keys() & by_new.keys()):
        one, other = by_old[speed], by_new[speed]
        slow = _why_low(one, other)
        sizes = f"old {peak_words(one)}, new {peak_words(other)}"
        told.append(
            FigureDifference(
                "start-up peak",
                "A",
                speed,
                one.peak_a,
                other.peak_a,
                f"Start to speed {speed}: peak {sizes}{slow}.",
            )
        )
        if one.ratio is not None and other.ratio is not None:
            words = (
                f"Start to speed {speed}: peak over steady, old {one.ratio:.1f}, new"
                f" {other.ratio:.1f}{slow}."
            )
            told.append(
                FigureDifference("peak over steady", "", speed, one.ratio, other.ratio, words)
            )
    return told


def _why_low(one: StartUp, other: StartUp) -> str:
    if one.peak_over or other.peak_over:
        return "; the meter showed an overload at the peak: it is higher"
    if one.peak_cut or other.peak_cut:
        return "; the readings stand at the peak, as at the end of a range: it may be higher"
    if one.peak_past or other.peak_past:
        return "; a peak is more than the meter or the clamp is stated for: it may be higher"
    floor = one.peak_floor or other.peak_floor
    return "; the readings were too slow to show the true peaks" if floor else ""


def _fuse(old: Side, new: Side) -> list[FigureDifference]:
    one, other = old.review.fuse, new.review.fuse
    if one is None or other is None or one.load is None or other.load is None:
        return []
    words = (
        f"Fuse: {one.rating_a:g} A loaded to {_percent(one.load)} by the old{_at(one)} and"
        f" {other.rating_a:g} A to {_percent(other.load)} by the new{_at(other)}"
        f"{_apart(old, new)}{_lacking(one.load, other.load)}."
    )
    return [
        FigureDifference("fuse load", "%", other.speed, one.load.value, other.load.value, words)
    ]


def _apart(old: Side, new: Side) -> str:
    one, other = old.review.fuse, new.review.fuse
    if one is None or other is None or one.load is None or other.load is None:
        return ""
    if one.rating_a != other.rating_a or one.load.value <= 0.0:
        return " (of different ratings: not comparable)"
    if one.speed != other.speed:
        return " (at different speeds: not comparable)"
    apart, _ = difference(
        across_recordings(other.load, new.about), across_recordings(one.load, old.about), "", ()
    )
    size = with_uncertainty(abs(apart.value), apart.expanded if apart.sources else None, "points")
    return f", as measured: {size} {'more' if apart.value >= 0.0 else 'less'} by the new"


def _lacking(*loads: Budget) -> str:
    """Say once what no ± of the sentence holds, of either load and so of their difference."""
    each = [words for load in loads for words in load.lacking.split("; ") if words]
    return f" (not in: {'; '.join(dict.fromkeys(each))})" if each else ""


def _percent(load: Budget) -> str:
    return with_uncertainty(load.value, load.expanded if load.sources else None, "%")


def _at(check: FuseCheck) -> str:
    return "" if check.speed is None else f" at speed {check.speed}"
