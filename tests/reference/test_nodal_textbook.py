"""Node voltages against worked examples of textbooks. All figures from memory of the pages named.

Sources
-------
OpenStax, University Physics Volume 2, chapter 10 (College Physics has the same in chapter 21):

- Example 10.1: 12.00 V, 0.100 Ω inside; 10.00 Ω outside, 1.188 A and 11.88 V; 0.500 Ω, 20.0 A and
  10.00 V; 0.500 Ω inside as well, 12.0 A and 6.00 V.
- Series resistors (example 10.2): 9 V on four of 20 Ω and one of 10 Ω, 0.1 A.
- Parallel (example 10.3): 3.00 V on 1.00, 2.00 and 2.00 Ω, 6.00 A in all.
- Both (College Physics, 21.3): 12.0 V, 1.00 Ω ahead of 6.00 Ω beside 13.0 Ω; 2.35 A, 9.65 V,
  1.61 A.
- Kirchhoff's rules (College Physics, 21.5): 18.0 V with 0.5 Ω inside and 2.5 Ω, 45.0 V with 0.5 Ω
  inside and 1.5 Ω, 6.0 Ω: I1 = 4.75 A, I2 = -3.50 A, I3 = 8.25 A.

T. R. Kuphaldt, Lessons in Electric Circuits, volume I, DC (open, Design Science License):

- Branch currents, mesh currents, Millman, superposition and Thevenin all use one network, 28 V and
  7 V, 4, 2 and 1 Ω: 20 V, 8 V and 1 V across them; without the 2 Ω, 11.2 V behind 0.8 Ω.
- Series-parallel: 24 V, 100 beside 250 Ω, then 350 beside 200 Ω: 120.78 mA, 8.6275 V and 15.373 V.
- Unbalanced bridge by mesh currents: 24 V, 150 and 50 Ω above, 300 and 250 Ω below, 100 Ω across;
  136.092 mA of the source.
- Bridge by delta and wye: 10 V, 12 and 18 Ω above, 18 and 12 Ω below, 6 Ω across; 5.294 V and
  4.706 V.
- What a voltmeter does to the circuit: 24 V on two of 250 kΩ; 12 V without, 0.8889 V with a meter
  of 10 kΩ, 11.8519 V with one of 10 MΩ.

Sedra and Smith, Microelectronic Circuits (MOSFET circuits at DC):

- To be designed: 0.4 mA and 0.5 V at the drain, from +2.5 V by 5 kΩ, source by 3.25 kΩ from -2.5 V,
  gate at 0 V; threshold 0.7 V, 3.2 mA/V²: source at -1.2 V.
- To be analysed: 10 V, gate at 5 V by two of 10 MΩ, 6 kΩ at drain and source; threshold 1 V,
  1 mA/V²: 0.5 mA, source at 3 V, drain at 7 V.

Kirchhoff's ladder of equal resistors gives every other Fibonacci number (a classic, no one source).
"""

import numpy as np
import pytest

from meterlog.circuit.figures import healthy_figures
from meterlog.circuit.network import Network
from meterlog.model.circuit import Circuit, Element, ElementKind, Node

NO_OHM = 1e-6
"""Of a source that has none in its book: the least the solver knows."""


def element(name, kind, nodes, **figures):
    return Element(name, ElementKind(kind), tuple(nodes.split()), "unit", figures)


def source(name, nodes, volts, ohm=NO_OHM):
    return element(name, "battery", nodes, emf_v=volts, charging_v=volts, ohm=ohm)


def resistor(nodes, ohm):
    return element(f"{nodes} {ohm}", "resistor", nodes, ohm=ohm)


def solve(*elements, meter=None):
    """Volts by node, against ``0``; meter: (node, ohms)."""
    names = ["0", *dict.fromkeys(n for e in elements for n in e.nodes if n != "0")]
    nodes = tuple(Node(name, name, (float(at), 0.0)) for at, name in enumerate(names))
    network = Network(Circuit("book", "Book", 12.0, (0,), nodes, elements, (), (), (), ()))
    loads = None
    if meter is not None:
        at = np.array([network.node_column[meter[0]]])
        loads = (at, np.array([0]), np.array([meter[1]]))
    solved = network.solve(healthy_figures(network.circuit, network.index), loads=loads)
    assert solved.settled.all()
    return dict(zip(names, solved.volts[0], strict=True))


