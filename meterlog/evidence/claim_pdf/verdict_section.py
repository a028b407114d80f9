"""VerdictSection: what a run comes to, ranked, with what each statement rests on."""

from __future__ import annotations

from meterlog.evidence.claim_pdf.page_look import STRONG
from meterlog.evidence.claim_pdf.sheets import Sheets
from meterlog.model import Ranked, RunVerdict

_SURE = 0.999


def add_verdict(sheets: Sheets, verdict: RunVerdict | None) -> None:
    """Put outcome, paragraph and the ranked statements."""
    if verdict is None:
        return
    sheets.heading(f"Verdict: {verdict.outcome.value}")
    sheets.words(verdict.paragraph)
    for place, one in enumerate(verdict.ranked, 1):
        sheets.space(5.0)
        sheets.need(40.0)
        sheets.words(f"{place}. {_head(one)}", STRONG)
        for title, texts in (("rests on", one.rests_on), ("against it", one.against)):
            for text in texts:
                sheets.words(f"{title}: {text}", indent=24.0, lead="•")
        if one.next_measurement:
            sheets.words(f"next: {one.next_measurement}", indent=24.0, lead="•")


def _head(one: Ranked) -> str:
    chance = ""
    if one.probability is not None:
        figure = f"above {_SURE:g}" if one.probability > _SURE else f"{one.probability:.3f}"
        chance = f"; beyond its limit with probability {figure}"
    return f"{one.part} ({one.sureness.value}{chance}): {one.what}"
