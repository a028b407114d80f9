"""A table of baselines may be anybody's: what can't be is refused, in little memory, and said."""

import math
import os

import pyarrow as pa
import pyarrow.parquet as pq
import pytest

from meterlog.model.errors import EvidenceError
from meterlog.work.screening import Usuals, baselines_of
from meterlog.work.screening.columns import BASELINES

NAN, INF = math.nan, math.inf
GOOD = {
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
    "currents_u_a": [0.1, 0.1, 0.0],
    "motor_v": [12.3, NAN, 12.3],
    "limits": ["l", "l", "l"],
}


@pytest.fixture
def kept(tmp_path):
    """Write a table of baselines whose rows are good but for what is given."""

    def write(*rows):
        path = tmp_path / "baselines.parquet"
        columns = [
            pa.array([{**GOOD, **row}[one.name] for row in rows], type=one.type)
            for one in BASELINES
        ]
        pq.write_table(pa.table(columns, schema=BASELINES), path)
        return path

    return write


def test_what_a_screening_may_write_is_read(kept):
    alone = {name: GOOD[name][:1] for name in GOOD if isinstance(GOOD[name], list)}
    one = {**alone, "speed": 2, "n": 1, "spread_a": None, "low_a": None, "high_a": None}
    found = baselines_of(kept({}, one), "FM-20")
    assert [(each.speed, each.n, each.low_a) for each in found] == [(1, 3, 4.0), (2, 1, None)]


@pytest.mark.parametrize(
    ("column", "value"),
    [
        *((name, None) for name in GOOD if name not in {"low_a", "high_a"}),
        *(("nominal_v", value) for value in (0.0, -12.0, NAN, INF)),
        *(("speed", value) for value in (-1, 2**62)),
        *(("n", value) for value in (0, -3, 2)),
        *(("reference_v", value) for value in (0.0, -12.3, INF, 1e-320)),
        *(("mean_a", value) for value in (NAN, INF, 1e308, 500.0, 5.001)),
        *(("spread_a", value) for value in (NAN, -0.1, 0.2)),
        *(("expanded_u_a", value) for value in (NAN, -1.0, INF)),
        *(("coverage", value) for value in (0.0, -2.0)),
        *(("low_a", value) for value in (None, NAN, 5.5, -INF)),
        *(("high_a", value) for value in (NAN, 4.5, INF)),
        *((name, ["a", "b"]) for name in ("folders", "recording_ids", "limits")),
        *((name, ["a", None, "c"]) for name in ("folders", "started_utc", "limits")),
        *(("currents_a", [5.0, 5.1, value]) for value in (None, NAN, INF, 1e308, 0.0, -4.9)),
        ("currents_a", [5.0]),
        *(("currents_u_a", [0.1, 0.1, value]) for value in (None, NAN, INF, -1.0)),
        *(("motor_v", [12.3, 12.3, value]) for value in (None, INF, 0.0, -12.3)),
    ],
)
def test_a_row_that_cant_be_is_named_and_nothing_of_its_table_counts(kept, column, value):
    path = kept({}, {column: value})
    for read in (lambda: baselines_of(path, "FM-20"), lambda: Usuals(path)):
        with pytest.raises(EvidenceError, match="holds a baseline that can't be: row 2, ") as told:
            read()
        named = "low_a|motors" if (column, value) in (("n", 2), ("low_a", None)) else column
        assert str(told.value).split("row 2, ")[1].split(".")[0] in named
        assert "Run meterlog screen once more" in told.value.remedy


def test_bytes_that_are_no_text_are_told(kept):
    path = kept({"limits": ["abcdefgh"] * 3})
    content = path.read_bytes()
    assert b"abcdefgh" in content
    path.write_bytes(content.replace(b"abcdefgh", b"abc\xff\xfefgh"))
    with pytest.raises(EvidenceError, match="can't be read: "):
        baselines_of(path, "FM-20")


@pytest.mark.parametrize("how", ["many rows", "one row"])
def test_a_small_file_that_says_little_very_often_is_not_unpacked(tmp_path, kept, how):
    one = pq.read_table(kept({"limits": ["x" * 50_000] * 3}))
    path = tmp_path / "much.parquet"
    with pq.ParquetWriter(path, BASELINES, compression="zstd") as writer:
        if how == "one row":
            many = pa.array([["x" * 50_000] * 3_000], type=BASELINES.field("limits").type)
            at = BASELINES.get_field_index("limits")
            writer.write_table(one.set_column(at, BASELINES.field("limits"), many))
        else:
            for _ in range(10):
                writer.write_table(one.take([0] * 100), row_group_size=1000)
    del one
    assert path.stat().st_size < 100_000
    pool = pa.default_memory_pool()
    before, high = pa.total_allocated_bytes(), pool.max_memory()
    with pytest.raises(EvidenceError, match="it holds more than 64 MiB unpacked"):
        baselines_of(path, "FM-20")
    # Unpacked it takes 150 MB: what was ever taken has not grown by that.
    assert pool.max_memory() - max(before, high) < 100 << 20


def test_what_is_no_file_is_not_waited_for(tmp_path):
    os.mkfifo(tmp_path / "baselines.parquet")
    with pytest.raises(EvidenceError, match="it is a pipe or a device, not a file"):
        baselines_of(tmp_path, "FM-20")
