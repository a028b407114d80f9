"""LaidRuns: two or more recordings compared, and ready to be drawn over each other."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from meterlog.model import Comparison, Instrument
from meterlog.window.second_run import SecondRun
from meterlog.window.words import say

if TYPE_CHECKING:
    from meterlog.work.compare import CompareRequest, Stretch

_JUDGING = 0.8
"""Share of judging in the whole work; the rest is reading once more for the picture."""


@dataclass(frozen=True, slots=True)
class LaidRuns:
    """What the page shows.

    Attributes
    ----------
    comparison : Comparison
    runs : tuple of SecondRun
        The old ones, then the new one.
    stretches : tuple of Stretch
        The whole run, then each speed that is compared.
    """

    comparison: Comparison
    runs: tuple[SecondRun, ...]
    stretches: tuple[Stretch, ...]

    @property
    def mark(self) -> str:
        """What marks the readings of any side that no meter sent, each once; empty for none."""
        marks = dict.fromkeys(run.mark for run in self.runs if run.mark)
        return " · ".join(marks)


def lay_runs(request: CompareRequest, progress: Callable[[float], None]) -> LaidRuns:
    """Compare and read for drawing; for a thread of its own.

    Parameters
    ----------
    request : CompareRequest
    progress : callable
        Called with the part done, 0 to 1.

    Raises
    ------
    UsageError
        If one recording is given twice.
    RecordingUnreadable
        If a folder holds no recording or it is damaged beyond use.
    EvidenceError
        If the file of a recording's edits can't be read.
    """
    from meterlog.work.compare import lay_folders

    laid = lay_folders(request, lambda part: progress(_JUDGING * part))
    many = len(laid.recordings)
    runs = []
    for place, (recording, sign) in enumerate(zip(laid.recordings, laid.signs, strict=True)):

        def told(part: float, place: int = place) -> None:
            progress(_JUDGING + (1.0 - _JUDGING) * (place + part) / many)

        runs.append(replace(SecondRun.of(recording, told), sign=sign))
    return LaidRuns(laid.comparison, tuple(runs), laid.stretches)


def who_measured(laid: LaidRuns) -> list[str]:
    """Say of each recording whose it is, when, by whom and with what it was measured."""
    old = len(laid.comparison.old) > 1
    sides = [*(say("good") if old else say("old") for _ in laid.runs[:-1]), say("new")]
    return [f"{side}: {_run_words(run)}" for side, run in zip(sides, laid.runs, strict=True)]


def _run_words(run: SecondRun) -> str:
    from meterlog.recording import UNDATED

    about = run.about
    day = about.started_utc.isoformat(sep=" ", timespec="minutes")[:16]
    by = about.job.technician
    parts = [
        run.folder.name,
        about.job.part or say("part not stated"),
        run.mark.lower() or say("measured"),
        f"{day} UTC" if about.started_utc != UNDATED else say("date not known"),
        say("by {by}", by=by) if by else say("who measured is not stated"),
    ]
    meters = "; ".join(_meter_words(one) for one in about.instruments) or say("no meter")
    return say("{run}. Meters: {meters}.", run=", ".join(parts), meters=meters)


def _meter_words(instrument: Instrument) -> str:
    who = instrument.identity
    name = " ".join(one for one in (who.maker, who.model) if one) or instrument.key
    serial = say(", serial number {serial}", serial=who.serial) if who.serial else ""
    due = (
        say(", calibration due {calibration_due}", calibration_due=who.calibration_due)
        if who.calibration_due
        else ""
    )
    typed = say(", typed by hand") if instrument.typed else ""
    return f"{name}{serial}{due}{typed}"
