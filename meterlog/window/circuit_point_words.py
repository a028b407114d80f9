"""CircuitPointWords: what is said about the test point that the next reading belongs to."""

from __future__ import annotations

from dataclasses import replace

from meterlog.circuit.cautions import caution_keys, caution_words, confirming_cautions
from meterlog.evidence.circuit_marks import PointMark
from meterlog.model import Circuit, CircuitState, CircuitVerdict, ProbePoint
from meterlog.window.numbers import in_numbers
from meterlog.window.sentences import sentence
from meterlog.window.words import later, say

WORKING = later("working out the circuit…")


def point_words(
    circuit: Circuit,
    point: ProbePoint,
    mark: PointMark,
    state: CircuitState,
    verdict: CircuitVerdict | None,
    jumper_from: str = "",
) -> str:
    """Say how to get at a point, what a circuit in order gives, what was found, and what can hurt.

    A caution that stands beside the next test is only named here: there it may be out of sight.

    Parameters
    ----------
    circuit : Circuit
    point : ProbePoint
    mark : PointMark
        Of this point.
    state : CircuitState
        In which it is measured.
    verdict : CircuitVerdict or None
        None while it is being worked out.
    jumper_from : str
        Node of the end of a jumper that waits for its other end; empty: none does.
    """
    facts = [f"{mark.letter}  {sentence(point.label)}: {sentence(point.reach)}"]
    facts.append(
        say(
            "Should be: {expected_words}",
            expected_words=in_numbers(mark.expected_words) or say(WORKING),
        )
    )
    if mark.found_words:
        facts.append(say("Found: {found_words}", found_words=in_numbers(mark.found_words)))
    if jumper_from:
        # What can hurt is said before it is put in.
        state = replace(state, jumpers=state.jumpers | {(jumper_from, jumper_from)})
    cautions = caution_words(caution_keys(circuit, point.name, state))
    beside = _beside(circuit, verdict)
    lines = [_jumper_words(circuit, jumper_from)] if jumper_from else []
    lines.append(" · ".join(facts))
    fresh = [one for one in cautions if one not in beside]
    if fresh:
        lines.append(f"⚠ {' '.join(map(sentence, fresh))}")
    named = [sentence(one).partition(":")[0] for one in cautions if one in beside]
    if named:
        lines.append(say("⚠ As beside (PgDn): {names}.", names="; ".join(named)))
    return "\n".join(lines)


def _jumper_words(circuit: Circuit, node: str) -> str:
    """Say that a jumper waits for its other end."""
    label = next((one.label for one in circuit.nodes if one.name == node), node)
    return say(
        "FUSED JUMPER from {label}: choose the other end, then J. J here again: no jumper.",
        label=sentence(label),
    )


def _beside(circuit: Circuit, verdict: CircuitVerdict | None) -> tuple[str, ...]:
    """Give the cautions that stand beside the next test, or beside the verdict."""
    if verdict is None:
        return ()
    test = verdict.next_test
    return test.cautions if test is not None else confirming_cautions(circuit, verdict)
