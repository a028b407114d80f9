"""Voltage drops of sections: values, what is shared, load, verdicts."""

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.circuit.drops import section_drops, worst
from meterlog.model import (
    Circuit,
    CircuitCheck,
    CircuitReading,
    CircuitSign,
    CircuitState,
    Element,
    ElementKind,
    Node,
    Place,
    PointKind,
    ProbePoint,
    Section,
    Sign,
    Unit,
    Verdict,
)
from meterlog.profile import load_circuit

HIGH = CircuitState("on", 4)
LOW = CircuitState("on", 1)


def _voltage(name):
    return ProbePoint(name, PointKind.VOLTAGE, (name,), "", name, "bench", "", 1.0)


CIRCUIT = Circuit(
    name="bench",
    title="bench",
    nominal_v=12.0,
    speeds=(0, 1, 4),
    nodes=tuple(Node(name, name, (0.0, at)) for at, name in enumerate(["minus", "plus", "a", "b"])),
    elements=(
        Element(
            "battery",
            ElementKind.BATTERY,
            ("plus", "minus"),
            "motor",
            {"emf_v": 12.6, "charging_v": 14.0, "ohm": 0.01},
        ),
        Element("feed-wire", ElementKind.WIRE, ("plus", "a"), "motor", {"ohm": 0.01}),
        Element(
            "motor",
            ElementKind.MOTOR,
            ("a", "b"),
            "motor",
            {"ohm": 0.25, "no_load_a": 1.0, "fan_a_per_v2": 0.1},
        ),
        Element("ground-wire", ElementKind.GROUND, ("b", "minus"), "motor", {"ohm": 0.005}),
    ),
    units=(Unit("motor", "motor", ""),),
    places=(Place("bench", "bench", 1.0),),
    points=(
        _voltage("plus"),
        _voltage("a"),
        _voltage("b"),
        ProbePoint("feed-drop", PointKind.DROP, ("a", "plus"), "", "drop", "bench", "", 1.0),
        ProbePoint("amps", PointKind.CURRENT, (), "motor", "amps", "bench", "", 1.0),
    ),
    sections=(
        Section("feed", "feed side", ("plus", "a"), "feed", 0.5, "test"),
        Section("ground", "ground side", ("b", "minus"), "ground", 0.2, "test"),
    ),
)


def reading(at, point, value, state=HIGH, u=0.01, shared=0.0, source="typed"):
    return CircuitReading(at, state, point, value, u, shared, source=source)


def drops(*entries):
    readings = tuple(one for one in entries if isinstance(one, CircuitReading))
    signs = tuple(one for one in entries if isinstance(one, CircuitSign))
    return {
        (one.section, one.state.speed): one
        for one in section_drops(CIRCUIT, CircuitCheck("bench", "", readings, signs))
    }


def test_a_difference_of_two_readings_has_the_uncertainty_of_both():
    feed = drops(reading(1, "plus", 12.4), reading(2, "a", 12.1), reading(3, "amps", 13.0))
    one = feed["feed", 4]
    assert one.drop_v == pytest.approx(0.3)
    assert one.expanded_v == pytest.approx(2 * math.sqrt(2) * 0.01, rel=0.03)
    assert one.verdict is Verdict.PASS
    assert one.readings == (1, 2)
    assert one.current_a == 13.0


def test_the_gain_of_one_meter_nearly_cancels_and_that_of_two_does_not():
    def of(source):
        made = drops(
            reading(1, "plus", 12.4, u=0.06, shared=0.0595, source="m1"),
            reading(2, "a", 12.1, u=0.06, shared=0.0590, source=source),
            reading(3, "amps", 13.0),
        )
        return made["feed", 4].expanded_v

    assert of("m1") < 0.05
    assert of("m2") == pytest.approx(2 * math.sqrt(2) * 0.06, rel=0.03)


def test_a_reading_straight_across_goes_first_whichever_way_round():
    made = drops(
        reading(1, "plus", 12.4), reading(2, "a", 11.0), reading(3, "feed-drop", -0.31, u=0.002),
        reading(4, "amps", 13.0),
    )  # fmt: skip
    assert made["feed", 4].drop_v == pytest.approx(0.31)
    assert made["feed", 4].readings == (3,)


def test_the_reference_itself_needs_no_reading():
    made = drops(reading(1, "b", 0.35), reading(2, "amps", 13.0))
    assert made["ground", 4].drop_v == pytest.approx(0.35)
    assert made["ground", 4].verdict is Verdict.FAIL
    assert "feed" not in {section for section, _ in made}


