"""Figure of the senses that ends at the eye: from a meter's line to the painted trace."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

from figure import Figure

_CHILD = Path(__file__).with_name("painting.py")


def to_the_eye() -> Figure:
    """A line leaves the meter; the trace that shows it has been painted."""
    ran = subprocess.run(
        [sys.executable, str(_CHILD)],
        check=True,
        env={**os.environ, "QT_QPA_PLATFORM": "offscreen"},
        capture_output=True,
        text=True,
    )
    count, median, p95 = (float(word) for word in ran.stdout.split())
    if count < 300:
        raise RuntimeError(f"only {count:g} of 300 readings were seen")
    return Figure(
        "senses",
        "reading leaves the meter -> painted, p95",
        f"{p95:.0f} ms (median {median:.0f} ms)",
        "60 Hz frame 16.7 ms",
        p95 / (1000.0 / 60.0),
        "<= 50 ms",
        p95 <= 50.0,
    )


FIGURES = (to_the_eye,)
