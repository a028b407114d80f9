"""``meterlog find``."""

import json
import shutil

import pytest

from meterlog.work.library import WatchedFolders


@pytest.fixture(autouse=True)
def place(tmp_path, monkeypatch):
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "config"))
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    monkeypatch.setattr("meterlog.work.shelf.recordings_folder", lambda: tmp_path / "usual")
    return tmp_path


def test_what_is_there_is_found_judged_and_narrowed(run, small, place):
    said = run("find", "--folder", place)
    assert "recording" in said.out
    assert "not judged" in said.out
    assert "--judge" in said.err
    said = run("find", "SMALL", "--folder", place, "--judge", "--json")
    found = json.loads(said.out)
    assert said.err == ""
    (one,) = found["found"]
    assert one["folder"] == str(small)
    assert one["mark"] == "IMPORTED"
    assert one["started_local"] is None
    assert one["currents"][0]["speed"] == 1
    assert one["currents"][0]["mean_a"] == pytest.approx(4.0, abs=0.1)
    verdict = one["verdict"].replace(" ", "-").replace("'", "")
    assert run("find", "--folder", place, "--verdict", verdict).out.count("small") == 1
    for words in (("nowhere",), ("--from", "2020"), ("--kind", "job"), ("--verdict", "not")):
        said = run("find", *words, "--folder", place, code=1)
        assert said.out.startswith("Nothing was found in ")
    shutil.rmtree(small)
    run("find", "--folder", place, code=1)


def test_the_usual_folder_and_the_watched_ones_are_looked_into(run, small, place):
    (place / "usual").mkdir()
    assert run("find", code=1).out.startswith("Nothing was found in ")
    shutil.move(small, place / "usual" / "moved")
    assert "moved" in run("find").out
    WatchedFolders().keep([place / "stick"])
    said = run("find", code=1)
    assert f"{place / 'stick'}: can't be looked into: it is not there now." in said.err
    assert "moved" in said.out


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--from", "soon"), "soon: is no date."),
        (("--verdict", "bad"), "bad: is no verdict. There are: fault-found"),
        (("--folder", "nowhere"), "--folder nowhere: is no folder"),
    ],
)
def test_a_bad_request_is_refused_with_what_to_do(run, words, said):
    assert said in run("find", *words, code=2).err
