"""Tally: courses added up circuit by circuit, against the targets, and the tables printed."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

import numpy as np
from bound import Beliefs, bounds
from drawn_case import Draw
from technician import Course

NO_FAULT = "no-fault"
SURE = 0.95
SURE_WRONG = "sure of a wrong unit"
BAD = ("told wrong", SURE_WRONG, "told no fault", "top wrong", "crashed", "no solution")
MOST_MS = 100.0
MET = {None: "-", True: "yes", False: "NO"}
HEADER = (
    *("circuit", "runs", "top", "sure of wrong", "none told", "tests", "min"),
    *("H0", "H1", "bits a test", "C", "best", "chosen"),
    *("bound", "tests/bound", "greedy", "tests/greedy"),
    *("verdict ms 50/99/max", "proposal ms", "proposal CPU ms", "tables s"),
)
"""Of the table by circuit. H0, H1: entropy of the sets of units after the complaint and at the end;
C: the most that any test told at any belief met; best, chosen: the mean over beliefs met of what
the best test and the proposed one are expected to tell; see ``bound.py``."""


@dataclass
class Tally:
    """What came of the runs of one circuit and one way of drawing.

    ``counts`` holds how many runs ended in each way; ``problems`` a line for each run that did not
    end as it should; ``kinds`` counts those by what the fault was.
    """

    counts: Counter[str] = field(default_factory=Counter)
    problems: list[tuple[int, str]] = field(default_factory=list)
    kinds: Counter[str] = field(default_factory=Counter)
    tests: list[int] = field(default_factory=list)
    minutes: list[float] = field(default_factory=list)
    seconds: list[float] = field(default_factory=list)
    propose_s: list[float] = field(default_factory=list)
    before: list[float] = field(default_factory=list)
    after: list[float] = field(default_factory=list)
    beliefs: Beliefs = field(default_factory=Beliefs)
    propose_cpu_s: list[float] = field(default_factory=list)
    built_s: float = 0.0
    stated: list[tuple[float, bool]] = field(default_factory=list)

    def take(self, course: Course) -> None:
        """Add one run."""
        found = judged(course)
        self.counts["runs"] += 1
        self.counts.update(found)
        case, end = course.case, course.end
        self.tests.append(course.tests)
        self.minutes.append(course.minutes)
        self.seconds += [step.seconds for step in course.steps]
        self.propose_s += [step.propose_s for step in course.steps]
        self.propose_cpu_s += [step.propose_cpu_s for step in course.steps]
        self.before.append(course.steps[0].verdict.bits_left)
        self.after.append(end.bits_left)
        top = end.suspects[0]
        self.stated.append((top.probability, top.unit == case.unit))
        bad = [one for one in found if one in BAD]
        if bad:
            first = ", ".join(f"{s.unit} {s.probability:.0%}" for s in end.suspects[:3])
            self.problems.append(
                (
                    case.seed,
                    f"{' + '.join(bad)}: {case.circuit.name}: {case.words}; {course.tests} tests, "
                    f"{course.slips} slips, {course.mistakes} mistakes"
                    f"{'' if course.ever_there else ', never there'}; {first}",
                )
            )
            kind = f"{case.element} {case.fault.mode.value}"
            wanders = " comes and goes" if case.comes_and_goes else ""
            self.kinds.update(f"{one}: {kind}{wanders}" for one in bad)

    def add(self, other: Tally) -> None:
        """Add the runs of another tally."""
        self.counts += other.counts
        self.kinds += other.kinds
        for name in (
            *("problems", "tests", "minutes", "seconds", "before", "after"),
            *("propose_s", "propose_cpu_s", "stated"),
        ):
            getattr(self, name).extend(getattr(other, name))
        self.beliefs.best += other.beliefs.best
        self.beliefs.chosen += other.beliefs.chosen


def judged(course: Course) -> list[str]:
    """Tell in which ways a run ended."""
    case, end = course.case, course.end
    found = []
    if end.suspects[0].unit == case.unit:
        found.append("top right")
    else:
        found.append("top wrong")
        if case.comes_and_goes:
            found.append("top wrong, comes and goes")
        if not course.ever_there:
            found.append("top wrong, never there")
    if end.settled == case.unit:
        found.append("told right")
    elif end.settled == NO_FAULT:
        found.append("told no fault")
    elif end.settled:
        found.append("told wrong")
    else:
        found.append("told nothing")
    wrong = [
        one
        for step in course.steps
        for one in step.verdict.suspects
        if one.unit not in (case.unit, NO_FAULT) and one.probability > SURE
    ]
    if wrong:
        found.append(SURE_WRONG)
    if course.slips:
        found.append("with a slipped probe")
    if case.comes_and_goes:
        found.append("comes and goes")
    if not course.ever_there:
        found.append("never there")
    return found


def _share(good: int, all_of: int) -> str:
    return f"{good / all_of:.2%} ({good} of {all_of})" if all_of else "none"


def _interval(good: int, all_of: int) -> str:
    """Give about 95 % of a part. Source: Wilson, J. Am. Stat. Assoc. 22 (1927) 209."""
    if not all_of:
        return "-"
    z, share = 1.96, good / all_of
    middle = (share + z * z / (2 * all_of)) / (1 + z * z / all_of)
    half = z * math.sqrt(share * (1 - share) / all_of + z * z / (4 * all_of**2))
    half /= 1 + z * z / all_of
    return f"{max(middle - half, 0.0):.2%} to {min(middle + half, 1.0):.2%}"


def table(rows: Sequence[Sequence[str]]) -> list[str]:
    """Give rows of cells as aligned lines."""
    widths = [max(len(row[k]) for row in rows) for k in range(len(rows[0]))]
    return [
        "  ".join(cell.ljust(w) for cell, w in zip(row, widths, strict=True)).rstrip()
        for row in rows
    ]


def report(totals: Mapping[tuple[Draw, str], Tally]) -> list[str]:
    """Give all tables as lines of text; keys are the way of drawing and the circuit."""
    text: list[str] = []
    for draw in Draw:
        own = {name: tally for (way, name), tally in totals.items() if way is draw}
        if not own:
            continue
        whole = Tally()
        for tally in own.values():
            whole.add(tally)
        text += [f"faults drawn {draw.value}", *_figures(whole), ""]
        text += [*_by_circuit(own), ""]
    return text[:-1]


def _figures(whole: Tally) -> list[str]:
    n, runs = whole.counts, whole.counts["runs"]
    never = n["never there"]
    there = n["top right"] - (never - n["top wrong, never there"])
    rows = [
        _line("correct unit at the top", ">= 97 %", n["top right"], runs, least=0.97),
        _line(
            "the same where the fault was ever there", ">= 97 %", there, runs - never, least=0.97
        ),
        _line("ever sure of a wrong unit (> 95 %)", "<= 0.5 %", n[SURE_WRONG], runs, most=0.005),
        _line("told a wrong unit", "<= 0.5 %", n["told wrong"], runs, most=0.005),
        _line("told the right unit", "-", n["told right"], runs),
        _line("told that nothing electrical is found", "-", n["told no fault"], runs),
        _line("told nothing", "-", n["told nothing"], runs),
        _line("runs with a fault that comes and goes", "-", n["comes and goes"], runs),
        _line("runs in which it was never there", "-", never, runs),
        _line("runs with a slipped probe", "-", n["with a slipped probe"], runs),
    ]
    tests, minutes = np.array(whole.tests), np.array(whole.minutes)
    ms = np.array(whole.propose_s) * 1e3
    words = f"{tests.mean():.2f} ({np.median(tests):.0f}, {tests.max()})"
    rows.append(("tests, mean (median, most)", "-", words, "", "-"))
    words = f"{minutes.mean():.1f} ({np.median(minutes):.1f})"
    rows.append(("minutes, mean (median)", "-", words, "", "-"))
    words = f"{(ms <= MOST_MS).mean():.2%} (slowest {ms.max():.0f} ms)"
    rows.append(("proposals within 100 ms", "all", words, "", MET[bool(ms.max() <= MOST_MS)]))
    lost = n["crashed"] + n["no solution"]
    words = f"{n['crashed']}, {n['no solution']}"
    rows.append(("crashed, circuits without a solution", "0", words, "", MET[not lost]))
    header = ("figure", "target", "measured", "about 95 %", "met")
    return table([header, *rows])


def _line(
    name: str,
    target: str,
    count: int,
    runs: int,
    *,
    least: float | None = None,
    most: float | None = None,
) -> tuple[str, ...]:
    met = None
    if least is not None:
        met = count >= least * runs
    if most is not None:
        met = count <= most * runs
    return name, target, _share(count, runs), _interval(count, runs), MET[met]


def _by_circuit(own: Mapping[str, Tally]) -> list[str]:
    """Give what came of each circuit, and what its tests are held against, in bits and tests."""
    rows = [HEADER]
    for name, t in sorted(own.items()):
        runs = t.counts["runs"]
        if not runs:
            continue
        before, after = float(np.mean(t.before)), float(np.mean(t.after))
        tests = float(np.mean(t.tests))
        cells = [
            name,
            str(runs),
            f"{t.counts['top right'] / runs:.1%}",
            str(t.counts[SURE_WRONG]),
            str(t.counts["told nothing"] + t.counts["told no fault"]),
            f"{tests:.2f}",
            f"{np.mean(t.minutes):.0f}",
            f"{before:.2f}",
            f"{after:.2f}",
            f"{(before - after) / max(tests, 1e-9):.2f}",
        ]
        cells += _against(t.beliefs, tests, before, after)
        cells += [_times(t.seconds), _times(t.propose_s), _times(t.propose_cpu_s)]
        cells.append(f"{t.built_s:.1f}")
        rows.append(tuple(cells))
    return table(rows)


def _against(beliefs: Beliefs, tests: float, before: float, after: float) -> list[str]:
    if not beliefs.best:
        return ["-"] * 7
    largest, greedy = bounds(beliefs, before, after)
    return [
        f"{max(beliefs.best):.2f}",
        f"{np.mean(beliefs.best):.2f}",
        f"{np.mean(beliefs.chosen):.2f}",
        f"{largest:.2f}",
        f"{tests / max(largest, 1e-9):.2f}",
        f"{greedy:.2f}",
        f"{tests / max(greedy, 1e-9):.2f}",
    ]


def _times(seconds: Sequence[float]) -> str:
    ms = np.array(seconds) * 1e3
    return f"{np.median(ms):.0f}/{np.quantile(ms, 0.99):.0f}/{ms.max():.0f}"
