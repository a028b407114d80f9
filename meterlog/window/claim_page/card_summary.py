"""CardSummary: what the pack will say of the job, and what a reviewer will ask in vain."""

from __future__ import annotations

from PySide6.QtWidgets import QFrame, QLabel, QVBoxLayout

from meterlog.model.card_doubts import doubt_words
from meterlog.model.card_fields import FIELDS
from meterlog.model.job_card import JobCard, PartIdentity, missing_words
from meterlog.window.claim_page.side_choice import tell, told_label
from meterlog.window.sentences import sentence
from meterlog.window.words import say

_CUSTOMER = tuple(field.words for field in FIELDS if field.customer)


class CardSummary(QFrame):
    """Words only."""

    def __init__(self) -> None:
        super().__init__()
        self.setProperty("rank", "panel")
        heading = QLabel(say("Job card"))
        heading.setProperty("rank", "title")
        self.facts = told_label("second", say("what the job card says"))
        self.many = told_label("caution", say("how much the job card does not say"))
        self.missing = told_label("", say("what the job card does not say"))
        self.doubts = told_label("caution", say("what looks wrong on the job card"))
        column = QVBoxLayout(self)
        column.setContentsMargins(7, 4, 7, 6)
        column.setSpacing(3)
        column.addWidget(heading)
        for label in (self.facts, self.doubts, self.many, self.missing):
            column.addWidget(label)

    def show_card(
        self,
        card: JobCard,
        *,
        without_customer: bool,
        lost: tuple[str, ...] = (),
        doubts: tuple[str, ...] = (),
    ) -> None:
        """Show a card.

        Parameters
        ----------
        card : JobCard
        without_customer : bool
            The pack will be without customer data.
        lost : tuple of str
            Which of its photos are not there.
        doubts : tuple of str
            Where it and a recording contradict each other, in the window's language.
        """
        tell(self.facts, "\n".join(_lines(card, without_customer=without_customer)))
        said = map(sentence, doubt_words(card))
        tell(self.doubts, "\n".join((*said, *doubts, *lost)))
        missing = missing_words(card)
        head = say(
            "Not stated, and a reviewer will ask: {missing}. Fill in on the Job page.",
            missing=len(missing),
        )
        tell(self.many, head if missing else "")
        tell(self.missing, "\n".join(map(say, missing)))


def _lines(card: JobCard, *, without_customer: bool) -> list[str]:
    if card == JobCard():
        return [say("Nothing is stated yet.")]
    said = (
        (say("Work order"), card.work_order),
        (say("Claim number"), card.claim_number),
        (say("Vehicle"), card.vehicle),
        (say("Complaint"), card.complaint),
        (say("Old part"), _part(card.old_part)),
        (say("New part"), _part(card.new_part)),
        (say("Photos"), str(len(card.photos)) if card.photos else ""),
    )
    lines = [f"{words}: {text}" for words, text in said if text]
    if without_customer:
        lines.append(
            say(
                "Left out: {names}, and where other entries repeat them.",
                names=", ".join(map(say, _CUSTOMER)),
            )
        )
    return lines


def _part(part: PartIdentity) -> str:
    words = (part.name, part.number, part.serial and say("serial {serial}", serial=part.serial))
    return ", ".join(one for one in words if one)
