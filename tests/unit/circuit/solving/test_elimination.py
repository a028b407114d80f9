"""Elimination: the same voltages as all equations at once, with every digit kept."""

from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.circuit.elimination import Elimination, conductances, edge_between


def dense(nodes, between, leak):
    """Conductance matrix of one circuit, without the reference node."""
    matrix = np.diag(leak[1:nodes].astype(float))
    for (first, second), siemens in between.items():
        a, b = first - 1, second - 1
        matrix[a, a] += siemens
        matrix[b, b] += siemens
        matrix[a, b] -= siemens
        matrix[b, a] -= siemens
    return matrix


def exact(nodes, between, leak, driven):
    """Voltages in fractions, by Gauss and Jordan."""
    size = nodes - 1
    rows = [[Fraction(0)] * size + [Fraction(float(driven[at + 1]))] for at in range(size)]
    for at in range(size):
        rows[at][at] += Fraction(float(leak[at + 1]))
    for (first, second), siemens in between.items():
        a, b, by = first - 1, second - 1, Fraction(float(siemens))
        rows[a][a] += by
        rows[b][b] += by
        rows[a][b] -= by
        rows[b][a] -= by
    for at in range(size):
        rows[at] = [each / rows[at][at] for each in rows[at]]
        for other in range(size):
            if other != at and rows[other][at]:
                by = rows[other][at]
                rows[other] = [x - by * y for x, y in zip(rows[other], rows[at], strict=True)]
    return np.array([0.0, *(float(row[-1]) for row in rows)])


def solved(nodes, between, leak, driven, kept=()):
    """Voltages by way of the reduced network, whose own equations are solved as they stand."""
    plan = Elimination(nodes, between, kept)
    reduced = plan.reduce(between, leak, driven)
    volts = np.zeros((nodes, leak.shape[1]))
    for row in range(leak.shape[1]):
        mine = {edge: siemens[row] for edge, siemens in reduced.between.items()}
        matrix = dense(nodes, mine, reduced.to_reference[:, row])
        at = np.array(plan.kept, dtype=int) - 1
        if len(at):
            volts[at + 1, row] = np.linalg.solve(
                matrix[np.ix_(at, at)], reduced.driven[at + 1, row]
            )
    plan.fill(reduced, volts)
    return volts


@st.composite
def networks(draw, decades=2):
    """Conductances drawn over decades, two circuits of one shape; and which nodes to keep."""
    nodes = draw(st.integers(2, 8))
    pairs = [(a, b) for a in range(1, nodes) for b in range(a + 1, nodes)]
    chosen = draw(st.lists(st.sampled_from(pairs), unique=True)) if pairs else []
    dice = np.random.default_rng(draw(st.integers(0, 2**32 - 1)))
    between = {pair: 10.0 ** dice.uniform(-decades, decades, 2) for pair in chosen}
    leak = 10.0 ** dice.uniform(-decades, decades, (nodes, 2))
    kept = draw(st.sets(st.integers(1, nodes - 1)))
    return nodes, between, leak, dice.uniform(-5.0, 5.0, (nodes, 2)), kept


@given(networks())
def test_the_voltages_are_those_of_all_equations_at_once(network):
    nodes, between, leak, driven, kept = network
    volts = solved(nodes, between, leak, driven, kept)
    for row in range(2):
        matrix = dense(nodes, {e: s[row] for e, s in between.items()}, leak[:, row])
        wanted = np.linalg.solve(matrix, driven[1:, row])
        np.testing.assert_allclose(volts[1:, row], wanted, rtol=1e-9, atol=1e-9)


