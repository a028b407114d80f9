"""What was exported becomes a recording again: every sample, flag, event and figure."""

from dataclasses import replace
from datetime import UTC, datetime

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.evidence import export_recording
from meterlog.evidence.table_form import table_form
from meterlog.model import About, Event, EventKind, Job, Origin, Review, join
from meterlog.recording import (
    ExportRequest,
    Recorder,
    Recording,
    as_written,
    defused,
    import_export,
    kept_circuit,
)

FORMS = [("comma", "point"), ("semicolon", "comma"), ("tab", "comma"), ("semicolon", "point")]


@pytest.mark.parametrize("form", FORMS)
def test_every_sample_flag_and_event_comes_back_as_it_was(desk, made, tmp_path, form):
    again, lacking = desk.again(made / "-".join(form), tmp_path)
    assert lacking == ()
    assert again.state == "sealed"
    assert again.damage == ()
    for block in desk.blocks():
        found = join(list(again.blocks(block.source)))
        np.testing.assert_array_equal(found.t_ns, block.t_ns)
        np.testing.assert_array_equal(found.flags, block.flags)
        np.testing.assert_array_equal(found.values, block.values)
        np.testing.assert_array_equal(np.signbit(found.values), np.signbit(block.values))
    original = Recording.open(made / "run")
    assert again.events == original.events
    assert again.end_ns == original.end_ns


def test_all_that_figures_rest_on_is_kept_and_the_customer_is_not(desk, made, tmp_path):
    again, _ = desk.again(made / "semicolon-comma", tmp_path)
    about, before = again.about, Recording.open(made / "run").about
    assert about.instruments == tuple(
        replace(one, url=f"readings-{one.key}.csv") for one in before.instruments
    )
    assert about.limits == before.limits
    assert (about.started_utc, about.local_offset_s) == (desk.started, 7200)
    assert about.job == Job(measured_under=before.job.measured_under)
    assert about.recording_id != before.recording_id
    for path in made.glob("*/*.csv-metadata.json"):
        text = path.read_text(encoding="utf-8")
        for word in ("4711", "it stops", '"van"', "port"):
            assert word not in text


@pytest.mark.parametrize(
    ("origin", "simulated", "told"),
    [
        (Origin.MEASURED, False, Origin.IMPORTED),
        (Origin.TYPED, False, Origin.IMPORTED),
        (Origin.IMPORTED, False, Origin.IMPORTED),
        (Origin.MEASURED, True, Origin.SIMULATED),
        (Origin.SIMULATED, False, Origin.SIMULATED),
    ],
)
def test_imported_is_said_and_simulated_never_gets_lost(desk, tmp_path, origin, simulated, told):
    bench = replace(desk.instruments()[1], simulated=simulated)
    recorder = Recorder.create(
        tmp_path / "run", About("id", desk.started, 0, 0, "t", origin, (bench,))
    )
    recorder.take(desk.blocks()[1])
    recorder.close()
    export_recording(Recording.open(tmp_path / "run"), Review(), tmp_path / "out", lambda _: None)
    again, _ = desk.again(tmp_path / "out", tmp_path)
    assert again.about.origin is told
    assert again.about.instruments[0].typed
    assert again.about.program.endswith("of an export; first by t")


def test_the_files_themselves_are_kept(desk, made, tmp_path):
    again, _ = desk.again(made / "tab-comma", tmp_path)
    kept = again.folder / "data" / "original"
    assert sorted(path.name for path in kept.iterdir()) == [
        "events.csv", "events.csv-metadata.json", "readings-bench-2.csv",
        "readings-bench-2.csv-metadata.json", "readings-logger.csv",
        "readings-logger.csv-metadata.json",
    ]  # fmt: skip
    for path in kept.iterdir():
        assert path.read_bytes() == (made / "tab-comma" / path.name).read_bytes()


def test_one_table_alone_is_imported_and_it_is_said_what_is_lacking(desk, made, tmp_path):
    name = "readings-bench-2.csv"
    again, lacking = desk.again(made / "comma-point" / name, tmp_path)
    assert [one.key for one in again.about.instruments] == ["bench-2"]
    assert [line for line in lacking if "logger" in line] == list(lacking)
    assert len(again.events) == len(desk.events()) + 1
    for ending in ("", "-metadata.json"):
        (tmp_path / (name + ending)).write_bytes(
            (made / "comma-point" / (name + ending)).read_bytes()
        )
    out, lacking = import_export(ExportRequest(tmp_path / name, tmp_path / "third"))
    assert any("no events" in line for line in lacking)
    assert [event.kind for event in Recording.open(out).events] == [EventKind.END]


def test_a_recording_without_a_date_and_a_meter_without_readings(desk, tmp_path):
    about = About(
        "id", datetime(1970, 1, 1, tzinfo=UTC), 0, 0, "t", Origin.IMPORTED, desk.instruments()
    )
    recorder = Recorder.create(tmp_path / "run", about)
    recorder.take(desk.blocks()[1])
    recorder.take(Event(7, EventKind.NOTE, "x"))
    recorder.close()
    form = table_form("semicolon", "comma")
    run = Recording.open(tmp_path / "run")
    export_recording(run, Review(), tmp_path / "out", lambda _: None, form=form)
    again, lacking = desk.again(tmp_path / "out", tmp_path)
    assert lacking == ()
    assert (again.rows("logger"), again.rows("bench-2")) == (0, 3)
    assert again.about.started_utc == about.started_utc
    assert again.events == run.events


def test_the_circuits_of_a_check_are_kept_though_no_meter_was_recorded(desk, tmp_path):
    names = desk.check(tmp_path / "run")
    assert names == ["data/circuits/mine.toml", "data/circuits/mine-2.toml"]
    run = Recording.open(tmp_path / "run")
    export_recording(run, Review(), tmp_path / "out", lambda _: None)
    again, lacking = desk.again(tmp_path / "out", tmp_path)
    assert lacking == ()
    assert again.events == run.events
    assert [kept_circuit(again.folder, name) for name in names] == ["a = 1\n", "a = 2\n"]
    assert again.check() == ()


@given(st.text(alphabet="'=+-@\t\r\na\uff1d ", max_size=6) | st.text())
def test_defused_text_starts_no_formula_and_comes_back(text):
    written = defused(text)
    assert not written.startswith(("=", "+", "-", "@", "\t", "\r", "\n", "\uff1d"))
    assert as_written(written) == text
    assert written == text or text.lstrip("'")[:1] in set("=+-@\t\r\n\uff1d\uff0b\uff0d\uff20")
