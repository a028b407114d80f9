"""Tables against RFC 4180, and reread by two readers that are not ours.

Source: RFC 4180 (October 2005), section 2, rules 1 to 7; Python's csv module and pandas as
independent readers.
"""

import csv
import io

import numpy as np
import pandas as pd
import pytest

from meterlog.evidence import export_recording
from meterlog.evidence.cell_text import csv_lines
from meterlog.model import (
    About,
    Block,
    Channel,
    Event,
    EventKind,
    Instrument,
    Origin,
    Quantity,
    Review,
    Role,
)
from meterlog.recording import UNDATED, Recorder, Recording


def test_the_record_made_of_the_rules_own_cases_has_the_rules_form():
    # rules 2, 5, 6 and 7: CRLF ends the record; a quote, a comma and a line break need quotes;
    # a quote is doubled
    assert csv_lines([["a", 'b"c', "d,e", "f\r\ng"]]) == b'a,"b""c","d,e","f\r\ng"\r\n'


def test_spaces_belong_to_the_field_and_every_record_has_as_many_fields():
    # rule 4
    assert csv_lines([[" a ", None], ["", "b"]]) == b" a ,\r\n,b\r\n"


@pytest.fixture(scope="module")
def export(tmp_path_factory):
    folder = tmp_path_factory.mktemp("csv")
    channels = (
        Channel("u", Quantity.VOLTAGE, Role.MOTOR_FEED),
        Channel("i", Quantity.CURRENT, Role.MOTOR_CURRENT),
    )
    about = About(
        "id", UNDATED, 0, 0, "test", Origin.SIMULATED, (Instrument("k", "p", "x", channels),)
    )
    rng = np.random.default_rng(4180)
    rows = 70_000
    bits = rng.integers(0, 2**63, (rows, 2), dtype=np.uint64)
    values = bits.view(np.float64)
    values[~np.isfinite(values) | (np.abs(values) > 1e300)] = 0.1
    values[::1000] = rng.normal(size=(70, 2))
    t_ns = np.cumsum(rng.integers(0, 10**10, rows))  # to eleven years
    recorder = Recorder.create(folder / "run", about)
    recorder.take(Block("k", t_ns, values, np.zeros(values.shape, np.uint8)))
    recorder.take(Event(5, EventKind.NOTE, 'a "b", c\r\nd; e'))
    recorder.close()
    export_recording(Recording.open(folder / "run"), Review(), folder / "out", lambda _: None)
    return folder / "out", t_ns, values


def test_pandas_reads_every_value_back_exactly(export):
    folder, t_ns, values = export
    table = pd.read_csv(folder / "readings-k.csv")
    assert list(table.columns) == [
        "time_utc", "elapsed_s", "motor-feed (V)", "motor-current (A)", "flags", "step", "span",
        "origin",
    ]  # fmt: skip
    np.testing.assert_array_equal(table["motor-feed (V)"].to_numpy(), values[:, 0])
    np.testing.assert_array_equal(table["motor-current (A)"].to_numpy(), values[:, 1])
    stamps = pd.to_datetime(table["time_utc"], utc=True).dt.as_unit("ns")
    np.testing.assert_array_equal(stamps.astype("int64").to_numpy(), t_ns)
    assert set(table["origin"]) == {"simulated"}


def test_pythons_reader_finds_the_same_and_crlf_ends_every_record(export):
    folder, t_ns, values = export
    content = (folder / "readings-k.csv").read_bytes()
    assert content.count(b"\r\n") == content.count(b"\n") == content.count(b"\r") == 70_001
    head, *rows = csv.reader(io.StringIO(content.decode("utf-8"), newline=""))
    assert len(rows) == 70_000
    assert {len(row) for row in rows} == {len(head)}
    assert [float(row[3]) for row in rows] == values[:, 1].tolist()
    exact = t_ns < 10**15  # up to eleven days the seconds are exact, to the nanosecond
    elapsed = np.array([float(row[1]) for row in rows])
    np.testing.assert_array_equal(np.rint(elapsed[exact] * 1e9), t_ns[exact])


def test_both_readers_find_a_note_with_quotes_commas_and_line_breaks_whole(export):
    folder, _, _ = export
    note = 'a "b", c\r\nd; e'
    assert pd.read_csv(folder / "events.csv")["value"][0] == note
    with (folder / "events.csv").open(encoding="utf-8", newline="") as stream:
        assert list(csv.reader(stream))[1][3] == note
