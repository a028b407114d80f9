"""HitWords: how the page says what was found."""

from __future__ import annotations

from meterlog.model import FindingKind
from meterlog.model.visible_text import steerless
from meterlog.window.good_ones.beside_words import usual_told
from meterlog.window.kind_words import KIND_WORDS
from meterlog.window.numbers import number
from meterlog.window.origin_words import mark_words
from meterlog.window.remedies_here import remedy_here
from meterlog.window.sentences import sentence
from meterlog.window.words import later, say
from meterlog.work.library import Hit, Kind, Verdicts

_SIGNS = {
    Verdicts.FAULT: "✕",
    Verdicts.SUSPICION: "⚠",
    Verdicts.CANT_TELL: "?",
    Verdicts.IN_ORDER: "✓",
    Verdicts.NOT_JUDGED: "…",
}
COLUMNS = (
    later("started"), later("what"), later("vehicle"), later("part"), later("work order"),
    later("verdict"), later("current"),
)  # fmt: skip
USUAL = 6
"""The column that says how the currents lie beside those of good ones."""
SHARES = (19, 25, 24, 22, 13, 21, 19)
"""Widths of the columns, in letters of which the whole is shared out."""


def verdict_told(verdict: Verdicts) -> str:
    """Write a verdict with its sign: ``✕ fault found``."""
    return f"{_SIGNS[verdict]} {say(verdict.value)}"


def _worst(worst: str) -> str:
    """Say what was found worst: the kind of a finding, or the unit of a circuit."""
    if worst in set(FindingKind):
        return say(KIND_WORDS[FindingKind(worst)])
    return sentence(worst)


def cells_of(hit: Hit) -> tuple[str, ...]:
    """Write one line of the table."""
    verdict = verdict_told(hit.verdict) + (f": {_worst(hit.worst)}" if hit.worst else "")
    started = hit.started[:16].replace("T", " ") or say("no date")
    words = (hit.vehicle, hit.part, hit.work_order)
    plain = (steerless(" ".join(one.split())) for one in words)
    return (started, _what(hit), *plain, verdict, usual_told(hit.usual))


def _what(hit: Hit) -> str:
    """Say what it is and all that marks it; the marks first, so that they are never cut off.

    A verdict beside it looks the same for one of which a part is missing: the sign tells.
    """
    sign = "⚠" if hit.trouble else ""
    state = "" if hit.state == "sealed" else say(hit.state)
    away = say("not there now") if hit.away else ""
    told = (sign, mark_words(hit.mark), away, state, say(hit.kind.value))
    return " · ".join(one for one in told if one)


def length_words(duration_s: float) -> str:
    """Write a length of time: ``9.9 s``, ``12 min 3 s``, ``2 h 5 min``."""
    if duration_s < 60.0:
        return f"{number(duration_s, '.1f')} s"
    minutes, seconds = divmod(round(duration_s), 60)
    hours, minutes = divmod(minutes, 60)
    return f"{hours} h {minutes} min" if hours else f"{minutes} min {seconds} s"


def detail_words(hit: Hit, beside: str = "") -> str:
    """Say all that is known of one hit: the verdict, then how it lies beside good ones."""
    told = [f"{verdict_told(hit.verdict)}{': ' + _worst(hit.worst) if hit.worst else ''}"]
    if hit.sentence:
        told.append(remedy_here(hit.sentence))
    elif hit.kind is not Kind.JOB:
        told.append(_why_not_judged(hit))
    if beside:
        told.append(beside)
    if hit.found_by:
        by = steerless(" · ".join(hit.found_by))
        told.append(say("found by: {words}", words=by))
    if hit.trouble:
        told.append(f"⚠ {remedy_here(hit.trouble)}")
    if hit.away:
        told.append(say("⚠ Its folder can't be looked into now; this is what was known of it."))
    side = say(" ({side} part of its job)", side=say(hit.side)) if hit.side else ""
    length = "" if hit.duration_s is None else length_words(hit.duration_s)
    facts = (
        (say("complaint"), hit.complaint),
        (say("vehicle"), ", ".join(one for one in (hit.vehicle, hit.odometer) if one)),
        (say("part"), f"{hit.part}{side}" if hit.part else side.strip()),
        (say("work order"), hit.work_order),
        (say("by"), hit.technician),
        (say("length"), length),
        (say("meters"), hit.instruments),
        (say("folder"), str(hit.folder)),
    )
    told += [f"{name}: {steerless(' '.join(text.split()))}" for name, text in facts if text]
    return "\n".join(told)


def _why_not_judged(hit: Hit) -> str:
    if hit.state in {"sealed", "recovered"}:
        return say("It is judged in the background.")
    if hit.state == "not sealed":
        return say("It was cut off and never sealed. Seal it (C), then it is judged.")
    return ""
