"""Next test: what is proposed, what it costs, what its results would mean."""

import itertools
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.circuit.candidates import plain_candidates
from meterlog.circuit.next_test import LEAST_BITS
from meterlog.circuit.outcomes import figure, roundest
from meterlog.circuit.states import motor_place
from meterlog.model import CircuitCheck, CircuitSign, CircuitState, Sign

HIGH = CircuitState("on", 4)


def _checks(technician):
    for words in ("main fuse open", "fan motor: dead spot or worn brushes"):
        yield from technician(words).isolate()


def test_results_cover_everything_and_name_units(technician):
    for _, verdict in _checks(technician):
        test = verdict.next_test
        if test is None:
            continue
        total = sum(one.probability for one in test.outcomes)
        assert total == pytest.approx(1.0, abs=0.1 if test.sign else 1e-4)
        assert all(one.units for one in test.outcomes)
        assert test.bits >= LEAST_BITS
        assert test.meaning.count(";") == len(test.outcomes) - 1
        if test.sign is None:
            bounds = [one.high for one in test.outcomes]
            assert bounds[-1] is None
            assert test.outcomes[0].low is None
            inner = bounds[:-1]
            assert inner == sorted(inner)
            assert [one.low for one in test.outcomes[1:]] == inner
            assert test.healthy_low < test.healthy_high


def test_what_was_foretold_of_a_result_is_what_it_brings(technician):
    """Units after a result, as foretold and as they are then: the likeliest is the same."""
    one = technician("main fuse open")
    passed = one.isolate()
    for (_, before), (check, after) in itertools.pairwise(passed):
        test = before.next_test
        if test.sign is not None or before.settled_words:
            continue
        value = check.readings[-1].value
        met = next(
            r
            for r in test.outcomes
            if (r.low is None or r.low <= value) and (r.high is None or value < r.high)
        )
        assert met.units[0][0] == after.suspects[0].unit


@settings(max_examples=12, deadline=None)
@given(data=st.data())
def test_nothing_is_proposed_out_of_reach(isolation, data):
    circuit = isolation.circuit
    names = [p.name for p in circuit.places] + [p.name for p in circuit.points]
    closed = frozenset(data.draw(st.lists(st.sampled_from(names), max_size=8, unique=True)))
    fan = data.draw(st.sampled_from(["runs", "dead", "slow"]))
    check = CircuitCheck("c", signs=(CircuitSign(1, HIGH, Sign.FAN, fan),), no_reach=closed)
    test = isolation.propose(check)
    if test is None:
        return
    if test.point:
        assert test.point not in closed
        assert circuit.point(test.point).place not in closed
    elif test.sign in {Sign.TAP, Sign.WHEEL}:
        assert motor_place(circuit) not in closed


def test_with_nothing_in_reach_it_says_between_which_units_it_stays_open(isolation):
    circuit = isolation.circuit
    signs = tuple(
        CircuitSign(at, state, sign, value)
        for at, (state, sign, value) in enumerate(
            [(CircuitState("on", s), Sign.FAN, "dead") for s in circuit.speeds]
            + [(CircuitState("off", 0), Sign.FAN, "dead")]
            + [(CircuitState("on", s), Sign.CLICK, "heard") for s in (0, 4)],
            start=1,
        )
    )
    closed = frozenset(place.name for place in circuit.places)
    verdict = isolation.verdict(CircuitCheck("c", signs=signs, no_reach=closed))
    assert verdict.next_test is None
    assert not verdict.settled
    assert "stays open between" in verdict.settled_words
    assert verdict.suspects[0].label in verdict.settled_words


def test_a_tap_is_asked_for_only_while_the_fan_stands(isolation):
    circuit = isolation.circuit
    running = plain_candidates(circuit, CircuitCheck("c"))
    standing = plain_candidates(circuit, CircuitCheck("c"), stands=frozenset({HIGH}))
    assert not [one for one in running if one.sign is Sign.TAP]
    assert [one.state for one in standing if one.sign is Sign.TAP] == [HIGH]
    assert {one.state.key for one in standing if one.sign is Sign.WHEEL} == {"off"}


def test_a_place_costs_only_until_it_is_open(isolation):
    circuit = isolation.circuit
    shut = {(c.state, c.point): c for c in plain_candidates(circuit, CircuitCheck("c")) if c.point}
    place = circuit.places[0]
    opened = CircuitCheck("c", opened=frozenset({place.name}))
    for one in plain_candidates(circuit, opened):
        if one.point:
            saved = shut[one.state, one.point].minutes - one.minutes
            there = circuit.point(one.point).place == place.name
            assert saved == pytest.approx(place.minutes if there else 0.0)


def test_a_reading_that_was_taken_is_offered_as_its_repeat(technician):
    one = technician("main fuse open")
    check = CircuitCheck("c", readings=(one.read(7, HIGH, "battery"),))
    repeats = [c for c in plain_candidates(one.circuit, check) if c.repeat_of is not None]
    assert [(c.state, c.point, c.repeat_of) for c in repeats] == [(HIGH, "battery", 7)]


def test_cautions_go_with_the_place_and_the_state(isolation):
    fuse_box = frozenset(p.name for p in isolation.circuit.places if p.name != "motor")
    signs = (
        CircuitSign(1, HIGH, Sign.FAN, "dead"),
        CircuitSign(2, HIGH, Sign.CLICK, "heard"),
        CircuitSign(3, CircuitState("on", 0), Sign.CLICK, "heard"),
    )
    check = CircuitCheck("c", signs=signs, no_reach=fuse_box)
    test = isolation.propose(check)
    assert test.point
    assert isolation.circuit.point(test.point).place == "motor"
    assert any("airbag" in words.lower() for words in test.cautions)
    assert any("service manual" in words for words in test.cautions)


def test_plugs_stay_on_while_plain_readings_tell_enough(technician):
    for check, verdict in _checks(technician):
        test = verdict.next_test
        if test is not None and len(check.readings) < 2:
            assert test.state == replace(test.state, unplugged=frozenset(), pulled=frozenset())


@pytest.mark.parametrize(
    ("low", "high", "found"),
    [(0.4, 11.7, 10.0), (11.2, 11.9, 11.5), (0.033, 0.038, 0.035), (-0.3, 0.2, 0.0)],
)
def test_bounds_have_few_digits(low, high, found):
    assert roundest(low, high) == found


@pytest.mark.parametrize(
    ("value", "text"), [(12.345, "12.3"), (11.96, "12"), (0.256, "0.26"), (0.0349, "0.035")]
)
def test_figures_have_sensible_digits(value, text):
    assert figure(value) == text
