"""Cautions: each key has its words, and every test point and state brings those it needs."""

import pytest

from meterlog.circuit.cautions import CAUTIONS, DEFER, caution_keys, caution_words
from meterlog.model import CircuitState
from meterlog.profile import load_circuit

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
    assert {"airbag", "moving-fan", "back-probe", "hot", "module"} == set(keys)
    assert list(keys) == [key for key in CAUTIONS if key in keys]
    with pytest.raises(KeyError):
        caution_keys(CIRCUIT, "nowhere")


def test_a_state_brings_its_own():
    assert caution_keys(CIRCUIT) == ()
    assert caution_keys(CIRCUIT, state=CircuitState("on", 4)) == ()
    assert caution_keys(CIRCUIT, state=CircuitState("engine", 4)) == ("engine",)
    unplugged = CircuitState("on", 4, unplugged=frozenset({"motor"}))
    assert caution_keys(CIRCUIT, state=unplugged) == ("unplugging",)
    pulled = CircuitState("on", 4, pulled=frozenset({"main-fuse"}))
    assert caution_keys(CIRCUIT, state=pulled) == ("unplugging", "fuse")
    bridged = CircuitState("on", 4, jumpers=frozenset({("motor-return", "body")}))
    assert caution_keys(CIRCUIT, state=bridged) == ("jumper",)
