"""CircuitLog: every entry is kept before it counts, in the run or in a recording of its own."""

import json
import math
from dataclasses import replace
from pathlib import Path

import pytest

from meterlog.evidence.verify import verify_folder
from meterlog.model import CircuitCheck, CircuitState, EventKind, Job, Sign
from meterlog.model.circuit_entries import Undone
from meterlog.model.errors import DiskFailed, ProfileError, UsageError
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
    folders = (tmp_path / name for name in ("check", "check-2", "check-3"))
    log = CircuitLog(lambda: next(folders), Job(work_order="W-17"))
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


def test_undo_takes_back_that_a_place_was_out_of_reach(log):
    first = log.read("motor-feed", 12.3, HIGH, 0.02)
    log.reach("controller", reached=False)
    assert log.undo() == "controller"
    assert (log.check.no_reach, log.check.readings) == (frozenset(), (first,))
    assert log.redo() == "controller"
    assert log.check.no_reach == {"controller"}
    log.reach("controller", reached=True)
    assert not log.can_redo
    assert log.undo() == "controller"
    assert log.check.no_reach == {"controller"}
    assert [log.undo(), log.undo(), log.undo()] == ["controller", first.id, None]
    assert not log.check.no_reach
    assert not log.check.readings
    log.reach("motor", reached=True)  # it never was out of reach
    assert not log.can_undo
    log.read("motor-feed", 12.2, HIGH, 0.02)
    (kept,) = _kept(log.folder)
    assert (kept.no_reach, [one.value for one in kept.readings]) == (frozenset(), [12.2])


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
    [
        ("nowhere", 12.0, 0.1, "test point"),
        ("motor-feed", math.nan, 0.1, "is no reading"),
        ("motor-feed", 12.0, math.inf, "is no reading"),
        ("motor-feed", 12.0, -0.1, "is no reading"),
    ],
)
def test_what_can_not_be_is_refused_and_not_kept(log, point, value, u, words):
    with pytest.raises(UsageError, match=words):
        log.read(point, value, HIGH, u)
    assert log.check.readings == ()
    assert log.folder is None


@pytest.mark.parametrize(
    ("entering", "words"),
    [
        (lambda log: log.read("motor-feed", 12.0, HIGH, 0.1, shared_u=math.nan), "no reading"),
        (lambda log: log.read("motor-feed", 12.0, HIGH, 0.1, meter_ohm=math.nan), "no input resis"),
        (lambda log: log.read("motor-feed", 12.0, HIGH, 0.1, meter_ohm=0.0), "no input resis"),
        (lambda log: log.sign(Sign.FAN, "loud", HIGH), "no answer to 'fan'"),
        (lambda log: log.reach("moon", reached=False), "no place or test point"),
        (lambda log: log.opened("motor-feed"), "no place of this circuit"),
    ],
)
def test_what_could_not_be_read_back_or_judged_is_never_kept(log, entering, words):
    with pytest.raises(UsageError, match=words):
        entering(log)
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


def test_after_the_disk_refused_the_next_entry_begins_anew_with_all_that_counts(log, monkeypatch):
    log.read("motor-feed", 12.3, HIGH, 0.02)
    first = log.folder
    whole = module.Recorder.take

    def full(self, item):
        self.failure = DiskFailed("no space left on the disk.", subject="x", remedy="y")
        raise self.failure

    monkeypatch.setattr(module.Recorder, "take", full)
    with pytest.raises(DiskFailed):
        log.read("motor-return", 0.0, HIGH, 0.02)
    monkeypatch.setattr(module.Recorder, "take", whole)
    log.read("motor-return", 0.1, HIGH, 0.02)
    assert log.folder != first
    (check,) = _kept(log.folder)
    assert check == log.check
    assert [one.value for one in check.readings] == [12.3, 0.1]
    assert Recording.open(first).state == "unsealed"
    (half,) = _kept(first)
    assert [one.value for one in half.readings] == [12.3]


