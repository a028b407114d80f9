"""VerdictWords: the verdict of a run and what to measure next, as the window says it."""

from __future__ import annotations

from meterlog.model import Outcome, Ranked, RunVerdict
from meterlog.window.remedies_here import remedy_here
from meterlog.window.sentences import sentence
from meterlog.window.words import say

_SIGNS = {
    Outcome.IN_ORDER: "✓",
    Outcome.FAULT: "✕",
    Outcome.SUSPICION: "⚠",
    Outcome.CANT_TELL: "?",
}


def outcome_words(verdict: RunVerdict) -> str:
    """Write what the run comes to, with its sign: ``✕ Fault found``."""
    words = say(verdict.outcome.value)
    return f"{_SIGNS[verdict.outcome]} {words[0].upper()}{words[1:]}"


def verdict_words(verdict: RunVerdict) -> list[str]:
    """Write the verdict, then for each thing found what to measure next, the gravest first."""
    told = [f"{outcome_words(verdict).upper()}\n{remedy_here(verdict.paragraph)}"]
    told += [_next(place, one) for place, one in enumerate(verdict.ranked)]
    return told


def unseen_words(verdict: RunVerdict) -> list[str]:
    """Write what this set-up could not have seen."""
    return [say("Not seen: {what}", what=remedy_here(text)) for text in verdict.unseen]


def _next(place: int, one: Ranked) -> str:
    """Write what to measure; of the first the paragraph has said what it is already."""
    place_words = say("NEXT") if place == 0 else say("THEN")
    head = f"→ {place_words}: {sentence(one.part)} ({say(one.sureness.value)})"
    what = f"{sentence(one.what)} " if place else ""
    return f"{head}\n{what}{remedy_here(one.next_measurement)}"
