"""The demo's technician finds the scenario's fault by following what is proposed."""

import pytest

from meterlog.model import Origin
from meterlog.profile import load_circuit
from meterlog.recording import Recording
from meterlog.work.demo import demo_job
from meterlog.work.demo_circuit import CIRCUIT, FAULTS, check_circuit


@pytest.mark.parametrize("scenario", ["dead-spot", "bad-feed-connector", "ground-lost"])
def test_the_unit_with_the_fault_is_told(tmp_path, scenario):
    folder = tmp_path / "circuit"
    judged = check_circuit(scenario, folder, demo_job("x", "y"), seed=3)
    element = load_circuit(CIRCUIT).element(FAULTS[scenario].element)
    assert judged.verdict.settled == element.unit
    assert judged.verdict.next_test is None
    assert len(judged.check.readings) >= 2
    recording = Recording.open(folder)
    assert recording.about.origin is Origin.SIMULATED
    assert recording.state == "sealed"
    assert all("simulated" in reading.source for reading in judged.check.readings)


def test_equal_seeds_give_equal_checks(tmp_path):
    made = [check_circuit("seized", tmp_path / name, demo_job("x", "y"), 5) for name in "ab"]
    first, second = ([(one.point, one.value) for one in judged.check.readings] for judged in made)
    assert first == second


def test_a_sound_circuit_is_not_checked(tmp_path):
    assert check_circuit("healthy-new", tmp_path / "x", demo_job("x", "y"), 1) is None
    assert not (tmp_path / "x").exists()


def test_every_fault_is_one_of_the_circuit():
    circuit = load_circuit(CIRCUIT)
    for fault in FAULTS.values():
        known = {one.mode: one for one in circuit.element(fault.element).faults}
        assert fault.mode in known
        bounds = known[fault.mode]
        if fault.severity is not None:
            assert bounds.least <= fault.severity <= bounds.most
