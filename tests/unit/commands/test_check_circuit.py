"""``meterlog check-profile`` with circuits: every fault, or what the circuit says."""

import json

import pytest

from meterlog.profile import names, profile_file
from meterlog.profile.folders import OWN_FOLDER

SHIPPED = "low-side-linear-12v"


@pytest.fixture
def text():
    return profile_file("circuits", SHIPPED).read_text(encoding="utf-8")


@pytest.fixture
def own(monkeypatch, tmp_path):
    monkeypatch.setenv(OWN_FOLDER, str(tmp_path / "own"))
    folder = tmp_path / "own" / "circuits"
    folder.mkdir(parents=True)
    return folder


def test_a_good_circuit_is_summed_up_with_odds_and_test_points(own, text, tmp_path, run):
    file = tmp_path / "van.toml"
    file.write_text(text, encoding="utf-8")
    said = run("check-profile", file).out
    assert "van.toml: no fault." in said
    assert "nominal 12 V, speeds 0, 1, 2, 3, 4" in said
    assert "speed controller with its plug" in said
    assert "motor plug, return wire" in said
    assert f"it belongs here: {own / 'van.toml'}" in said


def test_in_its_place_it_is_found_and_named_in_the_list(own, text, run):
    (own / "van.toml").write_text(text, encoding="utf-8")
    assert "found by its name van." in run("check-profile", own / "van.toml").out
    listed = run("check-profile", "--list").out
    assert "van  (your own)" in listed
    assert all(name in listed for kind in ("meters", "circuits", "limits") for name in names(kind))
    as_json = json.loads(run("check-profile", "--list", "--json").out)
    assert {"van", SHIPPED} <= {one["name"] for one in as_json["circuits"]}


def test_every_fault_is_named_and_the_exit_code_tells(text, tmp_path, run):
    file = tmp_path / "bad.toml"
    bad = text.replace('unit = "motor"', 'unit = "mtor"', 1).replace(
        "nominal_v = 12", "nominal = 12"
    )
    file.write_text(bad, encoding="utf-8")
    said = run("check-profile", file, code=1).out
    assert "nominal_v is missing" in said
    assert "nominal is not known here" in said
    assert "Did you mean 'nominal_v'?" in said
    file.write_text(text.replace('unit = "motor"', 'unit = "mtor"'), encoding="utf-8")
    said = run("check-profile", file, code=1).out
    assert "names 'mtor', which is no unit of this circuit" in said
    assert "units[" in said  # the unit that no element is left of
    assert ", line " in said


def test_as_json_it_gives_what_a_program_needs(text, tmp_path, run):
    file = tmp_path / "van.toml"
    file.write_text(text, encoding="utf-8")
    (one,) = json.loads(run("check-profile", "--json", file).out)["profiles"]
    circuit = one["circuit"]
    assert one["faults"] == []
    assert circuit["plugs"] == ["relay", "motor", "controller"]
    assert circuit["fuses"] == ["main-fuse", "coil-fuse"]
    assert sum(unit["odds"] for unit in circuit["units"]) > 0.9
    assert {"motor-feed", "motor-current"} <= {point["name"] for point in circuit["points"]}


def test_help_names_the_circuits(run):
    said = run("check-profile", "--help").out
    for name in names("circuits"):
        assert name.replace("-24v", "-12v") in said
    assert "-24v" in said


def test_without_a_file_it_says_what_to_do(run):
    assert "--list" in run("check-profile", code=2).err


def test_so_many_faults_are_printed_and_the_rest_counted(text, tmp_path, run):
    file = tmp_path / "van.toml"
    file.write_text(text.replace("minutes = ", "minuten = "), encoding="utf-8")
    said = run("check-profile", file, code=1).out
    assert "more; correct these first." in said
    assert len(said.splitlines()) < 50
    faults = json.loads(run("check-profile", file, "--json", code=1).out)["profiles"][0]["faults"]
    assert len(faults) > 40


def test_a_circuit_whose_fan_would_not_run_with_nothing_wrong_is_refused(text, tmp_path, run):
    file = tmp_path / "van.toml"
    lines = text.splitlines()
    at = next(n for n, line in enumerate(lines) if line == 'kind = "battery"')
    place = next(n for n in range(at, at + 12) if lines[n].startswith("ohm = "))
    lines[place] = "ohm = 1e6"
    file.write_text("\n".join(lines), encoding="utf-8")
    assert "would stand or crawl" in run("check-profile", file, code=1).out
