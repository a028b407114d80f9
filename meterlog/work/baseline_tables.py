"""BaselineTables: where tables of baselines lie; told by names alone, nothing is read of them."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterable, Sequence
from pathlib import Path

from meterlog.recording import layout

BASELINE_TABLE = "baselines.parquet"
"""Name of the table in the folder of a screening."""

DEEPEST = 4
"""Levels below a given folder."""


def usual_screening() -> Path:
    """Give the folder for the tables where nobody named one; it need not exist."""
    from platformdirs import user_data_path

    return user_data_path("meterlog", appauthor=False) / "screening"


def table_at(place: Path) -> Path:
    """Give the file of baselines that a path means: itself, or the one in a screening's folder."""
    return place / BASELINE_TABLE if place.is_dir() else place


def tables_in(roots: Sequence[Path], going_on: Callable[[], None]) -> tuple[Path, ...]:
    """Look for tables of baselines, the one written last first, each once.

    Nothing is looked for in recordings, other sealed bags, hidden folders and links; a folder that
    can't be looked into holds none.

    Parameters
    ----------
    roots : sequence of Path
    going_on : callable
        Called at each folder; what it raises ends the walk.
    """
    found: dict[Path, int] = {}
    seen: set[Path] = set()
    for root in roots:
        for table in _below(root.absolute(), 0, seen, going_on):
            try:
                found[table] = table.stat().st_mtime_ns
            except OSError:
                continue
    return tuple(sorted(found, key=lambda one: (-found[one], str(one))))


def _below(
    folder: Path, depth: int, seen: set[Path], going_on: Callable[[], None]
) -> Iterable[Path]:
    if folder in seen:
        return
    seen.add(folder)
    going_on()
    try:
        with os.scandir(folder) as entries:
            inside = {one.name: one for one in entries}
        if BASELINE_TABLE in inside and inside[BASELINE_TABLE].is_file():
            yield folder / BASELINE_TABLE
        if layout.BAGIT in inside or layout.PAYLOAD in inside or depth >= DEEPEST:
            return
        folders = [
            name
            for name, one in inside.items()
            if not name.startswith(".") and one.is_dir(follow_symlinks=False)
        ]
    except OSError:
        return
    for name in sorted(folders):
        yield from _below(folder / name, depth + 1, seen, going_on)
