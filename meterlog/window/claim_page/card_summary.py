"""CardSummary: what the pack will say of the job, and what a reviewer will ask in vain."""

from __future__ import annotations

from PySide6.QtWidgets import QFrame, QLabel, QVBoxLayout

from meterlog.model.card_doubts import doubt_words
from meterlog.model.card_fields import FIELDS
from meterlog.model.job_card import JobCard, PartIdentity, missing_words
from meterlog.window.claim_page.side_choice import say, told_label

_CUSTOMER = tuple(field.words for field in FIELDS if field.customer)


class CardSummary(QFrame):
    """Words only."""

    def __init__(self) -> None:
        super().__init__()
        self.setProperty("rank", "panel")
        heading = QLabel("Job card")
        heading.setProperty("rank", "title")
        self.facts = told_label("second", "what the job card says")
        self.many = told_label("caution", "how much the job card does not say")
        self.missing = told_label("", "what the job card does not say")
        self.doubts = told_label("caution", "what looks wrong on the job card")
        column = QVBoxLayout(self)
        column.setContentsMargins(7, 4, 7, 6)
        column.setSpacing(3)
        column.addWidget(heading)
        for label in (self.facts, self.doubts, self.many, self.missing):
            column.addWidget(label)

    def show_card(
        self, card: JobCard, *, without_customer: bool, lost: tuple[str, ...] = ()
    ) -> None:
        """Show a card.

        Parameters
        ----------
        card : JobCard
        without_customer : bool
            The pack will be without customer data.
        lost : tuple of str
            Which of its photos are not there.
        """
        say(self.facts, "\n".join(_lines(card, without_customer=without_customer)))
        say(self.doubts, "\n".join((*doubt_words(card), *lost)))
        missing = missing_words(card)
        head = f"Not stated, and a reviewer will ask: {len(missing)}. Fill in on the Job page."
        say(self.many, head if missing else "")
        say(self.missing, "\n".join(missing))


def _lines(card: JobCard, *, without_customer: bool) -> list[str]:
    if card == JobCard():
        return ["Nothing is stated yet."]
    said = (
        ("Order", card.claim_number or card.work_order),
        ("Vehicle", card.vehicle),
        ("Complaint", card.complaint),
        ("Old part", _part(card.old_part)),
        ("New part", _part(card.new_part)),
        ("Photos", str(len(card.photos)) if card.photos else ""),
    )
    lines = [f"{words}: {text}" for words, text in said if text]
    if without_customer:
        lines.append(f"Left out: {', '.join(_CUSTOMER)}, and where other entries repeat them.")
    return lines


def _part(part: PartIdentity) -> str:
    words = (part.name, part.number, part.serial and f"serial {part.serial}")
    return ", ".join(one for one in words if one)
