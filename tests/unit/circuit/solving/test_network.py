"""Network: small circuits whose voltages follow by hand."""

import numpy as np
import pytest

from meterlog.circuit.figures import JUMPER_OHM, healthy_figures, set_fault, set_state
from meterlog.circuit.network import LEAK_S, Network
from meterlog.model import CircuitState
from meterlog.model.circuit import FaultMode
from meterlog.model.element_kinds import OPEN_OHM


@pytest.fixture
def divider(element, battery, circuit_of):
    return circuit_of(
        battery,
        element("upper", "resistor", "plus", "middle", ohm=20.0),
        element("lower", "resistor", "middle", "minus", ohm=10.0),
    )


@pytest.fixture
def relay_circuit(element, circuit_of):
    """A relay whose lamp pulls the battery down: 12 V behind 1 Ω; pulls in at 7 V."""
    return circuit_of(
        element("battery", "battery", "plus", "minus", emf_v=12.0, charging_v=14.0, ohm=1.0),
        element("coil", "coil", "plus", "minus", ohm=100.0, relay="r"),
        element("contact", "contact", "plus", "fed", ohm=0.01, pull_in_v=7.0, relay="r"),
        element("lamp", "resistor", "fed", "minus", ohm=0.5),
    )


def broken(network, name, mode, severity=None):
    figures = healthy_figures(network.circuit, network.index)[None]
    set_fault(network.index, figures, network.circuit.element(name), mode, severity)
    return set_state(network.circuit, network.index, figures, CircuitState())


def meter(network, node, ohm, other="minus"):
    ends = [np.array([network.node_column[name]]) for name in (node, other)]
    return ends[0], ends[1], np.array([float(ohm)])


def test_a_divider_divides(divider, volts_of):
    found = volts_of(divider)
    assert found == pytest.approx({"minus": 0.0, "plus": 12.0, "middle": 4.0}, abs=1e-6)


def test_a_battery_drops_by_its_own_resistance(element, circuit_of, volts_of):
    # OpenStax, University Physics Volume 2, example 10.1: 20.0 A, 10.00 V.
    circuit = circuit_of(
        element("battery", "battery", "plus", "minus", emf_v=12.0, charging_v=14.0, ohm=0.1),
        element("load", "resistor", "plus", "minus", ohm=0.5),
    )
    assert volts_of(circuit)["plus"] == pytest.approx(10.0, abs=1e-6)
    assert volts_of(circuit, key="engine")["plus"] == pytest.approx(14.0 * 0.5 / 0.6, abs=1e-6)


def test_a_meter_across_an_open_reads_a_ghost(element, battery, circuit_of):
    circuit = circuit_of(
        battery,
        element("wire", "wire", "plus", "end", ohm=0.01),
        element("load", "resistor", "end", "far", ohm=5.0),
        element("joint", "ground", "far", "minus", ohm=0.01),
    )
    network = Network(circuit)
    lost = broken(network, "joint", FaultMode.OPEN)
    # Nothing pulls the far end down: the meter's 10 MΩ do, far less than 5 Ω pull up.
    ghost = network.solve(lost, loads=meter(network, "far", 10e6)).volts[0]
    assert ghost[network.node_column["far"]] == pytest.approx(12.0, abs=1e-4)
    gone = broken(network, "wire", FaultMode.OPEN)
    gone[0, network.index["joint", "ohm"]] = OPEN_OHM
    for ohm in (10e6, 1e6, 1e9):
        found = network.solve(gone, loads=meter(network, "end", ohm)).volts[0]
        # 12 V behind the open's 1 GΩ, onto the meter, the other open and the leaks of two nodes.
        siemens = 1.0 / ohm + 1e-9 + 2.0 * LEAK_S
        wanted = 12.0 * 1e-9 / (1e-9 + siemens)
        assert found[network.node_column["end"]] == pytest.approx(wanted, rel=1e-6)


def test_a_meter_of_no_load_changes_nothing(divider):
    network = Network(divider)
    figures = healthy_figures(divider, network.index)[None]
    without = network.solve(figures).volts
    infinite = network.solve(figures, loads=meter(network, "middle", np.inf)).volts
    np.testing.assert_array_equal(without, infinite)
    loaded = network.solve(figures, loads=meter(network, "middle", 10.0)).volts[0]
    assert loaded[network.node_column["middle"]] == pytest.approx(12.0 * 5.0 / 25.0, abs=1e-6)


def test_a_meter_between_two_nodes_loads_both(divider):
    network = Network(divider)
    figures = healthy_figures(divider, network.index)[None]
    for ends in (("plus", "middle"), ("middle", "plus")):
        across = network.solve(figures, loads=meter(network, ends[0], 20.0, ends[1])).volts[0]
        assert across[network.node_column["middle"]] == pytest.approx(6.0, abs=1e-6)


def test_each_row_has_its_own_meter(divider):
    network = Network(divider)
    figures = np.tile(healthy_figures(divider, network.index), (4, 1))
    at, zero = network.node_column["middle"], 0
    loads = (
        np.array([at, at, zero, at]),
        np.array([zero, network.node_column["plus"], at, zero]),
        np.array([10.0, 20.0, 10.0, np.inf]),
    )
    found = network.solve(figures, loads=loads).volts[:, at]
    np.testing.assert_allclose(found, [2.4, 6.0, 2.4, 4.0], atol=1e-6)


