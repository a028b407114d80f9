"""What the demo says at its end, and the files of the comparison. All of it is invented."""

import json
from dataclasses import replace

import pytest

from meterlog.model import (
    ComparedRun,
    Comparison,
    Finding,
    FindingKind,
    Outcome,
    Overlay,
    Review,
    RunVerdict,
    Verdict,
)
from meterlog.model.errors import EvidenceError
from meterlog.work.comparison_files import write_comparison
from meterlog.work.demo_text import findings_text, summary_text

DEAD = Finding(
    FindingKind.DEAD, Verdict.FAIL, 2 * 10**9, 3 * 10**9, 10**7, 0.0, "A", 0.05, 0.3, 1,
    "Dead segment at speed 1.", 1.65,
)  # fmt: skip
JUDGED = RunVerdict(Outcome.FAULT, "A fault was found, " + "and it lasts, " * 20 + "here.", (), ())
REVIEW = Review(findings=(DEAD, replace(DEAD, verdict=Verdict.PASS)), verdict=JUDGED)
PARTS = [("before: dead bar", REVIEW), ("after: new motor", Review())]


def run(name):
    return ComparedRun(name, f"id of {name}", "invented fan", "2030-01-02T03:04:05", "simulated")


COMPARISON = Comparison(
    (run("before"),), run("after"), "", (), (),
    (Overlay("time", None, (0.0, 0.0), (1.0, float("nan")), (1.0, 2.0)),), (), "It draws more.",
)  # fmt: skip


def test_the_short_text_has_verdicts_and_comparison_and_no_table():
    text = summary_text(PARTS, COMPARISON)
    assert text.startswith("SIMULATED on the virtual bench.")
    assert "BEFORE: DEAD BAR: 1 pass, 1 fail" in text
    assert "AFTER: NEW MOTOR: nothing found" in text
    assert JUDGED.paragraph in " ".join(text.split())
    assert "NEW AGAINST OLD\nIt draws more." in text
    assert DEAD.statement not in text
    assert max(map(len, text.splitlines())) <= 100


def test_the_file_has_every_finding_besides():
    text = findings_text(PARTS, COMPARISON)
    assert text.count(DEAD.statement) == 2
    assert "No findings." in text
    assert "0.000 ± 0.050 A" in text


def test_one_recording_is_compared_with_nothing():
    assert "AGAINST" not in summary_text(PARTS[:1], None)


def test_why_two_recordings_cannot_be_compared_stands_in_place_of_the_summary():
    refused = replace(COMPARISON, refusal="No speed in common.", summary="")
    assert "NEW AGAINST OLD\nNo speed in common." in summary_text(PARTS, refused)


def test_a_comparison_is_kept_as_text_and_as_strict_json(tmp_path):
    def refuse(word):
        raise AssertionError(word)

    words, numbers = write_comparison(COMPARISON, tmp_path)
    assert "It draws more." in words.read_text(encoding="utf-8")
    said = json.loads(numbers.read_text(encoding="utf-8"), parse_constant=refuse)
    assert (said["new"]["name"], said["old"][0]["origin"]) == ("after", "simulated")
    assert said["overlays"][0]["old_a"] == [1.0, None]


def test_a_folder_that_is_not_there_is_named(tmp_path):
    with pytest.raises(EvidenceError, match="can't be written") as caught:
        write_comparison(COMPARISON, tmp_path / "gone")
    assert "gone" in str(caught.value)
