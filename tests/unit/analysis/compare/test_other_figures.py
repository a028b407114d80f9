"""Start-up and fuse load of two motors, where both recordings hold them."""

from dataclasses import replace

import pytest

from meterlog.analysis.budgets import budget
from meterlog.analysis.compare import Ask, compare
from meterlog.model import FuseCheck, Source, StartUp, Verdict


def _start(speed, peak_a, cause="command", *, floor=False):
    return StartUp(
        0, 0, speed, cause, peak_a, 0.5, 0.01, floor, peak_a / 3.0, 3.0, 0.5, 0.1, 100.0, 2.0
    )


def _fuse(percent, rating_a=25.0):
    load = budget("load", percent, "%", (Source("gain", 0.5, "%", key="m:gain A 0.01"),))
    return FuseCheck(rating_a, "blade-medium", load, 4, 80.0, Verdict.PASS, 0.99, (),
                     Verdict.PASS, "")  # fmt: skip


def _figures(side, healthy, old, new):
    sides = [side("old", healthy, review=old), side("new", healthy, review=new)]
    return compare(sides[:1], sides[1], Ask()).comparison.figures


def test_the_highest_commanded_start_of_each_speed_is_set_beside_the_other(side, healthy):
    figures = _figures(
        side,
        healthy,
        {"startups": (_start(4, 40.0), _start(4, 45.0), _start(4, 60.0, "after a dropout"))},
        {"startups": (_start(4, 38.0), _start(1, 6.0))},
    )
    assert [(one.name, one.speed, one.old, one.new) for one in figures] == [
        ("start-up peak", 4, 45.0, 38.0),
        ("peak over steady", 4, 3.0, 3.0),
    ]
    assert "45.0 ± 0.5 A" in figures[0].words or "45.00 ± 0.50 A" in figures[0].words


def test_a_peak_the_meter_was_too_slow_for_is_said_to_be_one(side, healthy):
    figures = _figures(
        side,
        healthy,
        {"startups": (_start(4, 40.0, floor=True),)},
        {"startups": (_start(4, 38.0),)},
    )
    assert "too slow" in figures[0].words


@pytest.mark.parametrize("why", ["peak_cut", "peak_past"])
def test_a_peak_at_the_end_of_a_range_is_said_to_be_one(side, healthy, why):
    figures = _figures(
        side,
        healthy,
        {"startups": (_start(4, 40.0),)},
        {"startups": (replace(_start(4, 38.0, floor=True), **{why: True}),)},
    )
    assert "may be higher" in figures[0].words
    assert "too slow" not in figures[0].words


def test_the_fuses_load_is_compared_for_one_rating_only(side, healthy):
    (load,) = _figures(side, healthy, {"fuse": _fuse(70.0)}, {"fuse": _fuse(62.0)})
    assert (load.old, load.new) == (70.0, 62.0)
    # One meter on both sides: its gain error is the same in both, so nothing is left of it.
    assert "8.000 ± 0.000 points less" in load.words
    assert "not in" not in load.words
    (other,) = _figures(side, healthy, {"fuse": _fuse(70.0)}, {"fuse": _fuse(62.0, 30.0)})
    assert "not comparable" in other.words


UNSTATED = "the meter's accuracy for motor-current is not stated"


@pytest.mark.parametrize("unstated", [(0,), (1,), (0, 1)])
@pytest.mark.parametrize("rating_a", [25.0, 30.0])
def test_what_no_uncertainty_of_a_load_holds_is_said_beside_it(side, healthy, unstated, rating_a):
    fuses = [_fuse(70.0), _fuse(62.0, rating_a)]
    for index in unstated:
        load = replace(fuses[index].load, lacking=UNSTATED)
        fuses[index] = replace(fuses[index], load=load)
    (told,) = _figures(side, healthy, {"fuse": fuses[0]}, {"fuse": fuses[1]})
    assert told.words.endswith(f" (not in: {UNSTATED}).")
    assert told.words.count(UNSTATED) == 1


def test_what_one_side_lacks_is_not_told(side, healthy):
    assert _figures(side, healthy, {"startups": (_start(4, 40.0),)}, {}) == ()


def _load(percent, speed, u=1.05):
    load = budget("load", percent, "%", (Source("scatter", u, "%"),))
    return FuseCheck(
        25.0, "blade-medium", load, speed, 80.0, Verdict.PASS, 0.99, (), Verdict.PASS, ""
    )


def test_points_are_written_to_the_place_their_uncertainty_reaches(side, healthy):
    (load,) = _figures(side, healthy, {"fuse": _load(54.0, 4)}, {"fuse": _load(54.152, 4)})
    assert "54.0 ± 2.1 % by the old at speed 4" in load.words
    assert "0.2 ± 3.0 points more by the new" in load.words


def test_loads_at_different_speeds_are_not_set_off_against_each_other(side, healthy):
    (load,) = _figures(side, healthy, {"fuse": _load(34.0, 3)}, {"fuse": _load(54.0, 4)})
    assert "at speed 3" in load.words
    assert "not comparable" in load.words
    assert "points" not in load.words
