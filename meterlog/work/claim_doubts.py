"""ClaimDoubts: what a reviewer would hold against a recording, said in the pack itself."""

from __future__ import annotations

import re
from collections.abc import Sequence
from pathlib import Path

from meterlog.evidence.verify import verify_folder
from meterlog.model.card_contradictions import contradictions
from meterlog.model.job_card import JobCard, PartIdentity
from meterlog.recording import UNDATED, Recording


def seal_doubts(folder: Path, recording: Recording) -> tuple[str, ...]:
    """Say what speaks against a recording's seal.

    Parameters
    ----------
    folder : Path
    recording : Recording
        Of this folder; its own damage is not said again.

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
    found = verify_folder(folder)
    return tuple(f"NOT AS SEALED: {one}" for one in found.problems if one not in recording.damage)


def order_doubts(before: Recording, after: Recording) -> tuple[str, ...]:
    """Say it if the recording before the repair was begun after the one behind it."""
    first, second = before.about.started_utc, after.about.started_utc
    if UNDATED in {first, second} or first <= second:
        return ()
    return (
        f"It was begun {first.isoformat(timespec='seconds')}, after the recording that is called "
        f"after the repair ({second.isoformat(timespec='seconds')}): they may be the wrong way "
        "round, or a clock was wrong.",
    )


def part_doubts(part: PartIdentity, recording: Recording) -> tuple[str, ...]:
    """Say it if what the recording says of its part does not have the card's serial number.

    Nothing is said where one of them says nothing: that is missing, and no contradiction.
    """
    said = recording.about.job.part
    serial = _plain(part.serial)
    if not serial or not said.strip() or serial in _plain(said):
        return ()
    return (
        f"The job card gives the serial number {part.serial} for this part; the recording was made "
        f"with {said!r}.",
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


def _plain(text: str) -> str:
    return re.sub(r"[\W_]+", "", text).casefold()
