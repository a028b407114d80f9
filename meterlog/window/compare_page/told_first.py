"""ToldFirst: what a comparison comes to in one line, and what must be known before it counts."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from meterlog.analysis.compare import is_covered
from meterlog.evidence.comparison_opening import not_whole
from meterlog.model import Comparison, StepDifference, Verdict
from meterlog.model.comparison import ConditionCheck
from meterlog.model.condition_fields import CONDITION_FIELDS
from meterlog.window.numbers import in_numbers, number
from meterlog.window.remedies_here import remedy_here
from meterlog.window.sentences import know_names, sentence
from meterlog.window.words import later, say

_BY_CURRENT = "Compare with --speed-by-current to pair them by order of current."
_BY_CURRENT_HERE = later("Tick “pair by order of current” above.")
_NOT_WITHIN = later("✕ FAIL: not within what good ones draw")
_WITHIN = later("✓ PASS: within what good ones draw")
_MORE = later("✕ FAIL: differs by more than")
_LESS = later("✓ PASS: differs by less than")
_DIFFER = later("≠ THEY DIFFER")
_SAME = later("= NO DIFFERENCE SEEN")
_CANT_TELL = later("? CAN'T TELL")
_RANKED = (_NOT_WITHIN, _MORE, _DIFFER, _CANT_TELL, _SAME, _LESS, _WITHIN)
"""The gravest first, then what can't be told."""
_AS_READ = later(
    "The picture shows what was read; the table's currents are at one voltage for both."
)
_UNSTATED = later("not stated")
_NAMES = {one.name.removesuffix(f"_{one.unit}"): one.label for one in CONDITION_FIELDS} | {
    "ambient": "ambient", "warm-up": "fan ran before",
}  # fmt: skip
"""The comparison's names of conditions, and those on the Meters page."""
_WEIGHTY = {"differs", "forbids"}
_WIDENS = later(
    "It widens the uncertainty, or is taken out by the voltage; for a sharper answer record one"
    " again under the conditions of the other."
)


def headline(comparison: Comparison) -> str:
    """Write the verdict in one line, with its sign: the gravest first, then what can't be told."""
    if comparison.refusal:
        return say("✕ NOT COMPARED")
    steps = comparison.steps
    said = [(one, result_words(comparison, one)) for one in steps]
    parts = []
    for template in _RANKED:
        words = say(template)
        kept = [one for one, result in said if result == words]
        if kept:
            allowed = comparison.max_difference_percent
            most = (
                f" {number(allowed, 'g')} %"
                if allowed is not None and template in {_MORE, _LESS}
                else ""
            )
            parts.append(f"{words}{most} {_at(kept)}")
    return "; ".join(parts) or say("? NOTHING TO TELL: too few good ones")


def result_words(comparison: Comparison, step: StepDifference) -> str:
    """Write what came of one speed, with its sign; empty where nothing was asked."""
    if step.verdict is None:
        return ""
    if step.count:
        return {Verdict.FAIL: say(_NOT_WITHIN), Verdict.PASS: say(_WITHIN)}.get(
            step.verdict, say(_CANT_TELL)
        )
    if comparison.max_difference_percent is not None:
        return {Verdict.FAIL: say(_MORE), Verdict.PASS: say(_LESS)}.get(
            step.verdict, say(_CANT_TELL)
        )
    if step.verdict is Verdict.FAIL:
        return say(_DIFFER)
    return say(_SAME if is_covered(step) else _CANT_TELL)


def _at(steps: Sequence[StepDifference]) -> str:
    speeds = [str(one.speed) for one in steps]
    if len(speeds) == 1:
        return say("at speed {speeds}", speeds=speeds[0])
    return say("at speeds {names} and {speeds}", names=", ".join(speeds[:-1]), speeds=speeds[-1])


def refusal_words(comparison: Comparison) -> str:
    """Write why they can't be compared and what to do, as it is done here; empty where they can."""
    return remedy_here(comparison.refusal.replace(_BY_CURRENT, _BY_CURRENT_HERE))


def warning_words(comparison: Comparison) -> str:
    """Write what speaks against the comparison, in as few words as it takes; empty for nothing."""
    differing = [
        f"{_name(one)} ({_stated(one.old)} / {_stated(one.new)})"
        for one in comparison.conditions
        if one.weight in _WEIGHTY
    ]
    lines = []
    if differing and not comparison.refusal:
        lines.append(
            say(
                "⚠ Not the same on both sides: {names}. {widens}",
                names=", ".join(differing),
                widens=say(_WIDENS),
            )
        )
    lines += [f"⚠ {sentence(note)}" for note in not_whole(comparison)]
    return "\n".join(lines)


def unstated_words(comparison: Comparison) -> str:
    """Write which conditions nobody stated, or one side alone; empty where both did."""
    unsaid = [one for one in comparison.conditions if one.weight == "not stated"]
    neither = ", ".join(_name(one) for one in unsaid if not (one.old or one.new))
    one_side = ", ".join(_name(one) for one in unsaid if one.old or one.new)
    lines = [say("Stated on neither side: {names}.", names=neither)] if neither else []
    if one_side:
        lines.append(say("Stated on one side only: {names}.", names=one_side))
    if lines:
        lines.append(say("It holds only if these were the same."))
    return " ".join(lines)


def detail_lines(comparison: Comparison) -> list[str]:
    """Write all the rest: it all in one paragraph, conditions with what they do, figures, notes."""
    know_names(_called(comparison), of="compared")
    told = [] if comparison.refusal else [sentence(comparison.summary), say(_AS_READ)]
    told += [
        _condition_words(one)
        for one in sorted(comparison.conditions, key=lambda one: one.weight not in _WEIGHTY)
        if one.old or one.new
    ]
    told += [sentence(one.words) for one in comparison.figures]
    shown = warning_words(comparison)
    told += [
        say("Note: {note}", note=remedy_here(note))
        for note in comparison.notes
        if sentence(note) not in shown
    ]
    return told


def _called(comparison: Comparison) -> Iterator[str]:
    """Give what the runs and parts that are compared are called; sentences name them."""
    for one in (*comparison.old, comparison.new):
        yield from (one.name, one.part)


def _name(one: ConditionCheck) -> str:
    """Give the name that the condition has where it is entered."""
    return say(_NAMES.get(one.name, one.name))


def _stated(words: str) -> str:
    """Give what was stated of a condition, with decimals as the window writes them."""
    return in_numbers(say(words, "condition")) if words else say(_UNSTATED)


def _condition_words(one: ConditionCheck) -> str:
    """Write one condition on both sides, and what it does to the comparison."""
    sign = "⚠ " if one.weight in _WEIGHTY else ""
    old, new = _stated(one.old), _stated(one.new)
    why = f": {sentence(one.words)}" if one.words else ""
    return f"{sign}{_name(one)}: {old} / {new}, {say(one.weight)}{why}."
