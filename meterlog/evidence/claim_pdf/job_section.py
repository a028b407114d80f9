"""JobSection: the job card in full."""

from __future__ import annotations

from meterlog.evidence.claim_content import ClaimContent
from meterlog.evidence.claim_pdf.facts_block import Fact, lay_facts
from meterlog.evidence.claim_pdf.page_look import ALERT, FAINT
from meterlog.evidence.claim_pdf.sheets import Sheets
from meterlog.model.card_fields import FIELDS
from meterlog.model.job_card import JobCard, PartIdentity, value_of

WITHOUT_CUSTOMER = "Made without customer data: who it is and whose vehicle is left out."
_LONG = ("complaint", "cause", "correction", "maintenance", "notes")
"""Told as paragraphs of their own."""
_PARTS = ("old_part", "new_part")
_WORDS = {field.key: f"{field.words[0].upper()}{field.words[1:]}" for field in FIELDS}


def part_words(part: PartIdentity) -> str:
    """Give a part as its label says, such as ``fan motor, number 12, serial 3, date code 2619``."""
    named = (("", part.name), ("number ", part.number), ("serial ", part.serial),
             ("date code ", part.date_code))  # fmt: skip
    return ", ".join(f"{lead}{value}" for lead, value in named if value.strip())


def add_job(sheets: Sheets, content: ClaimContent) -> None:
    """Put the chapter: all that the card says, and what it does not."""
    sheets.heading("The job", chapter=True)
    if content.without_customer:
        sheets.words(WITHOUT_CUSTOMER, FAINT)
        sheets.space(4.0)
    lay_facts(sheets, _facts(content.card))
    for name in _LONG:
        words = getattr(content.card, name)
        if words.strip():
            sheets.heading(_WORDS[name], keep=30.0)
            sheets.words(words)
    doubts = content.doubtful
    if doubts:
        sheets.heading("Doubtful", keep=30.0)
        sheets.listed(doubts, ALERT)
    if content.missing:
        sheets.heading("Not stated, and likely to be asked for", keep=30.0)
        sheets.listed(content.missing)


def _facts(card: JobCard) -> list[Fact]:
    """Give every short field in the order in which a card is shown; those of a part as one."""
    facts: dict[str, str] = {}
    for field in FIELDS:
        key = field.key.partition(".")[0]
        if key in _PARTS:
            facts[key.replace("_", " ").capitalize()] = part_words(getattr(card, key))
        elif key not in _LONG and key != "photos":
            facts[_WORDS[key]] = value_of(card, key)
    return list(facts.items())
