"""Every exported table against an independent reader of CSV on the Web.

Source: W3C Recommendations of 17 December 2015, "Model for Tabular Data and Metadata on the Web"
and "Metadata Vocabulary for Tabular Data", as the csvw library reads them; unit codes of UN/ECE
Recommendation 20.
"""

import csv
import json
import re
import warnings
from datetime import UTC, datetime
from decimal import Decimal

import numpy as np
import pytest
from csvw import CSVW

from meterlog import cli
from meterlog.evidence.table_form import table_form
from meterlog.model import (
    About,
    Accuracy,
    Block,
    Channel,
    Event,
    EventKind,
    Flag,
    Instrument,
    Origin,
    Quantity,
    Role,
)
from meterlog.profile import load_limits
from meterlog.recording import Recorder, Recording, seal
from meterlog.work import review_folder
from meterlog.work.evidence_folder import write_evidence

FORMS = [("comma", "point"), ("semicolon", "point"), ("semicolon", "comma"), ("tab", "comma")]
NOTES = [
    "=1+1",
    "'=1+1",
    "''",
    "\ttab; and, more",
    'quo"te\r\nline',
    "# no comment",
    " blank ",
    "-",
]
STARTED = datetime(2026, 5, 4, 10, 20, 30, 5000, tzinfo=UTC)


