"""BesideWords: how the window says what good motors draw, and how one lies beside them."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

from meterlog.evidence.comparison_text import baseline_cells
from meterlog.window.numbers import in_numbers, number
from meterlog.window.sentences import sentence
from meterlog.window.words import later, say, say_many
from meterlog.work.baseline_tables import BASELINE_TABLE
from meterlog.work.library import Usual

if TYPE_CHECKING:
    from meterlog.model import Comparison
    from meterlog.work.screening import BesideGood, Held

_USUAL = {
    Usual.HIGHER: later("▲ higher"),
    Usual.LOWER: later("▼ lower"),
    Usual.BOTH: later("▲▼ higher and lower"),
    Usual.CANT_TELL: later("? can't tell"),
    Usual.TOO_FEW: later("? too few good ones"),
    Usual.AS_USUAL: later("✓ as usual"),
    Usual.NOT_COMPARABLE: later("– not comparable"),
    Usual.NO_BASELINE: later("– no baseline"),
}
_NAMES = (later("motor voltage"), later("limits"))
"""Of what may be otherwise with the good ones; the comparison names them so."""


def usual_told(usual: Usual | None) -> str:
    """Write with its sign how a run lies beside good ones; empty where nothing is known."""
    return "" if usual is None else say(_USUAL[usual])


def table_told(table: Path) -> str:
    """Name a table of baselines: by the folder of its screening where it has the usual name."""
    return str(table.parent if table.name == BASELINE_TABLE else table)


def from_words(held: Held, table: Path, made: datetime) -> str:
    """Say how many good motors there are, and where they come from."""
    counts = [one.step.count for one in held.speeds]
    many = max(counts, default=0)
    day = made.astimezone().date().isoformat()
    if not many:
        return say("Good ones of {number} by {table}, written {day}.",
                   number=held.number, table=table_told(table), day=day)  # fmt: skip
    if min(counts) < many:
        return say("Up to {many} good motors of {number} by {table}, written {day}.",
                   many=many, number=held.number, table=table_told(table), day=day)  # fmt: skip
    return say_many(
        many,
        "{many} good motor of {number} by {table}, written {day}.",
        "{many} good motors of {number} by {table}, written {day}.",
        many=many,
        number=held.number,
        table=table_told(table),
        day=day,
    )


def beside_lines(held: Held) -> list[str]:
    """Say speed by speed how a run lies beside the good ones."""
    return [_speed_words(one) for one in held.speeds]


def caution_lines(comparison: Comparison) -> list[str]:
    """Say what was otherwise with the good ones."""
    return [
        say(
            "⚠ Other {name}: good ones {good}, this one {new}: {words}.",
            name=say(one.name),
            good=in_numbers(one.old),
            new=in_numbers(one.new),
            words=sentence(one.words),
        )
        for one in comparison.conditions
    ]


def _speed_words(one: BesideGood) -> str:
    head = say("Speed {speed}: {usual}", speed=one.step.speed, usual=usual_told(one.usual))
    # As many places as the current's own uncertainty leaves.
    amps = in_numbers(baseline_cells(one.step)[4])
    if one.off_percent is None:
        return say(
            "{head}, {amps} A: its motor voltage is not known or too far from {volts} V, where"
            " {good} stand.",
            head=head, amps=amps, volts=number(one.good.reference_v, ".3g"), good=_good_words(one),
        )  # fmt: skip
    size = abs(one.off_percent)
    places = ".1f" if size < 10.0 else ".0f"
    values = {
        "head": head,
        "amps": amps,
        "volts": number(one.good.reference_v, ".3g"),
        "size": number(size, places),
        "good": _good_words(one),
    }
    told = (
        say("{head}, {amps} A at {volts} V, {size} % above {good}.", **values)
        if one.off_percent >= 0.0
        else say("{head}, {amps} A at {volts} V, {size} % below {good}.", **values)
    )
    return f"{told}{_why_open(one)}"


def _good_words(one: BesideGood) -> str:
    good = one.good
    median, many = number(good.median_a, ".3g"), len(good.currents_a)
    if many == 1:
        return say("the one good one's {median} A", median=median)
    if good.middle_a is None:
        low, high = min(good.currents_a), max(good.currents_a)
        return say(
            "the median {median} A of {many} (all within {low} to {high} A)",
            median=median, many=many, low=number(low, ".3g"), high=number(high, ".3g"),
        )  # fmt: skip
    low, high = good.middle_a
    return say(
        "the median {median} A of {many} (middle half {low} to {high} A)",
        median=median, many=many, low=number(low, ".3g"), high=number(high, ".3g"),
    )  # fmt: skip


def _why_open(one: BesideGood) -> str:
    """Say why it can't be told, behind the rest; empty where it is."""
    bounds = one.step.tolerance_a
    if one.usual is not Usual.CANT_TELL or bounds is None:
        return ""
    low, high = (number(bound, ".3g") for bound in bounds)
    if one.unstated_a > 0.0:
        unstated = number(one.unstated_a, ".2g")
        return " " + say(
            "Good ones lie within {low} to {high} A; what the meters may be off by, with {unstated}"
            " A for a clamp of which nothing is stated, reaches across a limit.",
            low=low, high=high, unstated=unstated,
        )  # fmt: skip
    return " " + say(
        "Good ones lie within {low} to {high} A; the uncertainty reaches across a limit.",
        low=low, high=high,
    )  # fmt: skip
