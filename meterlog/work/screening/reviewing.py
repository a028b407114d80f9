"""Reviewing: one recording as the rows of the table; whatever happens, it gives rows."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

import pyarrow as pa

from meterlog.analysis.compare import side_of
from meterlog.evidence.verify import verify_folder
from meterlog.model import About, Finding, Limits, Review
from meterlog.model.edit_notes import DAMAGE, EDIT
from meterlog.model.errors import MeterlogError
from meterlog.model.origin_mark import origin_mark
from meterlog.model.visible_text import one_line
from meterlog.profile.plain_file import read_plain
from meterlog.recording import UNDATED, Recording, layout
from meterlog.recording.arrow_arrays import table_of
from meterlog.recording.bag import read_info
from meterlog.recording.recording import RECOVERED
from meterlog.recording.writer_lock import is_being_written
from meterlog.work.amended import edits_told, parted
from meterlog.work.library.hit import BEING_MADE, MENDED, SEALED, UNREADABLE, UNSEALED
from meterlog.work.library.judging import judge_checks, worst_of
from meterlog.work.review import review_folder
from meterlog.work.screening.columns import FINDING, FINDINGS, RECORDING, SPEED
from meterlog.work.screening.fetching import at_hand
from meterlog.work.screening.good_runs import not_good
from meterlog.work.screening.part_numbers import motor_of, number_pattern, part_number
from meterlog.work.screening.passing import may_pass
from meterlog.work.screening.places import Place
from meterlog.work.screening.possible import may_stand
from meterlog.work.speed_figures import SpeedFigures, speed_figures

CHANGED = "changed"
_Row = dict[str, object]


@dataclass(frozen=True, slots=True)
class Asked:
    """What was asked of a screening, the same for all its recordings.

    Attributes
    ----------
    sign : str
        Changes with all of it and with the program.
    limits : Limits or None
        None: each by its own.
    number : str
        Pattern of part numbers; empty: the usual rule.
    """

    sign: str
    limits: Limits | None = None
    number: str = ""


def review_lot(lot: Sequence[Place], asked: Asked) -> pa.Table:
    """Review recordings one after the other.

    Returns
    -------
    Table
        Of :data:`~.columns.FINDINGS`.
    """
    return as_table([row for place in lot for row in rows_of(place, asked)])


def as_table(rows: Sequence[_Row]) -> pa.Table:
    """Give rows as a table."""
    return table_of([_plain(row) for row in rows], FINDINGS)


def _plain(row: _Row) -> _Row:
    """Give a row as Arrow takes it: halves of characters, as in odd file names, can't go in."""
    return {
        name: value.encode("utf-8", "replace").decode() if isinstance(value, str) else value
        for name, value in row.items()
    }


def rows_of(place: Place, asked: Asked) -> list[_Row]:
    """Give the rows of one recording; one row with the reason where it can't be judged."""
    try:
        if place.why:
            return [bare_row(place, asked, place.why)]
        with at_hand(place) as folder:
            return _reviewed(folder, place, asked)
    except (MeterlogError, OSError) as error:
        return [bare_row(place, asked, _words(error), passing=may_pass(error))]
    # One recording that nobody thought of must not stop all others.
    except Exception as error:  # noqa: BLE001
        why = f"{type(error).__name__}: {error} This is a fault of the program; report it."
        return [bare_row(place, asked, why, passing=may_pass(error))]


def _words(error: MeterlogError | OSError) -> str:
    """Say why, and of which file, as a message on the command line does."""
    if isinstance(error, MeterlogError):
        return str(error)
    file = f"{one_line(error.filename)}: " if error.filename else ""
    return f"{file}{error.strerror or error}"


def bare_row(
    place: Place, asked: Asked, reason: str, state: str = UNREADABLE, *, passing: bool = False
) -> _Row:
    """Give the one row of a recording that was not judged.

    Parameters
    ----------
    place : Place
    asked : Asked
    reason : str
    state : str
    passing : bool
        The reason may be gone another time though nothing of the recording has changed.
    """
    return {
        "row": RECORDING,
        "number": 0,
        "folder": place.url,
        "key": place.key,
        "asked": asked.sign,
        "state": state,
        "reason": reason,
        "passing": passing,
        "part_number": " ".join(place.number.split()).upper(),
        "not_good": "it was not judged",
    }


