"""How well bars are told: ``python tests/benchmarks/bars.py [runs] [first]``.

1,000 of each kind by default, numbered from 800,000 on: not the motors on which the detector was
made (some of those below 750,000). Seeded; the motors are drawn by ``bar_score.drawn_motor`` and
know nothing of the detector.
"""

from __future__ import annotations

import sys
from itertools import pairwise

from bar_score import HONEST_RIPPLE, Score, score

FIRST = 800_000
_EDGES = (0.0, 0.9, 0.95, 0.98, 1.01)


def reliability(stated: list[tuple[float, bool]]) -> list[str]:
    """Give lines that hold stated confidence in the bar count against how often it was right."""
    lines = []
    for low, high in pairwise(_EDGES):
        box = [(said, right) for said, right in stated if low <= said < high]
        if box:
            said = sum(one for one, _ in box) / len(box)
            right = sum(one for _, one in box) / len(box)
            lines.append(f"  confidence {said:.3f}: right {right:.3f} of {len(box)}")
    return lines


def report(healthy: Score, dead: Score) -> list[str]:
    """Give what was scored as lines."""
    part = 100.0 * dead.found_honest / max(dead.honest, 1)
    return [
        f"healthy motors: {healthy.runs}, condemned {healthy.flawed} (0 wanted), refused"
        f" {healthy.refused}, turn right {healthy.turn_right}, turn wrong {healthy.turn_wrong},"
        f" bars right {healthy.counted}, bars wrong {healthy.wrong_count}",
        f"one dead bar: {dead.runs}, found and numbered {dead.found}, refused {dead.refused},"
        f" turn wrong {dead.turn_wrong}, bars wrong {dead.wrong_count}",
        f"  of {dead.honest} with a ripple of {100.0 * HONEST_RIPPLE:g} % or more at the meter:"
        f" {dead.found_honest} ({part:.1f} %, 99 wanted)",
        f"  of all {dead.outright} with the count of bars outright, the others with both counts"
        f" that make as many ripples",
        f"missed: {dead.missed}",
        "confidence in the bars, where a count is given:",
        *reliability([*healthy.stated, *dead.stated]),
    ]


def main(runs: int, first: int) -> int:
    """Print the rates; the code tells whether both are met."""
    numbers = range(first, first + runs)
    healthy, dead = score(numbers, dead=False), score(numbers, dead=True)
    print("\n".join(report(healthy, dead)))
    return 0 if not healthy.flawed and dead.found_honest >= 0.99 * dead.honest else 1


if __name__ == "__main__":
    counts = [int(word) for word in sys.argv[1:]]
    sys.exit(main(*(counts + [1000, FIRST][len(counts) :])))
