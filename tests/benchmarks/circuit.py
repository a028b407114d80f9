"""Figures of the circuit layer."""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path

from figure import Figure

RUNS = 36
_SCORE = Path(__file__).parent / "circuits" / "run.py"
_MOST_MS = 100


def proposals() -> Figure:
    """How long the next test takes to be proposed, in drawn checks of every shipped circuit."""
    words = ["--runs", str(RUNS), "--seed", "11", "--draw", "odds", "--no-bound"]
    ran = subprocess.run(
        [sys.executable, str(_SCORE), *words], check=True, capture_output=True, text=True
    )
    found = re.search(r"proposals within 100 ms .*?([\d.]+)% \(slowest (\d+) ms\)", ran.stdout)
    if found is None:
        raise RuntimeError("the score names no slowest proposal")
    return Figure(
        "circuit",
        f"next-test proposal, {RUNS} checks of all circuits, the slowest",
        f"{found[2]} ms ({found[1]} % within {_MOST_MS})",
        "-",
        None,
        f"<= {_MOST_MS} ms",
        int(found[2]) <= _MOST_MS,
    )


FIGURES = (proposals,)
