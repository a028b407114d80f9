"""``meterlog compare``: whole recordings of invented motors, through the command line."""

from __future__ import annotations

import json

import numpy as np
import pytest

from meterlog.analysis.motor.curve import Curve

HEALTHY = Curve(0.16, 1.5, 0.165, 1.2)
WORN = Curve(0.16, 3.5, 0.165, 1.2)
SHARES = (0.0, 0.4, 0.55, 0.75, 0.97)


@pytest.fixture
def recorded(run, tmp_path):
    """Import 8 s (or ``hold``) at each speed, 20 rows a second, with a start-up peak each."""

    def make(
        name, curve, supply_v, *more,
        conditions=(), limits="linear-12v", speeds=5, seed=1, hold=8,
    ):  # fmt: skip
        dice = np.random.default_rng(seed)
        rows, marks = ["t,feed,return,amps"], ["elapsed_s,kind,value"]
        for speed, share in enumerate(SHARES[:speeds]):
            marks.append(f"{hold * speed},speed,{speed}")
            for k in range(20 * hold):
                volts = share * supply_v
                steady = curve.amps_at(volts) if share else 0.0
                amps = steady * (1.0 + np.exp(-k / 6.0)) + 0.02 * dice.standard_normal()
                feed, back = (
                    one + 0.004 * dice.standard_normal() for one in (supply_v, supply_v - volts)
                )
                rows.append(f"{hold * speed + k / 20:.2f},{feed:.3f},{back:.3f},{amps:.3f}")
        (tmp_path / f"{name}.csv").write_text("\n".join(rows) + "\n")
        (tmp_path / f"{name}-marks.csv").write_text("\n".join(marks) + "\n")
        stated = [word for one in conditions for word in ("--condition", one)]
        run(
            *("import", tmp_path / f"{name}.csv", "--time", "t"),
            *("--events", tmp_path / f"{name}-marks.csv", "--part", f"{name} (invented)"),
            *("--assign", "motor-feed=feed", "--assign", "motor-return=return"),
            *("--assign", "motor-current=amps", "--accuracy", "motor-current=0.8+0.02"),
            *("--accuracy", "motor-feed=0.3+0.01", "--accuracy", "motor-return=0.3+0.01"),
            *("--limits", limits, "--out", tmp_path / name, *stated, *more),
        )
        return tmp_path / name

    return make


def test_old_and_new_at_different_batteries_are_told_apart(run, recorded):
    old, new = recorded("old", WORN, 12.4), recorded("new", HEALTHY, 13.9)
    said = json.loads(run("compare", old, new, "--json").out)
    assert said["refusal"] == ""
    assert said["old"][0]["part"] == "old (invented)"
    assert [one["speed"] for one in said["steps"]] == [1, 2, 3, 4]
    assert [one["verdict"] for one in said["steps"]] == ["fail"] * 4
    top = said["steps"][-1]
    assert top["reference_v"] == 13.0
    assert top["old_v"] == pytest.approx(0.97 * 12.4, abs=0.01)
    truth = HEALTHY.amps_at(13.0) - WORN.amps_at(13.0)
    assert abs(top["difference_a"] - truth) < top["difference_expanded_a"]
    assert top["difference_a"] < -top["difference_expanded_a"]


def test_the_same_motor_at_two_batteries_is_not_called_another(run, recorded):
    old, new = recorded("old", HEALTHY, 12.4), recorded("new", HEALTHY, 13.9, seed=2)
    said = json.loads(run("compare", old, new, "--json").out)
    assert [one["verdict"] for one in said["steps"]] == ["can't tell"] * 4
    passed = json.loads(run("compare", old, new, "--json", "--max-difference", "10").out)
    assert [one["verdict"] for one in passed["steps"]] == ["pass"] * 4


def test_the_overlays_begin_with_the_command_and_hold_the_peak(run, recorded):
    old, new = recorded("old", WORN, 13.0), recorded("new", HEALTHY, 13.0)
    overlays = json.loads(run("compare", old, new, "--json").out)["overlays"]
    assert [one["name"] for one in overlays] == ["time", *(f"speed {k}" for k in range(1, 5))]
    top = overlays[-1]
    assert len(top["t_s"]) == len(top["old_a"]) == len(top["new_a"])
    seen = [one for one in top["new_a"] if one is not None]
    steady = HEALTHY.amps_at(0.97 * 13.0)
    assert max(seen) > 1.8 * steady
    assert seen[-1] == pytest.approx(steady, rel=0.02)
    first = [t for t, one in zip(top["t_s"], top["new_a"], strict=True) if one == max(seen)]
    assert first[0] < 0.1