def test_a_jumper_goes_round_an_open(divider):
    network = Network(divider)
    lost = broken(network, "upper", FaultMode.OPEN)
    found = network.solve(lost, frozenset([("middle", "plus")])).volts[0]
    wanted = 12.0 * 10.0 / (10.0 + JUMPER_OHM)
    assert found[network.node_column["middle"]] == pytest.approx(wanted, abs=1e-5)
    to_ground = network.solve(lost, frozenset([("middle", "minus")])).volts[0]
    assert abs(to_ground[network.node_column["middle"]]) < 1e-6


def test_a_jumper_to_a_node_that_is_not_there_is_a_key_error(divider):
    network = Network(divider)
    figures = healthy_figures(divider, network.index)
    with pytest.raises(KeyError, match="nowhere"):
        network.solve(figures, frozenset([("middle", "nowhere")]))
    with pytest.raises(KeyError, match="nowhere"):
        network.columns(["plus", "nowhere"])
    assert network.columns(["middle", "minus"]) == (2, 0)


def test_one_circuit_may_be_given_flat(divider):
    network = Network(divider)
    figures = healthy_figures(divider, network.index)
    np.testing.assert_array_equal(network.solve(figures).volts, network.solve(figures[None]).volts)


def test_a_coil_pulls_its_contact_in_and_holds_it_when_the_load_sags(relay_circuit):
    network = Network(relay_circuit)
    solved = network.solve(broken(network, "lamp", FaultMode.RESISTIVE, 0.0))
    assert solved.closed.tolist() == [[True]]
    # 11.9 V pull it in; then the lamp leaves a third of 12 V, less than 7 V.
    at_coil = solved.volts[0, network.node_column["plus"]]
    assert at_coil == pytest.approx(12.0 / (1.0 + 1.0 * (0.01 + 1.0 / 0.51)), abs=1e-5)
    assert at_coil < 7.0


@pytest.mark.parametrize(("flat", "closed"), [(7.08, True), (7.06, False)])
def test_a_contact_closes_at_its_pull_in_voltage(relay_circuit, flat, closed):
    # 7 V at the coil take 7 V x 101 / 100 behind 1 Ω.
    network = Network(relay_circuit)
    solved = network.solve(broken(network, "battery", FaultMode.FLAT, flat))
    assert solved.closed.tolist() == [[closed]]


@pytest.mark.parametrize(
    ("name", "mode", "severity", "closed", "lit"),
    [
        ("coil", FaultMode.OPEN, None, False, False),
        ("coil", FaultMode.RESISTIVE, 60.0, True, True),
        ("coil", FaultMode.RESISTIVE, 80.0, False, False),
        ("contact", FaultMode.OPEN, None, True, False),
        ("contact", FaultMode.SHORTED, None, True, True),
    ],
)
def test_relays_fail_in_coil_and_in_contact(relay_circuit, name, mode, severity, closed, lit):
    network = Network(relay_circuit)
    solved = network.solve(broken(network, name, mode, severity))
    assert solved.closed.tolist() == [[closed]]
    assert (solved.volts[0, network.node_column["fed"]] > 1.0) == lit


def test_a_welded_contact_is_closed_without_its_coil(relay_circuit):
    network = Network(relay_circuit)
    figures = broken(network, "contact", FaultMode.SHORTED)
    set_fault(network.index, figures, relay_circuit.element("coil"), FaultMode.OPEN, None)
    assert network.solve(figures).closed.tolist() == [[True]]


def test_one_relay_may_pull_in_the_next(element, battery, circuit_of, volts_of):
    circuit = circuit_of(
        battery,
        element("coil-1", "coil", "plus", "minus", ohm=100.0, relay="first"),
        element("contact-2", "contact", "fed", "out", ohm=0.01, pull_in_v=7.0, relay="second"),
        element("coil-2", "coil", "fed", "minus", ohm=100.0, relay="second"),
        element("contact-1", "contact", "plus", "fed", ohm=0.01, pull_in_v=7.0, relay="first"),
        element("load", "resistor", "out", "minus", ohm=10.0),
    )
    assert volts_of(circuit)["out"] == pytest.approx(12.0, abs=0.03)


def test_two_batteries_add_up_as_each_alone(element, circuit_of):
    # Superposition: with one battery at nothing and then the other, the voltages add up.
    circuit = circuit_of(
        element("one", "battery", "a", "minus", emf_v=28.0, charging_v=28.0, ohm=4.0),
        element("two", "battery", "b", "minus", emf_v=7.0, charging_v=7.0, ohm=1.0),
        element("left", "resistor", "a", "middle", ohm=3.0),
        element("right", "resistor", "b", "middle", ohm=5.0),
        element("down", "resistor", "middle", "minus", ohm=2.0),
    )
    network = Network(circuit)
    both = healthy_figures(circuit, network.index)
    rows = np.tile(both, (3, 1))
    rows[1, network.index["two", "emf_v"]] = 0.0
    rows[2, network.index["one", "emf_v"]] = 0.0
    volts = network.solve(rows).volts
    np.testing.assert_allclose(volts[0], volts[1] + volts[2], rtol=1e-12)
    assert np.abs(volts[1:, 1:]).min() > 0.1


def test_nothing_conducts_better_than_the_least_ohm(element, battery, circuit_of, volts_of):
    circuit = circuit_of(
        battery,
        element("none", "wire", "plus", "end", ohm=0.0),
        element("load", "resistor", "end", "minus", ohm=1.0),
    )
    found = volts_of(circuit)
    assert found["end"] == pytest.approx(12.0, abs=1e-4)
    assert found["end"] < found["plus"]


def test_what_hangs_on_nothing_has_no_voltage(element, battery, circuit_of, volts_of):
    circuit = circuit_of(battery, element("loose", "wire", "here", "there", ohm=0.01))
    found = volts_of(circuit)
    assert found["here"] == found["there"] == 0.0
