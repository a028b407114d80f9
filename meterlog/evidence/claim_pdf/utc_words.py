"""UtcWords: an instant as it is read on a page."""

from __future__ import annotations

from datetime import UTC, datetime

from meterlog.recording import UNDATED


def utc_words(instant: datetime, *, seconds: bool = False) -> str:
    """Give an instant, such as ``2026-05-04 10:20 UTC``; where a recording has none, say so.

    Parameters
    ----------
    instant : datetime
        With its offset.
    seconds : bool
    """
    if instant == UNDATED:
        return "at a time that is not known"
    form = "%Y-%m-%d %H:%M:%S UTC" if seconds else "%Y-%m-%d %H:%M UTC"
    return instant.astimezone(UTC).strftime(form)
