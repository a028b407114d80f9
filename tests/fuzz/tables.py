"""Tables of a screening: valid ones, edits of their cells, and all that is made of them."""

from __future__ import annotations

import io
from collections.abc import Sequence
from pathlib import Path

import edits
import pyarrow as pa
import pyarrow.parquet as pq
from edits import Edit, Form

from meterlog.work.screening.columns import BASELINES, FINDINGS

BASELINE = {
    "part_number": "FM-20",
    "origin": "measured",
    "nominal_v": 12.0,
    "speed": 1,
    "n": 3,
    "reference_v": 12.3,
    "mean_a": 5.0,
    "spread_a": 0.1,
    "expanded_u_a": 0.1,
    "coverage": 2.0,
    "low_a": 4.0,
    "high_a": 6.0,
    "motors": ["a", "b", "c"],
    "folders": ["/a", "/b", "/c"],
    "recording_ids": ["1", "2", "3"],
    "started_utc": ["", "", ""],
    "currents_a": [5.0, 5.1, 4.9],
    "currents_u_a": [0.1, 0.1, 0.1],
    "motor_v": [12.3, 12.3, 12.3],
    "limits": ["l", "l", "l"],
}
HEAD = {
    "row": "recording",
    "number": 0,
    "folder": "/a",
    "key": "k",
    "asked": "a",
    "state": "sealed",
    "passing": False,
    "origin": "measured",
    "not_good": "",
    "part_number": "FM-20",
    "motor": "a",
    "limits": "l",
    "nominal_v": 12.0,
    "compared_at_v": 13.0,
    "recording_id": "1",
    "started_utc": "",
    "outcome": "in order",
}
SPEED = {
    **HEAD,
    "row": "speed",
    "number": 1,
    "speed": 4,
    "steady_n": 50,
    "current_a": 5.0,
    "current_u_a": 0.1,
    "motor_v": 12.5,
    "motor_u_v": 0.05,
    "exponent": 1.7,
    "exponent_u": 0.2,
}


def make_tables(place: Path) -> None:
    """Write both tables."""
    place.mkdir(exist_ok=True)
    rows = {"baselines": [BASELINE, {**BASELINE, "speed": 2}], "findings": [HEAD, SPEED]}
    for name, schema in (("baselines", BASELINES), ("findings", FINDINGS)):
        (place / f"{name}.parquet").write_bytes(_written(rows[name], schema))


def as_rows(schema: pa.Schema) -> Form:
    """Edit the cells of a table; every third time its bytes."""

    def form(content: bytes, given: Sequence[Edit]) -> bytes:
        if not given or given[0][0] % 3 == 0:
            return edits.edit_bytes(content, given)
        rows = pq.read_table(io.BytesIO(content)).to_pylist()
        changed = edits.edit_tree(rows, given)
        rows = (
            [one for one in changed if isinstance(one, dict)] if isinstance(changed, list) else []
        )
        return _written(rows, schema)

    return form


def _written(rows: Sequence[dict], schema: pa.Schema) -> bytes:
    """Write rows; what a column can't hold is none there."""
    columns = []
    for field in schema:
        values = [one.get(field.name) for one in rows]
        try:
            columns.append(pa.array(values, type=field.type))
        except (pa.ArrowException, TypeError, ValueError, OverflowError):
            columns.append(pa.array([_cell(one, field.type) for one in values], type=field.type))
    out = io.BytesIO()
    pq.write_table(pa.table(columns, schema=schema), out, compression="zstd")
    return out.getvalue()


def _cell(value: object, kind: pa.DataType) -> object:
    if isinstance(value, list) and pa.types.is_list(kind):
        return [_cell(one, kind.value_type) for one in value]
    try:
        if pa.types.is_floating(kind):
            value = float(str(value))  # also NaN and those without end
        return pa.scalar(value, type=kind).as_py()
    except (pa.ArrowException, TypeError, ValueError, OverflowError):
        return None


def held(place: Path) -> None:
    """Hold a run against every baseline of a table, as the window does, and read all of it out."""
    from meterlog.evidence.comparison_json import comparison_to_dict
    from meterlog.model import ComparedRun
    from meterlog.work.drawn import Drawn
    from meterlog.work.screening import Usuals
    from meterlog.work.screening.baselines import all_baselines
    from meterlog.work.screening.held import held_against
    from meterlog.work.speed_figures import SpeedFigures

    assert Usuals(place).numbers is not None
    run = ComparedRun("new", "9", "FM-20, 9", "", "measured")
    for one in all_baselines(place):
        figures = SpeedFigures(one.speed, 50, 5.0, 0.1, one.reference_v, 0.1, 1.7, 0.2, "")
        drawn = Drawn(run, "", "l", one.nominal_v, 13.0, "simple", 1.0, (figures,), (0.0,), "")
        comparison_to_dict(held_against(drawn, [one], one.part_number).comparison)
        assert one.median_a > 0.0
        assert one.middle_a is None or one.middle_a[0] <= one.middle_a[1]


def gathered(place: Path) -> None:
    """Go on with a screening, as far as no recording is needed, and make baselines of it."""
    from meterlog.work.screening.baselines import baseline_table
    from meterlog.work.screening.store import Store

    store = Store(place)
    with store.alone():
        done = store.done()
        for asked in {one for _, one in done.values()}:
            rows = store.gather({folder: key for folder, (key, _) in done.items()}, asked)
            baseline_table(rows)
