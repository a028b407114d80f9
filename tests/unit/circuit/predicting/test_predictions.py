"""What every test point shows: against full solutions with figures drawn at random."""

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from meterlog.circuit.element_currents import motor
from meterlog.circuit.expectations import expected_in
from meterlog.circuit.figures import healthy_figures, set_fault, set_state
from meterlog.circuit.network import Network
from meterlog.circuit.predictions import FLOATS, Predictions
from meterlog.model.circuit import PointKind
from meterlog.model.circuit_check import METER_OHM, CircuitState
from meterlog.model.element_kinds import OPEN_OHM
from meterlog.profile.catalogue import load_circuit, shipped_folder

STATES = (
    CircuitState("on", 0),
    CircuitState("on", 1),
    CircuitState("on", 2),
    CircuitState("engine", 2),
    CircuitState("off", 0),
    CircuitState("on", 2, unplugged=frozenset({"motor"})),
    CircuitState("on", 2, pulled=frozenset({"fuse"})),
    CircuitState("on", 1, jumpers=frozenset({("minus", "return")})),
)


def _solved(circuit, faults, severities, state, point=None, meter_ohm=METER_OHM):
    """What a point shows, by solving the circuit itself with the meter in it."""
    network = Network(circuit)
    figures = healthy_figures(circuit, network.index)[None]
    for (element, mode), severity in zip(faults, severities, strict=False):
        value = None if np.isnan(severity) else float(severity)
        set_fault(network.index, figures, circuit.element(element), mode, value)
    figures = set_state(circuit, network.index, figures, state)
    if point.kind is PointKind.CURRENT:
        volts = network.solve(figures, state.jumpers).volts
        first, second = network.columns(circuit.element(point.element).nodes)
        own = {n: figures[:, c] for n, c in network.index.of(point.element).items()}
        if point.element == "motor":
            return motor(own, [volts[:, first], volts[:, second]])[0].amps[0]
        return ((volts[:, first] - volts[:, second] - own["emf_v"]) / own["ohm"])[0]
    ends = (*network.columns(point.nodes), 0)[:2]
    loads = tuple(np.array([end]) for end in ends)
    volts = network.solve(figures, state.jumpers, (*loads, np.array([meter_ohm]))).volts[0]
    return volts[ends[0]] - volts[ends[1]]


def _faults_of(predictions, row):
    cells = predictions.cells
    cell = int(np.flatnonzero(cells.row == row)[0])
    return cells.hypotheses[cells.hypothesis[cell]].faults, cells.severity[cell]


@pytest.mark.parametrize("state", STATES, ids=str)
def test_the_first_row_is_the_circuit_in_order(predictions, small, state):
    told = predictions.at(state)
    assert told.settled.all()
    for at, point in enumerate(small.points):
        truth = _solved(small, (), (), state, point)
        assert told.mean[predictions.healthy_row, at] == pytest.approx(truth, abs=1e-4)


@settings(max_examples=40, deadline=None)
@given(data=st.data())
def test_every_row_is_the_full_solution_with_the_meter_in_it(predictions, small, data):
    state = data.draw(st.sampled_from(STATES))
    row = data.draw(st.integers(0, predictions.cells.rows - 1))
    at = data.draw(st.integers(0, len(small.points) - 1))
    meter_ohm = data.draw(st.sampled_from([1e6, METER_OHM]))
    truth = _solved(small, *_faults_of(predictions, row), state, small.points[at], meter_ohm)
    told = predictions.at(state, meter_ohm)
    if told.left[row, at] >= FLOATS:
        assert told.mean[row, at] == pytest.approx(truth, abs=5e-3)
        return
    # What the meter's load switches on, as a transistor whose source hangs on its gate, is no part
    # of the prediction; it says no more than that it lies below what stands there without a meter.
    whole = told.mean[row, at] / told.left[row, at]
    assert min(whole, 0.0) - 5e-3 <= truth <= max(whole, 0.0) + 5e-3
    assert told.ghost_sd(row, at) == pytest.approx(0.2 * abs(whole))


@settings(max_examples=60, deadline=None)
@given(data=st.data())
def test_slopes_foretell_a_circuit_with_other_healthy_figures(
    predictions, small, with_figures, data
):
    state = data.draw(st.sampled_from(STATES))
    row = data.draw(st.integers(0, predictions.cells.rows - 1))
    at = data.draw(st.integers(0, len(small.points) - 1))
    count = len(predictions.nuisances)
    off = np.array(data.draw(st.lists(st.floats(-0.2, 0.2), min_size=count, max_size=count)))
    told = predictions.at(state)
    up, down = (
        _solved(
            with_figures(small, predictions.nuisances, sign * off),
            *_faults_of(predictions, row),
            state,
            small.points[at],
        )
        - told.mean[row, at]
        for sign in (1.0, -1.0)
    )
    by = told.slopes[row, at, :count] * off
    # Where a motor just stops or a stage just opens the truth has a corner, which no slope tells.
    assume(abs(up + down) <= 1e-2 + 0.1 * np.abs(by).sum())
    assert abs((up - down) / 2.0 - by.sum()) <= 5e-3 + 0.1 * np.abs(by).sum()


def test_only_the_voltage_in_use_moves_the_readings(predictions):
    names = [(n.element, n.figure) for n in predictions.nuisances]
    standing, charging = names.index(("battery", "emf_v")), names.index(("battery", "charging_v"))
    on, engine = predictions.at(STATES[2]).slopes, predictions.at(STATES[3]).slopes
    at = predictions.points.index("plus")
    assert on[0, at, standing] > 0.1
    assert engine[0, at, charging] > 0.1
    assert not on[0, :, charging].any()
    assert not engine[0, :, standing].any()


