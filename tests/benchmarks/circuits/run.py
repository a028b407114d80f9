"""Isolation score: ``python tests/benchmarks/circuits/run.py --runs N --seed S``, ``--only SEED``.

Circuits with one fault that this folder makes up are gone through by a technician that it makes up
as well; what the program tells is held against what really is bad. See ``bound.py`` for what the
numbers of tests are held against.
"""

from __future__ import annotations

import argparse
import sys
import time
from collections import defaultdict
from collections.abc import Sequence
from multiprocessing import Pool
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[3]))

from bound import BestTest
from drawn_case import Draw, draw_case
from tally import Tally, judged, report
from technician import Course, Technician
from truth import NoSolution

from meterlog.circuit import Isolation
from meterlog.model import Circuit
from meterlog.profile.catalogue import load_circuit

SHIPPED = Path(__file__).resolve().parents[3] / "profiles" / "circuits"
BOUND_EACH = 5
"""Of so many runs of a circuit one is looked at for the bound: that takes longer than the run."""

Job = tuple[str, Draw, tuple[int, ...], bool]


def circuits() -> tuple[Circuit, ...]:
    """Give all shipped circuits, by name."""
    return tuple(load_circuit(str(path)) for path in sorted(SHIPPED.glob("*.toml")))


def score_circuit(job: Job) -> tuple[Draw, str, Tally]:
    """Go through the cases of one circuit; a crash of the program is a problem, not the end."""
    name, draw, seeds, with_bound = job
    shipped = circuits()
    circuit = next(one for one in shipped if one.name == name)
    tally = Tally()
    begun = time.process_time()
    isolation = Isolation(circuit)
    isolation.prepare()
    tally.built_s = time.process_time() - begun
    best = BestTest(circuit) if with_bound else None
    for count, seed in enumerate(seeds):
        case = draw_case(shipped, seed, draw)

        def look(check, verdict):
            if verdict.next_test is not None:
                most, chosen = best.bits(check, verdict)
                tally.beliefs.best.append(most)
                tally.beliefs.chosen.append(chosen)

        looks = best is not None and count % BOUND_EACH == 0
        try:
            tally.take(Technician(case).work(isolation, look if looks else None))
        except NoSolution as error:
            tally.counts["no solution"] += 1
            tally.problems.append((seed, f"no solution: {error}"))
        except Exception as error:  # noqa: BLE001 - whatever it is, the other runs go on
            tally.counts["crashed"] += 1
            words = f"crashed: {type(error).__name__}: {error}; {circuit.name}: {case.words}"
            tally.problems.append((seed, words))
    return draw, name, tally


def jobs(
    runs: int, seed: int, draws: Sequence[Draw], only: str, *, with_bound: bool = True
) -> list[Job]:
    """Share out the seeds: a circuit's cases together, so that its tables are built once."""
    names = [path.stem for path in sorted(SHIPPED.glob("*.toml"))]
    found = []
    for draw in draws:
        by_name: dict[str, list[int]] = defaultdict(list)
        # The remainder of a seed tells the circuit: the first of them begins at the first circuit.
        first = seed * 100_000 * len(names)
        at = 0
        while sum(map(len, by_name.values())) < runs:
            name = names[(first + at) % len(names)]
            if not only or only == name:
                by_name[name].append(first + at)
            at += 1
        found += [(name, draw, tuple(seeds), with_bound) for name, seeds in by_name.items()]
    return found


def many(work: Sequence[Job], workers: int) -> dict[tuple[Draw, str], Tally]:
    """Go through all jobs, the problems in the order of their seeds."""
    totals: dict[tuple[Draw, str], Tally] = {}
    begun = time.monotonic()
    with Pool(workers) as pool:
        for draw, name, tally in pool.imap_unordered(score_circuit, work):
            totals[draw, name] = tally
            done = f"{len(totals)} of {len(work)} circuits, {time.monotonic() - begun:.0f} s"
            print(f"\r{done}", end="", file=sys.stderr, flush=True)
    print(file=sys.stderr)
    return dict(sorted(totals.items(), key=lambda item: (item[0][0].name, item[0][1])))


def show(seed: int, draw: Draw) -> None:
    """Print one run step by step."""
    case = draw_case(circuits(), seed, draw)
    print(f"run {seed}: {case.circuit.name}, {draw.value}\n  TRUE {case.words}")
    print(f"  answers a tap {case.answers_tap}, stiff {case.stiff}, {case.hand}")
    course = Technician(case).work(Isolation(case.circuit))
    assert course.check is not None
    for sign in course.check.signs[:2]:
        print(f"  complaint: speed {sign.state.speed}, fan {sign.value}")
    show_steps(course)
    print(f"  {', '.join(judged(course))}; {course.tests} tests, {course.minutes:.0f} min")


def show_steps(course: Course) -> None:
    """Print what was proposed and found, and what was believed before it."""
    for step in course.steps:
        verdict, test = step.verdict, step.verdict.next_test
        odds = ", ".join(
            f"{s.unit} {s.probability:.1%} (least {s.without_best:.0%})"
            for s in verdict.suspects[:3]
        )
        doubts = "".join(f" [{d.id} doubted {d.probability:.0%}]" for d in verdict.doubted)
        print(f"  {verdict.bits_left:.2f} bits: {odds}{doubts}")
        for fault in verdict.suspects[0].faults[:2]:
            print(f"      {fault.words} {fault.probability:.1%}")
        if verdict.settled:
            print(f"  TOLD {verdict.settled}")
        if test is not None and step.found:
            state = test.state
            where = f"key {state.key} speed {state.speed}"
            where += "".join(f", {one} off" for one in sorted(state.unplugged | state.pulled))
            slipped = " SLIPPED" if step.slipped else ""
            again = "" if test.repeat_of is None else f" (again, {test.repeat_of})"
            print(
                f"    {where}: {test.point or 'sign'}{again} {step.found}{slipped}"
                f"  ({test.bits:.2f} bits, {test.minutes:.1f} min)"
            )


def main() -> int:
    """Score, print, and give 0 whatever the score: it is a measurement, not a test."""
    parser = argparse.ArgumentParser(description="score the isolation of faults on made-up cases")
    parser.add_argument("--runs", type=int, default=2000, help="of each way of drawing (2000)")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--workers", type=int, default=1)
    parser.add_argument("--circuit", default="", metavar="NAME", help="only this one")
    parser.add_argument("--draw", choices=["odds", "even", "both"], default="both")
    parser.add_argument("--no-bound", action="store_true", help="leave the bounds out: faster")
    parser.add_argument("--only", type=int, metavar="SEED", help="show one run of the list below")
    options = parser.parse_args()
    draws = tuple(Draw) if options.draw == "both" else (Draw[options.draw.upper()],)
    if options.only is not None:
        show(options.only, draws[0])
        return 0
    work = jobs(options.runs, options.seed, draws, options.circuit, with_bound=not options.no_bound)
    totals = many(work, options.workers)
    print("\n".join(report(totals)))
    for draw in draws:
        problems = sorted(
            one for (way, _), tally in totals.items() if way is draw for one in tally.problems
        )
        if problems:
            flag = f"--draw {draw.name.lower()} --only SEED"
            print(f"\nfaults drawn {draw.value}: {len(problems)} problems; look at one with {flag}")
        for seed, words in problems:
            print(f"{seed}  {words}")
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