@given(networks())
def test_what_is_left_is_the_schur_complement(network):
    nodes, between, leak, driven, kept = network
    reduced = Elimination(nodes, between, kept).reduce(between, leak, driven)
    matrix = dense(nodes, {e: s[0] for e, s in between.items()}, leak[:, 0])
    here = np.array(sorted(kept), dtype=int) - 1
    gone = np.setdiff1d(np.arange(nodes - 1), here)
    across = np.linalg.solve(matrix[np.ix_(gone, gone)], matrix[np.ix_(gone, here)])
    wanted = matrix[np.ix_(here, here)] - matrix[np.ix_(here, gone)] @ across
    left = dense(nodes, {e: s[0] for e, s in reduced.between.items()}, reduced.to_reference[:, 0])
    np.testing.assert_allclose(left[np.ix_(here, here)], wanted, rtol=1e-9, atol=1e-9)
    assert all(set(edge) <= kept for edge in reduced.between)


@given(networks(decades=9))
def test_no_digit_is_lost_between_milliohms_and_gigaohms(network):
    # All drives of one sign: then nothing is ever subtracted, and each step rounds once.
    nodes, between, leak, driven, _ = network
    driven = np.abs(driven) + 0.1
    volts = solved(nodes, between, leak, driven)
    for row in range(2):
        mine = {edge: siemens[row] for edge, siemens in between.items()}
        wanted = exact(nodes, mine, leak[:, row], driven[:, row])
        np.testing.assert_allclose(volts[1:, row], wanted[1:], rtol=1e-13)


def test_a_chain_on_one_gigaohm_keeps_its_digits_where_a_matrix_does_not():
    # 1 A into the far end of nine wires of 0.1 mΩ whose near end hangs on 1 GΩ alone.
    between = {(at, at + 1): np.array([1e4]) for at in range(1, 10)}
    leak, driven = np.zeros((11, 1)), np.zeros((11, 1))
    leak[1] = 1e-9
    driven[10] = 1e-8
    wanted = exact(11, {e: s[0] for e, s in between.items()}, leak[:, 0], driven[:, 0])
    np.testing.assert_allclose(solved(11, between, leak, driven)[:, 0], wanted, rtol=1e-13)
    matrix = dense(11, {e: s[0] for e, s in between.items()}, leak[:, 0])
    assert np.abs(np.linalg.solve(matrix, driven[1:, 0]) / wanted[1:] - 1.0).max() > 1e-6


@given(networks(decades=6))
def test_a_circuit_does_not_depend_on_those_beside_it(network):
    nodes, between, leak, driven, _ = network
    both = solved(nodes, between, leak, driven)
    alone = solved(nodes, {e: s[1:] for e, s in between.items()}, leak[:, 1:], driven[:, 1:])
    np.testing.assert_array_equal(both[:, 1:], alone)


def test_a_node_that_nothing_touches_has_the_voltage_of_its_leak():
    leak, driven = np.full((3, 1), 0.5), np.array([[0.0], [2.0], [0.0]])
    np.testing.assert_allclose(solved(3, {}, leak, driven)[:, 0], [0.0, 4.0, 0.0])


def test_nothing_is_taken_out_where_all_are_kept():
    plan = Elimination(4, [(1, 2), (2, 3)], [3, 1, 2])
    assert plan.kept == (1, 2, 3)
    assert plan.steps == []


def test_the_node_of_fewest_neighbours_goes_first():
    star = [(1, 2), (1, 3), (1, 4), (1, 5)]
    assert [node for node, _ in Elimination(6, star, []).steps][:3] == [2, 3, 4]


def test_parallel_elements_add_up():
    siemens = np.array([[1.0], [2.0], [4.0], [8.0], [16.0]])
    ends = [(1, 2), (2, 1), (0, 2), (1, 0), (2, 2)]
    between, to_reference = conductances(3, ends, siemens, leak=0.5)
    assert list(between) == [(1, 2)]
    assert between[1, 2] == pytest.approx(3.0)
    np.testing.assert_allclose(to_reference[:, 0], [0.5, 8.5, 4.5])


@pytest.mark.parametrize(
    ("ends", "edge"), [((3, 1), (1, 3)), ((1, 3), (1, 3)), ((0, 2), None), ((2, 2), None)]
)
def test_an_edge_is_named_by_its_lower_node(ends, edge):
    assert edge_between(*ends) == edge
