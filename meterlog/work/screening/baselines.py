"""Baselines: what good motors of one part number draw at one speed and one motor voltage."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, fields, replace
from pathlib import Path
from statistics import fmean, median, quantiles
from typing import Any

import pyarrow as pa

from meterlog.analysis.budgets import budget
from meterlog.analysis.compare import tolerance_interval
from meterlog.model import Budget, Source
from meterlog.recording.arrow_arrays import table_of, text_array
from meterlog.work.baseline_tables import table_at
from meterlog.work.screening.baseline_file import read_baselines
from meterlog.work.screening.columns import BASELINES, SPEED
from meterlog.work.speed_figures import SpeedFigures, brought

_LEAST_FOR_HALF = 4
_NEAR = 0.2
"""So near, as a part of it, all motor voltages must be for the limits' voltage to be taken."""

_LISTS = (
    *("motors", "folders", "recording_ids", "started_utc"),
    *("currents_a", "currents_u_a", "motor_v", "limits"),
)
_Row = dict[str, object]


@dataclass(frozen=True, slots=True)
class Baseline:
    """One row of the table of baselines; see :data:`~.columns.BASELINES` for what stands in it."""

    part_number: str
    origin: str
    nominal_v: float
    speed: int
    n: int
    reference_v: float
    mean_a: float
    spread_a: float | None
    expanded_u_a: float
    coverage: float
    low_a: float | None
    high_a: float | None
    motors: tuple[str, ...]
    folders: tuple[str, ...]
    recording_ids: tuple[str, ...]
    started_utc: tuple[str, ...]
    currents_a: tuple[float, ...]
    currents_u_a: tuple[float, ...]
    motor_v: tuple[float, ...]
    limits: tuple[str, ...]

    @property
    def median_a(self) -> float:
        """Median of the currents at the reference voltage, amperes."""
        return median(self.currents_a)

    @property
    def middle_a(self) -> tuple[float, float] | None:
        """Between which currents the middle half of the motors lies, amperes; None below four."""
        if len(self.currents_a) < _LEAST_FOR_HALF:
            return None
        low, _, high = quantiles(self.currents_a, n=4, method="inclusive")
        return low, high

    def without(self, recording_id: str) -> Baseline | None:
        """Give it without one recording, as nothing stands against itself; None of that alone.

        Mean, spread, uncertainty and interval stay those of all.
        """
        if recording_id not in self.recording_ids:
            return self
        place = self.recording_ids.index(recording_id)
        if self.n == 1:
            return None
        lists = {name: getattr(self, name) for name in _LISTS}
        less: dict[str, Any] = {
            name: (*value[:place], *value[place + 1 :]) for name, value in lists.items()
        }
        return replace(self, n=self.n - 1, **less)


def baselines_of(
    table: Path, part_number: str, *, origin: str = "measured", nominal_v: float | None = None
) -> tuple[Baseline, ...]:
    """Give the baselines of a part number, lowest speed first; empty where there is none.

    Parameters
    ----------
    table : Path
        A table of baselines, or the folder of a screening.
    part_number : str
        Capital letters and blanks do not matter.
    origin : str
        ``measured`` or ``simulated``.
    nominal_v : float or None, volts
        None: any.

    Raises
    ------
    EvidenceError
        If the table can't be read, or is none.
    """
    number = " ".join(part_number.split()).upper()
    found = all_baselines(table)
    fit = [one for one in found if one.part_number == number and one.origin == origin]
    return tuple(one for one in fit if nominal_v is None or one.nominal_v == nominal_v)


def all_baselines(table: Path) -> tuple[Baseline, ...]:
    """Give all that a table holds, those of one part number lowest speed first.

    Parameters
    ----------
    table : Path
        As of :func:`baselines_of`.

    Raises
    ------
    EvidenceError
        Likewise.
    """
    found = [_from_row(row) for row in read_baselines(table_at(table)).to_pylist()]
    return tuple(sorted(found, key=lambda one: (one.nominal_v, one.speed)))


def _from_row(row: _Row) -> Baseline:
    values = {
        one.name: tuple(value) if isinstance(value := row[one.name], list) else value
        for one in fields(Baseline)
    }
    return Baseline(**values)  # type: ignore[arg-type]  # of the types that its schema says


