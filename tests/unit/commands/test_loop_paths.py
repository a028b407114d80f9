"""A path through a link that leads to itself is an error that names it, at every command."""

import json
import os

import pytest

from meterlog.work.job_folder import CARD, WORK, Side, keep_work
from meterlog.work.job_folder import JobWork as Work


@pytest.fixture
def loop(tmp_path):
    """A link to itself, and a folder named through it."""
    (tmp_path / "loop").symlink_to("loop")
    return tmp_path / "loop" / "x"


@pytest.fixture
def port():
    """A port that is there and says nothing."""
    far, near = os.openpty()
    yield os.ttyname(near)
    os.close(far)
    os.close(near)


@pytest.mark.parametrize(
    "words",
    [
        ("export", "{small}", "--out", "{loop}"),
        ("join", "{loop}", "--out", "{loop}"),
        ("job", "{loop}/card.json", "--set", "work_order=1"),
        ("job", "{loop}/card.json"),
        ("record", "--meter", "line-logger@{port}", "--out", "{loop}", "--seconds", "1"),
        ("claim", "{loop}/card.json", "--before", "{small}", "--out", "{loop}", "--unsigned"),
        ("find", "--folder", "{loop}"),
        ("screen", "{loop}", "--threads"),
        ("screen", "{small}", "--threads", "--out", "{loop}"),
        ("review", "{loop}"),
        ("verify", "{loop}"),
        ("amend", "{loop}", "--list"),
        ("check-profile", "{loop}/x.toml"),
    ],
)
def test_no_command_stumbles(small, loop, port, words, monkeypatch, tmp_path, capsys):
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    from meterlog import cli

    try:
        code = cli.main([one.format(small=small, loop=loop, port=port) for one in words])
    except SystemExit as leaving:
        code = leaving.code
    said = capsys.readouterr()
    assert "fault in meterlog itself" not in said.err
    assert code in {0, 1, 2}
    assert "loop" in said.err + said.out
    assert small.is_dir()


def test_a_job_that_names_one_costs_nobody_the_others(run, small, loop, tmp_path, monkeypatch):
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    job = tmp_path / "job"
    job.mkdir()
    run("job", job / CARD, "--set", "old_part.number=FM-1")
    keep_work(job, Work().taking(small, Side.OLD))
    work = json.loads((job / WORK).read_text())
    work["recordings"].append({"folder": str(loop), "part": "new", "circuit": False})
    (job / WORK).write_text(json.dumps(work))
    assert "small" in run("find", "--folder", tmp_path).out
    said = json.loads(run("screen", tmp_path, "--out", tmp_path / "o", "--threads", "--json").out)
    assert said["recordings"] == 1


def test_channels_that_are_connected_nowhere_are_said_before_it_is_recorded(monkeypatch):
    from meterlog.commands.record import _say_what_is_unassigned
    from meterlog.work import Wiring, choose_meters

    said = []
    monkeypatch.setattr("meterlog.commands.terminal.remark", said.append)
    _say_what_is_unassigned(choose_meters(Wiring(("typed-amps@typed:",), ())))
    assert "nothing is judged" in said[0]
    said.clear()
    assigned = Wiring(("typed-amps@typed:",), ("motor-current=typed-amps.amps",))
    _say_what_is_unassigned(choose_meters(assigned))
    assert said == []
