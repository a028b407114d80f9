"""Cells of severity: they tile the range, and readings are straight within each."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.circuit.figures import healthy_figures, set_fault, set_state
from meterlog.circuit.network import Network
from meterlog.circuit.severity_cells import METER_U, cells_of
from meterlog.model.circuit import PointKind
from meterlog.model.circuit_check import CircuitState


def _cells_by_hypothesis(cells):
    for number, item in enumerate(cells.hypotheses):
        yield item, np.flatnonzero(cells.hypothesis == number)


def test_neighbouring_cells_join_from_least_to_most(predictions, small):
    looked_at = 0
    for item, own in _cells_by_hypothesis(predictions.cells):
        if len(item.faults) != 1 or np.isnan(predictions.cells.severity[own[0], 0]):
            continue
        middle = np.log(predictions.cells.severity[own, 0])
        half = predictions.cells.half_width[own]
        np.testing.assert_allclose((middle + half)[:-1], (middle - half)[1:], atol=1e-9)
        element, mode = item.faults[0]
        fault = next(f for f in small.element(element).faults if f.mode is mode)
        assert np.exp(middle[0] - half[0]) == pytest.approx(fault.least)
        assert np.exp(middle[-1] + half[-1]) == pytest.approx(fault.most)
        looked_at += 1
    assert looked_at >= 8


def test_the_prior_is_even_in_the_logarithm_of_the_severity(predictions):
    cells = predictions.cells
    assert np.exp(cells.log_prior).sum() == pytest.approx(1.0, abs=1e-12)
    for item, own in _cells_by_hypothesis(cells):
        share = np.exp(cells.log_prior[own])
        assert share.sum() == pytest.approx(item.prior)
        for width in (cells.half_width[own], cells.second_half_width[own]):
            if len(item.faults) == 1 and width.any():
                np.testing.assert_allclose(share / share.sum(), width / width.sum(), rtol=1e-9)


def test_a_fault_that_comes_and_goes_has_the_rows_of_the_one_that_stays(predictions):
    cells = predictions.cells
    rows = {}
    for item, own in _cells_by_hypothesis(cells):
        rows.setdefault(item.faults, []).append(tuple(cells.row[own]))
    assert rows[()] == [(0,)]
    assert all(len(set(each)) == 1 for each in rows.values())
    assert sorted(r for each in rows.values() for r in each[0]) == list(range(cells.rows))


def test_pairs_have_every_severity_of_one_with_every_one_of_the_other(predictions):
    cells = predictions.cells
    own = next(o for item, o in _cells_by_hypothesis(cells) if item.words == "a hot plug")
    first, second = cells.severity[own].T
    assert len(own) == len(set(first.round(6))) * len(set(second.round(6)))
    assert (cells.half_width[own] > 0).all()
    assert (cells.second_half_width[own] > 0).all()


def test_the_same_circuit_gives_the_same_cells(predictions, small):
    again = cells_of(Network(small))
    np.testing.assert_array_equal(again.severity, predictions.cells.severity)
    np.testing.assert_array_equal(again.row, predictions.cells.row)


def test_there_are_few_rows(predictions):
    assert predictions.cells.rows <= 400


def test_the_slope_is_that_of_a_severity_spread_evenly_in_its_cell(predictions, small, row_of):
    cells, network = predictions.cells, predictions.network
    row = row_of("joint", "resistive", 0.3)
    cell = int(np.flatnonzero(cells.row == row)[0])
    state = CircuitState("on", 2)
    figures = np.tile(healthy_figures(small, network.index), (2, 1))
    for at, sign in enumerate((-1.0, 1.0)):
        severity = float(cells.severity[cell, 0] * np.exp(sign * 0.1 * cells.half_width[cell]))
        mode = cells.hypotheses[cells.hypothesis[cell]].faults[0][1]
        rows = slice(at, at + 1)
        set_fault(network.index, figures, small.element("joint"), mode, severity, rows)
    volts = network.solve(set_state(small, network.index, figures, state)).volts
    low, high = volts[:, network.node_column["source"]]
    # A tenth of the half width is a tenth of sqrt(3) standard deviations (JCGM 100:2008, 4.3.7).
    told = predictions.at(state, np.inf).slopes[row, predictions.points.index("source"), -1]
    assert told == pytest.approx((high - low) / 0.2 / np.sqrt(3.0), rel=0.01)
    assert told > 0.02


@settings(max_examples=25, deadline=None)
@given(data=st.data())
def test_readings_are_straight_within_a_cell(predictions, small, data):
    cells, network = predictions.cells, predictions.network
    bounded = [
        c for c in range(len(cells.row)) if cells.half_width[c] and not cells.second_half_width[c]
    ]
    cell = data.draw(st.sampled_from(bounded))
    place = data.draw(st.floats(-1.0, 1.0))
    state = CircuitState("on", data.draw(st.sampled_from(small.speeds)))
    ((element, mode),) = cells.hypotheses[cells.hypothesis[cell]].faults
    figures = healthy_figures(small, network.index)[None]
    severity = cells.severity[cell, 0] * np.exp(place * cells.half_width[cell])
    set_fault(network.index, figures, small.element(element), mode, float(severity))
    volts = network.solve(set_state(small, network.index, figures, state)).volts[0]
    told = predictions.at(state, np.inf)
    row = cells.row[cell]
    for at, point in enumerate(small.points):
        if point.kind is PointKind.CURRENT:
            continue
        ends = network.columns(point.nodes)
        truth = volts[ends[0]] - (volts[ends[1]] if len(ends) > 1 else 0.0)
        line = told.mean[row, at] + told.slopes[row, at, -1] * np.sqrt(3.0) * place
        # A step of a relay, or a motor that stops, lies somewhere in a cell of the shortest width.
        if cells.half_width[cell] > 0.13:
            assert abs(truth - line) <= 4.0 * (METER_U[0] + METER_U[1] * abs(truth))