@pytest.mark.parametrize(
    ("inside", "outside", "amps", "volts"),
    [(0.1, 10.0, 1.188, 11.88), (0.1, 0.5, 20.0, 10.0), (0.5, 0.5, 12.0, 6.0)],
)
def test_a_battery_under_load(inside, outside, amps, volts):
    found = solve(source("emf", "a 0", 12.0, inside), resistor("a 0", outside))["a"]
    assert found == pytest.approx(volts, abs=0.005)
    assert found / outside == pytest.approx(amps, rel=5e-4)


def test_resistors_in_series():
    chain = [resistor(f"n{at} n{at + 1}", 20.0) for at in range(4)]
    found = solve(source("emf", "n0 0", 9.0), *chain, resistor("n4 0", 10.0))
    assert [found[f"n{at}"] for at in range(5)] == pytest.approx(
        [9.0, 7.0, 5.0, 3.0, 1.0], abs=1e-6
    )


def test_resistors_in_parallel():
    # 6.00 A in all, through 0.25 Ω ahead of them: 3.00 V of 4.50 V.
    feet = [
        element(name, "resistor", "a 0", ohm=ohm)
        for name, ohm in (("r1", 1.0), ("r2", 2.0), ("r3", 2.0))
    ]
    found = solve(source("emf", "a 0", 4.5, 0.25), *feet)
    assert found["a"] == pytest.approx(3.0, abs=1e-6)


def test_resistors_in_series_and_parallel():
    found = solve(
        source("emf", "a 0", 12.0),
        resistor("a b", 1.0),
        resistor("b 0", 6.0),
        resistor("b 0", 13.0),
    )
    assert found["a"] - found["b"] == pytest.approx(2.35, abs=0.005)
    assert found["b"] / 6.0 == pytest.approx(1.61, abs=0.005)


def test_kirchhoff_s_rules():
    # a and e: the two junctions.
    found = solve(
        source("emf-1", "d e", 18.0, 0.5),
        resistor("a d", 2.5),
        source("emf-2", "g e", 45.0, 0.5),
        resistor("a g", 1.5),
        element("r1", "resistor", "e a", ohm=6.0),
        element("reference", "wire", "e 0", ohm=1.0),
    )
    across = found["a"] - found["e"]
    assert abs(across) / 6.0 == pytest.approx(4.75, abs=0.005)
    assert (found["g"] - found["a"]) / 1.5 == pytest.approx(8.25, abs=0.005)
    assert (found["d"] - found["a"]) / 2.5 == pytest.approx(-3.50, abs=0.005)


def two_sources():
    return (
        source("b1", "left 0", 28.0),
        source("b2", "right 0", 7.0),
        resistor("left middle", 4.0),
        resistor("middle right", 1.0),
    )


def test_two_sources_and_three_resistors():
    found = solve(*two_sources(), resistor("middle 0", 2.0))
    assert found["left"] - found["middle"] == pytest.approx(20.0, abs=1e-4)
    assert found["middle"] == pytest.approx(8.0, abs=1e-4)
    assert found["middle"] - found["right"] == pytest.approx(1.0, abs=1e-4)


def test_thevenin_s_equivalent():
    assert solve(*two_sources())["middle"] == pytest.approx(11.2, abs=1e-4)
    equal = solve(source("thevenin", "middle 0", 11.2, 0.8), resistor("middle 0", 2.0))
    assert equal["middle"] == pytest.approx(8.0, abs=1e-6)


def test_series_and_parallel_mixed():
    found = solve(
        source("b", "a 0", 24.0),
        resistor("a c", 100.0),
        resistor("a c", 250.0),
        resistor("c 0", 350.0),
        resistor("c 0", 200.0),
    )
    assert found["a"] - found["c"] == pytest.approx(8.6275, abs=5e-5)
    assert found["c"] == pytest.approx(15.373, abs=5e-4)
    assert (found["a"] - found["c"]) * (1 / 100 + 1 / 250) == pytest.approx(0.12078, abs=5e-6)


