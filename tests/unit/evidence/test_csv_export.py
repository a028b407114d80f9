"""The exported tables: what stands in each, and what is left when the export fails."""

import csv
import io

import numpy as np
import pytest

from meterlog.evidence import export_recording
from meterlog.model import Channel, Instrument, Origin, Quantity, Review, Role, join
from meterlog.model.errors import EvidenceError
from meterlog.recording import ImportRequest, Recording, import_trace

METADATA = "-metadata.json"


def _table(path):
    content = path.read_bytes()
    rows = list(csv.reader(io.StringIO(content.decode("utf-8"), newline="")))
    # Line ends within a note are the note's own; all others are CRLF.
    own = sum(cell.count("\n") - cell.count("\r\n") for row in rows for cell in row)
    assert content.count(b"\n") - content.count(b"\r\n") == own
    assert content.count(b"\r\n") >= len(rows)
    return rows


@pytest.fixture
def out(recording, desk, tmp_path):
    seen = []
    files = export_recording(recording, desk.review(), tmp_path / "out", seen.append)
    assert seen == sorted(seen)
    assert seen[-1] == 1.0
    assert {path.name for path in files} == {path.name for path in (tmp_path / "out").iterdir()}
    return tmp_path / "out"


def test_every_table_is_there(out):
    names = sorted(path.name for path in out.iterdir() if not path.name.endswith(METADATA))
    assert names == [
        "README.txt", "events.csv", "findings.csv", "judgement.txt", "readings-bench.csv",
        "readings-logger.csv", "review.json", "spans.csv", "steps.csv",
    ]  # fmt: skip


def test_every_table_has_its_metadata_beside_it(out):
    tables = {path.name for path in out.glob("*.csv")}
    assert {path.name for path in out.glob(f"*{METADATA}")} == {name + METADATA for name in tables}


def test_readings_have_time_value_flags_step_and_span(out):
    head, *rows = _table(out / "readings-logger.csv")
    assert head == [
        "time_utc", "elapsed_s", "motor-feed (V)", "motor-current (A)", "'=1+1 (V)", "flags",
        "step", "span",
    ]  # fmt: skip
    assert len(rows) == 40
    assert rows[0][:2] == ["2026-05-04T10:20:30.005000001Z", "1e-9"]
    assert rows[12][0] == "2026-05-04T10:20:31.205000001Z"
    assert rows[3][2:6] == ["13", "", "3.0000000000000004e-9", "motor-current:overload =1+1:zeroed"]
    assert rows[4][2:6] == ["", "", "4e-9", "motor-feed:no-data motor-current:no-data =1+1:zeroed"]
    # the speed and the span change at 1 s exactly, between rows 9 and 10
    assert [row[6:] for row in rows[9:11]] == [["", "off"], ["2", "dead"]]
    # and the last span ends at 3 s: nothing is said about what follows
    assert [row[7] for row in rows[29:31]] == ["dead", ""]


def test_values_read_back_exactly(out, desk):
    _, *rows = _table(out / "readings-bench.csv")
    assert [float(row[2]) for row in rows] == desk.bench_block().values[:, 0].tolist()
    assert [float(row[1]) for row in rows] == [0.0, 1.0, 2.0, 3.0, 4.0]


def test_an_export_imports_again_with_identical_values(out, desk, tmp_path):
    columns = (("motor-feed", "motor-feed (V)"), ("motor-current", "motor-current (A)"))
    request = ImportRequest(
        out / "readings-logger.csv",
        "elapsed_s",
        (*columns, ("other", "'=1+1 (V)")),
        tmp_path / "again",
        out / "events.csv",
    )
    again = Recording.open(import_trace(request))
    block = join(list(again.blocks("imported")))
    np.testing.assert_array_equal(block.t_ns, desk.logger_block().t_ns)
    np.testing.assert_array_equal(block.values, desk.logger_block().values)
    marks = [(event.t_ns, event.value) for event in again.events[:2]]
    assert marks == [
        (desk.second, "2"),
        (2 * desk.second, '@says "hä", twice\r\nand again'),
    ]


def test_by_its_time_stamps_an_export_imports_with_the_same_wall_time(out, desk, tmp_path):
    request = ImportRequest(
        out / "readings-bench.csv",
        "time_utc",
        (("motor-return", "motor-return (V)"),),
        tmp_path / "again",
    )
    again = Recording.open(import_trace(request))
    assert again.about.started_utc.isoformat() == "2026-05-04T10:20:30.005000+00:00"
    np.testing.assert_array_equal(
        join(list(again.blocks("imported"))).t_ns, desk.bench_block().t_ns
    )


