"""Figure: one line of the table of speed figures, and how medians are taken."""

from __future__ import annotations

import statistics
import time
from collections.abc import Callable
from dataclasses import dataclass

REPEATS = 5


@dataclass(frozen=True)
class Figure:
    """One figure.

    ``measured`` and ``reference`` are texts with units; ``ratio`` is what the target bounds;
    ``met`` None means that there is no target.
    """

    area: str
    name: str
    measured: str
    reference: str
    ratio: float | None
    target: str
    met: bool | None


def median_s(work: Callable[[], object], repeats: int = REPEATS) -> float:
    """Give the median wall time of ``work`` in seconds, after one warm-up."""
    work()
    times = []
    for _ in range(repeats):
        start = time.perf_counter()
        work()
        times.append(time.perf_counter() - start)
    return statistics.median(times)


def interleaved_s(
    work: Callable[[], object], reference: Callable[[], object], repeats: int = REPEATS
) -> tuple[float, float]:
    """Give median wall times of two works that take turns, so that both see the same machine."""
    work()
    reference()
    times: tuple[list[float], list[float]] = ([], [])
    for _ in range(repeats):
        for index, task in enumerate((work, reference)):
            start = time.perf_counter()
            task()
            times[index].append(time.perf_counter() - start)
    return statistics.median(times[0]), statistics.median(times[1])


def percentile(values: list[float], part: float) -> float:
    """Give the ``part`` quantile (0 to 1) of at least one value."""
    ordered = sorted(values)
    return ordered[min(len(ordered) - 1, int(part * len(ordered)))]
