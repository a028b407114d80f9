"""The PDF says what was stated at a run, what the card says instead, and what they contradict."""

from dataclasses import replace

import pytest

from meterlog.evidence.claim_content import ClaimContent
from meterlog.evidence.claim_pdf.comparison_section import _run
from meterlog.evidence.claim_pdf.job_section import add_job
from meterlog.evidence.claim_pdf.key_readings import add_key_readings, add_key_words
from meterlog.evidence.claim_pdf.proof_section import add_proof
from meterlog.evidence.claim_pdf.side_section import add_side
from meterlog.evidence.claim_pdf.steps_table import add_steps, findings_rows
from meterlog.evidence.claim_pdf.summary_page import add_summary
from meterlog.model import (
    ComparedRun,
    Conditions,
    Finding,
    FindingKind,
    Job,
    Limits,
    SpeedLimits,
    Step,
    Verdict,
)
from meterlog.model.job_card import JobCard, PartIdentity
from meterlog.work.claim_doubts import card_doubts

CARD = JobCard(
    filter="clogged",
    battery="12,4 V, 3 years",
    old_part=PartIdentity("fan", "X-1", "7"),
    new_part=PartIdentity("fan", "X-1", "8"),
)
SECOND = 1_000_000_000


def _said(pages):
    return " ".join(words for page in pages for _, _, words, _ in page)


def _run_with(claim, job, name="before"):
    (side,) = claim().sides
    side.recording.about = replace(side.recording.about, job=job)
    return replace(side, name=name)


@pytest.mark.parametrize(("name", "serial"), [("before", "serial 7"), ("after", "serial 8")])
def test_a_part_not_stated_when_recorded_is_said_so_with_what_the_card_says(
    claim, sheets, drawn, name, serial
):
    add_side(sheets, _run_with(claim, Job(), name), CARD)
    said = _said(drawn(sheets))
    assert f"not stated when recorded; job card: fan, number X-1, {serial}" in said


def test_a_part_stated_when_recorded_stands_alone(claim, sheets, drawn):
    add_side(sheets, _run_with(claim, Job(part="fan X-1 SN7")), CARD)
    said = _said(drawn(sheets))
    assert "fan X-1 SN7" in said
    assert "when recorded" not in said


def test_the_comparison_says_it_as_well():
    run = ComparedRun("after", "id-1", "", "2026-05-04T10:20:30Z", "measured")
    assert "not stated when recorded; job card: fan, number X-1, serial 8" in _run(
        run, "after", CARD
    )
    assert "job card: not stated either" in _run(run, "after", JobCard())


def test_all_conditions_of_the_run_stand_there(claim, sheets, drawn):
    under = Conditions(engine="off", battery_v=12.6, ambient_c=21.0)
    add_side(sheets, _run_with(claim, Job(measured_under=under)), CARD)
    said = _said(drawn(sheets))
    assert "engine: off; battery, fan off: 12.6 V; ambient: 21 °C" in said


def test_what_card_and_run_contradict_is_told_as_doubtful(claim, sheets, drawn):
    under = Conditions(filter="used", battery_v=12.6)
    side = _run_with(claim, Job(measured_under=under))
    doubts = card_doubts(CARD, [("before", side.recording)])
    content: ClaimContent = replace(claim(card=CARD), sides=(side,), doubts=doubts)
    add_summary(sheets, content)
    sheets.new_page()
    add_job(sheets, content)
    for page in drawn(sheets):
        said = _said([page])
        assert "gives 'clogged' for the filter; the run before the repair" in said
        assert "gives '12,4 V, 3 years' for the battery" in said
        assert "12.6 V" in said


def _finding(speed, start_s, verdict, value, limit=None):
    return Finding(
        FindingKind.STEP_CURRENT, verdict, start_s * SECOND, (start_s + 5) * SECOND, 0, value, "A",
        0.2, limit, speed, "A sentence.",
    )  # fmt: skip


def _step(speed, start_s, steady_n):
    start, end = start_s * SECOND, (start_s + 5) * SECOND
    return Step(speed, start, end, 300, 12.5, 0.1, 5.0, 0.2, 5.1, 4.0, 6.0, steady_n=steady_n)


@pytest.mark.parametrize("put", [add_key_readings, lambda *given: add_key_words(*given, 9)])
def test_a_speed_run_again_is_told_by_the_run_that_says_most(claim, sheets, drawn, desk, put):
    findings = (
        _finding(3, 20, Verdict.CANT_TELL, None),
        _finding(3, 80, Verdict.PASS, 9.2),
        _finding(3, 90, Verdict.PASS, 8.8),
    )
    steps = (_step(3, 20, 0), _step(3, 80, 280), _step(3, 90, 30))
    judged = replace(desk.review(), findings=findings, steps=steps)
    put(sheets, (*claim(review=judged).sides,))
    said = _said(drawn(sheets))
    assert "9.20 ± 0.20" in said
    assert "can't tell" not in said
    assert "run more than once" in said


def test_of_speeds_run_once_nothing_is_said_of_more(claim, sheets, drawn, desk):
    judged = replace(desk.review(), findings=(_finding(3, 20, Verdict.PASS, 9.2),))
    add_key_readings(sheets, (*claim(review=judged).sides,))
    assert "more than once" not in _said(drawn(sheets))


@pytest.mark.parametrize(
    ("low", "high", "decided", "shown"),
    [
        (2.2, 5.5, 5.5, "2.2 to 5.5 A"),
        (2.2, 5.5, 2.2, "2.2 to 5.5 A"),
        (None, 5.5, 5.5, "5.5 A"),
        (2.2, 5.5, 4.0, "4 A"),
    ],
)
def test_both_limits_of_a_step_stand_there_where_there_are_two(low, high, decided, shown):
    limits = Limits(speeds={1: SpeedLimits(low, high)})
    (row,) = findings_rows((_finding(1, 0, Verdict.PASS, 3.9, decided),), limits)
    assert row.cells[7] == shown


def test_a_limit_of_another_kind_is_shown_as_it_is():
    dead = replace(_finding(1, 0, Verdict.FAIL, 0.0, 5.5), kind=FindingKind.DEAD)
    (row,) = findings_rows((dead,), Limits(speeds={1: SpeedLimits(2.2, 5.5)}))
    assert row.cells[7] == "5.5 A"


@pytest.mark.parametrize("found", [True, False])
def test_what_found_means_is_said_where_a_speed_was_found(sheets, drawn, desk, found):
    judged = replace(desk.review(), steps=(replace(_step(3, 20, 30), found=found),))
    add_steps(sheets, judged, Limits())
    assert ("Found: nobody recorded" in _said(drawn(sheets))) is found


def test_it_says_how_verify_counts_the_files(claim, sheets, drawn):
    names = ("a", "b", "manifest-sha256.txt", "tagmanifest-sha256.txt", "signature.json")
    add_proof(sheets, claim(), names)
    said = _said(drawn(sheets))
    assert "viewer: 5." in said
    assert "counts 3 of them" in said
    assert "tagmanifest-sha256.txt (the last list) and signature.json" in said
