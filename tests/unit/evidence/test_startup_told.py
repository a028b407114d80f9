"""Starts and the fuse as JSON and as lines."""

import dataclasses
import json

import pytest

from meterlog.analysis.budgets import budget
from meterlog.evidence.startup_json import fuse_to_dict, startups_to_list
from meterlog.evidence.startup_text import startup_lines
from meterlog.model import FuseCheck, OpeningMargin, Source, StartUp, Verdict

START = StartUp(
    t_ns=2_000_000_000,
    edge_ns=1_000_000,
    speed=4,
    cause="command",
    peak_a=60.0,
    peak_u_a=0.72,
    peak_after_s=0.005,
    peak_floor=False,
    steady_a=13.6,
    ratio=60.0 / 13.6,
    settle_s=0.353,
    settle_edge_s=0.011,
    i2t_a2s=412.0,
    i2t_s=1.0,
)
ROW = OpeningMargin(135.0, 40.5, 0.03, 0.75, 600.0, 25.0, 0.029, 0.031, "M: from memory")
CHECK = FuseCheck(
    rating_a=30.0,
    kind="blade-medium",
    load=budget("load", 45.3, "%", (Source("meter", 0.3, "%"),)),
    speed=4,
    max_load_percent=80.0,
    load_verdict=Verdict.PASS,
    load_probability=1.0,
    margins=(ROW, OpeningMargin(600.0, 180.0, 0.0, None, 0.1, None)),
    nuisance=Verdict.PASS,
    words="In order.",
)


def test_a_start_is_plain_numbers_in_seconds_and_amperes():
    (one,) = startups_to_list([START])
    assert one["start_s"] == 2.0
    assert one["edge_s"] == 0.001
    assert (one["peak_a"], one["peak_expanded_a"], one["peak_is_floor"]) == (60.0, 0.72, False)
    assert (one["cause"], one["speed"], one["i2t_over_s"]) == ("command", 4, 1.0)


def test_what_is_not_known_or_not_finite_is_none_and_strict_json_can_be_made():
    bare = dataclasses.replace(
        START, peak_u_a=None, steady_a=None, ratio=float("inf"), settle_s=None, settle_edge_s=None
    )
    (one,) = startups_to_list([bare])
    assert one["ratio"] is one["settle_s"] is one["peak_expanded_a"] is None
    json.dumps([one, fuse_to_dict(CHECK)], allow_nan=False)


def test_the_fuse_is_told_with_load_margins_and_verdicts():
    told = fuse_to_dict(CHECK)
    assert told["load_percent"]["value"] == 45.3
    assert told["load_percent"]["expanded_uncertainty"] == pytest.approx(0.6, rel=0.05)
    assert (told["load_verdict"], told["nuisance_verdict"]) == ("pass", "pass")
    assert told["margins"][0]["margin"] == 25.0
    assert told["margins"][1]["opens_after_s"] is None
    assert fuse_to_dict(dataclasses.replace(CHECK, load=None))["load_percent"] is None
    assert fuse_to_dict(None) is None


def test_a_load_without_known_uncertainty_has_none():
    bare = dataclasses.replace(CHECK, load=budget("load", 45.3, "%", ()))
    assert fuse_to_dict(bare)["load_percent"]["expanded_uncertainty"] is None


def test_lines_say_peak_ratio_settling_and_heat():
    text = " ".join(startup_lines([START], CHECK))
    for words in ("60.00 ± 0.72 A", "4.4 times the 13.6 A", "0.353 ± 0.011 s", "412 A2s", "135 %"):
        assert words in text
    assert "600 %" not in text  # never reached
    assert "at least" not in text


def test_a_slow_meters_peak_is_a_least_and_a_soft_start_is_called_one():
    slow = " ".join(startup_lines([dataclasses.replace(START, peak_floor=True)]))
    assert "peak at least 60.00" in slow
    assert "too slow" in slow
    soft = dataclasses.replace(START, peak_a=13.7, ratio=1.01)
    assert "soft start" in " ".join(startup_lines([soft]))
    unsure = dataclasses.replace(soft, peak_floor=True)
    assert "soft" not in " ".join(startup_lines([unsure]))


def test_a_peak_at_the_end_of_a_range_is_told_with_its_reason():
    cut = dataclasses.replace(START, peak_floor=True, peak_cut=True)
    text = " ".join(startup_lines([cut]))
    assert "peak at least 60.00" in text
    assert "I2t at least 412 A2s" in text
    assert "end of the range" in text
    assert "too slow" not in text
    (told,) = startups_to_list([cut])
    assert told["peak_is_cut_off"] is True


def test_a_peak_beyond_what_the_clamp_is_stated_for_is_told_with_its_reason():
    past = dataclasses.replace(START, peak_floor=True, peak_past=True, peak_u_a=None)
    text = " ".join(startup_lines([past]))
    assert "peak at least 60.0 A (uncertainty not known)" in text
    assert "I2t at least 412 A2s" in text
    assert "more than the meter or the clamp is stated for" in text
    assert "too slow" not in text
    (told,) = startups_to_list([past])
    assert (told["peak_is_past_what_is_stated"], told["peak_is_cut_off"]) == (True, False)


def test_lines_are_short_and_many_starts_are_counted():
    lines = startup_lines([START] * 30, CHECK)
    assert all(len(line) <= 100 for line in lines)
    assert "and 22 more starts" in lines
    assert startup_lines([]) == []


@pytest.mark.parametrize(
    ("mark", "said", "other"),
    [("M", "[M] from memory", "[C] comp"), ("C", "[C] compared with", "[M] from")],
)
def test_the_marks_of_opening_times_are_explained(mark, said, other):
    row = dataclasses.replace(ROW, basis=f"{mark}: a source")
    lines = startup_lines([], dataclasses.replace(CHECK, margins=(row,)))
    text = " ".join(" ".join(lines).split())
    assert f"[{mark}] " in text
    assert said in text
    assert other not in text
    assert "Opening times:" not in " ".join(
        startup_lines([], dataclasses.replace(CHECK, margins=()))
    )
