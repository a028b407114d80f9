"""CardPart: what is known of a run's part: what it says itself, else what the job card does."""

from __future__ import annotations

from meterlog.evidence.claim_pdf.job_section import part_words
from meterlog.model.job_card import JobCard


def recorded_part(said: str, name: str, card: JobCard) -> str:
    """Say which part a run was made with.

    Parameters
    ----------
    said : str
        By the recording itself.
    name : str
        Of the side: ``before`` is the old part's, ``after`` the new one's.
    card : JobCard

    Returns
    -------
    str
        What only the card says is marked as such: it may have been written later.
    """
    if said.strip():
        return said
    words = part_words(card.old_part if name == "before" else card.new_part)
    return f"not stated when recorded; job card: {words or 'not stated either'}"
