"""Figures: outcomes added up, against the targets, and the tables that are printed."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from scene import Sort
from score import Outcome
from verdict_check import Stated

from meterlog.model import Verdict

BINS = 10


@dataclass(frozen=True)
class Line:
    """One figure; ``met`` None: no target."""

    figure: str
    target: str
    measured: str
    met: bool | None


def _part(name: str, target: float, good: int, all_of: int) -> Line:
    if not all_of:
        return Line(name, f">= {target:.1%}", "none", None)
    words = f"{good / all_of:.2%} ({good} of {all_of})"
    return Line(name, f">= {target:.1%}", words, good >= target * all_of)


def lines(totals: Mapping[Sort, Outcome]) -> list[Line]:
    """Give the figures of the outcomes of each sort of run."""
    mixed, sound, close = (totals[sort] for sort in (Sort.MIXED, Sort.SOUND, Sort.CLOSE))
    n, s = mixed.counts, sound.counts
    alarms, hours = n["false alarms"] + s["false alarms"], mixed.hours + sound.hours
    healthy = n["healthy runs"] + s["healthy runs"]
    condemned = n["healthy condemned"] + s["healthy condemned"]
    return [
        _part("visible dropouts found", 0.995, n["found"], n["visible"]),
        _part("side told right where the channels allow", 0.99, n["told"], n["tellable"]),
        _part("no other side blamed", 0.995, n["blamed"] - n["blamed wrongly"], n["blamed"]),
        _part("edges within one interval (and averaging time)", 0.99, n["edges close"], n["edges"]),
        Line(
            "false alarms in 10 h",
            "<= 1",
            f"{alarms * 10.0 / hours:.2f} ({alarms} in {hours:.1f} h)",
            alarms * 10.0 <= hours,
        ),
        Line("sound motors condemned", "0", f"{condemned} of {healthy}", condemned == 0),
        _coverage(close.stated, "true step current within U", bounded=True),
        _coverage(
            [*mixed.stated, *sound.stated], "the same where clamps drift unsaid", bounded=False
        ),
        _gap(
            "probability of conformity calibrated (limits close by)",
            [(o.probability, o.conforms) for o in close.stated if o.probability is not None],
        ),
        _gap("chance of catching short ones calibrated", close.chances),
        *_verdicts([*mixed.stated, *sound.stated, *close.stated]),
        *_told(n + s, close.counts + n + s),
    ]


def _coverage(stated: Sequence[Stated], name: str, *, bounded: bool) -> Line:
    inside = [one.inside for one in stated if one.inside is not None]
    share = sum(inside) / max(len(inside), 1)
    words = f"{share:.2%} ({sum(inside)} of {len(inside)}, ± {_run_error(stated, share):.2%})"
    if not bounded:
        return Line(name, "-", words, None)
    return Line(name, "95 % (94 to 98)", words, 0.94 <= share <= 0.98)


def _run_error(stated: Sequence[Stated], share: float) -> float:
    """Give the standard error of a part of the steps, those of one run being one draw.

    Source: linearised variance of a ratio over clusters, as in survey sampling; from memory.
    """
    off: dict[int, float] = {}
    count = 0
    for one in stated:
        if one.inside is not None:
            off[one.run] = off.get(one.run, 0.0) + one.inside - share
            count += 1
    return math.sqrt(sum(each * each for each in off.values())) / max(count, 1)


def _gap(name: str, stated: Sequence[tuple[float, bool]]) -> Line:
    if not stated:
        return Line(name, "gap <= 0.05", "not stated", None)
    gap = mean_gap(stated)
    words = f"{gap:.3f} ({len(stated)}; {chance_gap(stated):.3f} by chance alone)"
    return Line(name, "gap <= 0.05", words, gap <= 0.05)


def _verdicts(stated: Sequence[Stated]) -> list[Line]:
    result = []
    for verdict, right in ((Verdict.FAIL, False), (Verdict.PASS, True)):
        said = [one for one in stated if one.verdict is verdict]
        good = sum(one.conforms is right for one in said)
        result.append(_part(f"'{verdict.value}' of a step is so", 0.95, good, len(said)))
    return result


def _told(n: Mapping[str, int], short: Mapping[str, int]) -> list[Line]:
    nothing = f"{short['inferred from nothing']} of {short['inferred']}"
    right = f"{short['inferred lengths right']} of {short['inferred lengths']}"
    return [
        Line("doubtful alarms (can't tell)", "-", str(n["doubtful alarms"]), None),
        Line("dropouts told as over or under", "-", str(n["dropouts told as excess"]), None),
        Line("inferred from nothing", "-", nothing, None),
        Line("inferred length holds the true one", "-", right, None),
        Line("crashes", "0", str(n["crashed"] + short["crashed"]), not n["crashed"]),
    ]


def mean_gap(stated: Sequence[tuple[float, bool]]) -> float:
    """Give the mean distance between stated and seen, over bins, weighted by their numbers.

    Source: expected calibration error as in forecast verification; from memory.
    """
    return sum(abs(said - seen) * count for said, seen, count in bins(stated)) / len(stated)


def chance_gap(stated: Sequence[tuple[float, bool]]) -> float:
    """Give the gap to be expected where every stated chance is right and all are independent.

    It falls with the root of their number. Where the draws of a run hang together it is larger.
    Source: mean size of a normal deviate, sqrt(2 / pi), on the binomial variance of each bin.
    """
    boxes = [(count * said * (1.0 - said)) ** 0.5 for said, _, count in bins(stated)]
    return math.sqrt(2.0 / math.pi) * sum(boxes) / len(stated)


def bins(stated: Iterable[tuple[float, bool]]) -> list[tuple[float, float, int]]:
    """Give (mean stated, part that was so, number) of each tenth that holds any."""
    boxes: list[list[tuple[float, bool]]] = [[] for _ in range(BINS)]
    for said, so in stated:
        boxes[min(int(said * BINS), BINS - 1)].append((said, so))
    return [
        (sum(said for said, _ in box) / len(box), sum(so for _, so in box) / len(box), len(box))
        for box in boxes
        if box
    ]


def table(rows: Sequence[Sequence[str]]) -> list[str]:
    """Give rows of cells as aligned lines."""
    widths = [max(len(row[k]) for row in rows) for k in range(len(rows[0]))]
    return [
        "  ".join(cell.ljust(w) for cell, w in zip(row, widths, strict=True)).rstrip()
        for row in rows
    ]


def report(totals: Mapping[Sort, Outcome]) -> list[str]:
    """Give all tables as lines of text."""
    met = {None: "-", True: "yes", False: "NO"}
    rows = [("figure", "target", "measured", "met")]
    rows += [(one.figure, one.target, one.measured, met[one.met]) for one in lines(totals)]
    text = table(rows)
    close = totals[Sort.CLOSE]
    probabilities = [(o.probability, o.conforms) for o in close.stated if o.probability is not None]
    for title, stated in (
        ("probability of conformity, step currents", probabilities),
        ("chance of catching a dropout too short to be seen for certain", close.chances),
    ):
        if stated:
            cells = [("stated", "seen", "number")]
            cells += [
                (f"{said:.3f}", f"{seen:.3f}", str(count)) for said, seen, count in bins(stated)
            ]
            text += ["", title, *table(cells)]
    return text
