"""JobSection: the job card in full."""

from __future__ import annotations

from dataclasses import fields

from meterlog.evidence.claim_content import ClaimContent
from meterlog.evidence.claim_pdf.facts_block import Fact, lay_facts
from meterlog.evidence.claim_pdf.page_look import FAINT
from meterlog.evidence.claim_pdf.sheets import Sheets
from meterlog.model.job_card import JobCard, PartIdentity

_LONG = ("complaint", "cause", "correction", "notes")
"""Told as paragraphs of their own."""
_TITLES = {
    "complaint": "Complaint, in the customer's words",
    "cause": "Cause",
    "correction": "Correction",
    "notes": "Notes",
}
_NAMES = {"vin": "VIN", "old_part_kept": "Old part is at"}


def part_words(part: PartIdentity) -> str:
    """Give a part as its label says, such as ``fan motor, number 12, serial 3, date code 2619``."""
    named = (("", part.name), ("number ", part.number), ("serial ", part.serial),
             ("date code ", part.date_code))  # fmt: skip
    return ", ".join(f"{lead}{value}" for lead, value in named if value.strip())


def add_job(sheets: Sheets, content: ClaimContent) -> None:
    """Put the chapter: all that the card says, and what it does not."""
    sheets.heading("The job", chapter=True)
    if content.without_customer:
        sheets.words("Made without customer data: who it is and whose vehicle is left out.", FAINT)
        sheets.space(4.0)
    lay_facts(sheets, _facts(content.card))
    for name in _LONG:
        words = getattr(content.card, name)
        if words.strip():
            sheets.heading(_TITLES[name], keep=30.0)
            sheets.words(words)
    if content.missing:
        sheets.heading("Not stated, and likely to be asked for", keep=30.0)
        sheets.listed(content.missing)


def _facts(card: JobCard) -> list[Fact]:
    """Give every short field in the order of the card, whichever it has."""
    facts: list[Fact] = []
    for field in fields(card):
        value = getattr(card, field.name)
        if field.name in _LONG or field.name == "photos":
            continue
        name = _NAMES.get(field.name, field.name.replace("_", " ").capitalize())
        facts.append((name, _value(value)))
    return facts


def _value(value: object) -> str:
    if isinstance(value, PartIdentity):
        return part_words(value)
    if isinstance(value, tuple):
        return "; ".join(_value(one) for one in value)
    return "" if value is None else str(value)
