"""ClaimAhead: what a reviewer will hold against a claim, known before its pack is made."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from meterlog.model import About
from meterlog.model.card_contradictions import contradictions
from meterlog.model.card_doubts import doubt_words
from meterlog.model.errors import RecordingError
from meterlog.model.job_card import JobCard
from meterlog.profile.plain_file import MOST_TEXT_BYTES, open_plain
from meterlog.recording import layout
from meterlog.recording.about_text import parse_about
from meterlog.work.run_doubts import job_doubts, meter_doubts, run_doubts
from meterlog.work.wholeness import part_lines


def doubts_ahead(
    card: JobCard, sides: Sequence[tuple[str, Path]], others: Sequence[Path] = ()
) -> tuple[str, ...]:
    """Say what a reviewer will hold against the job card, the runs and their meters.

    Parameters
    ----------
    card : JobCard
    sides : sequence of (str, Path)
        The runs, each with its name, ``before`` first. Only heads are read, and of which they are
        parts. One that can't be read
        is left out: the pack says why.
    others : sequence of Path
        Further recordings, such as circuit checks.

    Returns
    -------
    tuple of str
        A sentence each, none twice.
    """
    said = [*doubt_words(card)]
    heads = [(name, about) for name, folder in sides if (about := _head(folder)) is not None]
    if heads and heads[0][0] == sides[0][0]:
        name, first = heads[0]
        said += contradictions(card, first.job.measured_under, f"{name} the repair")
    said += [f"{name}: {one}" for name, one in run_doubts(card, heads)]
    for name, folder in (*sides, *((folder.name, folder) for folder in others)):
        said += [f"{name}: {line}" for line in part_lines(folder)]
    for folder in (*(folder for _, folder in sides), *others):
        if (about := _head(folder)) is not None:
            said += meter_doubts(about)
    for folder in others:
        if (about := _head(folder)) is not None:
            said += [f"{folder.name}: {one}" for one in job_doubts(card, about)]
    return tuple(dict.fromkeys(said))


def _head(folder: Path) -> About | None:
    try:
        with open_plain(folder / layout.ABOUT) as stream:
            return parse_about(stream.read(MOST_TEXT_BYTES), layout.ABOUT)[0]
    except (OSError, RecordingError):
        return None
