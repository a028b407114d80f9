"""Instant: a moment of the calendar as whole nanoseconds."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

_EPOCH = datetime(1970, 1, 1, tzinfo=UTC)


def nanoseconds_of(instant: datetime) -> int:
    """Give an instant as whole nanoseconds since 1970-01-01T00:00:00Z.

    Parameters
    ----------
    instant : datetime
        With its UTC offset.
    """
    return (instant - _EPOCH) // timedelta(microseconds=1) * 1000
