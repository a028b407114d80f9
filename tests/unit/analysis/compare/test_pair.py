"""Old against new: whether two motors differ, speed by speed, at one voltage."""

import math
from dataclasses import replace

import numpy as np
import pytest

from meterlog.analysis.compare import Ask, compare
from meterlog.analysis.rounding import with_uncertainty
from meterlog.model import Accuracy, Conditions, Limits, Role, Sensor, SensorKind, Verdict

SHARES = {1: 0.4, 2: 0.55, 3: 0.75, 4: 0.97}
SAME = Conditions(
    engine="off", filter="new", air="face", intake="fresh", housing="closed", place="vehicle",
    windows="closed", control="manual", ambient_c=20.0, running_min=5.0,
)  # fmt: skip


def _compared(old, new, **ask):
    return compare([old], new, Ask(**ask)).comparison


def test_the_same_motor_at_two_supplies_is_not_called_different(side, healthy):
    """As measured these are 20 % apart; at one voltage they are one motor."""
    old = side("old", healthy, 12.4, conditions=SAME)
    new = side("new", healthy, 13.9, conditions=SAME)
    assert new.review.steps[-1].current.value > 1.15 * old.review.steps[-1].current.value
    comparison = _compared(old, new)
    assert comparison.refusal == ""
    assert [one.speed for one in comparison.steps] == [1, 2, 3, 4]
    assert all(one.verdict is Verdict.CANT_TELL for one in comparison.steps)
    assert all(one.ratio.value == pytest.approx(1.0, abs=1e-4) for one in comparison.steps)


def test_without_a_fit_the_exponent_does_nearly_as_well_at_full_speed(side, healthy):
    def two_speeds(name, supply_v):
        whole = side(name, healthy, supply_v, conditions=SAME)
        return side(name, healthy, steps=whole.review.steps[2:], conditions=SAME)

    comparison = _compared(two_speeds("old", 12.4), two_speeds("new", 13.9))
    assert [one.speed for one in comparison.steps] == [3, 4]
    top = comparison.steps[-1]
    assert "usual exponent" in top.words
    assert abs(top.difference_a.value) < top.difference_a.expanded
    assert top.ratio.value == pytest.approx(1.0, abs=0.02)
    assert any("2 of at least 3" in note for note in comparison.notes)


def test_a_dragging_motor_differs_from_a_healthy_one(side, healthy, worn):
    comparison = _compared(
        side("old", worn, 12.4, conditions=SAME), side("new", healthy, 13.9, conditions=SAME)
    )
    assert all(one.verdict is Verdict.FAIL for one in comparison.steps)
    assert all(one.difference_a.value < 0.0 for one in comparison.steps)
    assert all(one.probability > 0.97 for one in comparison.steps)
    top = comparison.steps[-1]
    assert top.reference_v == 13.0
    truth = healthy.amps_at(13.0) - worn.amps_at(13.0)
    assert top.difference_a.value == pytest.approx(truth, abs=0.02)
    assert "draws less at speeds 1, 2, 3 and 4" in comparison.summary


def test_turned_round_the_difference_changes_its_sign_and_nothing_else(side, healthy, worn):
    one, other = side("a", worn, conditions=SAME), side("b", healthy, conditions=SAME)
    forth, back = _compared(one, other), _compared(other, one)
    for there, here in zip(forth.steps, back.steps, strict=True):
        assert here.difference_a.value == pytest.approx(-there.difference_a.value, rel=1e-9)
        assert here.difference_a.expanded == pytest.approx(there.difference_a.expanded, rel=1e-6)
        assert here.probability == pytest.approx(there.probability, rel=1e-6)
        assert here.verdict is there.verdict


def test_one_meter_on_both_sides_makes_small_differences_visible(side, healthy):
    near = replace(healthy, no_load_a=1.62)
    small = {"own_a": 0.005, "own_v": 0.002, "gain_a": 0.02}

    def run(serials):
        old = side("old", healthy, conditions=SAME, errors=small, serial=serials[0])
        new = side("new", near, conditions=SAME, errors=small, serial=serials[1])
        return _compared(old, new)

    same, other, unknown = run(("A1", "A1")), run(("A1", "B2")), run(("", ""))
    top = same.steps[-1]
    assert top.verdict is Verdict.FAIL
    assert top.difference_a.value > 0.0
    for apart in (other, unknown):
        assert apart.steps[-1].verdict is Verdict.CANT_TELL
        assert apart.steps[-1].difference_a.expanded > 3.0 * top.difference_a.expanded
    assert any("same invented no. A1" in note for note in same.notes)
    assert any("No instrument is known to be the same" in note for note in unknown.notes)


