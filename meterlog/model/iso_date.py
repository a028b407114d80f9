"""A calendar date as ISO 8601 writes it, read strictly."""

from __future__ import annotations

import re
from datetime import date

_FORM = re.compile(r"\d{4}-\d{2}-\d{2}", re.ASCII)


def iso_date(text: str) -> date | None:
    """Give the date that ``text`` writes as ``YYYY-MM-DD``; None when it is no such date.

    Other forms of ISO 8601 (week dates, no hyphens) are refused: who reads a claim should not
    have to guess.
    """
    if not _FORM.fullmatch(text):
        return None
    try:
        return date.fromisoformat(text)
    except ValueError:
        return None
