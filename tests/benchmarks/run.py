"""Speed figures: ``python tests/benchmarks/run.py [part of a name ...]``.

Each figure is a ratio to a reference measured in the same run, medians of several turns. Machines
differ and are noisy: compare ratios, not times.
"""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator

import circuit
import evidence
import judgement
import memory
import picture
import pixel
import senses
import start
from figure import Figure

ALL = (
    *senses.FIGURES,
    *pixel.FIGURES,
    *memory.FIGURES,
    *judgement.FIGURES,
    *circuit.FIGURES,
    *picture.FIGURES,
    *evidence.FIGURES,
    *start.FIGURES,
)
COLUMNS = ("area", "figure", "measured", "reference", "ratio", "target", "met")


def measured(make: Callable[[], Figure | tuple[Figure, ...]]) -> Iterator[Figure]:
    """Give the figures of one benchmark."""
    result = make()
    yield from (result,) if isinstance(result, Figure) else result


def cells(figure: Figure) -> tuple[str, ...]:
    """Give the texts of one line."""
    ratio = "-" if figure.ratio is None else f"{figure.ratio:.3g}"
    met = {None: "-", True: "yes", False: "NO"}[figure.met]
    return (
        figure.area,
        figure.name,
        figure.measured,
        figure.reference,
        ratio,
        figure.target,
        met,
    )


def main(parts: list[str]) -> int:
    """Measure and print; the code says only whether everything could be measured."""
    lines = [COLUMNS]
    for make in ALL:
        if parts and not any(part in f"{make.__module__} {make.__name__}" for part in parts):
            continue
        print(f"measuring {make.__module__}.{make.__name__} ...", file=sys.stderr, flush=True)
        lines += [cells(figure) for figure in measured(make)]
    widths = [max(len(line[k]) for line in lines) for k in range(len(COLUMNS))]
    for line in lines:
        print(
            "  ".join(text.ljust(width) for text, width in zip(line, widths, strict=True)).rstrip()
        )
    return 0


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1:]))
