"""The wave generator and scorer of the benchmarks, as they know nothing of the detector."""

import importlib
import sys
from pathlib import Path
from types import SimpleNamespace

import pytest

BENCHMARKS = str(Path(__file__).parents[3] / "benchmarks")


@pytest.fixture(scope="session")
def bars():
    sys.path.insert(0, BENCHMARKS)
    try:
        waves = importlib.import_module("bar_waves")
        score = importlib.import_module("bar_score")
    finally:
        sys.path.remove(BENCHMARKS)
    return SimpleNamespace(
        BarMotor=waves.BarMotor,
        bar_wave=waves.bar_wave,
        shown_ripple=waves.shown_ripple,
        drawn_motor=score.drawn_motor,
        watched=score.watched,
        score=score.score,
    )
