"""Notes: which readings tell little because of how they were taken, and which do not need one."""

import pytest

from meterlog.circuit import Isolation
from meterlog.circuit.notes import notes_of
from meterlog.model import CircuitCheck, CircuitReading, CircuitSign, CircuitState, Sign
from meterlog.profile import load_circuit

OFF = CircuitState("off", 0)


def _idle(*readings, name="low-side-linear-12v"):
    isolation = Isolation(load_circuit(name))
    check = CircuitCheck(name, readings=readings)
    posterior = isolation._belief.posterior(check.readings, check.signs)
    return [
        note
        for note in notes_of(isolation.circuit, check, posterior)
        if "only while current" in note
    ]


def test_a_small_drop_along_a_connection_at_rest_tells_little():
    (note,) = _idle(CircuitReading(1, OFF, "motor-feed-pin-drop", 0.0, 0.01))
    assert note.startswith("Reading 1: a voltage drop")


def test_across_a_contact_at_rest_little_volts_tell_a_good_deal():
    assert not _idle(CircuitReading(1, OFF, "relay-drop", 0.1, 0.01))


def test_across_the_motor_there_is_no_connection_to_be_judged():
    assert not _idle(CircuitReading(1, OFF, "across-motor", 0.0, 0.01))


@pytest.mark.parametrize(
    ("state", "value", "said"),
    [
        (CircuitState(key="off", speed=4), "dead", "that it stood says nothing"),
        (CircuitState(key="on", speed=0), "dead", "that it stood says nothing"),
        (CircuitState(key="off", speed=4), "runs", "and it did: look again whether key and speed"),
        (CircuitState(key="on", speed=4), "dead", ""),
        (CircuitState(key="on", speed=4), "runs", ""),
    ],
)
def test_a_fan_that_nothing_asks_to_run_tells_nothing_by_standing(state, value, said):
    circuit = load_circuit("low-side-linear-12v")
    sign = CircuitSign(id=1, sign=Sign.FAN, value=value, state=state)
    notes = Isolation(circuit).verdict(CircuitCheck(circuit.name, signs=(sign,))).notes
    told = [one for one in notes if "nothing asked the fan to run" in one]
    assert len(told) == bool(said)
    assert all(said in one for one in told)
