"""CircuitLog: every entry is kept before it counts, in the run or in a recording of its own."""

import json
from dataclasses import replace
from pathlib import Path

import pytest

from meterlog.evidence.verify import verify_folder
from meterlog.model import CircuitState, EventKind, Job, Sign
from meterlog.model.circuit_entries import Undone
from meterlog.model.errors import DiskFailed, UsageError
from meterlog.profile import load_circuit
from meterlog.recording import Recording
from meterlog.work import circuit_log as module
from meterlog.work.circuit_checks import circuit_checks, circuit_of
from meterlog.work.circuit_log import CircuitLog

HIGH = CircuitState("on", 4)


@pytest.fixture(scope="module")
def circuit():
    return load_circuit("low-side-linear-12v")


@pytest.fixture
def log(tmp_path, circuit):
    log = CircuitLog(lambda: tmp_path / "check", Job(work_order="W-17"))
    log.choose(circuit)
    return log


def _kept(folder):
    checks, damage = circuit_checks(Recording.open(folder))
    assert damage == ()
    return checks


def test_without_a_run_it_begins_a_recording_with_its_first_entry(log, tmp_path):
    assert log.folder is None
    assert not (tmp_path / "check").exists()
    log.read("motor-feed", 12.3, HIGH, 0.02)
    log.sign(Sign.FAN, "dead", HIGH)
    assert log.folder == tmp_path / "check"
    (check,) = _kept(log.folder)
    assert check == log.check
    assert circuit_of(check) == log.circuit


def test_closed_it_is_sealed_and_says_whose_it_is(log):
    log.read("motor-feed", 12.3, HIGH, 0.02)
    folder = log.close()
    assert verify_folder(folder).intact
    recording = Recording.open(folder)
    assert recording.state == "sealed"
    assert recording.about.job.work_order == "W-17"
    assert recording.damage == ()
    assert log.close() is None


def test_undo_takes_nothing_off_the_disk(log):
    first = log.read("motor-feed", 12.3, HIGH, 0.02)
    second = log.read("motor-return", 0.0, HIGH, 0.02)
    assert log.undo() == second.id
    assert log.check.readings == (first,)
    assert log.redo() == second.id
    assert log.check.readings == (first, second)
    assert log.undo() == second.id
    assert log.undo() == first.id
    assert log.undo() is None
    assert not log.can_undo
    values = [
        json.loads(event.value)["entry"]
        for event in Recording.open(log.folder).events
        if event.kind is EventKind.CIRCUIT
    ]
    assert values.count("reading") == 2
    assert values.count("undone") == 4


def test_what_follows_an_undo_has_a_number_of_its_own(log):
    first = log.read("motor-feed", 12.3, HIGH, 0.02)
    log.undo()
    again = log.read("motor-feed", 12.1, HIGH, 0.02)
    assert again.id != first.id
    assert not log.can_redo
    assert log.check.readings == (again,)


def test_another_circuit_is_another_check(log, circuit):
    log.read("motor-feed", 12.3, HIGH, 0.02)
    log.choose(replace(circuit, text=circuit.text + "\n# mine\n"))
    log.read("motor-feed", 11.0, HIGH, 0.02)
    first, second = _kept(log.folder)
    assert [one.readings[0].value for one in (first, second)] == [12.3, 11.0]
    assert first.text != second.text
    files = sorted(path.name for path in (log.folder / "data/circuits").iterdir())
    assert files == ["low-side-linear-12v-2.toml", "low-side-linear-12v.toml"]


def test_a_run_takes_over_with_all_that_was_entered_before(log, tmp_path):
    class FakeRun:
        folder = tmp_path / "run"

        def __init__(self):
            self.marks = []
            self.folder.mkdir()

        def mark(self, kind, value):
            self.marks.append((kind, json.loads(value)["entry"]))

    log.read("motor-feed", 12.3, HIGH, 0.02)
    own = log.folder
    run = FakeRun()
    log.follow(run)
    assert verify_folder(own).intact
    assert log.folder == run.folder
    log.read("motor-return", 0.1, HIGH, 0.02)
    assert [entry for _, entry in run.marks] == ["chosen", "reading", "reading"]
    assert len(log.check.readings) == 2
    assert (run.folder / "data/circuits/low-side-linear-12v.toml").is_file()


@pytest.mark.parametrize(
    ("point", "value", "u", "words"),
    [("nowhere", 12.0, 0.1, "test point"), ("motor-feed", float("nan"), 0.1, "is no reading")],
)
def test_what_can_not_be_is_refused_and_not_kept(log, point, value, u, words):
    with pytest.raises(UsageError, match=words):
        log.read(point, value, HIGH, u)
    assert log.check.readings == ()
    assert log.folder is None


def test_nothing_is_entered_before_a_circuit_is_chosen(tmp_path):
    with pytest.raises(UsageError, match="no circuit"):
        CircuitLog(lambda: tmp_path / "x").sign(Sign.FAN, "dead", HIGH)


def test_what_the_disk_refused_does_not_count(log, monkeypatch):
    log.read("motor-feed", 12.3, HIGH, 0.02)

    def full(self, text):
        raise DiskFailed("full", subject="x", remedy="y")

    monkeypatch.setattr(module._OwnRecording, "keep", full)
    with pytest.raises(DiskFailed):
        log.read("motor-return", 0.0, HIGH, 0.02)
    with pytest.raises(DiskFailed):
        log.undo()
    assert [one.point for one in log.check.readings] == ["motor-feed"]
    assert log.can_undo


def test_an_entry_that_is_not_understood_is_named(log):
    log.read("motor-feed", 12.3, HIGH, 0.02)
    log._own.keep('{"entry": "from a later program"}')
    log._own.keep(json.dumps({"entry": "undone", "id": 99, "undone": True}))
    checks, damage = circuit_checks(Recording.open(log.folder))
    assert len(checks) == 1
    assert len(damage) == 1
    assert "is not understood" in damage[0]
    assert Undone(99)


def test_no_file_outside_is_ever_read_for_a_circuit(log):
    log.read("motor-feed", 12.3, HIGH, 0.02)
    folder = log.folder
    secret = Path(folder.parent / "secret.toml")
    secret.write_text("title = 'no'")
    log._own.keep(json.dumps({"entry": "chosen", "circuit": "x", "file": "../secret.toml"}))
    log._own.keep(json.dumps({"entry": "opened", "place": "motor"}))
    log.read("motor-feed", 12.3, HIGH, 0.02)
    checks, _ = circuit_checks(Recording.open(folder))
    assert checks[-1].text == ""
