"""`meterlog export` writes the whole judgement, by found speeds where they are accepted."""

import csv
import json

import numpy as np
import pytest

from meterlog import cli


@pytest.fixture
def folder(tmp_path, capsys, qapp):
    """An imported trace of a fan at 0, 3, 6 and 0 A; nobody recorded its speeds. Invented."""
    amps = np.repeat([0.0, 3.0, 6.0, 0.0], 100) + np.random.default_rng(5).normal(0, 0.01, 400)
    lines = [f"{row / 10:.1f},{value:.4f}" for row, value in enumerate(amps)]
    (tmp_path / "trace.csv").write_text("s,amps\n" + "\n".join(lines) + "\n", encoding="utf-8")
    words = ["import", str(tmp_path / "trace.csv"), "--time", "s", "--assign"]
    words += ["motor-current=amps", "--accuracy", "motor-current=1+0.02"]
    assert cli.main([*words, "--out", str(tmp_path / "run")]) == 0
    capsys.readouterr()
    return tmp_path / "run"


def exported(folder, out, *more):
    assert cli.main(["export", str(folder), "--out", str(out), *more]) == 0
    with (out / "steps.csv").open(encoding="utf-8", newline="") as table:
        return list(csv.DictReader(table))


def test_found_speeds_are_proposals(folder, tmp_path):
    steps = exported(folder, tmp_path / "out")
    assert [step["speed"] for step in steps] == [""] * 4
    assert [step["proposed_speed"] for step in steps] == ["0", "1", "2", "0"]
    assert {step["found"] for step in steps} == {"yes"}


def test_accepted_ones_are_speeds_and_every_file_says_that_they_were_found(folder, tmp_path):
    steps = exported(folder, tmp_path / "out", "--accept-steps")
    assert [step["speed"] for step in steps] == ["0", "1", "2", "0"]
    assert {step["found"] for step in steps} == {"yes"}
    for name in ("judgement.txt", "README.txt", "review.json"):
        words = " ".join((tmp_path / "out" / name).read_text(encoding="utf-8").split())
        assert "accepted as commands" in words, name


def test_the_files_written_are_told(folder, tmp_path, capsys):
    exported(folder, tmp_path / "out", "--json")
    said = json.loads(capsys.readouterr().out)
    assert {"judgement.txt", "review.json", "budgets.csv", "startups.csv"} <= set(said["files"])
    assert "taps.csv" not in said["files"]


def test_the_check_of_the_seal_shows_how_far_it_is(folder, tmp_path, capsys, monkeypatch):
    monkeypatch.setattr("meterlog.commands.terminal._LINE_PERIOD_S", 0.0)
    exported(folder, tmp_path / "out")
    tasks = [line.partition(":")[0] for line in capsys.readouterr().err.splitlines()]
    told = [task for task in dict.fromkeys(tasks) if "ing" in task]
    assert told == ["reviewing", "checking the seal", "exporting"]
