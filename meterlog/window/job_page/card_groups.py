"""CardGroups: the fields of a job card in the order of the work, and what is told beside them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from meterlog.model.card_doubts import doubt_words
from meterlog.model.card_fields import ASKED, FIELDS
from meterlog.model.job_card import JobCard, missing_words, value_of, with_value
from meterlog.window.words import say

PHOTOS = "photos"
"""The one field that is no text: it has a list of its own."""


@dataclass(frozen=True, slots=True)
class CardGroup:
    """Fields that are filled in at one time.

    Attributes
    ----------
    title : str
    keys : tuple of str
        Of the fields, as they are asked for.
    lead : str
        What the names of its fields begin with, and its title says already.
    """

    title: str
    keys: tuple[str, ...]
    lead: str = ""


def _part(side: str) -> tuple[str, ...]:
    return tuple(f"{side}.{name}" for name in ("name", "number", "serial", "date_code"))


GROUPS = (
    CardGroup(
        "Order and vehicle",
        ("work_order", "customer", "vehicle", "plate", "vin", "odometer", "hours", "technician"),
    ),
    CardGroup("Complaint", ("complaint", "fault_codes")),
    CardGroup("As found", ("filter", "battery", "flap", "ambient")),
    CardGroup("Old part", (*_part("old_part"), "old_part_fitted", "old_part_kept"), "old part"),
    CardGroup("New part", (*_part("new_part"), "fitted_by", "invoice"), "new part"),
    CardGroup("Work done", ("cause", "correction", "repaired_on", "odometer_out", "labour")),
    CardGroup(
        "For the claim form",
        ("claim_number", "claimant", "in_service", "failed_on", "maintenance", "notes"),
    ),
)
"""In the order of the work; all fields but the photos, each once."""

LONG = frozenset({"complaint", "cause", "correction", "maintenance", "notes"})
"""Where whole sentences go."""

HINTS: Mapping[str, str] = {
    "vehicle": "make, model, year",
    "vin": "17 characters",
    "odometer": "with its unit",
    "hours": "with their unit",
    "odometer_out": "with its unit",
    "failed_on": "year-month-day",
    "repaired_on": "year-month-day",
    "in_service": "year-month-day",
    "old_part_fitted": "date, odometer",
    "invoice": "number, date",
    "labour": "operation code, hours",
    "claimant": "name, contact",
    "complaint": "in the customer's own words",
    "fault_codes": "or: none",
    "filter": "new, used, clogged, none",
    "battery": "volts, age",
    "ambient": "temperature",
}
"""What belongs into a field, where its name does not say it."""

_WORDS = {field.key: field.words for field in FIELDS}


def field_words(key: str) -> str:
    """Give the whole name of a field, without capital."""
    return say(_WORDS[key])


def field_label(group: CardGroup, key: str) -> str:
    """Give the name of a field as it stands under its group's title."""
    words = _WORDS[key]
    if group.lead:
        words = words.removeprefix(f"{group.lead}'s ").removeprefix(group.lead)
        words = words.lstrip(", ")
    short = words.partition(", in the customer")[0]
    return short[:1].upper() + short[1:]


def missing_fields(card: JobCard) -> tuple[tuple[str, str], ...]:
    """Give what a reviewer will ask and the card does not say: (key of the field, words)."""
    said = set(missing_words(card))
    return tuple((keys[0], words) for keys, words in ASKED if words in said)


def doubts_by_field(card: JobCard) -> Mapping[str, tuple[str, ...]]:
    """Give what looks wrong on a card by the field beside which it is told.

    A sentence belongs to the last field without which nobody would say it.
    """
    told: dict[str, tuple[str, ...]] = {}
    for words in doubt_words(card):
        owners = [
            field.key
            for field in FIELDS
            if value_of(card, field.key)
            and words not in doubt_words(with_value(card, field.key, ""))
        ]
        if owners:
            told[owners[-1]] = (*told.get(owners[-1], ()), words)
    return told
