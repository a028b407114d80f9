"""A circuit check in a real second process, killed: what was entered is there."""

import subprocess
import sys
from itertools import islice

import pytest

from meterlog.evidence.verify import verify_folder
from meterlog.recording import Recording, find_unsealed, seal
from meterlog.work.circuit_checks import circuit_checks, circuit_of

CHILD = """
import sys
from pathlib import Path
from meterlog.model import CircuitState
from meterlog.profile import load_circuit
from meterlog.work.circuit_log import CircuitLog

log = CircuitLog(lambda: Path(sys.argv[1]))
log.choose(load_circuit("low-side-linear-12v"))
for at in range(100_000):
    log.read("motor-feed", 12.0 + at / 1000, CircuitState("on", 4), 0.02)
    print(at, flush=True)
"""


@pytest.mark.kill
def test_killed_it_has_kept_every_entry_that_it_said_it_had(tmp_path):
    folder = tmp_path / "check"
    child = subprocess.Popen(
        [sys.executable, "-c", CHILD, str(folder)], stdout=subprocess.PIPE, text=True
    )
    try:
        told = [int(line) for line in islice(child.stdout, 25)]
    finally:
        child.kill()
        child.wait(20)
        child.stdout.close()
    assert told == list(range(25))
    (check,), _ = circuit_checks(Recording.open(folder))
    values = [reading.value for reading in check.readings]
    assert len(values) >= 25
    assert values == [12.0 + at / 1000 for at in range(len(values))]
    assert circuit_of(check).name == "low-side-linear-12v"
    assert find_unsealed(tmp_path) == (folder,)
    seal(folder, recovered=True)
    assert verify_folder(folder).intact
    assert Recording.open(folder).state == "recovered"
