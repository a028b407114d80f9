"""ClaimCard: a job card as a pack shows it, with nothing in it that can't be seen."""

from __future__ import annotations

from meterlog.model.card_fields import FIELDS
from meterlog.model.job_card import JobCard, value_of, with_value
from meterlog.model.visible_text import visible

_SHOWN = 80
_FILES = "photos"
"""Names of files: others would not be found."""


def seen_card(card: JobCard) -> tuple[JobCard, tuple[str, ...]]:
    """Show characters that steer how others are read for what they are.

    Parameters
    ----------
    card : JobCard
        Already without customer data where it shall be: such characters could part a name.

    Returns
    -------
    tuple of (JobCard, tuple of str)
        The card, and a remark for each entry that held one.
    """
    remarks = []
    for key in (field.key for field in FIELDS if field.key != _FILES):
        text = value_of(card, key)
        seen = visible(text)
        if seen != text:
            card = with_value(card, key, seen)
            remarks.append(
                f"{key}: holds characters that can't be seen and steer how others are read; in the"
                f" pack each stands as \\u and its number: {seen[:_SHOWN]}"
            )
    return card, tuple(remarks)
