"""ClaimDoubts: what the files of a claim say against it: seals, conditions; in the pack itself."""

from __future__ import annotations

from collections.abc import Sequence

from meterlog.evidence.seal_state import seal_words
from meterlog.model.card_contradictions import contradictions
from meterlog.model.job_card import JobCard
from meterlog.recording import Recording
from meterlog.work.run_doubts import order_doubts
from meterlog.work.same_readings import same_readings


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
