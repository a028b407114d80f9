import json
from datetime import UTC, datetime

import pytest

from meterlog.instruments.virtual.journal import Journal
from meterlog.instruments.virtual.play import Play
from meterlog.instruments.virtual.scenarios import find_scenario
from meterlog.instruments.virtual.trouble import Trouble
from meterlog.model.errors import UsageError

ZERO = datetime(2026, 3, 1, 12, 0, 0, tzinfo=UTC)


def test_happenings_and_truth_are_told_with_the_times_of_the_wall():
    play = Play(find_scenario("dead-spot"), 1)
    told = []
    journal = Journal(play, told.append, speedup=2.0)
    journal.open(5_000_000_000, ZERO)
    play.advance(play.steps_at(4.0))
    journal.follow()
    lines = [json.loads(line) for line in told]
    assert [(line["kind"], line["value"]) for line in lines] == [
        ("open", "dead-spot"),
        ("speed", "0"),
        ("speed", "1"),
        ("tap", ""),
        ("truth", "off"),
        ("truth", "dead"),
        ("truth", "running"),
    ]
    tapped = lines[3]
    assert tapped["elapsed_s"] == 3.6
    assert tapped["monotonic_ns"] == 5_000_000_000 + 1_800_000_000
    assert tapped["utc"] == "2026-03-01T12:00:01.800000Z"
    journal.follow()
    assert len(told) == len(lines)


def test_the_truth_file_is_whole_from_the_beginning_and_grows(tmp_path):
    path = tmp_path / "truth.json"
    play = Play(find_scenario("dead-spot"), 1)
    journal = Journal(play, lambda _: None, truth=path)
    journal.begin(play.planned())
    assert json.loads(path.read_text())["spans"] == []
    journal.open(7, ZERO)
    play.advance(play.steps_at(4.0))
    journal.follow()
    kept = json.loads(path.read_text())
    assert [span["kind"] for span in kept["spans"]] == ["off", "dead", "running"]
    assert kept["spans"][1] == {"kind": "dead", "start_s": 2.0, "end_s": 3.6}
    assert (kept["scenario"], kept["seed"], kept["complete"]) == ("dead-spot", 1, False)
    assert (kept["zero_monotonic_ns"], kept["zero_utc"]) == (7, "2026-03-01T12:00:00.000000Z")
    assert kept["circuit"]["wiring"]["feed_ohm"] == 0.03
    assert [p.name for p in tmp_path.iterdir()] == ["truth.json"]


def test_a_file_that_cannot_be_written_is_said_at_once(tmp_path):
    play = Play(find_scenario("dead-spot"), 1)
    journal = Journal(play, lambda _: None, events=tmp_path / "missing" / "events.csv")
    with pytest.raises(UsageError, match="Choose a folder that exists"):
        journal.begin(play.planned())


def test_what_happens_to_a_meter_is_told_with_its_name_and_kept(tmp_path):
    path = tmp_path / "truth.json"
    told = []
    journal = Journal(
        Play(find_scenario("dead-spot"), 1), told.append, truth=path, meters=[{"meter": "one"}]
    )
    journal.open(0, ZERO)
    journal.tell(Trouble(1.5, "one", "unplug", "2"))
    said = json.loads(told[-1])
    assert (said["kind"], said["meter"], said["value"]) == ("unplug", "one", "2")
    assert "meter" not in json.loads(told[0])
    kept = json.loads(path.read_text())
    assert kept["meters"] == [{"meter": "one"}]
    assert kept["meter_happenings"] == [
        {"elapsed_s": 1.5, "meter": "one", "kind": "unplug", "value": "2"}
    ]
