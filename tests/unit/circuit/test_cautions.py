"""Cautions: each key has its words, and every test point and state brings those it needs."""

import pytest

from meterlog.circuit.cautions import (
    CAUTIONS,
    DEFER,
    caution_keys,
    caution_words,
    confirming_cautions,
)
from meterlog.model import CircuitState, CircuitVerdict, ProposedTest, Suspect
from meterlog.profile import load_circuit, names

CIRCUIT = load_circuit("low-side-linear-12v")


def test_all_that_the_trade_warns_of_is_there():
    for key, word in {
        "moving-fan": "wheel",
        "airbag": "Airbag",
        "fuse": "same rating",
        "jumper": "Fused jumper only",
        "meter": "CAT",
        "back-probe": "pierce",
        "module": "10 MΩ",
        "hot": "cool",
        "high-voltage": "60 V DC",
        "engine": "park brake",
        "unplugging": "key off",
    }.items():
        assert word in CAUTIONS[key]
    for word in ("service manual", "local codes", "licensed practice"):
        assert word in DEFER


def test_words_come_once_each_what_hurts_people_first():
    said = caution_words(["meter", "airbag", "meter", "high-voltage"])
    assert said == (CAUTIONS["high-voltage"], CAUTIONS["airbag"], CAUTIONS["meter"])
    with pytest.raises(KeyError, match="none-such"):
        caution_words(["meter", "none-such"])


def test_a_point_brings_those_of_its_place_and_its_own():
    keys = caution_keys(CIRCUIT, "command")
    assert {"airbag", "moving-fan", "back-probe", "hot", "module", "meter", "high-voltage"} == set(
        keys
    )
    assert list(keys) == [key for key in CAUTIONS if key in keys]
    with pytest.raises(KeyError):
        caution_keys(CIRCUIT, "nowhere")


def test_a_state_brings_its_own():
    assert caution_keys(CIRCUIT) == ()
    assert caution_keys(CIRCUIT, state=CircuitState("on", 4)) == ()
    assert caution_keys(CIRCUIT, state=CircuitState("engine", 4)) == ("engine",)
    jumped = CircuitState("on", 4, jumpers=frozenset({("relay-30", "relay-87")}))
    assert {"jumper", "moving-fan"} <= set(caution_keys(CIRCUIT, state=jumped)), "it may start"


@pytest.mark.parametrize("name", names("circuits"))
def test_wherever_leads_are_put_the_jacks_are_told(name):
    circuit = load_circuit(name)
    for point in circuit.points:
        assert "meter" in caution_keys(circuit, point.name), point.name


def test_to_unplug_behind_the_dash_brings_what_can_hurt_there():
    off = CircuitState("on", 4, unplugged=frozenset({"motor"}))
    at_the_fuse_box = set(caution_keys(CIRCUIT, "main-fuse-out", off))
    assert {"unplugging", "airbag", "moving-fan"} <= at_the_fuse_box
    pulled = CircuitState("on", 4, pulled=frozenset({"main-fuse"}))
    assert {"unplugging", "fuse"} <= set(caution_keys(CIRCUIT, state=pulled))
    bridged = CircuitState("on", 4, jumpers=frozenset({("motor-return", "body")}))
    assert {"jumper", "airbag"} <= set(caution_keys(CIRCUIT, state=bridged))


def _verdict(settled, *suspects, test=None):
    odds = tuple(Suspect(unit, unit, 0.9, 0.8) for unit in suspects)
    return CircuitVerdict(CIRCUIT.name, odds, settled, "", test)


def test_what_confirms_a_verdict_has_its_cautions_too():
    motor = confirming_cautions(CIRCUIT, _verdict("motor", "motor"))
    for key in ("jumper", "moving-fan", "unplugging", "airbag", "meter"):
        assert CAUTIONS[key] in motor
    assert motor[-1] == DEFER
    fuse = confirming_cautions(CIRCUIT, _verdict("main-fuse", "main-fuse"))
    assert CAUTIONS["fuse"] in fuse
    assert CAUTIONS["jumper"] not in fuse


def test_while_it_stays_open_those_of_the_units_named_are_given():
    both = confirming_cautions(CIRCUIT, _verdict("", "main-fuse", "controller", "motor"))
    assert CAUTIONS["fuse"] in both
    assert CAUTIONS["hot"] in both
    assert CAUTIONS["jumper"] not in both
    nothing = confirming_cautions(CIRCUIT, _verdict("no-fault", "no-fault"))
    assert nothing == (CAUTIONS["moving-fan"], DEFER)


def test_a_proposed_test_has_its_own():
    test = ProposedTest("battery", None, CircuitState(), 1.0, 1.0, 12.0, 12.8, (), (), "", "")
    assert confirming_cautions(CIRCUIT, _verdict("", "motor", test=test)) == ()