def test_a_largest_difference_makes_it_pass_or_fail(side, healthy, worn):
    same = (side("old", healthy, conditions=SAME), side("new", healthy, conditions=SAME))
    told = _compared(*same, max_difference_percent=10.0)
    assert [one.verdict for one in told.steps] == [Verdict.PASS] * 4
    assert all(one.probability > 0.99 for one in told.steps)
    assert "within 10 % of the old one at speeds 1, 2, 3 and 4" in told.summary
    worse = (side("old", healthy, conditions=SAME), side("new", worn, conditions=SAME))
    told = _compared(*worse, max_difference_percent=5.0)
    assert [one.verdict for one in told.steps] == [Verdict.FAIL] * 4
    assert all(one.probability < 0.01 for one in told.steps)


def test_equal_is_never_proven_but_what_would_have_been_seen_is_said(side, healthy):
    comparison = _compared(
        side("old", healthy, conditions=SAME), side("new", healthy, conditions=SAME)
    )
    assert all(one.verdict is Verdict.CANT_TELL for one in comparison.steps)
    assert all(one.probability == pytest.approx(0.5, abs=0.01) for one in comparison.steps)
    assert "could not have been seen" in comparison.summary


def test_conditions_that_differ_widen_the_difference(side, healthy):
    filtered = replace(SAME, filter="used")
    plain = _compared(side("o", healthy, conditions=SAME), side("n", healthy, conditions=SAME))
    wide = _compared(side("o", healthy, conditions=filtered), side("n", healthy, conditions=SAME))
    amps = healthy.amps_at(13.0)
    added = 0.10 * amps / math.sqrt(3.0)
    squares = plain.steps[-1].difference_a.combined_u ** 2 + added**2
    assert wide.steps[-1].difference_a.combined_u == pytest.approx(squares**0.5, rel=1e-2)
    assert "filter" in wide.summary
    # Who adds up the uncertainties of both currents must find what else is in it.
    assert "in this uncertainty: filter differs" in wide.steps[-1].words
    assert "in this uncertainty" not in plain.steps[-1].words


def _current_only(side, name, curve, supply_v, engine=""):
    whole = side(name, curve, supply_v)
    steps = [
        replace(one, voltage=None, steady_mean_v=None) for one in whole.review.steps
    ]  # fmt: skip
    conditions = replace(SAME, engine=engine)
    return side(name, curve, steps=steps, roles=(Role.MOTOR_CURRENT,), conditions=conditions)


def test_without_voltages_the_supply_alone_may_make_a_fifth(side, healthy, worn):
    same = _compared(
        _current_only(side, "old", healthy, 12.4), _current_only(side, "new", healthy, 13.9)
    )
    top = same.steps[-1]
    assert top.reference_v is None
    assert top.difference_a.value > 2.0
    assert top.verdict is Verdict.CANT_TELL
    assert "supply alone may make 35 %" in top.words
    dragging = replace(worn, no_load_a=14.0)
    far = _compared(
        _current_only(side, "old", dragging, 13.0), _current_only(side, "new", healthy, 13.0)
    )
    assert far.steps[-1].verdict is Verdict.FAIL


def test_without_voltages_engine_off_against_running_is_refused(side, healthy):
    comparison = _compared(
        _current_only(side, "old", healthy, 12.4, "off"),
        _current_only(side, "new", healthy, 13.9, "running"),
    )
    assert "engine" in comparison.refusal
    assert "the motor voltage was not read" in comparison.refusal


def test_voltages_far_apart_at_one_speed_are_not_brought_together(side, healthy):
    old = side("old", healthy, conditions=SAME)
    slow = side("new", healthy, 7.0, conditions=SAME)
    steps = [*old.review.steps[1:]]
    new = side("new", healthy, steps=[slow.review.steps[0], *steps], conditions=SAME)
    first = _compared(old, new).steps[0]
    assert first.verdict is Verdict.CANT_TELL
    assert first.difference_a is None
    assert "too far apart" in first.words


