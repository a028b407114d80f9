"""Port Newton: what is not linear, on ports that hang on a few conductances."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.circuit import port_newton
from meterlog.circuit.element_currents import LAWS
from meterlog.circuit.port_newton import Bent, PortNetwork, port_volts
from meterlog.model.circuit import ElementKind

MOTOR = (0.2, 0.7, 0.15)
"""ohm, no_load_a, fan_a_per_v2."""
HEAD = (100.0, 6.0, 1.0, 0.0, 10.0, 20.0)
"""ohm, drive_v, closed_loop, least_v, most_v, loop_gain."""


def motor_behind(siemens, emf):
    """A motor between port 1 and the reference, fed with emf volts through siemens."""
    count = len(siemens)
    columns = {"ohm": 0, "no_load_a": 1, "fan_a_per_v2": 2}
    bent = (Bent(LAWS[ElementKind.MOTOR], columns, (1, 0)),)
    return PortNetwork(
        ports=(1,),
        edges=(),
        between=np.zeros((0, count)),
        leak=siemens[None],
        driven=(siemens * emf)[None],
        bent=bent,
        figures=np.tile(MOTOR, (count, 1)),
        gains=(),
    )


def loop(count, feed_v=12.0):
    """A head with sense drives the gate of a stage that pulls down what it senses.

    Ports: 1 the sensed return, fed with feed_v through 1 Ω; 2 the gate.
    """
    names = ("ohm", "drive_v", "closed_loop", "least_v", "most_v", "loop_gain")
    head = {name: at for at, name in enumerate(names)}
    stage = {"gain_a_per_v2": 6, "threshold_v": 7}
    leak = np.array([np.full(count, 1.0), np.full(count, 1e-9)])
    driven = np.array([np.full(count, feed_v), np.zeros(count)])
    return PortNetwork(
        ports=(1, 2),
        edges=((1, 2),),
        between=np.full((1, count), 1e-9),
        leak=leak,
        driven=driven,
        bent=(
            Bent(LAWS[ElementKind.HEAD], head, (2, 0, 1)),
            Bent(LAWS[ElementKind.TRANSISTOR], stage, (1, 0, 2)),
        ),
        figures=np.tile((*HEAD, 15.0, 2.0), (count, 1)),
        gains=(5,),
    )


@given(
    st.lists(st.tuples(st.floats(1e-6, 1e4), st.floats(-15.0, 15.0)), min_size=1, max_size=6),
    st.floats(-20.0, 20.0),
)
def test_a_motor_behind_a_resistance_by_its_own_equations(drawn, start):
    siemens, emf = (np.array(each) for each in zip(*drawn, strict=True))
    volts, settled = port_volts(motor_behind(siemens, emf), np.full((1, len(emf)), start))
    assert settled.all()
    ohm, idle, fan = MOTOR
    for found, each, source in zip(volts[0], siemens, emf, strict=True):
        # Over all ohms in series: c R E² + E + I0 R = V, or below it by Ohm's law.
        total = ohm + 1.0 / each
        size = abs(source)
        back = 0.0
        if size > idle * total:
            over = size - idle * total
            back = 2.0 * over / (1.0 + np.sqrt(1.0 + 4.0 * fan * total * over))
        current = np.sign(source) * (size - back) / total
        assert found == pytest.approx(source - current / each, abs=1e-6)


@pytest.mark.parametrize("start", [0.0, 12.0, -50.0])
def test_a_loop_of_high_gain_comes_to_rest_where_its_currents_balance(start):
    network = loop(3)
    volts, settled = port_volts(network, np.full((2, 3), start))
    assert settled.all()
    out, _ = network.out(volts, [None, None])
    assert np.abs(out).max() < 1e-8
    sensed, gate = volts[:, 0]
    # The gate has what the logistic asks for; the stage takes what the feed gives.
    asked = 10.0 / (1.0 + np.exp(-8.0 * (sensed - 6.0)))
    assert gate == pytest.approx(asked, abs=1e-4)
    assert 15.0 / 2.0 * (gate - 2.0) ** 2 == pytest.approx(12.0 - sensed, abs=1e-5)
    assert sensed == pytest.approx(6.0, abs=0.2)


def test_where_it_starts_does_not_decide_where_it_ends():
    dice = np.random.default_rng(5)
    network = loop(40)
    volts, settled = port_volts(network, dice.uniform(-10.0, 20.0, (2, 40)))
    assert settled.all()
    assert np.ptp(volts, axis=1).max() < 1e-5


def test_a_part_is_those_rows_alone():
    network = motor_behind(np.array([1.0, 2.0, 4.0]), np.array([6.0, 9.0, 12.0]))
    rows = np.array([2, 0])
    part, all_volts = network.part(rows), port_volts(network, np.zeros((1, 3)))[0]
    np.testing.assert_allclose(port_volts(part, np.zeros((1, 2)))[0], all_volts[:, rows], atol=1e-9)
    np.testing.assert_array_equal(part.driven, [[48.0, 6.0]])


def test_scaled_turns_down_gains_and_sources_and_nothing_else():
    network = loop(2)
    scaled = network.scaled(0.1, 0.5)
    np.testing.assert_allclose(scaled.driven, 0.5 * network.driven)
    np.testing.assert_allclose(scaled.figures[:, 5], 2.0)
    others = [0, 1, 2, 3, 4, 6, 7]
    np.testing.assert_array_equal(scaled.figures[:, others], network.figures[:, others])
    assert network.figures[0, 5] == 20.0


def test_the_slopes_of_the_whole_are_those_of_finite_differences():
    network = loop(1)
    at = np.array([[6.1], [3.0]])
    _, slope = network.out(at, network.inner(at))
    for port in range(2):
        step = np.zeros((2, 1))
        step[port] = 1e-6
        more, less = (network.out(at + s, [None, None])[0][:, 0] for s in (step, -step))
        np.testing.assert_allclose(slope[0, :, port], (more - less) / 2e-6, rtol=1e-5, atol=1e-9)


def test_what_has_no_end_is_said_to_have_none():
    # A figure that is no number, beside a sound row.
    network = motor_behind(np.array([1.0, 1.0]), np.array([12.0, np.nan]))
    volts, settled = port_volts(network, np.zeros((1, 2)))
    assert settled.tolist() == [True, False]
    assert np.isfinite(volts[0, 0])


def test_what_was_stopped_on_its_way_is_not_settled(monkeypatch):
    monkeypatch.setattr(port_newton, "_TURNS", 1)
    monkeypatch.setattr(port_newton, "_RUN_TURNS", 5)
    monkeypatch.setattr(port_newton, "_STAGES", ())
    network, start = loop(1), np.zeros((2, 1))
    assert not port_volts(network, start)[1].any()
    monkeypatch.setattr(port_newton, "_RUN_TURNS", 600)
    volts, settled = port_volts(network, start)  # the running down alone gets there
    assert settled.all()
    assert np.abs(network.out(volts, [None, None])[0]).max() < 1e-6


@pytest.mark.parametrize("stages", range(len(port_newton._STAGES)))
def test_each_way_of_leading_a_row_gets_there_alone(monkeypatch, stages):
    def no_run(network, start):
        return start, np.zeros(start.shape[1], np.bool_)

    wanted, _ = port_volts(loop(1), np.full((2, 1), 3.0))
    turns, newton = [], port_newton._newton

    def first_lost(network, start):
        turns.append(network)
        volts, settled = newton(network, start)
        return (start, np.zeros_like(settled)) if len(turns) == 1 else (volts, settled)

    monkeypatch.setattr(port_newton, "_run_down", no_run)
    monkeypatch.setattr(port_newton, "_newton", first_lost)
    monkeypatch.setattr(port_newton, "_STAGES", (port_newton._STAGES[stages],))
    volts, settled = port_volts(loop(1), np.zeros((2, 1)))
    assert settled.all()
    assert len(turns) == 1 + len(port_newton._STAGES[0])
    np.testing.assert_allclose(volts, wanted, atol=1e-6)
