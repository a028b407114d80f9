"""The nodal solver against ngspice, on every shipped circuit.

Source: ngspice (Debian package ``ngspice``, a circuit simulator of its own), operating points in
batch mode: its resistors, sources, level 1 transistor (Shichman and Hodges) and behavioural
sources, from netlists written from the profile alone (``ngspice_netlist.py``). Here faults and
states drawn by chance; all faults in all states: ``python tests/benchmarks/referee.py``.
"""

import shutil
import sys
from pathlib import Path

import numpy as np
import pytest

sys.path.insert(0, str(Path(__file__).parent))

from nodal_cases import WITHIN_V, compared, drawn_cases

from meterlog.profile import load_circuit, names

CASES = 30
UNFOUND = 0.1
"""ngspice finds no operating point for some steep cases of the high-side controllers."""
pytestmark = pytest.mark.skipif(
    shutil.which("ngspice") is None, reason="ngspice is not installed: make setup does it"
)


@pytest.mark.parametrize("name", sorted(names("circuits")))
def test_every_node_is_within_a_millivolt_of_ngspice(name, tmp_path):
    circuit = load_circuit(name)
    drawn = drawn_cases(circuit, 300, seed=len(name))
    made = compared(circuit, drawn[:: len(drawn) // CASES], tmp_path)
    assert made.settled.all()
    found = ~np.isnan(made.theirs).any(axis=1)
    assert found.mean() > 1.0 - UNFOUND
    off = np.flatnonzero(found & (made.apart > WITHIN_V))
    assert not len(off), made.told(circuit, off)
    # From a cold start, but for the few that a simulator can't find so.
    assert made.guessed.mean() < 0.1
