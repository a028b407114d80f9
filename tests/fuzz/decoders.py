"""Long run against every decoder: ``python tests/fuzz/decoders.py [--bytes N] [--seed S] [name]``.

Random and mutated-valid data in random cuts. It is checked that nothing is raised, that the same
bytes give the same readings, remarks and refusals to a twin that gets them uncut, that memory is
bounded, and that after each stretch of garbage the second valid frame at the latest is read.
The same seed gives the same run.
"""

from __future__ import annotations

import argparse
import random
import resource
import sys
import time
import tracemalloc
from dataclasses import dataclass

import numpy as np
from garbage import cuts, garbage
from subjects import SUBJECTS, Subject

from meterlog.instruments import Decoder, Readings

MOST_FRAMES = 2
MOST_HELD = 130 * 2**20
"""Twice the longest block, with some room: as the bytes come in, and as they are read."""
MOST_GROWTH_KIB = 400 * 1024
TRACED_PART = 0.02


@dataclass
class Tally:
    """What has been seen of one decoder."""

    fed: int = 0
    stretches: int = 0
    rows: int = 0
    remarks: int = 0
    worst: int = 0
    peak: int = 0


class Wrong(Exception):
    """A decoder did what it must not."""


class Run:
    """One decoder and its twin, through garbage and valid data."""

    def __init__(self, subject: Subject, seed: int) -> None:
        self._subject = subject
        self._dice = random.Random(f"{seed} {subject.name}")
        self._decoder, self._twin = subject.make(), subject.make()
        self.tally = Tally()

    def go(self, until: int) -> None:
        """Go on until so many bytes have been fed."""
        while self.tally.fed < until:
            self._stretch()

    def _stretch(self) -> None:
        subject, dice = self._subject, self._dice
        junk = garbage(dice, lambda: subject.valid(dice)[0], subject.words)
        self._feed(junk)
        self.tally.stretches += 1
        for number in range(1, MOST_FRAMES + 1):
            if subject.pause is not None and (number > 1 or subject.needs_pause(junk)):
                subject.pause(self._decoder)
                subject.pause(self._twin)
            frame, row = subject.valid(dice)
            readings = self._feed(frame)
            if len(readings) and np.array_equal(readings[-1], np.float32(row)):
                self.tally.worst = max(self.tally.worst, number)
                return
        raise Wrong(f"after {junk[-60:]!r} two frames were not read, the last {frame!r}")

    def _feed(self, data: bytes) -> np.ndarray:
        """Feed both; give the values as numbers of 32 bits, which compare exactly."""
        parts = [self._decoder.feed(piece) for piece in cuts(self._dice, data)]
        whole = self._twin.feed(data)
        self.tally.fed += len(data)
        rows = np.concatenate([whole.values[:0], *(part.values for part in parts)])
        flags = np.concatenate([whole.flags[:0], *(part.flags for part in parts)])
        if not np.array_equal(rows, whole.values, equal_nan=True):
            raise Wrong(f"{data!r} gives other values when cut")
        if not np.array_equal(flags, whole.flags) or _remarks(parts) != _remarks([whole]):
            raise Wrong(f"{data!r} gives other flags or remarks when cut")
        if _state(self._decoder) != _state(self._twin):
            raise Wrong(f"{data!r} is refused otherwise when cut")
        if not np.isnan(rows[(flags & 3) != 0]).all() or np.isnan(rows[(flags & 3) == 0]).any():
            raise Wrong(f"{data!r} gives values and flags that do not belong together")
        self.tally.rows += len(rows)
        self.tally.remarks += len(whole.remarks)
        with np.errstate(over="ignore", invalid="ignore"):
            return rows.astype(np.float32)


def _remarks(parts: list[Readings]) -> list[tuple[int, str]]:
    found, rows = [], 0
    for part in parts:
        found += [(rows + remark.row, remark.text) for remark in part.remarks]
        rows += len(part)
    return found


def _state(decoder: Decoder) -> tuple[int, bytes]:
    if len(decoder.last_refused) > 200:
        raise Wrong(f"keeps {len(decoder.last_refused)} bytes as an example")
    return decoder.refused, decoder.last_refused


def fuzz(subject: Subject, total: int, seed: int) -> list[str]:
    """Fuzz one decoder; give a line of the table."""
    run = Run(subject, seed)
    start = time.perf_counter()
    before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    run.go(round(total * (1 - TRACED_PART)))
    grown = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss - before
    tracemalloc.start()
    run.go(total)
    peak = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    if peak > MOST_HELD or grown > MOST_GROWTH_KIB:
        raise Wrong(f"holds {peak} bytes, and the process grew by {grown} KiB")
    tally = run.tally
    return [
        subject.name,
        f"{tally.fed:,}",
        f"{tally.rows:,}",
        f"{run._decoder.refused:,}",
        f"{tally.remarks:,}",
        f"{tally.stretches:,}",
        str(tally.worst),
        f"{peak / 2**20:.1f}",
        f"{grown / 1024:.0f}",
        f"{time.perf_counter() - start:.0f}",
    ]


COLUMNS = [
    *("decoder", "bytes", "readings", "refused", "remarks", "garbage", "frames to resync"),
    *("peak MiB", "grown MiB", "s"),
]


def main(arguments: list[str]) -> int:
    """Fuzz all, or those whose name holds the given words."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--bytes", type=int, default=10_000_000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("name", nargs="*")
    options = parser.parse_args(arguments)
    lines = [COLUMNS]
    for subject in SUBJECTS:
        if options.name and not any(name in subject.name for name in options.name):
            continue
        print(f"fuzzing {subject.name} ...", file=sys.stderr, flush=True)
        lines.append(fuzz(subject, options.bytes, options.seed))
    widths = [max(len(line[place]) for line in lines) for place in range(len(COLUMNS))]
    for line in lines:
        print("  ".join(cell.ljust(width) for cell, width in zip(line, widths, strict=True)))
    return 0


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1:]))