def test_speeds_are_paired_by_current_when_asked(side, healthy):
    numbered = side("old", healthy, conditions=SAME)
    steps = [
        replace(one, speed=None, proposed_speed=one.speed, found=True)
        for one in numbered.review.steps
    ]
    bare = side("new", healthy, steps=steps, conditions=SAME)
    assert "--speed-by-current" in _compared(numbered, bare).refusal
    comparison = _compared(numbered, bare, by_current=True)
    assert comparison.refusal == ""
    assert [one.speed for one in comparison.steps] == [1, 2, 3, 4]
    assert any("order of current" in note for note in comparison.notes)
    short = side("new", healthy, steps=steps[1:], conditions=SAME)
    assert "same number" in _compared(numbered, short, by_current=True).refusal


def test_of_two_stretches_at_one_speed_the_longer_counts(side, healthy):
    whole = side("old", healthy, conditions=SAME)
    brief = replace(whole.review.steps[-1], steady_n=5, start_ns=90 * 10**9, end_ns=91 * 10**9)
    off = replace(brief, current=replace(brief.current, value=1.0), steady_mean_a=1.0)
    old = side("old", healthy, steps=[*whole.review.steps, off], conditions=SAME)
    top = _compared(old, side("new", healthy, conditions=SAME)).steps[-1]
    assert top.old_a.value == pytest.approx(healthy.amps_at(top.reference_v), rel=1e-3)


def test_a_speed_without_counterpart_is_said_and_left_out(side, healthy):
    whole = side("old", healthy, conditions=SAME)
    new = side("new", healthy, steps=whole.review.steps[:3], conditions=SAME)
    comparison = _compared(whole, new)
    assert [one.speed for one in comparison.steps] == [1, 2, 3]
    assert any("want of a counterpart: speed 4" in note for note in comparison.notes)


def test_more_current_than_the_clamp_is_stated_for_is_compared_with_nothing(side, healthy, worn):
    clamp = Sensor(SensorKind.CLAMP, 100.0, own_percent=1.0, own_floor=0.1, own_top=12.0)
    old = side("old", worn, conditions=SAME, sensor=clamp)
    new = side("new", healthy, conditions=SAME, sensor=clamp)
    beyond = {one.speed for side in (old, new) for one in side.review.steps
              if one.steady_mean_a > 12.0}  # fmt: skip
    assert beyond
    assert [one.speed for one in _compared(old, new).steps] == sorted({1, 2, 3, 4} - beyond)
    wide = replace(clamp, own_top=60.0)
    both = [side(name, curve, conditions=SAME, sensor=wide) for name, curve in
            (("old", worn), ("new", healthy))]  # fmt: skip
    assert [one.speed for one in _compared(*both).steps] == [1, 2, 3, 4]


def test_without_any_uncertainty_nothing_is_told(side, healthy, worn):
    def bare(name, curve):
        whole = side(name, curve, conditions=SAME)
        steps = [
            replace(
                one,
                current=replace(one.current, sources=(), combined_u=0.0, expanded=0.0),
                voltage=replace(one.voltage, sources=(), combined_u=0.0, expanded=0.0),
            )
            for one in whole.review.steps
        ]
        return side(name, curve, steps=steps, conditions=SAME, limits=Limits(brush_v=0.0))

    top = _compared(bare("old", worn), bare("new", healthy)).steps[-1]
    assert top.verdict is Verdict.CANT_TELL
    assert top.probability is None
    assert "no uncertainty is known" in top.words


def test_what_nobody_stated_of_the_clamp_takes_a_small_difference_back(side, healthy):
    clamp = Sensor(SensorKind.CLAMP, 100.0, words="10 mV/A")
    near = replace(healthy, no_load_a=2.1)
    small = {"own_a": 0.005, "own_v": 0.002}

    def run(sensor, serials=("A1", "B2")):
        old = side("old", healthy, conditions=SAME, errors=small, sensor=sensor, serial=serials[0])
        new = side("new", near, conditions=SAME, errors=small, sensor=sensor, serial=serials[1])
        return _compared(old, new).steps[-1]

    told = replace(clamp, own_percent=0.0, own_floor=0.0)
    zeroed = run(told)
    assert abs(zeroed.difference_a.value) > zeroed.difference_a.expanded
    unsaid = run(clamp)
    assert unsaid.verdict is Verdict.CANT_TELL
    assert "not stated of the meters" in unsaid.words


def test_a_great_difference_stands_whatever_clamp(side, healthy):
    clamp = Sensor(SensorKind.CLAMP, 100.0, words="10 mV/A")
    dragging = replace(healthy, no_load_a=5.0)
    old = side("old", healthy, conditions=SAME, sensor=clamp)
    new = side("new", dragging, conditions=SAME, sensor=clamp, serial="B2")
    assert _compared(old, new).steps[-1].verdict is Verdict.FAIL


