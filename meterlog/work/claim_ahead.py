"""ClaimAhead: what a reviewer will hold against a claim, known before its pack is made."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from meterlog.model import About
from meterlog.model.calibration import calibration_words, measured_on, overdue_words
from meterlog.model.card_contradictions import contradictions
from meterlog.model.card_doubts import doubt_words
from meterlog.model.errors import RecordingError
from meterlog.model.job_card import JobCard
from meterlog.profile.plain_file import MOST_TEXT_BYTES, open_plain
from meterlog.recording import UNDATED, layout
from meterlog.recording.about_text import parse_about


def doubts_ahead(
    card: JobCard, recordings: Iterable[Path], first: tuple[str, Path] | None = None
) -> tuple[str, ...]:
    """Say what looks wrong on a job card, and of which meters calibration is not shown to be good.

    Parameters
    ----------
    card : JobCard
    recordings : iterable of Path
        Only their heads are read. One that can't be read is left out: the pack says why.
    first : tuple of (str, Path) or None
        The run that the card is held against, with its name: ``before``, or ``after`` alone.

    Returns
    -------
    tuple of str
        A sentence each, none twice.
    """
    said = [*doubt_words(card)]
    if first is not None:
        name, folder = first
        about = _head(folder)
        if about is not None:
            said += contradictions(card, about.job.measured_under, f"{name} the repair")
    for folder in recordings:
        said += _meters(folder)
    return tuple(dict.fromkeys(said))


def _head(folder: Path) -> About | None:
    try:
        with open_plain(folder / layout.ABOUT) as stream:
            return parse_about(stream.read(MOST_TEXT_BYTES), layout.ABOUT)[0]
    except (OSError, RecordingError):
        return None


def _meters(folder: Path) -> tuple[str, ...]:
    about = _head(folder)
    if about is None:
        return ()
    unstated = [
        one for one in about.instruments
        if not one.simulated and not one.typed and not one.identity.calibration_due.strip()
    ]  # fmt: skip
    day = measured_on(about)
    overdue = () if about.started_utc == UNDATED else overdue_words(about.instruments, day)
    return (*overdue, *(calibration_words(one, day) for one in unstated))