def baseline_table(rows: pa.Table) -> pa.Table:
    """Make the baselines of a table of findings.

    Parameters
    ----------
    rows : Table
        Of :data:`~.columns.FINDINGS`.

    Returns
    -------
    Table
        Of :data:`~.columns.BASELINES`, by part number, origin, nominal voltage and speed.
    """
    groups: dict[tuple[str, str, float, int], list[_Row]] = {}
    for row in _usable(rows):
        # Any: the columns of a table have no types that could be checked.
        found = (row["part_number"], row["origin"], row["nominal_v"], row["speed"])
        groups.setdefault(found, []).append(row)  # type: ignore[arg-type]
    made = (_baseline(key, groups[key]) for key in sorted(groups))
    return table_of([_as_row(one) for one in made if one is not None], BASELINES)


def _usable(rows: pa.Table) -> Iterable[_Row]:
    speed, none = text_array([SPEED, ""])
    fits = pa.compute.and_(
        pa.compute.equal(rows["row"], speed), pa.compute.equal(rows["not_good"], none)
    )
    for row in rows.filter(fits).to_pylist():
        if row["part_number"] and row["motor"]:
            yield row


def _baseline(key: tuple[str, str, float, int], rows: Sequence[_Row]) -> Baseline | None:
    number, origin, nominal_v, speed = key
    newest = _newest_of_each(rows)
    figures = [_figures(row) for row in newest]
    reference_v = _reference_v(figures, newest)
    kept = [
        (row, one, there)
        for row, one in zip(newest, figures, strict=True)
        if (there := brought(one, reference_v)) is not None
    ]
    if not kept:
        return None
    amps = [one for _, _, one in kept]
    interval = tolerance_interval([one.value for one in amps])
    mean = _mean(amps, speed, interval.sd)
    return Baseline(
        part_number=number,
        origin=origin,
        nominal_v=nominal_v,
        speed=speed,
        n=len(kept),
        reference_v=reference_v,
        mean_a=mean.value,
        spread_a=interval.sd if len(kept) > 1 else None,
        expanded_u_a=mean.expanded,
        coverage=mean.coverage,
        low_a=interval.low,
        high_a=interval.high,
        motors=tuple(str(row["motor"]) for row, _, _ in kept),
        folders=tuple(str(row["folder"]) for row, _, _ in kept),
        recording_ids=tuple(str(row["recording_id"]) for row, _, _ in kept),
        started_utc=tuple(str(row["started_utc"]) for row, _, _ in kept),
        currents_a=tuple(one.value for one in amps),
        currents_u_a=tuple(one.combined_u for one in amps),
        motor_v=tuple(one.motor_v or math.nan for _, one, _ in kept),
        limits=tuple(str(row["limits"]) for row, _, _ in kept),
    )


def _newest_of_each(rows: Sequence[_Row]) -> list[_Row]:
    """Give the newest run of each motor; a copy of a recording is the recording."""
    newest: dict[str, _Row] = {}
    for row in sorted(rows, key=lambda one: (str(one["started_utc"]), str(one["folder"]))):
        newest[str(row["motor"])] = row
    return [newest[motor] for motor in sorted(newest)]


def _figures(row: _Row) -> SpeedFigures:
    values: dict[str, Any] = {
        one.name: row[one.name] for one in fields(SpeedFigures) if one.name != "lacking"
    }
    return SpeedFigures(**values, lacking="")


def _reference_v(figures: Sequence[SpeedFigures], rows: Sequence[_Row]) -> float:
    """Give the voltage at which the limits compare where all are near it, else the mean."""
    wanted = {float(str(row["compared_at_v"])) for row in rows}
    volts = [one.motor_v or 0.0 for one in figures]
    if len(wanted) == 1:
        (at,) = wanted
        if all(abs(one - at) <= _NEAR * at for one in volts):
            return at
    return fmean(volts)


def _mean(amps: Sequence[Budget], speed: int, spread: float) -> Budget:
    """Give the mean with its uncertainty.

    Source
    ------
    JCGM 100:2008, 4.2 for the spread. What the meters may be off by is taken as one error of all,
    as large as the largest: meters of one workshop, or of one kind, err alike, and a mean of many
    does not take that away.
    """
    count = len(amps)
    lines = [Source("measuring, as if one error of all", max(one.combined_u for one in amps), "A")]
    if count > 1:
        between = spread / math.sqrt(count)
        lines.append(Source(f"spread of {count} motors", between, "A", degrees=count - 1.0))
    name = f"mean of good motors at speed {speed}"
    return budget(name, fmean(one.value for one in amps), "A", lines)


def _as_row(one: Baseline) -> _Row:
    return {field.name: getattr(one, field.name) for field in fields(Baseline)}
