"""BaselineFile: the rows of a table of baselines, which may be anybody's: none that can't be.

What a table of baselines says turns verdicts. One row that contradicts itself, and the table is not
the one that a screening wrote.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from pathlib import Path
from statistics import fmean

import pyarrow as pa

from meterlog.model.errors import EvidenceError
from meterlog.recording.arrow_arrays import table_of
from meterlog.work.baseline_tables import BASELINE_TABLE
from meterlog.work.screening.columns import BASELINE_FORMAT, BASELINES
from meterlog.work.screening.possible import MOST, is_amount, is_speed, is_width
from meterlog.work.screening.table_file import UNREADABLE, is_of, pieces, schema_of

_MOST_BYTES = 64 << 20
"""Chosen: some sixty thousand motors, each at five speeds."""
_AGREE = 1e-6
"""Chosen: far above what adding up in another order changes, far below what a meter shows."""
_WIDEST = 1e3 * MOST
"""A; of few currents a tolerance interval is many deviations wide."""
_TEXTS = ("part_number", "origin")
_AMOUNTS = ("nominal_v", "reference_v", "mean_a", "coverage")
_TEXT_LISTS = ("motors", "folders", "recording_ids", "started_utc", "limits")
_NUMBER_LISTS = ("currents_a", "currents_u_a", "motor_v")
_ANEW = (
    "Run meterlog screen once more with the same folders and the same --out: what"
    " has not changed is not judged again."
)

_Row = Mapping[str, object]


def read_baselines(path: Path) -> pa.Table:
    """Read a table of baselines.

    Returns
    -------
    Table
        Of :data:`~.columns.BASELINES`, with rows that agree with themselves.

    Raises
    ------
    EvidenceError
        If it can't be read, is none, is too large, another version of the program wrote it, or it
        holds figures that can't be.
    """
    if not path.exists():
        raise _no_baselines(path, "is not there.")
    try:
        found = schema_of(path)
        _refuse_other(found, path)
        rows = pa.concat_tables([table_of([], BASELINES), *pieces(path, BASELINES, _MOST_BYTES)])
    except UNREADABLE as error:
        why = (error.strerror if isinstance(error, OSError) else None) or "it is no Parquet table"
        raise _no_baselines(path, f"can't be read: {why}.") from error
    for number, row in enumerate(rows.to_pylist(), 1):
        wrong = _wrong(row)
        if wrong:
            raise EvidenceError(
                f"holds a baseline that can't be: row {number}, {wrong}.",
                subject=str(path),
                remedy=_ANEW,
            )
    return rows


def _refuse_other(found: pa.Schema, path: Path) -> None:
    said = found.metadata or {}
    own = said.get(b"meterlog") == (BASELINES.metadata or {}).get(b"meterlog")
    if own and said.get(b"format") != BASELINE_FORMAT.encode():
        raise EvidenceError(
            "was written by another version of this program.", subject=str(path), remedy=_ANEW
        )
    if not is_of(found, BASELINES):
        raise _no_baselines(path, "is no table of baselines.")


def _no_baselines(path: Path, why: str) -> EvidenceError:
    return EvidenceError(
        why,
        subject=str(path),
        remedy=f"Give the {BASELINE_TABLE} that meterlog screen has written, or its folder.",
    )


def _wrong(row: _Row) -> str:
    """Name the column of a row that can't be; empty where it can."""
    checks = (
        *((name, isinstance(row[name], str)) for name in _TEXTS),
        *((name, is_amount(row[name])) for name in _AMOUNTS),
        ("speed", is_speed(row["speed"])),
        ("expanded_u_a", is_width(row["expanded_u_a"])),
        ("n", isinstance(row["n"], int) and row["n"] > 0),
        *((name, _is_list(row, name, str)) for name in _TEXT_LISTS),
        *((name, _is_list(row, name, float)) for name in _NUMBER_LISTS),
    )
    wrong = next((name for name, good in checks if not good), "")
    return wrong or _wrong_figures(row)


def _is_list(row: _Row, name: str, kind: type) -> bool:
    """Tell whether a column holds one value for each motor."""
    values = row[name]
    return (
        isinstance(values, list)
        and len(values) == row["n"]
        and all(isinstance(one, kind) for one in values)
    )


def _wrong_figures(row: _Row) -> str:
    """Name the column whose figures can't be, or that does not follow from the currents."""
    amps, us, volts = (row[name] for name in _NUMBER_LISTS)
    assert isinstance(amps, list)  # noqa: S101 - seen above
    assert isinstance(us, list)  # noqa: S101
    assert isinstance(volts, list)  # noqa: S101
    if not all(map(is_amount, amps)):
        return "currents_a"
    mean = fmean(amps)
    spread = math.dist(amps, [mean] * len(amps)) / math.sqrt(len(amps) - 1 or 1)
    low, high = row["low_a"], row["high_a"]
    checks = (
        ("currents_u_a", all(map(is_width, us))),
        # Not a number: not known.
        ("motor_v", all(math.isnan(one) or is_amount(one) for one in volts)),
        ("mean_a", _agree(row["mean_a"], mean, mean)),
        ("spread_a", _agree(row["spread_a"], spread if len(amps) > 1 else None, mean)),
        ("low_a", low is None or (isinstance(low, float) and -_WIDEST <= low <= mean)),
        ("high_a", high is None or (isinstance(high, float) and mean <= high <= _WIDEST)),
        ("low_a", (low is None) == (high is None)),
    )
    return next((name for name, good in checks if not good), "")


def _agree(said: object, known: float | None, size: float) -> bool:
    """Tell whether two figures are one, give or take what is nothing beside ``size``."""
    if said is None or known is None:
        return said is known
    return isinstance(said, float) and abs(said - known) <= _AGREE * size
