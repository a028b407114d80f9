"""Screening: thousands of recordings reviewed into one table, and baselines made of the good ones.

What was done stays done: a recording is reviewed again only if its seal, a file younger than it,
its edits, its job's card, the program or what was asked has changed, or if what kept it from being
reviewed may have passed.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from pathlib import Path

import pyarrow as pa

import meterlog
from meterlog.model import Limits
from meterlog.recording.arrow_arrays import text_array
from meterlog.work.screening.baselines import baseline_table
from meterlog.work.screening.columns import FORMAT, RECORDING
from meterlog.work.screening.part_numbers import number_pattern
from meterlog.work.screening.places import Place, places_in
from meterlog.work.screening.reviewing import Asked
from meterlog.work.screening.store import Store
from meterlog.work.screening.workers import Workers, review_lots

_LOT = 8
"""Recordings that are lost at most, a worker, when the program is killed."""

Progress = Callable[[int, int], None]
"""Called with how many recordings are done, of how many; what it raises ends the work."""


@dataclass(frozen=True, slots=True)
class ScreenRequest:
    """What shall be screened.

    Attributes
    ----------
    folders : tuple of str
        Paths, or addresses that fsspec understands.
    out : Path
        Folder of the tables.
    limits : Limits or None
        None: each recording is judged by its own.
    number : str
        Pattern of part numbers; empty: the usual rule.
    workers : Workers
    """

    folders: tuple[str, ...]
    out: Path
    limits: Limits | None = None
    number: str = ""
    workers: Workers = field(default_factory=Workers)


@dataclass(frozen=True, slots=True)
class Screened:
    """What came of it.

    Attributes
    ----------
    recordings : int
    reviewed : int
        Of them this time; the others were done before.
    not_judged : tuple of (str, str)
        Recordings that could not be judged, and why.
    outcomes : dict of str to int
        How many came to what.
    rows, baselines : int
        Of the two tables.
    table, baseline_table : Path
    unusable : tuple of Path
        Files of what was done before of which nothing counts.
    """

    recordings: int
    reviewed: int
    not_judged: tuple[tuple[str, str], ...]
    outcomes: dict[str, int]
    rows: int
    baselines: int
    table: Path
    baseline_table: Path
    unusable: tuple[Path, ...]


def screen(request: ScreenRequest, progress: Progress) -> Screened:
    """Review what is new or has changed in some folders, and write the tables.

    Raises
    ------
    UsageError
        If a folder is not there, or what is asked of the cluster or the pattern can't be.
    DiskFailed
        If the tables can't be written, or another program is writing them.
    LinkNotFound
        If there is no scheduler at the cluster's address.
    """
    if request.number:
        number_pattern(request.number)
    asked = _asked(request)
    progress(0, 0)
    places = places_in(request.folders, lambda: progress(0, 0))
    store = Store(request.out)
    with store.alone():
        done = store.done()
        new = [one for one in places if done.get(one.url) != (one.key, asked.sign)]
        ready = len(places) - len(new)
        progress(ready, len(places))

        def take(lot: Sequence[Place], rows: pa.Table) -> None:
            nonlocal ready
            store.keep(rows)
            ready += len(lot)
            progress(ready, len(places))

        review_lots(_lots(new, request.workers), asked, request.workers, take)
        rows = store.gather({one.url: one.key for one in places}, asked.sign)
        baselines = baseline_table(rows)
        store.finish(rows, baselines)
    return _screened(len(new), rows, baselines, store)


def _lots(new: Sequence[Place], workers: Workers) -> list[tuple[Place, ...]]:
    # Few recordings are dealt out one by one, so that no worker stands idle.
    size = max(1, min(_LOT, len(new) // (4 * max(1, workers.count))))
    return [tuple(new[start : start + size]) for start in range(0, len(new), size)]


def _asked(request: ScreenRequest) -> Asked:
    limits = None if request.limits is None else repr(request.limits)
    told = json.dumps([meterlog.__version__, FORMAT, limits, request.number])
    sign = hashlib.blake2b(told.encode(), digest_size=8).hexdigest()
    return Asked(sign, request.limits, request.number)


def _screened(reviewed: int, rows: pa.Table, baselines: pa.Table, store: Store) -> Screened:
    heads = rows.filter(pa.compute.equal(rows["row"], text_array([RECORDING])[0])).select(
        ["folder", "reason", "outcome"]
    )
    outcomes: dict[str, int] = {}
    not_judged = []
    for one in heads.to_pylist():
        if one["outcome"] is None:
            not_judged.append((one["folder"], one["reason"]))
        else:
            outcomes[one["outcome"]] = outcomes.get(one["outcome"], 0) + 1
    return Screened(
        heads.num_rows,
        reviewed,
        tuple(not_judged),
        dict(sorted(outcomes.items())),
        rows.num_rows,
        baselines.num_rows,
        store.table,
        store.baselines,
        store.unusable,
    )