@pytest.mark.parametrize(
    ("more", "why"),
    [
        ((), "nobody said that the fan runs"),
        ((reading(9, "amps", 0.02),), "hardly any current"),
        ((CircuitSign(9, HIGH, Sign.FAN, "dead"),), "the fan stands"),
    ],
)
def test_a_small_drop_without_load_proves_nothing(more, why):
    one = drops(reading(1, "plus", 12.4), reading(2, "a", 12.38), *more)["feed", 4]
    assert one.verdict is Verdict.CANT_TELL
    assert why in one.words


def test_a_small_drop_on_low_proves_nothing_and_a_large_one_does():
    small = drops(
        reading(1, "plus", 12.4, LOW), reading(2, "a", 12.3, LOW), reading(3, "amps", 3.6, LOW)
    )
    large = drops(
        reading(1, "plus", 12.4, LOW), reading(2, "a", 11.3, LOW), reading(3, "amps", 3.6, LOW)
    )
    assert small["feed", 1].verdict is Verdict.CANT_TELL
    assert "speed 4" in small["feed", 1].words
    assert large["feed", 1].verdict is Verdict.FAIL


def test_readings_of_different_states_are_never_subtracted():
    assert drops(reading(1, "plus", 12.4, LOW), reading(2, "a", 12.1, HIGH)) == {}


def test_within_its_uncertainty_of_the_limit_nothing_is_told():
    made = drops(
        reading(1, "plus", 12.4, u=0.05), reading(2, "a", 11.95, u=0.05), reading(3, "amps", 13.0)
    )
    assert made["feed", 4].verdict is Verdict.CANT_TELL
    assert 0.5 < made["feed", 4].probability < 1.0


def test_the_worst_comes_first():
    made = drops(
        reading(1, "plus", 12.4), reading(2, "a", 11.8), reading(3, "b", 1.2), reading(4, "amps", 9)
    )
    assert [one.section for one in worst(tuple(made.values()))] == ["ground", "feed"]


@given(st.floats(10, 15), st.floats(0, 3), st.floats(0.001, 0.3))
def test_probability_and_verdict_never_contradict(plus, lost, u):
    one = drops(
        reading(1, "plus", plus, u=u), reading(2, "a", plus - lost, u=u), reading(3, "amps", 13.0)
    )["feed", 4]
    if one.verdict is Verdict.PASS:
        assert one.probability > 0.5
    if one.verdict is Verdict.FAIL:
        assert one.probability < 0.5


def _shipped(name, state, **volts):
    circuit = load_circuit(name)
    readings = tuple(
        reading(at, point.replace("_", "-"), value, state)
        for at, (point, value) in enumerate(volts.items(), start=1)
    )
    made = section_drops(circuit, CircuitCheck(circuit.name, "", readings))
    return {one.section: one for one in made}


def test_contacts_that_are_open_by_intention_do_not_fail():
    off = _shipped("low-side-linear-12v", CircuitState("off", 0), relay_drop=12.4)
    assert off["relay-contact"].verdict is Verdict.CANT_TELL
    assert "nothing is asked of the fan" in off["relay-contact"].words
    on_low = _shipped("low-side-high-relay-12v", LOW, high_drop=6.9)
    assert on_low["high-contact"].verdict is Verdict.CANT_TELL
    assert "a circuit in order gives more as well" in on_low["high-contact"].words
    on_high = _shipped("low-side-high-relay-12v", HIGH, high_drop=6.9)
    assert on_high["high-contact"].verdict is Verdict.FAIL


@pytest.mark.parametrize(
    ("changed", "why"),
    [
        ({"unplugged": frozenset({"motor"})}, "a plug is off"),
        ({"pulled": frozenset({"main-fuse"})}, "a fuse is out"),
        ({"jumpers": frozenset({("relay-30", "relay-87")})}, "a jumper is in"),
    ],
)
@pytest.mark.parametrize("volts", [0.01, 12.4])
def test_limits_are_for_the_circuit_as_it_runs(changed, why, volts):
    made = _shipped("low-side-linear-12v", replace(HIGH, **changed), main_fuse_drop=volts)
    assert made["main-fuse"].verdict is Verdict.CANT_TELL
    assert why in made["main-fuse"].words


def test_what_loses_nearly_all_is_called_open_and_what_loses_some_is_not():
    lost = _shipped("low-side-linear-12v", HIGH, relay_drop=12.4)["relay-contact"]
    assert lost.verdict is Verdict.FAIL
    assert "open, or not switched on" in lost.words
    burnt = _shipped("low-side-linear-12v", HIGH, relay_drop=1.6)["relay-contact"]
    assert burnt.verdict is Verdict.FAIL
    assert "open" not in burnt.words
