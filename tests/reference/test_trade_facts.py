"""Facts of the trade about a cabin fan's circuit, checked on the shipped circuits.

Each is common practice, no source. The fuse ratings of the facts (coil 10 A, main 40 A) are usual
ones; the shipped circuits have others.
"""

from functools import cache

import numpy as np
import pytest

from meterlog.circuit import Isolation
from meterlog.circuit.figures import healthy_figures, set_state
from meterlog.circuit.network import Network
from meterlog.model import (
    CircuitCheck,
    CircuitReading,
    CircuitSign,
    CircuitState,
    ElementKind,
    Sign,
)
from meterlog.model.circuit_check import METER_OHM
from meterlog.profile import circuit_profile, load_circuit, shipped_folder

FOLDER = shipped_folder() / "circuits"
SHIPPED = tuple(sorted(path.stem for path in FOLDER.glob("*.toml")))
LOW_SIDE = tuple(name for name in SHIPPED if name.startswith("low-side-linear"))
ON, HIGH = CircuitState("on", 0), CircuitState("on", 4)


@cache
def _circuit(name):
    return load_circuit(str(FOLDER / f"{name}.toml"))


@cache
def _network(name):
    return Network(_circuit(name))


def _solved(name, state, loads=None):
    network = _network(name)
    figures = healthy_figures(network.circuit, network.index)[None]
    found = network.solve(set_state(network.circuit, network.index, figures, state), loads=loads)
    assert found.settled.all()
    return found.volts[0]


@cache
def _volts(name, state):
    nodes = (node.name for node in _circuit(name).nodes)
    return dict(zip(nodes, _solved(name, state), strict=True))


def _metered(name, state, node):
    """Volts that a meter of 10 MΩ shows at a node that may float."""
    at = _network(name).node_column[node]
    return _solved(name, state, (np.array([at]), np.array([0]), np.array([METER_OHM])))[at]


@pytest.mark.parametrize("name", SHIPPED)
def test_key_on_the_nominal_voltage_stands_on_both_sides_of_the_coil_fuse(name):
    nominal = _circuit(name).nominal_v
    fuse = _circuit(name).element("coil-fuse")
    for node in fuse.nodes:
        assert _volts(name, ON)[node] == pytest.approx(nominal * 1.04, rel=0.05)
        assert _volts(name, CircuitState("off", 0))[node] == pytest.approx(0.0, abs=0.1)


@pytest.mark.parametrize("name", SHIPPED)
def test_fuses_are_of_the_usual_size_and_the_usual_ratings_may_be_stated(name):
    circuit = _circuit(name)
    coil, main = (circuit.element(f).figures["rating_a"] for f in ("coil-fuse", "main-fuse"))
    assert 5.0 <= coil <= 10.0
    assert 20.0 <= main <= 40.0
    text = circuit.text
    for old, new in ((coil, 10.0), (main, 40.0)):
        assert text.count(f"rating_a = {old}\n") == 1
        text = text.replace(f"rating_a = {old}\n", f"rating_a = {new}\n")
    changed = circuit_profile(name, text, name)
    assert changed.element("coil-fuse").figures["rating_a"] == 10.0
    assert changed.element("main-fuse").figures["rating_a"] == 40.0


@pytest.mark.parametrize("name", SHIPPED)
def test_the_coil_is_grounded_to_the_body_and_the_contact_passes_battery_voltage_on(name):
    circuit, found = _circuit(name), _volts(name, HIGH)
    coil, contact = circuit.element("relay-coil"), circuit.element("relay-contact")
    ground = next(e for e in circuit.elements if e.nodes[0] == coil.nodes[1])
    assert ground.kind is ElementKind.GROUND
    assert "body" in ground.nodes[1]
    assert found[coil.nodes[1]] < 0.1
    drop = found["battery-plus"] - found[contact.nodes[1]]
    assert 0.0 < drop < 0.03 * circuit.nominal_v
    assert _metered(name, CircuitState("off", 0), contact.nodes[1]) < 0.02 * circuit.nominal_v


