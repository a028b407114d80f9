"""CircuitText: a check of a circuit and what follows from it, as lines to be read."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Sequence

from meterlog.circuit.cautions import confirming_cautions
from meterlog.circuit.wording import percent
from meterlog.evidence.circuit_basis_text import meter_lines, odds_lines, unmeasured_lines
from meterlog.model import (
    Circuit,
    CircuitCheck,
    CircuitVerdict,
    Expectation,
    ProposedTest,
    Suspect,
)
from meterlog.model.circuit_words import label_of, state_words, unit_of

_SHOWN = 0.005
"""Suspects below half a percent are only counted."""
_LIKELY = 0.5
"""From this probability on it is said how much of it one entry carries."""
_LESS = 0.01
_FITS = {True: "as expected", False: "NOT as expected", None: ""}


def circuit_text(
    circuit: Circuit,
    check: CircuitCheck,
    verdict: CircuitVerdict,
    width: int = 100,
    *,
    whole: bool = False,
) -> str:
    """Give the whole of a check: verdict, suspects, next test, readings, drops, doubts.

    Parameters
    ----------
    circuit : Circuit
    check : CircuitCheck
    verdict : CircuitVerdict
        Of this check.
    width : int
        Columns at most.
    whole : bool
        With what it rests on, for a reader who was not there: meters, what was not measured, where
        the odds come from.

    Returns
    -------
    str
        Ends in a line feed.
    """
    parts = [
        _wrapped([f"Circuit: {circuit.title} ({circuit.name})", verdict.settled_words], width),
        _titled("Suspects", _suspects(verdict.suspects), width),
        _titled("Next", _next(verdict.next_test), width),
        _titled("Cautions", confirming_cautions(circuit, verdict), width),
        _titled("Doubtful readings", _doubted(check, verdict), width),
        _titled("Readings", _readings(circuit, check, verdict.expectations), width),
        _titled("Voltage drops", _drops(circuit, verdict), width),
        _titled("Notes", verdict.notes, width),
    ]
    if whole:
        shown = [one for one in verdict.suspects if one.probability >= _SHOWN]
        parts += [
            _titled("Meters", meter_lines(check), width),
            _titled("Not measured", unmeasured_lines(circuit, check), width),
            _titled("Where the odds come from", odds_lines(circuit, verdict, shown), width),
        ]
    return "\n\n".join(part for part in parts if part) + "\n"


def _wrapped(lines: Iterable[str], width: int, indent: str = "") -> str:
    return "\n".join(
        textwrap.fill(line, width, initial_indent=indent, subsequent_indent=_hanging(line, indent))
        for line in lines
        if line
    )


def _hanging(line: str, indent: str) -> str:
    return indent + " " * (len(line) - len(line.lstrip())) + "  "


def _titled(title: str, lines: Sequence[str], width: int) -> str:
    return f"{title}\n{_wrapped(lines, width, '  ')}" if lines else ""


def _suspects(suspects: Sequence[Suspect]) -> list[str]:
    shown = [one for one in suspects if one.probability >= _SHOWN]
    lines = []
    for one in shown:
        faults = "; ".join(f"{f.words} {percent(f.probability)}" for f in one.faults[:3])
        line = f"{percent(one.probability):>9}  {one.label}"
        line += f": {faults}" if faults else ""
        lines.append(line + _without(one))
    left = len(suspects) - len(shown)
    return [*lines, f"and {left} more below half a percent"] if left else lines


def _without(one: Suspect) -> str:
    """Say what is left of a likely suspect without its best entry, where that is less."""
    if one.probability < _LIKELY or one.probability - one.without_best < _LESS:
        return ""
    return f"; {percent(one.without_best)} without the entry that speaks most for it"


def _doubted(check: CircuitCheck, verdict: CircuitVerdict) -> list[str]:
    if not check.readings and not check.signs:
        return []
    return [one.words for one in verdict.doubted] or ["None: no entry contradicts the others."]


def _next(test: ProposedTest | None) -> list[str]:
    if test is None:
        return []
    cost = f"{test.bits:.2f} bit for about {test.minutes:.0f} min"
    if test.minutes < 1.5:
        cost = f"{test.bits:.2f} bit for about a minute"
    cautions = [f"CAUTION: {words}" for words in test.cautions]
    meaning = [f"- {one.words}" for one in test.outcomes] or [test.meaning]
    return [f"{test.words} ({cost})", *meaning, *cautions]


def _readings(
    circuit: Circuit, check: CircuitCheck, expectations: Sequence[Expectation]
) -> list[str]:
    expected = {(one.point, one.state): one for one in expectations}
    entries: list[tuple[int, str]] = []
    for reading in check.readings:
        unit = unit_of(circuit, reading.point)
        value = f"{reading.value:.3f} {unit} ± {2 * reading.standard_u:.2g} {unit}"
        line = f"{label_of(circuit, reading.point)}: {value}, {state_words(circuit, reading.state)}"
        entries.append(
            (reading.id, line + _beside(expected.get((reading.point, reading.state)), unit))
        )
    entries += [
        (sign.id, f"{sign.sign.value}: {sign.value}, {state_words(circuit, sign.state)}")
        for sign in check.signs
    ]
    return [f"{at:>3}  {line}" for at, line in sorted(entries)]


def _beside(one: Expectation | None, unit: str) -> str:
    if one is None:
        return ""
    fits = f"; {_FITS[one.fits]}" if _FITS[one.fits] else ""
    return f" (should be: {one.healthy_low:.2f} to {one.healthy_high:.2f} {unit}{fits})"


def _drops(circuit: Circuit, verdict: CircuitVerdict) -> list[str]:
    return [f"{one.words} ({state_words(circuit, one.state)})" for one in verdict.drops]