def _values(rows):
    rng = np.random.default_rng(2015)
    values = np.stack(
        [12.0 + rng.normal(0, 0.05, rows), rng.normal(0, 0.02, rows), rng.normal(0, 1e-7, rows)],
        axis=1,
    )
    values[:, 1] += np.where(np.arange(rows) // 100 % 3 == 1, 0.0, 5.0)
    values[:3, 2] = [-0.0, 5e-324, 1.7976931348623157e308]
    return values


def _recorded(folder):
    accuracy = Accuracy(1.0, 3.0, 0.01, basis="invented")
    channels = (
        Channel("u", Quantity.VOLTAGE, Role.MOTOR_FEED, interval_s=0.02, accuracy=accuracy),
        Channel("i", Quantity.CURRENT, Role.MOTOR_CURRENT, interval_s=0.02, accuracy=accuracy),
        Channel("=x, y;z: ä.", Quantity.VOLTAGE, interval_s=0.02),
    )
    about = About(
        "an id", STARTED, 7200, 0, "test", Origin.SIMULATED,
        (Instrument("logger", "invented", "x", channels),), load_limits("linear-12v"),
    )  # fmt: skip
    values = _values(900)
    flags = np.zeros(values.shape, np.uint8)
    flags[5, 2] = Flag.OVERLOAD
    flags[6, :] = Flag.NO_DATA
    flags[40:60, 2] = Flag.ZEROED
    values[(flags & (Flag.OVERLOAD | Flag.NO_DATA)) != 0] = np.nan
    t_ns = np.arange(900, dtype=np.int64) * 20_000_000 + 123
    recorder = Recorder.create(folder, about)
    recorder.take(Block("logger", t_ns, values, flags))
    recorder.take(Event(0, EventKind.SPEED, "2"))
    recorder.take(Event(3_900_000_000, EventKind.TAP))
    for k, note in enumerate(NOTES):
        recorder.take(Event(5_000_000_000 + k, EventKind.NOTE, note))
    recorder.close()
    seal(folder)
    return t_ns, values


@pytest.fixture(scope="module")
def exports(tmp_path_factory, qapp):
    del qapp
    folder = tmp_path_factory.mktemp("csvw")
    t_ns, values = _recorded(folder / "run")
    circuit = ["low-side-linear-12v", "--state", "key=on,speed=4", "--sign", "fan=dead"]
    readings = ["--reading", "motor-feed=12.4", "--reading", "motor-return=0.1"]
    assert cli.main(["circuit", *circuit, *readings, "--save", str(folder / "check")]) == 0
    for form in FORMS:
        for name in ("run", "check"):
            recording, review = review_folder(folder / name)
            out = folder / f"{name}-{form[0]}-{form[1]}"
            write_evidence(recording, review, out, lambda _: None, table_form(*form))
    return folder, t_ns, values


def _read(path):
    """Read a table by the library, strictly; a warning is an error."""
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        told = CSVW(str(path), validate=True)
        assert told.is_valid, [str(one.message) for one in told.warnings]
        (table,) = told.tables
        return list(table)


def _plain(name, value):
    # xsd:decimal knows no infinity: degrees of freedom are text where the decimal mark is a comma.
    if name in {"degrees", "effective_degrees"} and isinstance(value, str):
        return float(value.replace(",", "."))
    return float(value) if isinstance(value, float | Decimal) else value


@pytest.mark.parametrize("form", FORMS)
def test_every_table_is_valid_and_reads_back_to_the_same_in_every_form(exports, form):
    folder = exports[0]
    seen = set()
    for name in ("run", "check"):
        for path in sorted((folder / f"{name}-{form[0]}-{form[1]}").glob("*.csv")):
            usual = _read(folder / f"{name}-comma-point" / path.name)
            rows = _read(path)
            seen.add((path.name, len(rows) > 0))
            assert [{k: _plain(k, v) for k, v in row.items()} for row in rows] == [
                {k: _plain(k, v) for k, v in row.items()} for row in usual
            ]
    filled = {name for name, rows in seen if rows}
    assert filled >= {
        "readings-logger.csv", "steps.csv", "spans.csv", "events.csv", "findings.csv", "taps.csv",
        "budgets.csv", "startups.csv", "circuit-readings.csv", "circuit-suspects.csv",
    }  # fmt: skip


@pytest.mark.parametrize("form", FORMS)
def test_the_library_reads_every_sample_exactly_as_it_was_recorded(exports, form):
    folder, t_ns, values = exports
    rows = _read(folder / f"run-{form[0]}-{form[1]}" / "readings-logger.csv")
    names = ["motor_feed", "motor_current", "%3Dx%2C_y%3Bz%3A_%C3%A4_"]
    read = np.array(
        [[np.nan if row[name] is None else float(row[name]) for name in names] for row in rows]
    )
    np.testing.assert_array_equal(read, values)
    assert np.signbit(read[0, 2])
    assert [round(float(row["elapsed_s"]) * 1e9) for row in rows] == t_ns.tolist()
    gone = [(row["time_utc"] - STARTED).total_seconds() for row in rows]
    np.testing.assert_allclose(gone, t_ns / 1e9, rtol=0, atol=1e-6)  # the library's microseconds
    assert rows[6]["flags"].startswith("motor-feed:no-data motor-current:no-data")
    assert {row["step"] for row in rows} == {2}


@pytest.mark.parametrize("form", FORMS)
def test_every_note_reads_back_once_the_apostrophe_is_taken_away(exports, form):
    folder = exports[0]
    rows = _read(folder / f"run-{form[0]}-{form[1]}" / "events.csv")
    read = [row["value"] for row in rows if row["kind"] == "note"]
    rule = re.compile("'('*[=+\\-@\t\r\n\uff1d\uff0b\uff0d\uff20])")  # as the metadata say it
    assert [rule.sub(r"\1", text, count=1) if rule.match(text) else text for text in read] == NOTES
    for text in read:
        assert not text.startswith(("=", "+", "-", "@", "\t", "\r", "\n"))


@pytest.mark.parametrize("form", FORMS)
def test_no_text_of_any_table_starts_a_formula(exports, form):
    folder = exports[0]
    delimiter = table_form(*form).delimiter
    cells = 0
    for path in folder.glob(f"*-{form[0]}-{form[1]}/*.csv"):
        with path.open(encoding="utf-8", newline="") as stream:
            for row in csv.reader(stream, delimiter=delimiter):
                for cell in row:
                    cells += 1
                    number = re.fullmatch(r"-\d+([.,]\d+)?(e[+-]?\d+)?", cell)
                    assert number or not cell.startswith(("=", "+", "-", "@", "\t", "\r", "\n"))
    assert cells > 7000


def test_every_column_has_name_title_type_null_and_words_and_units_their_codes(exports):
    codes = {"V": "VLT", "A": "AMP", "s": "SEC", "1": "C62"}
    seen = set()
    for path in exports[0].glob("*/*.csv-metadata.json"):
        told = json.loads(path.read_text(encoding="utf-8"))
        columns = told["tableSchema"]["columns"]
        names = [column["name"] for column in columns]
        assert len(set(names)) == len(names)
        for column in columns:
            assert re.fullmatch(r"([A-Za-z0-9]|%[0-9A-F]{2})([A-Za-z0-9_]|%[0-9A-F]{2})*",
                                column["name"])  # fmt: skip
            assert column["titles"]
            assert column["dc:description"].endswith(".")
            assert column["datatype"]
            assert column["null"] == ""
            unit = column.get("schema:unitText")
            seen.add(unit)
            assert column.get("schema:unitCode") == codes.get(unit)
            head_unit = re.search(r"\((V|A)\)$", column["titles"])
            assert not head_unit or unit == head_unit[1]
            assert not column["name"].endswith("_s") or unit == "s"
        assert told["dialect"]["header"] is True
        assert told["dialect"]["encoding"] == "utf-8"
        assert told["dialect"]["lineTerminators"] == ["\r\n"]
    assert seen >= {"V", "A", "s", "1", "A2 s", None}


def test_the_library_finds_what_was_changed(exports, tmp_path):
    folder = exports[0] / "run-semicolon-comma"
    for name in ("steps.csv", "steps.csv-metadata.json"):
        (tmp_path / name).write_bytes((folder / name).read_bytes())
    path = tmp_path / "steps.csv"
    assert _read(path)
    path.write_bytes(path.read_bytes().replace(b",", b"x", 1))
    with pytest.raises((UserWarning, ValueError), match="0x0"):
        _read(path)


def test_a_recording_of_checks_alone_is_exported_without_readings(exports):
    folder = exports[0]
    assert Recording.open(folder / "check").about.instruments == ()
    assert not list((folder / "check-tab-comma").glob("readings-*"))
