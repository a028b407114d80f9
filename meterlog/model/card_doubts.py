"""What looks wrong on a job card: told, never refused."""

from __future__ import annotations

from collections.abc import Iterator

from meterlog.model.card_fields import FIELDS
from meterlog.model.iso_date import iso_date
from meterlog.model.job_card import JobCard, value_of
from meterlog.model.vin import vin_words

_COUNTS = ("odometer", "odometer_out", "hours")
_WITH_NUMBERS = ("in_service", "old_part_fitted")


def doubt_words(card: JobCard) -> tuple[str, ...]:
    """Say in sentences what looks wrong: the VIN, dates, counts, one part told twice."""
    return (*vin_words(card.vin), *_dates(card), *_counts(card), *_parts(card))


def _dates(card: JobCard) -> Iterator[str]:
    failed, repaired = iso_date(card.failed_on), iso_date(card.repaired_on)
    stated = (("failure", card.failed_on, failed), ("repair", card.repaired_on, repaired))
    for name, text, found in stated:
        if text and found is None:
            yield f"The date of {name} is {text!r}; expected year-month-day, such as 2026-11-29."
    if failed and repaired and repaired < failed:
        yield "The date of repair is before the date of failure."


def _counts(card: JobCard) -> Iterator[str]:
    """Say which counts are none; units and marks of thousands are written as anybody likes."""
    words = {field.key: field.words for field in FIELDS}
    for key in (*_COUNTS, *_WITH_NUMBERS):
        name, text = words[key], str(value_of(card, key))
        if text and not any(one.isdigit() for one in text):
            yield f"What stands at {name!r} is {text!r}, without a number."
        elif key in _COUNTS and text.strip().startswith(("-", "\N{MINUS SIGN}")):
            yield f"What stands at {name!r} is {text!r}, less than nothing."


def _parts(card: JobCard) -> Iterator[str]:
    old, new = card.old_part.serial.strip(), card.new_part.serial.strip()
    if old and old.casefold() == new.casefold():
        yield f"Old part and new part have the same serial number {old}."