def test_a_shorter_step_is_laid_over_the_longer_one_to_its_own_end_only(run, recorded):
    old, new = recorded("old", HEALTHY, 13.0), recorded("new", HEALTHY, 13.0, hold=5)
    overlays = json.loads(run("compare", old, new, "--json").out)["overlays"]
    second = overlays[2]
    assert second["speed"] == 2
    beyond = [one for t, one in zip(second["t_s"], second["new_a"], strict=True) if t > 5.1]
    assert beyond
    assert set(beyond) == {None}  # there it ran at speed 3
    assert None not in second["old_a"]


def test_the_text_says_it_to_a_reader(run, recorded):
    old, new = recorded("old", WORN, 12.4), recorded("new", HEALTHY, 13.9)
    text = run("compare", old, new).out
    assert max(len(line) for line in text.splitlines()) <= 100
    flat = " ".join(text.split())
    assert "New (new (invented)) against old (old (invented))." in flat
    assert "It draws less at speeds 1, 2, 3 and 4" in flat
    assert "not stated on either side" in flat
    assert "is imported, not measured by this program" in flat


def test_a_baseline_of_good_ones(run, recorded):
    good = [
        recorded(f"good-{k}", Curve(0.16, 1.4 + 0.1 * k, 0.165, 1.2), 12.8 + 0.1 * k, seed=k)
        for k in range(4)
    ]
    worn = recorded("worn", WORN, 13.0)
    said = json.loads(run("compare", "--baseline", *good, worn, "--json").out)
    top = said["steps"][-1]
    assert len(said["old"]) == 4
    assert top["baseline_count"] == 4
    assert top["tolerance_low_a"] < top["baseline_mean_a"] < top["tolerance_high_a"]
    assert said["steps"][0]["verdict"] == "fail"
    text = run("compare", "--baseline", *good, worn).out
    assert "90 % of good ones lie within" in " ".join(text.split())
    assert max(len(line) for line in text.splitlines()) <= 100


def test_what_cannot_be_compared_says_why_and_leaves_with_1(run, recorded):
    old = recorded("old", HEALTHY, 13.0, conditions=("place=vehicle",))
    new = recorded("new", HEALTHY, 13.0, conditions=("place=bench",))
    said = json.loads(run("compare", old, new, "--json", code=1).out)
    assert "The place was vehicle" in said["refusal"]
    assert said["steps"] == said["overlays"] == []
    text = run("compare", old, new, code=1).out
    assert "can't be compared" in text


def test_speeds_only_one_side_has_are_said(run, recorded):
    old, new = recorded("old", HEALTHY, 13.0), recorded("new", HEALTHY, 13.0, speeds=4)
    said = json.loads(run("compare", old, new, "--json").out)
    assert [one["speed"] for one in said["steps"]] == [1, 2, 3]
    assert any("want of a counterpart: speed 4" in note for note in said["notes"])


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (["one"], "takes two recordings, not 1"),
        (["one", "two", "three"], "takes two recordings, not 3"),
        (["one", "two", "--max-difference", "much"], "no percentage above 0"),
        (["one", "two", "--max-difference", "-3"], "no percentage above 0"),
        (["one", "two", "--max-difference", "nan"], "no percentage above 0"),
        (["one", "two", "--baseline", "--max-difference", "5"], "does not go with --baseline"),
        (["one", "two"], "is not there"),
    ],
)
def test_bad_use_is_told_and_leaves_with_2(run, words, told):
    assert told in run("compare", *words, code=2).err


def test_one_recording_against_itself_is_bad_use(run, recorded):
    old = recorded("old", HEALTHY, 13.0)
    assert "same recording" in run("compare", old, old, code=2).err


def test_the_help_shows_the_baseline(run):
    assert "--baseline recordings/good-1" in run("compare", "--help").out