def test_an_unbalanced_bridge_by_mesh_currents():
    found = solve(
        source("b", "a 0", 24.0),
        resistor("a c", 150.0),
        resistor("a d", 50.0),
        resistor("c d", 100.0),
        resistor("c 0", 300.0),
        resistor("d 0", 250.0),
    )
    amps = (found["a"] - found["c"]) / 150.0 + (found["a"] - found["d"]) / 50.0
    assert amps == pytest.approx(0.136092, abs=5e-7)


def test_an_unbalanced_bridge_by_delta_and_wye():
    found = solve(
        source("b", "a 0", 10.0),
        resistor("a c", 12.0),
        resistor("a d", 18.0),
        resistor("c d", 6.0),
        resistor("c 0", 18.0),
        resistor("d 0", 12.0),
    )
    assert found["c"] == pytest.approx(5.294, abs=5e-4)
    assert found["d"] == pytest.approx(4.706, abs=5e-4)


def test_a_balanced_bridge_has_nothing_across():
    found = solve(
        source("b", "a 0", 6.0),
        resistor("a c", 100.0),
        resistor("a d", 1000.0),
        resistor("c d", 0.001),
        resistor("c 0", 250.0),
        resistor("d 0", 2500.0),
    )
    assert found["c"] == pytest.approx(6.0 * 250.0 / 350.0, abs=1e-6)
    assert found["c"] - found["d"] == pytest.approx(0.0, abs=1e-9)


@pytest.mark.parametrize(("ohm", "volts"), [(np.inf, 12.0), (10e3, 0.8889), (10e6, 11.8519)])
def test_what_a_voltmeter_does_to_the_circuit(ohm, volts):
    found = solve(
        source("b", "a 0", 24.0), resistor("a c", 250e3), resistor("c 0", 250e3), meter=("c", ohm)
    )
    # The insulation's 10 GΩ, which no book has, take 0.15 mV.
    assert found["c"] == pytest.approx(volts, abs=2.5e-4)


def test_a_ladder_of_equal_resistors():
    # Ten of 1 Ω ahead, each with 1 Ω to the reference: from the far end 1, 2, 5, 13 ... of F(21).
    rungs = [resistor(f"n{at} n{at + 1}", 1.0) for at in range(10)]
    feet = [resistor(f"n{at + 1} 0", 1.0) for at in range(10)]
    fibonacci = [1, 1]
    while len(fibonacci) < 21:
        fibonacci.append(fibonacci[-1] + fibonacci[-2])
    found = solve(source("b", "n0 0", float(fibonacci[-1])), *rungs, *feet)
    wanted = fibonacci[::2]
    assert [found[f"n{10 - at}"] for at in range(11)] == pytest.approx(wanted, rel=1e-5)


def test_a_transistor_to_be_designed():
    found = solve(
        source("vdd", "vdd 0", 2.5),
        source("vss", "0 vss", 2.5),
        resistor("vdd drain", 5e3),
        resistor("source vss", 3.25e3),
        resistor("gate 0", 1.0),
        element("stage", "transistor", "drain source gate", gain_a_per_v2=3.2e-3, threshold_v=0.7),
    )
    assert found["source"] == pytest.approx(-1.2, abs=1e-4)
    assert found["drain"] == pytest.approx(0.5, abs=1e-4)
    assert (2.5 - found["drain"]) / 5e3 == pytest.approx(0.4e-3, rel=1e-4)


def test_a_transistor_to_be_analysed():
    found = solve(
        source("vdd", "vdd 0", 10.0),
        resistor("vdd gate", 10e6),
        resistor("gate 0", 10e6),
        resistor("vdd drain", 6e3),
        resistor("source 0", 6e3),
        element("stage", "transistor", "drain source gate", gain_a_per_v2=1e-3, threshold_v=1.0),
    )
    # The insulation's 10 GΩ pull the gate down by 2.5 mV behind 5 MΩ.
    assert found["gate"] == pytest.approx(5.0, abs=3e-3)
    assert found["source"] == pytest.approx(3.0, abs=3e-3)
    assert found["drain"] == pytest.approx(7.0, abs=3e-3)
