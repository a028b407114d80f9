"""``meterlog screen``, and ``meterlog compare --against`` its table."""

import json
import shutil

import pytest


@pytest.fixture(autouse=True)
def place(tmp_path, monkeypatch):
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    return tmp_path


def test_a_screening_is_told_and_resumed(run, small, place):
    (place / "runs").mkdir()
    shutil.move(small, place / "runs" / "small")
    (place / "runs" / "broken" / "data").mkdir(parents=True)
    (place / "runs" / "broken" / "data" / "about.json").write_text("{")
    out = place / "out"
    said = run("screen", place / "runs", "--out", out, "--workers", "1", "--threads")
    assert "2 recordings, 0 of them known from earlier." in said.out
    assert "not judged  1" in said.out
    assert "broken: not judged:" in said.err
    said = run("screen", place / "runs", "--out", out, "--workers", "1", "--threads", "--json")
    told = json.loads(said.out)
    assert (told["recordings"], told["reviewed"]) == (2, 0)
    assert told["outcomes"] == {"suspicion": 1}
    assert told["not_judged"][0]["folder"] == str(place / "runs" / "broken")
    assert (out / "findings.parquet").is_file()


@pytest.mark.parametrize("inside", ["", "data", "data/tables"])
def test_no_table_is_put_into_a_recording(run, small, place, inside):
    before = sorted(small.rglob("*"))
    said = run("screen", small.parent, "--out", small / inside, "--threads", code=2)
    assert "recording" in said.err
    assert "holds nothing but itself" in said.err
    (place / "link").symlink_to(small)
    run("screen", small.parent, "--out", place / "link" / inside, "--threads", code=2)
    assert sorted(small.rglob("*")) == before


def test_the_usual_place_is_the_users_data_folder(run, small, place):
    said = run("screen", small.parent, "--threads", "--json")
    assert json.loads(said.out)["findings"]["path"].startswith(str(place / "data" / "meterlog"))


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ((), "a folder is needed"),
        (("nowhere",), "nowhere: is no folder, or is not there"),
        ((".", "--workers", "0"), "0 is out of range"),
        ((".", "--number", "("), "--number: is no regular expression"),
        ((".", "--limits", "none-such"), "none-such"),
        ((".", "--cluster", "tcp://x:1", "--workers", "2"), "has workers of its own"),
    ],
)
def test_a_bad_request_is_refused_with_what_to_do(run, place, words, said, monkeypatch):
    monkeypatch.chdir(place)
    assert said in run("screen", *words, code=2).err


def test_what_is_not_installed_is_named_with_the_line_that_installs_it(run, place, monkeypatch):
    monkeypatch.setattr("meterlog.work.screening.workers.find_spec", lambda name: None)
    said = run("screen", place, code=2).err
    assert "dask, fsspec" in said
    assert "pip install dask fsspec" in said


def test_the_rule_is_told(run):
    assert "sealed" in run("screen", "--rule").out


def test_compare_against_refuses_what_does_not_go_together(run, small, place):
    for words, said in (
        (("--baseline",), "--baseline: does not go with --against"),
        (("--max-difference", "10"), "--max-difference: does not go with --against"),
        ((str(small),), "takes one recording with --against, not 2"),
    ):
        assert said in run("compare", "--against", place, small, *words, code=2).err
    assert "is not there" in run("compare", "--against", place, small, "--part", "X", code=1).err