def test_events_and_statements_that_a_spreadsheet_would_run_are_defused(out):
    events = _table(out / "events.csv")
    assert events[0] == ["time_utc", "elapsed_s", "kind", "value", "source"]
    assert [row[2] for row in events[1:]] == ["speed", "note", "end"]
    assert events[2][3] == '\'@says "hä", twice\r\nand again'
    findings = _table(out / "findings.csv")
    assert findings[1][:5] == ["dead", "fail", "1.0", "3.0", "2e-06"]
    assert findings[1][5:12] == ["0.01", "A", "0.02", "2.0", "0.3", "", "2"]
    assert findings[1][12].startswith("No current for 2.0 s")
    assert findings[2][5:13] == ["", "A", "", "", "", "", "", "'=The current could not be judged."]


def test_steps_and_spans_carry_the_reviews_figures(out):
    head, row = _table(out / "steps.csv")
    assert dict(zip(head, row, strict=True))["mean_a (A)"] == "5.0"
    assert dict(zip(head, row, strict=True))["steady_mean_a (A)"] == ""
    head, first, second = _table(out / "spans.csv")
    assert first[:6] == ["off", "0.0", "1.0", "0.0", "1e-06", ""]
    assert dict(zip(head, second, strict=True))["speed"] == "2"


def test_the_readme_says_which_recording_limits_and_program(out):
    text = (out / "README.txt").read_text(encoding="utf-8")
    for word in (
        "8f2d8d0c-51c5-4d0b-8f3e-6f0f8bb1a001", "nominal_v = 12.0", "Exported by  meterlog",
        "readings-logger.csv", "readings-bench.csv", "time_utc", "Accuracy not stated.", "0.2 s",
    ):  # fmt: skip
        assert word in text
    assert "SIMULATED" not in text
    for path in out.iterdir():
        assert path.name.removesuffix(METADATA) in text or path.name == "README.txt"


@pytest.mark.parametrize("origin", [Origin.SIMULATED, Origin.IMPORTED, Origin.TYPED])
def test_readings_that_were_not_measured_say_so_in_every_line_of_every_table(
    desk, tmp_path, origin
):
    recording = desk.make(tmp_path / "made", origin)
    export_recording(recording, desk.review(), tmp_path / "out", lambda _: None)
    tables = list((tmp_path / "out").glob("*.csv"))
    assert len(tables) == 6
    for path in tables:
        head, *rows = _table(path)
        assert head[-1] == "origin"
        assert {row[-1] for row in rows} == {origin.value}
    assert origin.value.upper() in (tmp_path / "out/README.txt").read_text()


def test_a_trace_without_dates_gets_no_invented_ones(tmp_path):
    (tmp_path / "t.csv").write_text("t,u\n0,1\n1,2\n")
    request = ImportRequest(tmp_path / "t.csv", "t", (("motor-feed", "u"),), tmp_path / "run")
    recording = Recording.open(import_trace(request))
    export_recording(recording, Review(), tmp_path / "out", lambda _: None)
    _, *rows = _table(tmp_path / "out/readings-imported.csv")
    assert [row[:3] for row in rows] == [["", "0", "1"], ["", "1", "2"]]
    assert "Started      not known" in (tmp_path / "out/README.txt").read_text()


def test_channels_of_the_same_role_or_with_odd_names_get_columns_of_their_own():
    from meterlog.evidence.readings_csv import column_names

    channels = (
        Channel("a", Quantity.VOLTAGE, Role.DROP),
        Channel("b", Quantity.VOLTAGE, Role.DROP),
        Channel("drop", Quantity.VOLTAGE),
        Channel("drop b", Quantity.VOLTAGE),
    )
    names = column_names(Instrument("k", "p", "u", channels))
    assert names[:2] == ("drop", "drop b")
    assert len(set(names)) == 4


def test_names_with_commas_and_quotes_are_quoted(desk, tmp_path, monkeypatch):
    (tmp_path / "t.csv").write_text('t,"left, ""upper"" (V)"\n0,1\n')
    request = ImportRequest(
        tmp_path / "t.csv", "t", (("other", 'left, "upper" (V)'),), tmp_path / "run"
    )
    recording = Recording.open(import_trace(request))
    export_recording(recording, Review(), tmp_path / "out", lambda _: None)
    head, row = _table(tmp_path / "out/readings-imported.csv")
    assert head[2] == 'left, "upper" (V) (V)'
    assert len(row) == len(head)


def test_a_folder_that_holds_anything_is_refused(recording, tmp_path):
    (tmp_path / "out").mkdir()
    (tmp_path / "out/mine").write_text("x")
    with pytest.raises(EvidenceError, match="not empty"):
        export_recording(recording, Review(), tmp_path / "out", lambda _: None)
    assert [path.name for path in (tmp_path / "out").iterdir()] == ["mine"]


def test_an_export_that_is_cancelled_leaves_nothing_behind(recording, desk, tmp_path):
    def cancel(_):
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        export_recording(recording, desk.review(), tmp_path / "out", cancel)
    assert list((tmp_path / "out").iterdir()) == []
    export_recording(recording, desk.review(), tmp_path / "out", lambda _: None)