def test_meters_of_which_nobody_said_how_good_they_are_prove_no_small_difference(side, healthy):
    near, far = replace(healthy, no_load_a=2.0), replace(healthy, no_load_a=6.0)
    small = {"own_a": 0.005, "own_v": 0.002, "gain_a": 0.0, "gain_v": 0.0}

    def run(curve, accuracy):
        old = side("old", healthy, conditions=SAME, errors=small, accuracy=accuracy)
        new = side("new", curve, conditions=SAME, errors=small, accuracy=accuracy, serial="B2")
        return _compared(old, new).steps[-1]

    assert run(near, Accuracy(0.0, 0.0, 0.0)).verdict is Verdict.FAIL
    assert run(near, None).verdict is Verdict.CANT_TELL
    assert "not stated of the meters" in run(near, None).words
    assert run(far, None).verdict is Verdict.FAIL


@pytest.mark.parametrize("serials", [("A1", "A1"), ("A1", "B2")])
def test_equal_motors_are_called_different_about_once_in_twenty(side, step_of, healthy, serials):
    """Seeded: the meters' errors are drawn as their budgets have them."""
    dice = np.random.default_rng(11)
    gain_v, gain_a, own_v, own_a = 0.003, 0.01, 0.005, 0.02

    def read(name, serial, supply_v, gains):
        steps = []
        for speed, share in SHARES.items():
            volts = share * supply_v
            seen_v = volts * (1.0 + gains[0]) + own_v * dice.standard_normal()
            seen_a = healthy.amps_at(volts) * (1.0 + gains[1]) + own_a * dice.standard_normal()
            steps.append(step_of(speed, seen_v, seen_a))
        return side(name, healthy, steps=steps, serial=serial, conditions=SAME)

    called = told = 0
    for _ in range(30):
        gains = [(gain_v * dice.uniform(-1, 1), gain_a * dice.uniform(-1, 1)) for _ in range(2)]
        if serials[0] == serials[1]:
            gains[1] = gains[0]
        comparison = _compared(
            read("old", serials[0], 12.4, gains[0]), read("new", serials[1], 13.6, gains[1])
        )
        called += sum(one.verdict is Verdict.FAIL for one in comparison.steps)
        told += len(comparison.steps)
    assert told == 120
    # 5 % of 120 is 6; the speeds of one run go together, so that more than that may come.
    assert called <= 14


def test_what_was_taken_back_is_not_summed_up_as_no_difference(side, healthy):
    small = {"own_a": 0.005, "own_v": 0.002, "gain_a": 0.0, "gain_v": 0.0}
    near = replace(healthy, no_load_a=1.9)
    old = side("old", healthy, conditions=SAME, errors=small, accuracy=None)
    new = side("new", near, conditions=SAME, errors=small, accuracy=None, serial="B2")
    summary = _compared(old, new).summary
    assert "Whether it differs at speeds 1, 2, 3 and 4 can't be told." in summary
    assert "No difference" not in summary


def test_one_speed_that_differs_may_be_chance_and_that_is_said(side, step_of, healthy, worn):
    """Four comparisons at 95 %: 1 - 0.95^4 = 18.5 %."""
    old = side("old", healthy, conditions=SAME)
    steps = list(side("new", healthy, conditions=SAME).review.steps)
    odd = steps[2]
    steps[2] = step_of(3, odd.voltage.value, 1.2 * odd.current.value)
    one = _compared(old, side("new", healthy, steps=tuple(steps), conditions=SAME))
    assert [step.verdict is Verdict.FAIL for step in one.steps].count(True) == 1
    assert any("up to 19 %" in note for note in one.notes)
    several = _compared(old, side("new", worn, conditions=SAME))
    assert not any("by chance" in note for note in several.notes)


def test_percents_are_written_to_the_place_their_uncertainty_reaches(side, healthy, worn):
    compared = _compared(side("old", healthy, conditions=SAME), side("new", worn, conditions=SAME))
    for step in compared.steps:
        if step.verdict is Verdict.FAIL:
            told = with_uncertainty(
                100.0 * (step.ratio.value - 1.0), 100.0 * step.ratio.expanded, "%"
            )
            assert f"({told})" in step.words
            assert told in compared.summary
