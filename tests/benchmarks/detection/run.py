"""Detection score: ``python tests/benchmarks/detection/run.py --runs N --seed S``, ``--only SEED``.

Runs that this folder makes up - motors, circuits, meters, faults, hands - are given to the program,
and what it tells is held against what really happened. Nothing here is shared with the virtual
bench or the detectors.
"""

from __future__ import annotations

import argparse
import sys
import time
from collections.abc import Iterator
from multiprocessing import Pool
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[3]))

from figures import report
from scene import Scene, Sort, make
from score import Outcome, Scorer, reviewed, score

FIRST = {Sort.MIXED: 0, Sort.SOUND: 500_000_000, Sort.CLOSE: 700_000_000}
"""Seeds of each sort begin here, so that a seed alone tells the run."""


def sort_of(seed: int) -> Sort:
    """Give the sort of run that a seed stands for."""
    return max((sort for sort in Sort if seed >= FIRST[sort]), key=FIRST.__getitem__)


def scene_of(seed: int) -> Scene:
    """Give the run of a seed."""
    return make(seed, sort_of(seed))


def outcome_of(seed: int) -> tuple[int, Outcome]:
    """Give seed and outcome; a crash of the program is a problem, not the end."""
    try:
        return seed, score(scene_of(seed))
    except Exception as error:  # noqa: BLE001 - whatever it is, the other runs go on
        lost = Outcome(problems=[(seed, f"CRASHED: {type(error).__name__}: {error}")])
        lost.counts["crashed"] += 1
        return seed, lost


def _outcomes(seeds: list[int], workers: int) -> Iterator[tuple[int, Outcome]]:
    if workers < 2:
        yield from map(outcome_of, seeds)
        return
    with Pool(workers) as pool:
        yield from pool.imap_unordered(outcome_of, seeds, chunksize=4)


def many(runs: int, seed: int, workers: int) -> dict[Sort, Outcome]:
    """Score as many runs of each sort, half as many close ones."""
    first = seed * 100_000
    seeds = [
        FIRST[sort] + first + one
        for sort in Sort
        for one in range(runs // 2 if sort is Sort.CLOSE else runs)
    ]
    outcomes: list[tuple[int, Outcome]] = []
    begun = time.monotonic()
    for outcome in _outcomes(seeds, workers):
        outcomes.append(outcome)
        if len(outcomes) % 20 == 0 or len(outcomes) == len(seeds):
            told = f"{len(outcomes)} of {len(seeds)} runs, {time.monotonic() - begun:.0f} s"
            print(f"\r{told}", end="", file=sys.stderr, flush=True)
    print(file=sys.stderr)
    totals = {sort: Outcome() for sort in Sort}
    for one, outcome in sorted(outcomes, key=lambda entry: entry[0]):
        totals[sort_of(one)].add(outcome)
    return totals


def show(seed: int) -> None:
    """Print one run: the meters, what happened, what was told, what was wrong with it."""
    scene = scene_of(seed)
    review = reviewed(scene)
    print(f"run {seed}: {scene.circuit.form.value}, {scene.story.length:.1f} s, {scene.limits}")
    for meter in scene.meters:
        print(f"  {meter}")
    for command in scene.story.commands:
        print(f"  knob to {command.speed} at {command.at:.3f} s, marked {command.marked:.3f} s")
    for at in scene.story.taps:
        print(f"  tap marked {at:.3f} s")
    for start, end in scene.reads[0].blanks:
        print(f"  the meter changes its range, nothing {start:.3f} to {end:.3f} s")
    for one in scene.dropouts:
        print(f"  TRUE {one.state.value} {one.start:.4f} to {one.end:.4f} s ({one.length:.4f} s)")
    for span in review.spans:
        print(f"  told {span.kind.value} {span.start_ns / 1e9:.4f} to {span.end_ns / 1e9:.4f} s")
    for finding in review.findings:
        chance = "" if finding.probability is None else f" p {finding.probability:.3f}"
        print(f"  {finding.verdict.value}{chance}: {finding.statement}")
    for note in review.notes:
        print(f"  note: {note}")
    for _, words in Scorer(scene, review).score().problems:
        print(f"  WRONG {words}")


def main() -> int:
    """Score, print, and give 0 whatever the score: it is a measurement, not a test."""
    parser = argparse.ArgumentParser(description="score the detectors on made-up runs")
    parser.add_argument("--runs", type=int, default=1000, help="of each sort (default 1000)")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--workers", type=int, default=1)
    parser.add_argument("--only", type=int, metavar="SEED", help="show one run of the list below")
    options = parser.parse_args()
    if options.only is not None:
        show(options.only)
        return 0
    totals = many(options.runs, options.seed, options.workers)
    print("\n".join(report(totals)))
    problems = [one for total in totals.values() for one in total.problems]
    if problems:
        print(f"\n{len(problems)} problems; look at one with --only SEED")
    for seed, words in problems:
        print(f"{seed}  {words}")
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
