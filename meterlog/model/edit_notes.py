"""EditNotes: how the notes of a review say that a recording was edited, and how they are found."""

from __future__ import annotations

from collections.abc import Sequence


def edit_note(edit: str) -> str:
    """Give the note of an edit."""
    return f"Edit on top of the recording: {edit}"


def damage_note(damage: str) -> str:
    """Give the note of what is wrong with the edits."""
    return f"Edits on top of the recording are NOT WHOLE: {damage}"


def edits_in(notes: Sequence[str]) -> tuple[str, ...]:
    """Give the edits that notes tell, without what begins them."""
    return tuple(one.removeprefix(EDIT) for one in notes if one.startswith(EDIT))


def limits_note(used: str, own: str, differing: str) -> str:
    """Give the note that other limits were given than those a recording was made with."""
    return (
        f"Judged by the limits {used}, given for this judgement, and not by those it was recorded"
        f" with ({own}). They differ in {differing}."
    )


def limits_in(notes: Sequence[str]) -> tuple[str, ...]:
    """Give the notes that tell of other limits."""
    return tuple(one for one in notes if one.startswith(_LIMITS))


_LIMITS = limits_note("", "", "").partition(",")[0]
EDIT, DAMAGE = edit_note(""), damage_note("")
"""How such notes begin."""
