"""EditNotes: how the notes of a review say that a recording was edited, and how they are found."""

from __future__ import annotations

from collections.abc import Sequence

EDIT = "Edit on top of the recording: "
"""Begins each note of an edit."""
DAMAGE = "Edits on top of the recording are NOT WHOLE: "
"""Begins each note of what is wrong with the edits."""


def edits_in(notes: Sequence[str]) -> tuple[str, ...]:
    """Give the edits that notes tell, without what begins them."""
    return tuple(one.removeprefix(EDIT) for one in notes if one.startswith(EDIT))
