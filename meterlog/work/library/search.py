"""Search: the rows of the index that fit, as hits."""

from __future__ import annotations

import os
import sqlite3
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any

from meterlog.work.library.folded import folded
from meterlog.work.library.found_by import found_by
from meterlog.work.library.hit import GRAVEST_FIRST, Hit, Kind, Verdicts
from meterlog.work.library.wanted import Wanted

_FIELDS = (
    *("folder", "kind", "started", "work_order", "vehicle", "part", "technician", "odometer"),
    *("complaint", "mark", "duration_s", "instruments", "state", "trouble"),
)
_SHOWN = ("vehicle", "part", "work_order")
"""What a line of hits shows of the words."""
_SELECT = f"""
WITH jobs AS (
    SELECT belongs.folder AS inside, group_concat(things.words, ' ') AS words, max(side) AS side,
        max(number) AS number FROM belongs JOIN things ON things.folder = job GROUP BY inside)
SELECT {", ".join(f"things.{name}" for name in _FIELDS)}, verdicts.outcome, verdicts.worst,
    verdicts.sentence, verdicts.currents, jobs.side, things.key, jobs.number,
    things.words, jobs.words FROM things
LEFT JOIN verdicts ON things.key != '' AND verdicts.key = things.key AND verdicts.program = ?
LEFT JOIN jobs ON jobs.inside = things.folder
"""  # noqa: S608 - names above
_AT_ONCE = 500
_MOST_ASKED = 20
"""Words that the index is asked for, the longest; SQLite takes no condition of hundreds."""
_FITS = " (instr(things.words, ?) > 0 OR instr(coalesce(jobs.words, ''), ?) > 0) "


def found_in(
    connection: sqlite3.Connection, roots: Sequence[Path], wanted: Wanted, program: str
) -> tuple[Hit, ...]:
    """Give what fits, newest first; what has no date comes last.

    A recording of a job is found by what the job's card says, too.
    """
    terms = wanted.terms()
    asked = sorted(terms, key=len, reverse=True)[:_MOST_ASKED]
    # Of jobs it must be known what their recordings come to, whatever those are found by.
    fits = " AND ".join([_FITS] * len(asked)) if asked else "1"
    values = [program, *(term for one in asked for term in (one, one))]
    rows = connection.execute(f"{_SELECT} WHERE {fits}", values).fetchall()
    if len(asked) < len(terms):
        rows = [row for row in rows if _has_all(row, terms)]
    away = tuple(name for (name,) in connection.execute("SELECT folder FROM away"))
    inside = tuple(str(root) for root in roots)
    hits = [_hit(row, away, terms) for row in rows if _is_in(row[0], inside)]
    if any(hit.kind is Kind.JOB for hit in hits):
        made = _made_for_jobs(connection, program)
        hits = [_with_made(hit, made.get(str(hit.folder), [])) for hit in hits]
    fit = [hit for hit in hits if wanted.fits(hit)]
    return tuple(sorted(fit, key=lambda hit: (hit.started, str(hit.folder)), reverse=True))


# Any: the columns of a database have no types that could be checked.
def _has_all(row: tuple[Any, ...], terms: Sequence[str]) -> bool:
    own, of_job = (text or "" for text in row[-2:])
    return all(term in own or term in of_job for term in terms)


def drawn_at(connection: sqlite3.Connection, keys: Sequence[str], program: str) -> dict[str, str]:
    """Give what runs draw, by the keys of their verdicts."""
    found: dict[str, str] = {}
    for start in range(0, len(keys), _AT_ONCE):
        some = keys[start : start + _AT_ONCE]
        holes = ", ".join("?" * len(some))
        rows = connection.execute(
            f"SELECT key, drawn FROM verdicts WHERE program = ? AND key IN ({holes})",  # noqa: S608 - holes alone
            [program, *some],
        )
        found.update(rows.fetchall())
    return found


def _is_in(name: str, roots: Sequence[str]) -> bool:
    """Tell by text alone whether a path is in one of some folders: thousands are asked for."""
    return any(name == root or name.startswith(root.rstrip(os.sep) + os.sep) for root in roots)


def _hit(row: tuple[Any, ...], away: Sequence[str], terms: Sequence[str]) -> Hit:
    folder, kind, *facts = row[: len(_FIELDS)]
    outcome, worst, sentence, currents, side, key, number, *texts = row[len(_FIELDS) :]
    verdict = Verdicts(outcome) if outcome else Verdicts.NOT_JUDGED
    judged: list[Any] = [verdict, worst or "", sentence or "", currents or "[]"]
    of_job = [_is_in(folder, away), side or "", key, number or ""]
    found: tuple[str, ...] = ()
    if terms:
        shown = (dict(zip(_FIELDS[2:], facts, strict=True))[name] for name in _SHOWN)
        found = found_by(terms, folded(" ".join(shown)), *(text or "" for text in texts))
    # Made in one go: it is by far the dearest of a hit, and there are thousands of them.
    values = [Path(folder), Kind(kind), *facts, *judged, *of_job, None, found]
    return Hit(*values)


_Made = tuple[str, str, str, str]
"""Side, when it was started, its mark, verdict."""


def _made_for_jobs(connection: sqlite3.Connection, program: str) -> dict[str, list[_Made]]:
    rows = connection.execute(
        "SELECT job, side, started, mark, outcome FROM belongs JOIN things USING (folder) "
        "LEFT JOIN verdicts ON verdicts.key = things.key AND verdicts.program = ? "
        "ORDER BY started",
        [program],
    )
    made: dict[str, list[_Made]] = {}
    for job, *facts, outcome in rows:
        made.setdefault(job, []).append((*facts, outcome or Verdicts.NOT_JUDGED.value))
    return made


def _with_made(hit: Hit, made: Sequence[_Made]) -> Hit:
    """Give a job the date, mark, verdict and words of what was recorded for it."""
    if hit.kind is not Kind.JOB or not made:
        return hit
    verdicts = {Verdicts(outcome) for *_, outcome in made}
    told = []
    for side in ("old", "new"):
        of_side = [Verdicts(outcome) for one, *_, outcome in made if one == side]
        if of_side:
            many = "" if len(of_side) == 1 else f" ({len(of_side)} recordings, the newest)"
            told.append(f"{side.capitalize()} part: {of_side[-1].value}{many}.")
    return replace(
        hit,
        started=max(started for _, started, *_ in made) or hit.started,
        mark=" · ".join(dict.fromkeys(mark for _, _, mark, _ in made if mark)),
        verdict=next(one for one in GRAVEST_FIRST if one in verdicts),
        sentence=" ".join(told),
    )
