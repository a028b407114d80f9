"""Amended: the edits on top of a recording, laid on it as it is read. Readings never change."""

from __future__ import annotations

import copy
from collections.abc import Sequence
from dataclasses import dataclass, replace

from meterlog.model import Review
from meterlog.model.amendment import Amendment, AmendmentKind, amendment_words
from meterlog.model.edit_notes import DAMAGE, EDIT, damage_note, edit_note, edits_in
from meterlog.model.errors import ProfileError, UsageError
from meterlog.recording import Recording, kept_edits
from meterlog.work.amended_limits import limit_values, with_limit
from meterlog.work.amended_marks import AmendedMarks
from meterlog.work.amendments import amendments_of

_LEFT_OUT = "[left out]"
_BEFORE = "before it was exported, and imported here: "


@dataclass(frozen=True, slots=True)
class Amending:
    """What becomes of the edits on top of a recording.

    Attributes
    ----------
    applied : bool
        False: they are left out, and it is said that they are.
    named : bool
        False: it is not said who made them and why; both can tell whose vehicle it was.
    """

    applied: bool = True
    named: bool = True


class AmendedRecording:
    """Marks and limits of a recording, edit by edit.

    Parameters
    ----------
    recording : Recording
        Is not changed.

    Attributes
    ----------
    marks : AmendedMarks
    limits : Limits
    """

    def __init__(self, recording: Recording) -> None:
        self.marks = AmendedMarks(recording.events, recording.end_ns)
        self.limits = recording.about.limits

    def copy(self) -> AmendedRecording:
        """Give another one with the same edits laid on."""
        twin = copy.copy(self)
        twin.marks = self.marks.copy()
        return twin

    def limited(self, key: str, value: str, who: str, why: str) -> Amendment:
        """Give the edit that a limit becomes ``value``; nothing is changed yet.

        Raises
        ------
        UsageError, ProfileError
            See :func:`~meterlog.work.amended_limits.with_limit`.
        """
        speeds = self.marks.speeds
        new = limit_values(with_limit(self.limits, key, value, speeds))[key]
        old = limit_values(self.limits, speeds)[key]
        return Amendment(AmendmentKind.LIMIT, key, None, old, new, who, why)

    def apply(self, amendment: Amendment) -> None:
        """Make an edit.

        Raises
        ------
        UsageError, ProfileError
            If it does not fit the recording; nothing is changed then.
        """
        if amendment.kind is AmendmentKind.LIMIT:
            key, new = amendment.subject, amendment.new
            self.limits = with_limit(self.limits, key, new, self.marks.speeds)
        else:
            self.marks.apply(amendment)


def amend(
    recording: Recording, amending: Amending, *, own_limits: bool = True
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Lay the edits on a recording: its events, and the limits in its head.

    Parameters
    ----------
    recording : Recording
        Nothing on the disk is touched.
    amending : Amending
    own_limits : bool
        False: judged by other limits, so no edit of its own limits applies.

    Returns
    -------
    edits : tuple of str
        Each edit in words, and where it was not applied, why.
    damage : tuple of str
        What is wrong with their file.

    Raises
    ------
    EvidenceError
        If their file can't be read.
    """
    edits, damage = amendments_of(recording.folder)
    if not edits:
        return (), damage
    amended = AmendedRecording(recording)
    said = tuple(_applied(amended, one, amending, own_limits=own_limits) for one in edits)
    if amending.applied:
        recording.events = amended.marks.events
        recording.about = replace(recording.about, limits=amended.limits)
    return said, damage


def _applied(
    amended: AmendedRecording, edit: Amendment, amending: Amending, *, own_limits: bool
) -> str:
    """Apply one edit and say it."""
    said = edit if amending.named else replace(edit, who=_LEFT_OUT, why=_LEFT_OUT)
    words = amendment_words(said)
    if not amending.applied:
        return f"{words} Not applied: taken as recorded."
    if edit.kind is AmendmentKind.LIMIT and not own_limits:
        return f"{words} Not applied: judged by other limits."
    try:
        amended.apply(edit)
    except (UsageError, ProfileError) as error:
        return f"{words} NOT APPLIED, it does not fit: {error}"
    return words


def edits_before_import(recording: Recording, *, named: bool) -> tuple[str, ...]:
    """Give the edits in what an imported recording was made of: they are part of what it is.

    Parameters
    ----------
    recording : Recording
    named : bool
        As in :class:`Amending`: without it only how many there were.

    Returns
    -------
    tuple of str
        In words; none where it was not imported, or from what nobody had edited.
    """
    told = kept_edits(recording.folder)
    if not told or named:
        return tuple(f"{_BEFORE}{one.removeprefix(_BEFORE)}" for one in told)
    return (f"{_BEFORE}{len(told)} {_LEFT_OUT}.",)


def with_edits_told(review: Review, edits: Sequence[str], damage: Sequence[str]) -> Review:
    """Give a review that says before its other notes what :func:`amend` gave."""
    told = (*map(damage_note, damage), *map(edit_note, edits))
    return replace(review, notes=(*told, *review.notes))


def edits_told(review: Review) -> tuple[str, ...]:
    """Give the notes of a review that are about edits and what is wrong with their file."""
    return tuple(note for note in review.notes if note.startswith((EDIT, DAMAGE)))


def parted(told: Sequence[str]) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Give what :func:`amend` gave back from such notes: edits and damage."""
    return edits_in(told), tuple(one.removeprefix(DAMAGE) for one in told if one.startswith(DAMAGE))
