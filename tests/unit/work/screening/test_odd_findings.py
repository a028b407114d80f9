"""Of a table of findings that can't be nothing counts: all is judged anew, and said."""

import os
import threading

import pyarrow as pa
import pyarrow.parquet as pq
import pytest

from meterlog.model.errors import UsageError


@pytest.fixture
def good(make, screened, tmp_path):
    """Two good recordings, screened."""
    for number in (0, 3):
        make(f"run-{number}", number)
    said, rows = screened(tmp_path / "own")
    assert said.unusable == ()
    return said.table, rows


def _changed(table, **columns):
    for name, change in columns.items():
        at = table.schema.get_field_index(name)
        field = table.schema.field(at)
        values = [change(one) for one in table.column(at).to_pylist()]
        table = table.set_column(at, field, pa.array(values, type=field.type))
    return table


def _as_texts(table):
    schema = pa.schema(
        [pa.field(one.name, pa.string()) for one in table.schema], metadata=table.schema.metadata
    )
    return pa.table([pa.array(["x"] * 3)] * len(schema), schema=schema)


ODD = {
    "types": _as_texts,
    "twice": lambda table: pa.concat_tables([table, table]),
    "no kinds": lambda table: _changed(table, row=lambda _: None),
    "other kinds": lambda table: _changed(table, row=lambda _: "speed"),
    "no keys": lambda table: _changed(table, key=lambda _: None),
    "not said whether it may pass": lambda table: _changed(table, passing=lambda _: None),
    "numbers": lambda table: _changed(table, number=lambda _: 2**62),
    "volts": lambda table: _changed(table, motor_v=lambda one: None if one is None else 0.0),
    "below nought": lambda table: _changed(
        table, current_u_a=lambda one: None if one is None else -1.0
    ),
    "steep": lambda table: _changed(table, exponent=lambda one: None if one is None else 1e308),
}


@pytest.mark.parametrize("odd", ODD)
def test_nothing_of_it_counts_and_it_is_said(good, screened, tmp_path, odd):
    path, wanted = good
    pq.write_table(ODD[odd](pq.read_table(path)), path)
    said, rows = screened(tmp_path / "own")
    assert (said.recordings, said.reviewed, said.unusable) == (2, 2, (path,))
    assert rows == wanted
    again, _ = screened(tmp_path / "own")
    assert (again.reviewed, again.unusable) == (0, ())


@pytest.mark.parametrize("name", ["findings.parquet", "baselines.parquet"])
def test_a_pipe_in_its_place_is_refused_and_not_waited_for(make, screened, tmp_path, name):
    make("run", 0)
    (tmp_path / "out").mkdir()
    os.mkfifo(tmp_path / "out" / name)
    told = []

    def work():
        try:
            screened(tmp_path / "own")
        except UsageError as error:
            told.append(str(error))

    doing = threading.Thread(target=work, daemon=True)
    doing.start()
    doing.join(60.0)
    assert told, "it waits"
    assert f"{name}: is no table of a screening" in told[0]
