"""What a circuit in order does, of every one that is shipped: a sane fan, drops within limits."""

from functools import cache

import numpy as np
import pytest

from meterlog.circuit.figures import healthy_figures, set_fault, set_state
from meterlog.circuit.network import Network
from meterlog.model import CircuitState, ElementKind
from meterlog.profile import load_circuit, names, shipped_folder

SHIPPED = tuple(sorted(path.stem for path in (shipped_folder() / "circuits").glob("*.toml")))


@cache
def _network(name):
    return Network(load_circuit(str(shipped_folder() / "circuits" / f"{name}.toml")))


def volts(name, key, speed):
    network = _network(name)
    circuit = network.circuit
    figures = healthy_figures(circuit, network.index)[None]
    solved = network.solve(set_state(circuit, network.index, figures, CircuitState(key, speed)))
    assert solved.settled.all()
    return dict(zip((node.name for node in circuit.nodes), solved.volts[0], strict=True))


def fan(name, key, speed):
    """Volts across the motor and its current, by V = I R + E, I = I0 + c E²."""
    found = volts(name, key, speed)
    motor = next(e for e in _network(name).circuit.elements if e.kind is ElementKind.MOTOR)
    ohm, idle, air = (motor.figures[key] for key in ("ohm", "no_load_a", "fan_a_per_v2"))
    across = found[motor.nodes[0]] - found[motor.nodes[1]]
    # c R E² + E + I0 R - V = 0
    emf = max(np.roots([air * ohm, 1.0, idle * ohm - across]).real)
    return across, idle + air * emf**2 if emf > 0.0 else across / ohm


@pytest.mark.parametrize("name", [name for name in SHIPPED if name.endswith("12v")])
def test_a_medium_fan_draws_what_the_trade_expects_at_each_speed(name):
    # Common practice: 3 to 5, 5 to 7, 8 to 11 and 12 to 18 A; on high 0.7 V below the battery's.
    for speed, (low, high) in {1: (3, 5), 2: (5, 7), 3: (8, 11), 4: (12, 18)}.items():
        assert low <= fan(name, "on", speed)[1] <= high
    battery = volts(name, "on", 4)["battery-plus"]
    assert battery == pytest.approx(12.4, abs=0.05)
    assert fan(name, "on", 4)[0] > battery - 1.2
    assert fan(name, "engine", 4)[1] < 0.75 * 30.0
    assert abs(fan(name, "on", 0)[1]) < 0.01
    assert abs(fan(name, "off", 4)[1]) < 0.01


@pytest.mark.parametrize("name", [name for name in SHIPPED if name.endswith("24v")])
def test_at_24_volts_it_has_twice_the_volts_and_half_the_amperes(name):
    small = name.replace("24v", "12v")
    for speed in (1, 2, 3, 4):
        (volts_24, amps_24), (volts_12, amps_12) = fan(name, "on", speed), fan(small, "on", speed)
        assert volts_24 == pytest.approx(2.0 * volts_12, rel=0.06)
        assert amps_24 == pytest.approx(amps_12 / 2.0, rel=0.09)


@pytest.mark.parametrize("key", ["on", "engine"])
@pytest.mark.parametrize("name", SHIPPED)
def test_in_order_every_section_is_within_its_limit(name, key):
    found = volts(name, key, max(_network(name).circuit.speeds))
    for section in _network(name).circuit.sections:
        drop = found[section.nodes[0]] - found[section.nodes[1]]
        assert 0.0 < drop < 0.95 * section.limit_v, section.name


@pytest.mark.parametrize("name", SHIPPED)
def test_with_the_key_off_nothing_but_the_battery_side_has_volts(name):
    found = volts(name, "off", 4)
    live = {node for node, value in found.items() if value > 0.1}
    assert live == {"battery-plus", "main-fuse-in", "main-fuse-out", "relay-30"}


def test_circuits_are_found_by_their_names():
    assert set(SHIPPED) <= set(names("circuits"))


def _every_fault(network):
    """Figures with every fault, at both ends of its severity; and what each row is."""
    circuit = network.circuit
    rows, told = [healthy_figures(circuit, network.index)], ["in order"]
    for element in circuit.elements:
        for fault in element.faults:
            for severity in dict.fromkeys((fault.least, fault.most)):
                row = rows[0][None].copy()
                set_fault(network.index, row, element, fault.mode, severity)
                rows.append(row[0])
                told.append(f"{element.name} {fault.mode.value} {severity}")
    return np.array(rows), told


@pytest.mark.parametrize("speed", [0, 1, 4])
@pytest.mark.parametrize("name", SHIPPED)
def test_under_every_fault_no_voltage_leaves_the_supply(name, speed):
    network = _network(name)
    rows, told = _every_fault(network)
    figures = set_state(network.circuit, network.index, rows, CircuitState("on", speed))
    found = network.solve(figures)
    assert [what for what, ok in zip(told, found.settled, strict=True) if not ok] == []
    plus = found.volts[:, network.node_column["battery-plus"]]
    above = found.volts.max(axis=1) - plus
    below = found.volts.min(axis=1)
    assert [what for what, by in zip(told, above, strict=True) if by > 0.7] == []
    assert [what for what, by in zip(told, below, strict=True) if by < -0.1] == []
