import numpy as np
import pytest

from meterlog.instruments.virtual import simulate
from meterlog.instruments.virtual.simulate import _play
from meterlog.model import Flag, Role
from meterlog.profile import load_meter


def test_the_same_seed_gives_the_same_run_to_the_last_digit():
    first = simulate("dead-spot", 3, 9.0)
    _play.cache_clear()
    second = simulate("dead-spot", 3, 9.0)
    assert np.array_equal(first.block.values, second.block.values)
    assert first.truth == second.truth
    assert not np.array_equal(first.block.values, simulate("dead-spot", 4, 9.0).block.values)


def test_times_are_the_middles_of_the_integration():
    block = simulate("healthy-new", 1, 1.0, interval_s=0.1, integration_s=0.04).block
    assert len(block) == 10
    assert block.t_ns[0] == 80_000_000
    assert set(np.diff(block.t_ns)) == {100_000_000}


def test_an_edge_lies_where_the_truth_says_within_one_interval():
    sim = simulate("healthy-new", 1, 4.0, interval_s=0.01, integration_s=0.01)
    rises = sim.block.t_ns[np.argmax(sim.block.values[:, 2] > 1.0)]
    assert rises == pytest.approx(sim.truth[0].end_s * 1e9, abs=10e6)


def test_a_shipped_profile_gives_channels_with_roles_and_the_mark_of_a_simulation():
    sim = simulate("healthy-new", 1, 2.0, load_meter("line-logger"))
    assert [channel.role for channel in sim.instrument.channels] == [
        Role.MOTOR_FEED,
        Role.MOTOR_RETURN,
        Role.MOTOR_CURRENT,
    ]
    assert sim.instrument.simulated
    assert sim.block.source == sim.instrument.key == "line-logger"
    assert not sim.block.flags.any()


def test_overload_is_flagged_and_has_no_number():
    import dataclasses

    meter = load_meter("line-logger")
    sound = simulate("seized", 1, 1.0, meter)
    assert not (sound.block.flags & Flag.OVERLOAD).any()
    doubled = dataclasses.replace(sound.scenario.circuit.wiring, supply_v=70.0)
    circuit = dataclasses.replace(sound.scenario.circuit, wiring=doubled)
    sim = simulate(dataclasses.replace(sound.scenario, circuit=circuit), 1, 1.0, meter)
    assert (sim.block.flags[:, 0] == Flag.OVERLOAD).all()
    assert np.isnan(sim.block.values[:, 0]).all()


def test_a_meter_faster_than_the_models_usual_step_gets_a_finer_model():
    sim = simulate("healthy-new", 1, 0.1, interval_s=1e-4)
    assert len(sim.block) == 1000
