"""MethodSection: with what it was measured, how verdicts were made, what could not be seen."""

from __future__ import annotations

from collections.abc import Sequence

from meterlog.circuit.cautions import CAUTIONS, DEFER
from meterlog.evidence.accuracy_text import accuracy_of
from meterlog.evidence.claim_content import ClaimCircuit, ClaimContent, ClaimSide
from meterlog.evidence.claim_pdf.calibration import calibration_state, meter_name
from meterlog.evidence.claim_pdf.limits_section import add_limits
from meterlog.evidence.claim_pdf.page_edges import side_title
from meterlog.evidence.claim_pdf.page_look import BODY, FAINT, STRONG
from meterlog.evidence.claim_pdf.sheets import Sheets
from meterlog.evidence.claim_pdf.side_section import lay_columns
from meterlog.evidence.claim_pdf.table_block import Column, Row, lay_table
from meterlog.evidence.sensors_text import sensors_of
from meterlog.evidence.times_text import times_of
from meterlog.evidence.uncertainty_text import UNCERTAINTY
from meterlog.evidence.visibility_text import visibility_words
from meterlog.model import Instrument, Review
from meterlog.recording import Recording

_LINES = "What each uncertainty is made of, line by line: budgets.csv and judgement.txt."
_METERS = (
    Column("run"),
    Column("meter"),
    Column("profile"),
    Column("calibration due"),
    Column("on that day"),
)


def add_method(sheets: Sheets, content: ClaimContent) -> None:
    """Put the chapters on meters and method, on what can't be seen, and the cautions."""
    sheets.heading("Meters and method", chapter=True, keep=160.0)
    _meters(sheets, content.recordings)
    add_limits(sheets, content.sides)
    rules = dict.fromkeys(side.review.decision_rule for side in content.sides)
    if any(rules):
        sheets.heading("Decision rule", keep=30.0)
        sheets.listed([rule for rule in rules if rule])
    sheets.heading("Uncertainty", keep=30.0)
    sheets.words(f"{UNCERTAINTY} {_LINES}")
    for side in content.recordings:
        for instrument in side.recording.about.instruments:
            _channels(sheets, side, instrument)
    _unseen(sheets, content)
    sheets.heading("Cautions for whoever measures again", chapter=True, keep=90.0)
    sheets.listed([DEFER, *CAUTIONS.values()])


def _meters(sheets: Sheets, sides: Sequence[ClaimSide | ClaimCircuit]) -> None:
    rows = [
        Row(
            (
                side.name,
                meter_name(one) + _kind(one),
                one.profile,
                one.identity.calibration_due or "not stated",
                calibration_state(one, side.recording.about),
            )
        )
        for side in sides
        for one in side.recording.about.instruments
    ]
    lay_table(sheets, _METERS, rows)


def _kind(one: Instrument) -> str:
    said = [words for words, true in (("simulated", one.simulated), ("typed by hand", one.typed))
            if true]  # fmt: skip
    return f" ({', '.join(said)})" if said else ""


def _channels(sheets: Sheets, side: ClaimSide | ClaimCircuit, instrument: Instrument) -> None:
    """Put how well each channel reads, its sensor and zero, and how well its times are known."""
    recording: Recording = side.recording
    sheets.heading(f"{meter_name(instrument)}, {side.name}", keep=50.0)
    for channel in instrument.channels:
        averaged = "averaging time not stated"
        if channel.integration_s:
            averaged = f"averaged over {channel.integration_s:g} s"
        sheets.words(
            f"{channel.role.value}: channel {channel.name} ({channel.unit}), a reading every"
            f" {channel.interval_s:g} s, {averaged}",
            STRONG,
        )
        lay_columns(sheets, [line[4:] for line in accuracy_of(channel)])
    more = [*sensors_of(recording, instrument), *times_of(recording, instrument)]
    lay_columns(sheets, [line[4:] for line in more])


def _unseen(sheets: Sheets, content: ClaimContent) -> None:
    sheets.heading(
        "What this set-up could not have seen, and what to know", chapter=True, keep=130.0
    )
    for side in content.sides:
        sheets.heading(side_title(side), keep=40.0)
        sheets.listed(_of_review(side.review), BODY)
        if side.lacking:
            sheets.listed(side.lacking, BODY)
    for alone in content.circuits:
        if alone.lacking:
            sheets.heading(side_title(alone), keep=40.0)
            sheets.listed(alone.lacking, BODY)
    if not content.sides:
        sheets.words("There is no recording.", FAINT)


def _of_review(review: Review) -> list[str]:
    told = list(review.verdict.unseen) if review.verdict is not None else []
    return [*told, *visibility_words(review), *review.notes]