def test_an_entry_that_is_not_understood_is_named(log):
    log.read("motor-feed", 12.3, HIGH, 0.02)
    log._own.keep('{"entry": "from a later program"}')
    log._own.keep(json.dumps({"entry": "undone", "id": 99, "undone": True}))
    checks, damage = circuit_checks(Recording.open(log.folder))
    assert len(checks) == 1
    assert len(damage) == 1
    assert "is not understood" in damage[0]
    assert Undone(99)


def test_entries_whose_beginning_is_lost_are_told_and_never_mixed_with_others(log, tmp_path):
    log.read("motor-feed", 12.3, HIGH, 0.02)
    log.read("motor-return", 12.2, HIGH, 0.02)
    log.choose(log.circuit)
    log.read("motor-feed", 0.1, HIGH, 0.02)
    log.read("motor-return", 0.0, HIGH, 0.02)
    file = log.folder / "data/events.jsonl"
    lines = file.read_bytes().splitlines(keepends=True)
    assert [b"chosen" in line for line in lines] == [True, False, False, True, False, False]

    file.write_bytes(b"".join(lines[:3] + lines[4:]))
    (check,), damage = circuit_checks(Recording.open(log.folder))
    assert [one.value for one in check.readings] == [12.3, 12.2]
    (told,) = damage
    assert "2 entries from" in told
    assert "can't be judged" in told

    file.write_bytes(lines[1])
    checks, (told,) = circuit_checks(Recording.open(log.folder))
    assert checks == ()
    assert "1 entry from" in told


def test_a_lost_profile_is_told_and_one_of_that_name_stands_in(log):
    log.read("motor-feed", 12.3, HIGH, 0.02)
    (log.folder / "data/circuits/low-side-linear-12v.toml").unlink()
    (check,), (told,) = circuit_checks(Recording.open(log.folder))
    assert "can't be read (data/circuits/low-side-linear-12v.toml)" in told
    assert "can stand in" in told
    assert circuit_of(check) == log.circuit


def test_a_profile_that_was_changed_in_the_recording_is_told_and_not_believed(log):
    log.read("motor-feed", 12.3, HIGH, 0.02)
    file = log.folder / "data/circuits/low-side-linear-12v.toml"
    good = file.read_text(encoding="utf-8")
    assert good.count("emf_v = 12.55") == 1
    file.write_text(good.replace("emf_v = 12.55", "emf_v = 13.55"), encoding="utf-8")
    (check,), (told,) = circuit_checks(Recording.open(log.folder))
    assert "is not what it was then" in told
    assert circuit_of(check) == log.circuit


def test_a_profile_may_end_its_lines_in_any_way(log, circuit):
    log.choose(replace(circuit, text=circuit.text.replace("\n", "\r\n")))
    log.read("motor-feed", 12.3, HIGH, 0.02)
    (check,) = _kept(log.folder)
    assert circuit_of(check).elements == circuit.elements


def test_a_recording_can_not_name_a_file_as_its_circuit(log, tmp_path):
    mine = tmp_path / "mine.toml"
    mine.write_text(log.circuit.text, encoding="utf-8")
    assert load_circuit(str(mine)).name == "mine"
    with pytest.raises(ProfileError, match="no circuit profile of this name"):
        circuit_of(CircuitCheck(str(mine)))


def test_no_file_outside_is_ever_read_for_a_circuit(log):
    log.read("motor-feed", 12.3, HIGH, 0.02)
    folder = log.folder
    secret = Path(folder.parent / "secret.toml")
    secret.write_text("title = 'no'")
    log._own.keep(json.dumps({"entry": "chosen", "circuit": "x", "file": "../secret.toml"}))
    log._own.keep(json.dumps({"entry": "opened", "place": "motor"}))
    log.read("motor-feed", 12.3, HIGH, 0.02)
    log.read("motor-feed", 12.4, HIGH, 0.02)
    checks, damage = circuit_checks(Recording.open(folder))
    assert checks[-1].text == ""
    assert "../secret.toml" in damage[0]