def _reviewed(folder: Path, place: Place, asked: Asked) -> list[_Row]:
    if not layout.is_sealed(folder):
        return [_unsealed(folder, place, asked)]
    verified = verify_folder(folder)
    info = read_info(read_plain(folder / layout.BAG_INFO))
    state = MENDED if info.get(RECOVERED) == "true" else SEALED
    state = state if verified.intact else CHANGED
    recording, review = review_folder(folder, asked.limits)
    whole = _whole(place, asked, recording, review)
    whole["state"] = state
    _, torn_edits = parted(edits_told(review))
    told = (f"EDITS NOT WHOLE: {one}" for one in torn_edits)
    wrong = (*verified.problems, *recording.damage, *told)
    whole["reason"] = " ".join(dict.fromkeys(wrong))
    whole["not_good"] = not_good(
        state=state,
        damaged=bool(recording.damage),
        mark=str(whole["mark"]),
        edits=_edits(review),
        review=review,
        conditions=recording.about.job.measured_under,
    )
    limits = asked.limits or recording.about.limits
    side = side_of(folder.name, recording.about, review, limits, recording.standing)
    if not recording.about.instruments:
        # A circuit check by itself has no run: what it comes to is what its entries tell.
        whole |= _of_checks(recording)
    rows = [whole]
    rows += [_of_speed(whole, one) for one in speed_figures(side)]
    rows += [{**whole, **_finding(one)} for one in review.findings]
    return [{**row, "number": number} for number, row in enumerate(rows)]


def _unsealed(folder: Path, place: Place, asked: Asked) -> _Row:
    if place.local and is_being_written(folder):
        return bare_row(place, asked, "it is being recorded", BEING_MADE, passing=True)
    Recording.open(folder)  # what can't be read at all says why
    why = "it was never sealed: the window seals it on its Recordings page"
    return bare_row(place, asked, why, UNSEALED)


def _whole(place: Place, asked: Asked, recording: Recording, review: Review) -> _Row:
    about = recording.about
    number, motor = _part(place, asked, about)
    limits = asked.limits or about.limits
    verdict = review.verdict
    return {
        "row": RECORDING,
        "passing": False,
        "folder": place.url,
        "key": place.key,
        "asked": asked.sign,
        "recording_id": about.recording_id,
        "started_utc": "" if about.started_utc == UNDATED else about.started_utc.isoformat(),
        "origin": about.origin.value,
        "mark": origin_mark(about),
        "edits": _edits(review),
        "part": about.job.part,
        "part_number": number,
        "motor": motor,
        "limits": limits.name,
        "nominal_v": limits.nominal_v,
        "compared_at_v": limits.compared_at_v,
        "outcome": "can't tell" if verdict is None else verdict.outcome.value,
        "worst": worst_of(review),
        "sentence": "Nothing could be told." if verdict is None else verdict.paragraph,
        "doubts": len(review.doubts),
    }


def _of_checks(recording: Recording) -> _Row:
    told = judge_checks(recording)
    return {"outcome": told.verdict.value, "worst": told.worst, "sentence": told.sentence}


def _edits(review: Review) -> int:
    return sum(note.startswith((EDIT, DAMAGE)) for note in review.notes)


def _part(place: Place, asked: Asked, about: About) -> tuple[str, str]:
    """Give part number and motor."""
    said = about.job.part
    pattern = number_pattern(asked.number) if asked.number else None
    number = " ".join(place.number.split()).upper() or part_number(said, pattern)
    return number, motor_of(said, place.serial, about.job.vehicle, number) if number else ""


def _of_speed(whole: _Row, one: SpeedFigures) -> _Row:
    row = {
        **whole,
        "row": SPEED,
        "speed": one.speed,
        "steady_n": one.steady_n,
        "current_a": one.current_a,
        "current_u_a": one.current_u_a,
        "motor_v": one.motor_v,
        "motor_u_v": one.motor_u_v,
        "exponent": one.exponent,
        "exponent_u": one.exponent_u,
        "not_good": whole["not_good"] or one.lacking,
    }
    if not row["not_good"] and not may_stand(row):
        row["not_good"] = "its figures can't be"
    return row


def _finding(one: Finding) -> _Row:
    return {
        "row": FINDING,
        "speed": one.speed,
        "kind": one.kind.value,
        "verdict": one.verdict.value,
        "start_s": one.start_ns / 1e9,
        "end_s": one.end_ns / 1e9,
        "edge_s": one.edge_ns / 1e9,
        "value": one.value,
        "unit": one.unit,
        "expanded_u": one.expanded_uncertainty,
        "limit": one.limit,
        "probability": one.probability,
        "statement": one.statement,
    }
