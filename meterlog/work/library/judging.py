"""Judging: what a recording comes to, in the few words and figures that the index keeps."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from meterlog.work.library.hit import SpeedCurrent, Verdicts

if TYPE_CHECKING:
    from meterlog.evidence.circuit_files import JudgedCheck
    from meterlog.model import Review, Step
    from meterlog.recording import Recording

_GRAVEST_FIRST = (
    *("locked", "dead", "feed-lost", "ground-lost", "command-lost", "no-current", "over"),
    *("fuse-opening", "fuse-load", "controller-heat", "step-current", "bars", "drag", "dip"),
    *("resistive-feed", "resistive-ground", "under", "missed-dropout", "no-data"),
)
_NO_FAULT = "no-fault"


@dataclass(frozen=True, slots=True)
class Judged:
    """A verdict in short; the fields are those of :class:`~.hit.Hit`."""

    verdict: Verdicts
    worst: str
    sentence: str
    currents: tuple[SpeedCurrent, ...] = ()
    drawn: str = ""
    """As :func:`~meterlog.work.drawn.drawn_text` writes it; empty where no run was judged."""


def judge(folder: Path, progress: Callable[[float], None]) -> Judged:
    """Judge a sealed recording, its run and the circuit checks in it.

    Raises
    ------
    RecordingUnreadable, EvidenceError
        As :func:`~meterlog.work.review.review_folder`.
    """
    from meterlog.work.review import review_folder

    recording, review = review_folder(folder, progress=progress)
    if not recording.about.instruments:
        return judge_checks(recording)
    checks, _ = _checks(recording)
    from meterlog.analysis.compare import side_of
    from meterlog.work.drawn import drawn_of, drawn_text

    run = _of_run(review)
    told = " ".join((run.sentence, *(one.pointer() for one in checks)))
    side = side_of(folder.name, recording.about, review, events=recording.standing)
    return replace(run, sentence=told, drawn=drawn_text(drawn_of(side)))


def judge_checks(recording: Recording) -> Judged:
    """Judge what holds circuit checks and no run."""
    return _of_checks(*_checks(recording))


def _checks(recording: Recording) -> tuple[tuple[JudgedCheck, ...], tuple[str, ...]]:
    from meterlog.model import EventKind

    if not any(event.kind is EventKind.CIRCUIT for event in recording.events):
        return (), ()
    from meterlog.work.circuit_checks import judged_checks

    return judged_checks(recording)


def _of_run(review: Review) -> Judged:
    verdict = review.verdict
    outcome = Verdicts.CANT_TELL if verdict is None else Verdicts(verdict.outcome.value)
    sentence = "Nothing could be told." if verdict is None else verdict.paragraph
    return Judged(outcome, worst_of(review), sentence, currents_of_steps(review.steps))


def worst_of(review: Review) -> str:
    """Give the kind of the gravest finding that failed; empty where none did."""
    failed = {one.kind.value for one in review.findings if one.verdict.value == "fail"}
    return next((kind for kind in _GRAVEST_FIRST if kind in failed), "")


def _of_checks(checks: tuple[JudgedCheck, ...], lacking: tuple[str, ...]) -> Judged:
    if not checks:
        return Judged(Verdicts.CANT_TELL, "", " ".join(lacking) or "Nothing was entered.")
    told = [one.verdict for one in checks]
    bad = [one for one in told if one.settled not in {"", _NO_FAULT}]
    if bad:
        outcome = Verdicts.FAULT
    else:
        outcome = Verdicts.IN_ORDER if all(one.settled for one in told) else Verdicts.CANT_TELL
    sentence = " ".join((*(one.pointer() for one in checks), *lacking))
    return Judged(outcome, bad[-1].settled if bad else "", sentence)


def currents_of_steps(steps: Iterable[Step]) -> tuple[SpeedCurrent, ...]:
    """Give the steady current at each commanded speed above 0, lowest speed first.

    Steps whose speed was only found in the current are left out: nobody said which it was.
    """
    at: dict[int, list[tuple[float, float, float | None]]] = {}
    for step in steps:
        mean = step.steady_mean_a
        if step.speed and mean is not None:
            length_s = (step.end_ns - step.start_ns) / 1e9
            at.setdefault(step.speed, []).append((length_s, abs(mean), step.steady_expanded_a))
    return tuple(_together(speed, at[speed]) for speed in sorted(at))


def _together(speed: int, parts: list[tuple[float, float, float | None]]) -> SpeedCurrent:
    whole_s = sum(length for length, _, _ in parts)
    weights = [length / whole_s if whole_s > 0.0 else 1.0 / len(parts) for length, _, _ in parts]
    mean = sum(weight * one for weight, (_, one, _) in zip(weights, parts, strict=True))
    known = [u for _, _, u in parts if u is not None]
    return SpeedCurrent(speed, mean, max(known) if len(known) == len(parts) else None)