def test_a_figure_that_a_fault_replaced_moves_nothing(predictions, row_of):
    names = [(n.element, n.figure) for n in predictions.nuisances]
    row = row_of("motor", "open")
    slopes = predictions.at(STATES[2]).slopes
    assert not slopes[row, :, names.index(("motor", "ohm"))].any()
    stuck = row_of("head", "stuck-drive", 3.0)
    assert slopes[0, :, names.index(("head", "drive_v"))].any()
    assert not slopes[stuck, :, names.index(("head", "drive_v"))].any()


def test_a_meter_reads_a_ghost_where_everything_has_left(predictions):
    at = predictions.points.index("feed")
    told = predictions.at(CircuitState("off", 0))
    bare = predictions.at(CircuitState("off", 0), np.inf)
    assert told.left[0, at] < 0.2
    assert abs(told.mean[0, at]) < abs(bare.mean[0, at])
    assert bare.left.min() == 1.0


def test_row_zero_and_faults_without_a_severity_have_no_severity_slopes(predictions, row_of):
    slopes = predictions.at(STATES[2]).slopes
    for row in (0, row_of("fuse", "open"), row_of("motor", "seized")):
        assert not slopes[row, :, -2:].any()
    assert slopes[row_of("motor", "dragging", 5.0), :, -1].any()


def test_what_was_worked_out_is_kept(predictions):
    predictions.prepare(STATES[:2])
    assert predictions.at(STATES[0]) is predictions.at(STATES[0])
    assert predictions.at(STATES[0]).signs is predictions.at(STATES[0], np.inf).signs


def test_a_second_one_gives_the_same_rows(predictions, small):
    again = Predictions(small).at(STATES[2])
    np.testing.assert_array_equal(again.mean, predictions.at(STATES[2]).mean)
    np.testing.assert_array_equal(again.slopes, predictions.at(STATES[2]).slopes)


def test_a_jumper_at_an_unknown_node_is_refused(predictions):
    with pytest.raises(KeyError, match="nowhere"):
        predictions.at(CircuitState("on", 1, jumpers=frozenset({("minus", "nowhere")})))


@pytest.mark.parametrize("open_ohm", [1e8, 1e10])
def test_ghost_voltages_are_foretold_no_better_than_insulation_is_known(open_ohm):
    circuit = load_circuit(str(shipped_folder() / "circuits" / "resistors-ground-side-24v.toml"))
    off = CircuitState("off", 0)
    predictions = Predictions(circuit)
    told, column = predictions.at(off), predictions.points.index("relay-drop")
    network = Network(circuit, open_ohm)
    figures = set_state(circuit, network.index, healthy_figures(circuit, network.index)[None], off)
    figures[figures == OPEN_OHM] = open_ohm
    ends = network.columns(circuit.point("relay-drop").nodes)
    loads = (np.array(ends[:1]), np.array(ends[1:]), np.array([METER_OHM]))
    volts = network.solve(figures, off.jumpers, loads).volts[0]
    found, mean = volts[ends[0]] - volts[ends[1]], told.mean[0, column]
    known = float((told.slopes[0, column] ** 2).sum())
    ghost = told.ghost_sd(0, column)
    assert abs(found - mean) > 5.0 * np.sqrt(known)
    assert abs(found - mean) < 2.5 * np.sqrt(known + ghost**2)
    band = next(one for one in expected_in(predictions, off) if one.point == "relay-drop")
    assert band.healthy_low < found < band.healthy_high + 0.1
    # A point that something of less than a megohm feeds is known as before.
    fed = predictions.points.index("main-fuse-out")
    assert told.ghost_sd(0, fed) == 0.0


@pytest.mark.parametrize("open_ohm", [3e7, 1e9])
def test_what_a_stage_holds_up_with_microamperes_is_no_more_known_than_a_ghost(open_ohm):
    # The output stage regulates the leakage of an open ground; the meter across it takes that over.
    circuit = load_circuit(str(shipped_folder() / "circuits" / "high-side-linear-24v.toml"))
    low = CircuitState("on", 1)
    predictions = Predictions(circuit)
    told, column = predictions.at(low), predictions.points.index("controller-drop")
    words = "motor's ground wire and joint open"
    cells = predictions.cells
    hypothesis = next(at for at, one in enumerate(cells.hypotheses) if one.words == words)
    row = int(cells.row[np.flatnonzero(cells.hypothesis == hypothesis)[0]])
    network = Network(circuit, open_ohm)
    figures = healthy_figures(circuit, network.index)[None]
    joint = circuit.element("motor-ground-joint")
    set_fault(network.index, figures, joint, joint.faults[0].mode, None)
    figures = set_state(circuit, network.index, figures, low)
    figures[figures == OPEN_OHM] = open_ohm
    ends = network.columns(circuit.point("controller-drop").nodes)
    loads = (np.array(ends[:1]), np.array(ends[1:]), np.array([METER_OHM]))
    volts = network.solve(figures, low.jumpers, loads).volts[0]
    found = volts[ends[0]] - volts[ends[1]]
    assert told.left[row, column] > FLOATS  # by its tangent alone it seems to be held
    assert abs(found - told.mean[row, column]) > 5.0
    assert abs(found - told.mean[row, column]) < 2.0 * told.ghost_sd(row, column)
    assert told.ghost_sd(0, column) == 0.0  # in order it carries amperes
