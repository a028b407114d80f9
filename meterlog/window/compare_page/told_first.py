"""ToldFirst: what a comparison comes to in one line, and what must be known before it counts."""

from __future__ import annotations

from collections.abc import Sequence

from meterlog.model import Comparison, StepDifference, Verdict
from meterlog.window.remedies_here import remedy_here

_BY_CURRENT = "Compare with --speed-by-current to pair them by order of current."
_BY_CURRENT_HERE = "Tick “pair by order of current” above."
_NOT_WITHIN = "✕ FAIL: not within what good ones draw"
_WITHIN = "✓ PASS: within what good ones draw"
_MORE = "✕ FAIL: differs by more than"
_LESS = "✓ PASS: differs by less than"
_DIFFER = "≠ THEY DIFFER"
_SAME = "= NO DIFFERENCE SEEN"
_CANT_TELL = "? CAN'T TELL"
_RANKED = (_NOT_WITHIN, _MORE, _DIFFER, _CANT_TELL, _SAME, _LESS, _WITHIN)
"""The gravest first, then what can't be told."""
_AS_READ = "The picture shows what was read; the table's currents are at one voltage for both."
_WEIGHTY = {"differs", "forbids"}
_WIDENS = (
    "It widens the uncertainty, or is taken out by the voltage; for a sharper answer record one"
    " again under the conditions of the other."
)


def headline(comparison: Comparison) -> str:
    """Write the verdict in one line, with its sign: the gravest first, then what can't be told."""
    if comparison.refusal:
        return "✕ NOT COMPARED"
    steps = comparison.steps
    said = [(one, result_words(comparison, one)) for one in steps]
    parts = []
    for words in _RANKED:
        kept = [one for one, result in said if result == words]
        if kept:
            allowed = comparison.max_difference_percent
            most = f" {allowed:g} %" if allowed is not None and words in {_MORE, _LESS} else ""
            parts.append(f"{words}{most} {_at(kept)}")
    return "; ".join(parts) or "? NOTHING TO TELL: too few good ones"


def result_words(comparison: Comparison, step: StepDifference) -> str:
    """Write what came of one speed, with its sign; empty where nothing was asked."""
    if step.verdict is None:
        return ""
    if step.count:
        return {Verdict.FAIL: _NOT_WITHIN, Verdict.PASS: _WITHIN}.get(step.verdict, _CANT_TELL)
    if comparison.max_difference_percent is not None:
        return {Verdict.FAIL: _MORE, Verdict.PASS: _LESS}.get(step.verdict, _CANT_TELL)
    if step.verdict is Verdict.FAIL:
        return _DIFFER
    apart = step.difference_a
    known = apart is not None and step.probability is not None
    return _SAME if known and apart and abs(apart.value) <= apart.expanded else _CANT_TELL


def _at(steps: Sequence[StepDifference]) -> str:
    speeds = [str(one.speed) for one in steps]
    if len(speeds) == 1:
        return f"at speed {speeds[0]}"
    return f"at speeds {', '.join(speeds[:-1])} and {speeds[-1]}"


def refusal_words(comparison: Comparison) -> str:
    """Write why they can't be compared and what to do, as it is done here; empty where they can."""
    return remedy_here(comparison.refusal.replace(_BY_CURRENT, _BY_CURRENT_HERE))


def warning_words(comparison: Comparison) -> str:
    """Write what speaks against the comparison, in as few words as it takes; empty for nothing."""
    differing = [
        f"{one.name} ({one.old} / {one.new})"
        for one in comparison.conditions
        if one.weight in _WEIGHTY
    ]
    lines = []
    if differing and not comparison.refusal:
        lines.append(f"⚠ Not the same on both sides: {', '.join(differing)}. {_WIDENS}")
    lines += [f"⚠ {note}" for note in comparison.notes if ": NOT WHOLE: " in note]
    return "\n".join(lines)


def unstated_words(comparison: Comparison) -> str:
    """Write which conditions nobody stated; empty where all were."""
    names = [one.name for one in comparison.conditions if one.weight == "not stated"]
    if not names:
        return ""
    return f"Not stated on both sides: {', '.join(names)}. It holds only if these were the same."


def detail_lines(comparison: Comparison) -> list[str]:
    """Write all the rest: it all in one paragraph, conditions with what they do, figures, notes."""
    told = [] if comparison.refusal else [comparison.summary, _AS_READ]
    told += [
        f"{'⚠ ' if one.weight in _WEIGHTY else ''}{one.name}: {one.old or 'not stated'} /"
        f" {one.new or 'not stated'}, {one.weight}{f': {one.words}' if one.words else ''}."
        for one in sorted(comparison.conditions, key=lambda one: one.weight not in _WEIGHTY)
        if one.old or one.new
    ]
    told += [one.words for one in comparison.figures]
    shown = warning_words(comparison)
    told += [f"Note: {remedy_here(note)}" for note in comparison.notes if note not in shown]
    return told
