"""The nodal solver against ngspice: every shipped circuit, every fault, every state, and meters.

``python tests/benchmarks/referee.py [NAME ...]``; takes some minutes. Source: see
``tests/reference/test_nodal_ngspice.py``.
"""

import sys
import tempfile
import time
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "reference"))

from nodal_cases import WITHIN_V, all_cases, compared

from meterlog.profile import load_circuit, names


def main():
    """Compare, and print a line a circuit."""
    total = worst = apart = 0
    for name in sys.argv[1:] or sorted(names("circuits")):
        circuit = load_circuit(name)
        cases = all_cases(circuit)
        began = time.monotonic()
        with tempfile.TemporaryDirectory() as folder:
            made = compared(circuit, cases, Path(folder))
        unfound = int(np.isnan(made.apart).sum())
        off = np.flatnonzero((made.apart > WITHIN_V) | ~made.settled)
        largest = float(np.nanmax(made.apart))
        print(
            f"{name:30} {len(cases):6} cases, largest difference {largest * 1e6:8.2f} µV, "
            f"{len(off)} apart or without an end, {unfound} not found by ngspice, "
            f"{int(made.guessed.sum())} only from a guess, "
            f"{time.monotonic() - began:.0f} s",
            flush=True,
        )
        if len(off):
            print(made.told(circuit, off[:5]))
        total, apart, worst = total + len(cases), apart + len(off), max(worst, largest)
    print(f"{total} cases, {apart} apart, largest difference {worst * 1e3:.4f} mV")
    return 1 if apart else 0


if __name__ == "__main__":
    sys.exit(main())
