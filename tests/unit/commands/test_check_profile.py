"""``meterlog check-profile``: every fault, or what the profile says and where it belongs."""

import json
import shutil

import pytest

from meterlog.profile import names, profile_file, shipped_folder
from meterlog.profile.folders import OWN_FOLDER

GOOD = """
title = "An invented meter"
dialect = "ascii-lines"
interval_s = 0.5
integration_s = 0.25
counts = 6000
power_off_s = 900
[link]
baud = 2400
rts = false
[lines]
columns = ["a", "b"]
[[channels]]
name = "a"
quantity = "voltage"
[[channels.ranges]]
top = 6
percent_of_reading = 0.5
resolution = 0.001
basis = "invented"
[[channels.ranges]]
top = 60
percent_of_reading = 0.5
digits = 2
resolution = 0.01
basis = "invented"
[[channels]]
name = "b"
quantity = "current"
"""


@pytest.fixture
def own(monkeypatch, tmp_path):
    monkeypatch.setenv(OWN_FOLDER, str(tmp_path / "own"))
    (tmp_path / "own" / "meters").mkdir(parents=True)
    return tmp_path / "own" / "meters"


@pytest.fixture
def good(own, tmp_path):
    file = tmp_path / "mine.toml"
    file.write_text(GOOD)
    return file


def test_a_good_profile_is_summed_up_with_its_accuracy_and_its_place(good, own, run):
    said = run("check-profile", good).out
    assert "mine.toml: no fault." in said
    assert "ascii-lines, 2400 8N1, DTR on, RTS off" in said
    assert "every 0.5 s, each the mean over 0.25 s, 6000 counts" in said
    assert "switches itself off after 900 s" in said
    # ±(0.5 % of 12 V + 2 x 0.01 V), reckoned by hand.
    assert "±0.08 V at 12 V" in said
    assert "6, 60" in said
    assert "not stated" in said
    assert f"it belongs here: {own / 'mine.toml'}" in said


def test_in_its_place_it_is_found_by_its_name(good, own, run):
    shutil.copy(good, own / "mine.toml")
    said = run("check-profile", own / "mine.toml").out
    assert "It is found by its name mine." in said
    assert "belongs here" not in said
    assert "takes the place" not in said


def test_one_that_takes_the_place_of_a_shipped_one_says_so(good, own, run):
    for file in (good.with_name("line-logger.toml"), own / "line-logger.toml"):
        shutil.copy(good, file)
        assert "takes the place of the shipped one" in run("check-profile", file).out


def test_every_fault_of_every_file_is_told_with_file_line_key_and_what_was_expected(good, run):
    bad = good.with_name("bad.toml")
    bad.write_text(GOOD.replace("interval_s = 0.5", "interval_s = 0").replace('"a"', '"a b"', 2))
    absent = good.with_name("absent.toml")
    said = run("check-profile", bad, good, absent, code=1).out
    assert "bad.toml: 2 faults." in said
    assert "bad.toml, line 4: interval_s is 0. Expected a number 1e-06 to 3600" in said
    assert "bad.toml, line 14: channels[0].name is 'a b'." in said
    assert "mine.toml: no fault." in said
    assert "absent.toml: can't be read: No such file or directory." in said


def test_a_file_whose_name_can_not_be_one_of_a_profile_is_a_fault(good, run):
    odd = good.with_name("a@b.toml")
    odd.write_text(GOOD)
    assert "can't be the name of a profile" in run("check-profile", odd, code=1).out


def test_as_json(good, own, run):
    bad = good.with_name("bad.toml")
    bad.write_text("dialect = 1\n")
    told = json.loads(run("check-profile", "--json", good, bad, code=1).out)["profiles"]
    assert told[0]["faults"] == []
    assert told[0]["profile"]["channels"][0]["accuracy"] == {"at": 12.0, "half_width": 0.08}
    assert told[0]["found_by_name"] is False
    assert told[0]["belongs_to"] == str(own / "mine.toml")
    assert any("dialect is 1" in fault["message"] for fault in told[1]["faults"])
    assert told[1]["profile"] is None


@pytest.mark.parametrize("name", names("meters"))
def test_a_shipped_profile_passes(name, run):
    assert "no fault" in run("check-profile", profile_file("meters", name)).out


@pytest.mark.parametrize("data", [b"", b"\xff", b"\x00", b"[" * 3000, b"a.b.c = "])
def test_no_file_whatever_gets_a_traceback(data, tmp_path, run):
    file = tmp_path / "odd.toml"
    file.write_bytes(data)
    assert "odd.toml" in run("check-profile", file, code=1).out
    run("check-profile", tmp_path, code=1)


def test_the_schema_is_shipped_beside_the_profiles():
    schema = json.loads((shipped_folder() / "meter.schema.json").read_text(encoding="utf-8"))
    assert schema["title"]
