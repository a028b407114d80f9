"""ClaimDoubts: what the files of a claim say against it: seals, conditions; in the pack itself."""

from __future__ import annotations

from collections.abc import Sequence

from meterlog.analysis.compare import is_covered
from meterlog.evidence.seal_state import seal_words
from meterlog.model import Comparison, FindingKind, Review, Verdict
from meterlog.model.card_contradictions import contradictions
from meterlog.model.job_card import JobCard
from meterlog.recording import Recording
from meterlog.work.run_doubts import order_doubts
from meterlog.work.same_readings import same_readings

_LEVELS = (FindingKind.OVER, FindingKind.UNDER, FindingKind.STEP_CURRENT)
_OTHERWISE = (FindingKind.LOCKED, FindingKind.RESISTIVE_FEED, FindingKind.RESISTIVE_GROUND)
"""What accounts for a current beyond its limit by itself, and says what it is."""


def seal_doubts(recording: Recording) -> tuple[str, ...]:
    """Say what speaks against a recording's seal.

    Parameters
    ----------
    recording : Recording
        Its own damage is not said again.

    Returns
    -------
    tuple of str
        Empty where it is as it was sealed.

    Raises
    ------
    EvidenceError
        If a file can't be read.
    """
    if recording.state == "unsealed":
        return ("It was never sealed: nothing shows that it was not changed since.",)
    return seal_words(recording)


def pair_doubts(before: Recording, after: Recording) -> tuple[str, ...]:
    """Say it if two recordings can't be one before and one after a repair.

    Raises
    ------
    RecordingUnreadable
        If a file can't be read any more.
    """
    told = order_doubts(before.about, after.about)
    if same_readings(before, after):
        told += (
            "Its readings are those of the recording after the repair, to the last digit: they are"
            " one run, and nothing is shown of a repair.",
        )
    return told


def same_draw(before: Review, comparison: Comparison) -> tuple[str, ...]:
    """Say it where the new part draws what the old one did, at the speeds that spoke against it.

    Parameters
    ----------
    before : Review
        Of the run with the old part.
    comparison : Comparison
        Of the new part against it.

    Returns
    -------
    tuple of str
        Empty where no current of the old part failed, where something else in the circuit or a
        held rotor accounts for it, or where the two differ at one of these speeds.
    """
    failed = [one for one in before.findings if one.verdict is Verdict.FAIL]
    if any(one.kind in _OTHERWISE for one in failed):
        return ()
    speeds = {one.speed for one in failed if one.kind in _LEVELS and one.speed}
    compared = [one for one in comparison.steps if one.speed in speeds]
    same = sorted(one.speed for one in compared if is_covered(one))
    if not same or any(one.verdict is Verdict.FAIL for one in compared):
        return ()
    return (
        f"No difference from the new part is seen at speed {', '.join(map(str, same))}, where the"
        " current of this run is beyond its limit: the old part is not shown to be the cause. The"
        " limits, the marks of the speeds or the conditions are to be doubted.",
    )


def card_doubts(card: JobCard, sides: Sequence[tuple[str, Recording]]) -> tuple[str, ...]:
    """Say where the job card contradicts the conditions of the first run.

    The card tells of the vehicle as it came; what the repair changed, such as a new filter, is no
    contradiction. So the run behind it is held against the card only where it stands alone.

    Parameters
    ----------
    card : JobCard
    sides : sequence of (str, Recording)
        Each with its name, ``before`` first.
    """
    if not sides:
        return ()
    name, recording = sides[0]
    return contradictions(card, recording.about.job.measured_under, f"{name} the repair")
