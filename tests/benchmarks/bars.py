"""How well bars are told: ``python tests/benchmarks/bars.py [runs]`` (1,000 of each by default).

Seeded; the motors are drawn by ``bar_score.drawn_motor`` and know nothing of the detector.
"""

from __future__ import annotations

import sys

from bar_score import score


def main(runs: int) -> int:
    """Print the two rates; the code tells whether both are met."""
    healthy = score(range(runs), dead=False)
    dead = score(range(runs), dead=True)
    print(f"healthy motors: {runs}, condemned {healthy.flawed} (0 wanted),"
          f" refused {healthy.refused}, bars right {healthy.counted},"
          f" bars wrong {healthy.wrong_count}")  # fmt: skip
    print(f"one dead bar:   {runs}, found and numbered {dead.found}"
          f" ({100.0 * dead.found / runs:.1f} %, 99 wanted), refused {dead.refused},"
          f" bars wrong {dead.wrong_count}")  # fmt: skip
    print(f"  of these {dead.outright} with the count of bars outright, the others with the right"
          f" one named as not ruled out")  # fmt: skip
    print(f"missed: {dead.missed}")
    return 0 if not healthy.flawed and dead.found >= 0.99 * runs else 1


if __name__ == "__main__":
    sys.exit(main(int(sys.argv[1]) if len(sys.argv) > 1 else 1000))
