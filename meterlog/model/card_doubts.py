"""What looks wrong on a job card: told, never refused."""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta

from meterlog.model.card_fields import FIELDS
from meterlog.model.iso_date import iso_date
from meterlog.model.job_card import JobCard, value_of
from meterlog.model.vin import vin_words

_COUNTS = ("odometer", "odometer_out", "hours")
_ODOMETER = re.compile(r"(\d{1,3}(?:[ .,'\u00a0\u202f\u2019]\d{3})*|\d+)\s*([a-z]*)", re.I)
_WITH_NUMBERS = ("in_service", "old_part_fitted")


def doubt_words(card: JobCard) -> tuple[str, ...]:
    """Say in sentences what looks wrong: the VIN, dates, counts, one part told twice."""
    return (
        *vin_words(card.vin),
        *_dates(card),
        *_counts(card),
        *_odometers(card),
        *_parts(card),
    )


def _dates(card: JobCard) -> Iterator[str]:
    failed, repaired = iso_date(card.failed_on), iso_date(card.repaired_on)
    stated = (("failure", card.failed_on, failed), ("repair", card.repaired_on, repaired))
    for name, text, found in stated:
        if text and found is None:
            yield f"The date of {name} is {text!r}; expected year-month-day, such as 2026-11-29."
    if failed and repaired and repaired < failed:
        yield "The date of repair is before the date of failure."
    for name, _, found in stated:
        # A day's grace: it may be tomorrow already where the claim is read.
        if found and found > datetime.now(UTC).date() + timedelta(days=1):
            yield f"The date of {name}, {found.isoformat()}, has not come yet."


def _counts(card: JobCard) -> Iterator[str]:
    """Say which counts are none; units and marks of thousands are written as anybody likes."""
    words = {field.key: field.words for field in FIELDS}
    for key in (*_COUNTS, *_WITH_NUMBERS):
        name, text = words[key], str(value_of(card, key))
        if text and not any(one.isdigit() for one in text):
            yield f"What stands at {name!r} is {text!r}, without a number."
        elif key in _COUNTS and text.strip().startswith(("-", "\N{MINUS SIGN}")):
            yield f"What stands at {name!r} is {text!r}, less than nothing."


def _odometers(card: JobCard) -> Iterator[str]:
    """Say it if the vehicle left with less on its odometer than it came with."""
    came, left = _reading(card.odometer), _reading(card.odometer_out)
    if came is not None and left is not None and came[1] == left[1] and left[0] < came[0]:
        yield (
            f"The odometer when the vehicle left, {card.odometer_out!r}, is less than when it "
            f"came, {card.odometer!r}."
        )


def _reading(text: str) -> tuple[int, str] | None:
    """Give a whole number however its thousands are marked, and its unit; None for others."""
    found = _ODOMETER.fullmatch(text.strip())
    return None if found is None else (int(re.sub(r"\D", "", found[1])), found[2].casefold())


def _parts(card: JobCard) -> Iterator[str]:
    old, new = card.old_part.serial.strip(), card.new_part.serial.strip()
    if old and old.casefold() == new.casefold():
        yield f"Old part and new part have the same serial number {old}."