@pytest.mark.parametrize("name", LOW_SIDE)
def test_the_motor_is_grounded_through_a_controller_of_four_wires(name):
    circuit = _circuit(name)
    wires = [
        e.name
        for e in circuit.elements
        if e.plug == "controller" and e.kind is ElementKind.CONNECTION
    ]
    assert sorted(wires) == [
        "command-pin",
        "controller-ground-pin",
        "controller-return-pin",
        "feedback-pin",
    ]
    found = _volts(name, HIGH)
    assert found["motor-feed"] > 0.95 * found["battery-plus"]
    assert found["controller-ground"] < 0.2
    assert found["motor-return"] < 0.5
    # Off, the motor's return stands at the battery's voltage: no ground.
    assert _volts(name, ON)["motor-return"] == pytest.approx(found["battery-plus"], rel=0.02)


@cache
def _isolation(name):
    return Isolation(_circuit(name))


def _reading(number, point, value, state=HIGH):
    return CircuitReading(number, state, point, value, 0.03)


def _shares(verdict):
    return {suspect.unit: suspect.probability for suspect in verdict.suspects}


@pytest.mark.parametrize("name", LOW_SIDE[:1])
def test_good_feed_and_no_ground_points_to_controller_its_ground_or_the_command(name):
    check = CircuitCheck(
        name,
        readings=(_reading(1, "motor-feed", 12.5), _reading(2, "motor-return", 12.5)),
        signs=(CircuitSign(3, HIGH, Sign.FAN, "dead"),),
    )
    verdict = _isolation(name).verdict(check)
    shares = _shares(verdict)
    downstream = {"controller", "return-wiring", "ground", "command-wiring", "head"}
    assert sum(shares[unit] for unit in downstream) > 0.9
    assert verdict.suspects[0].unit == "controller"
    assert shares["main-fuse"] + shares["coil-fuse"] + shares["relay"] < 0.05


@pytest.mark.parametrize("name", LOW_SIDE[:1])
def test_a_fan_on_high_that_starts_when_hit_has_a_dead_spot_in_the_motor(name):
    check = CircuitCheck(
        name,
        signs=(
            CircuitSign(1, HIGH, Sign.FAN, "dead"),
            CircuitSign(2, HIGH, Sign.TAP, "starts"),
        ),
    )
    first = _isolation(name).verdict(check).suspects[0]
    assert first.unit == "motor"
    assert first.probability > 0.5
    assert first.faults[0].mode == "open"


@pytest.mark.parametrize("name", LOW_SIDE[:1])
def test_a_wheel_that_does_not_spin_freely_is_a_mechanical_fault(name):
    check = CircuitCheck(name, signs=(CircuitSign(1, CircuitState("off", 0), Sign.WHEEL, "stiff"),))
    first = _isolation(name).verdict(check).suspects[0]
    assert first.unit == "motor"
    mechanical = sum(
        fault.probability
        for fault in first.faults
        if fault.mode.partition(" + ")[0] in {"seized", "dragging"}
    )
    assert mechanical > 0.5


@pytest.mark.parametrize("name", LOW_SIDE[:1])
def test_before_anything_is_measured_the_head_comes_last_of_what_may_be_bad(name):
    shares = _shares(_isolation(name).verdict(CircuitCheck(name)))
    fuses = shares["main-fuse"] + shares["coil-fuse"]
    wiring = {"feed-wiring", "return-wiring", "motor-plug", "ground", "coil-wiring"}
    groups = [
        fuses,
        shares["relay"],
        shares["motor"],
        shares["controller"],
        sum(shares[unit] for unit in wiring),
    ]
    assert min(groups) > 2.0 * shares["head"]
    assert np.isclose(sum(shares.values()), 1.0, atol=0.2)
