"""States in words: by the labels of the circuit, not by the names that are typed."""

from meterlog.model.circuit_check import CircuitState
from meterlog.model.circuit_words import state_words
from meterlog.profile.catalogue import load_circuit, shipped_folder

CIRCUIT = load_circuit(str(shipped_folder() / "circuits" / "low-side-linear-12v.toml"))


def test_a_state_is_said_by_the_labels_of_the_circuit():
    state = CircuitState(
        "on",
        4,
        unplugged=frozenset({"motor"}),
        pulled=frozenset({"main-fuse"}),
        jumpers=frozenset({("relay-30", "relay-87")}),
    )
    labels = {one.name: one.label for one in CIRCUIT.elements}
    assert labels["main-fuse"]
    assert state_words(CIRCUIT, state) == (
        f"key on, speed 4, plug motor off, {labels['main-fuse']} out, "
        "fused jumper from relay 30 to relay 87"
    )


def test_key_off_has_no_speed_and_what_a_circuit_has_not_goes_by_its_name():
    assert state_words(CIRCUIT, CircuitState("off", 3)) == "key off"
    assert state_words(CIRCUIT, CircuitState("on", 0)) == "key on, fan off"
    state = CircuitState("on", 1, pulled=frozenset({"spare"}))
    assert state_words(CIRCUIT, state) == "key on, speed 1, spare out"
