"""KeptRows: rows of a file of findings, as this program has written them and nobody changed them.

What is damaged, doubled or can't be costs a recording another judgement, never a wrong count.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pyarrow as pa

from meterlog.recording.arrow_arrays import table_of, text_array
from meterlog.work.screening.columns import FINDING, FINDINGS, FORMAT, RECORDING, SPEED
from meterlog.work.screening.possible import may_stand
from meterlog.work.screening.table_file import UNREADABLE, is_of, pieces, schema_of

_MOST_BYTES = 4 << 30
"""Chosen: some hundred thousand recordings."""
_KINDS = frozenset({RECORDING, SPEED, FINDING})
_NEEDED = ("row", "number", "folder", "key", "asked", "state", "passing")


def kept_rows(path: Path, wanted: Callable[[pa.Table], pa.Table]) -> pa.Table | None:
    """Read a file of rows.

    Parameters
    ----------
    path : Path
    wanted : callable
        Given some rows at a time; gives what of them is wanted.

    Returns
    -------
    Table or None
        None where it is damaged, of another format, or holds what can't be: nothing of it counts.
    """
    try:
        found = schema_of(path)
        said = (found.metadata or {}).get(b"format")
        if said != FORMAT.encode() or not is_of(found, FINDINGS):
            return None
        kept = [wanted(table_of([], FINDINGS))]
        seen: set[tuple[str, int]] = set()
        for piece in pieces(path, FINDINGS, _MOST_BYTES):
            if not _can_be(piece, seen):
                return None
            kept.append(wanted(piece))
    except UNREADABLE:
        return None
    return pa.concat_tables(kept)


def _can_be(rows: pa.Table, seen: set[tuple[str, int]]) -> bool:
    """Tell whether rows can be those of a screening; each of a recording is there once."""
    if any(rows[name].null_count for name in _NEEDED):
        return False
    kinds, numbers = rows["row"].to_pylist(), rows["number"].to_pylist()
    for kind, number, folder in zip(kinds, numbers, rows["folder"].to_pylist(), strict=True):
        place = (folder, number)
        if kind not in _KINDS or (kind == RECORDING) != (number == 0) or place in seen:
            return False
        seen.add(place)
    return _good_can_be(rows)


def _good_can_be(rows: pa.Table) -> bool:
    """Tell whether the figures of which baselines are made can be."""
    speed, none = text_array([SPEED, ""])
    good = rows.filter(
        pa.compute.and_(
            pa.compute.equal(rows["row"], speed), pa.compute.equal(rows["not_good"], none)
        )
    )
    return not good["origin"].null_count and all(map(may_stand, good.to_pylist()))
