"""What can't be of a circuit, and what a check can't hold, is refused with its place."""

from dataclasses import replace

import pytest

from meterlog.circuit.entries import MOST_READINGS, check_entries, check_state
from meterlog.model import CircuitCheck, CircuitReading, CircuitState
from meterlog.model.errors import UsageError
from meterlog.profile import load_circuit, shipped_folder

CIRCUIT = load_circuit(str(shipped_folder() / "circuits" / "low-side-linear-12v.toml"))
HIGH = CircuitState("on", 4)


def readings(count):
    return tuple(
        CircuitReading(number, HIGH, "motor-feed", 12.3, 0.05) for number in range(1, count + 1)
    )


def test_a_check_holds_so_many_readings_and_no_more():
    check_entries(CIRCUIT, CircuitCheck(CIRCUIT.name, readings=readings(MOST_READINGS)))
    with pytest.raises(UsageError, match=f"holds {MOST_READINGS} readings, and this has 61"):
        check_entries(CIRCUIT, CircuitCheck(CIRCUIT.name, readings=readings(MOST_READINGS + 1)))


@pytest.mark.parametrize("u", [-1.0, 1e9, float("nan")])
def test_an_uncertainty_beyond_all_sense_is_refused(u):
    (one,) = readings(1)
    with pytest.raises(UsageError, match="below 0, above 1000 or no number"):
        check_entries(CIRCUIT, CircuitCheck(CIRCUIT.name, readings=(replace(one, standard_u=u),)))


def test_an_infinite_one_says_that_nothing_is_known():
    (one,) = readings(1)
    told = replace(one, standard_u=float("inf"))
    check_entries(CIRCUIT, CircuitCheck(CIRCUIT.name, readings=(told,)))


@pytest.mark.parametrize("state", [HIGH, CircuitState("off", 0)])
@pytest.mark.parametrize("pair", [("battery-minus", "battery-plus"), ("body", "relay-87")])
def test_a_jumper_that_shorts_the_battery_is_refused_whatever_the_key(state, pair):
    with pytest.raises(UsageError, match=r"entry 3: .*short circuit of about \d+ A"):
        check_state(CIRCUIT, replace(state, jumpers=frozenset({pair})), "entry 3")


@pytest.mark.parametrize("pair", [("relay-30", "relay-87"), ("body", "motor-return")])
def test_a_jumper_round_one_contact_is_allowed(pair):
    check_state(CIRCUIT, replace(HIGH, jumpers=frozenset({pair})), "entry 3")
