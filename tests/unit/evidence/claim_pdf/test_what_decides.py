"""What a reviewer decides by: marks of origin, key readings, comparison, odd contents."""

from dataclasses import replace

import pikepdf
import pytest

from meterlog.evidence.claim_content import PageSize
from meterlog.evidence.claim_pdf import write_claim_pdf
from meterlog.evidence.claim_pdf.comparison_section import add_comparison
from meterlog.evidence.claim_pdf.key_readings import add_key_readings
from meterlog.evidence.claim_pdf.page_edges import claim_mark
from meterlog.model import (
    Budget,
    ComparedRun,
    Comparison,
    ConditionCheck,
    Finding,
    FindingKind,
    Limits,
    Origin,
    Overlay,
    SpeedLimits,
    StepDifference,
    Verdict,
)
from meterlog.model.job_card import JobCard


def _words(sheets, drawn):
    return [words for page in drawn(sheets) for _, _, words, _ in page]


def _finding(speed, verdict, value):
    return Finding(
        FindingKind.STEP_CURRENT, verdict, speed * 10, speed * 10 + 5, 0, value, "A", 0.2, 5.0,
        speed, "A sentence.",
    )  # fmt: skip


def test_the_mark_says_of_which_side_it_is_where_they_differ(claim):
    simulated, measured = claim(Origin.SIMULATED).sides[0], claim().sides[0]
    content = claim()
    assert claim_mark(content) == ""
    assert claim_mark(replace(content, sides=(simulated,))) == "SIMULATED"
    both = (measured, replace(simulated, name="after"))
    assert claim_mark(replace(content, sides=both)) == "AFTER: SIMULATED"


def test_key_readings_have_the_gravest_verdict_of_a_speed(claim, sheets, drawn, desk):
    findings = (
        _finding(1, Verdict.PASS, 4.0),
        _finding(1, Verdict.FAIL, -6.0),
        _finding(1, Verdict.CANT_TELL, 5.0),
        _finding(2, Verdict.PASS, float("nan")),
    )
    (side,) = claim(review=replace(desk.review(), findings=findings)).sides
    limits = Limits(speeds={1: SpeedLimits(2.0, 5.0), 2: SpeedLimits(None, 8.0)})
    side.recording.about = replace(side.recording.about, limits=limits)
    add_key_readings(sheets, (side,))
    words = _words(sheets, drawn)
    assert words[4:11] == [*("1", "2 to 5", "6.00 ± 0.20", "fail"), *("2", "to 8", "pass")]
    assert "run more than once: the run that failed" in " ".join(words[11:])


def test_no_table_where_no_speed_was_judged_or_too_many(claim, sheets, drawn, desk):
    (side,) = claim().sides
    add_key_readings(sheets, (side,))
    many = tuple(_finding(speed, Verdict.PASS, 1.0) for speed in range(30))
    (side,) = claim(review=replace(desk.review(), findings=many)).sides
    add_key_readings(sheets, (side,))
    assert _words(sheets, drawn) == []


def _comparison(**facts):
    run = ComparedRun("run", "id-1", "motor", "2026-05-04T10:20:30Z", "measured")
    amps = Budget("current", 5.0, "A", (), 0.1, 9.0, 2.0, 0.2)
    step = StepDifference(
        3, 9.0, 9.0, 9.0, amps, amps, amps, amps, None, None, None, 0, Verdict.FAIL, 0.01, "More."
    )
    given = {
        "old": (run,),
        "new": run,
        "refusal": "",
        "conditions": (ConditionCheck("filter", "new", "", "not stated", "Say it."),),
        "steps": (step,),
        "overlays": (Overlay("time", None, (0.0, 1.0, 2.0), (1.0, float("nan"), 2.0), (3.0,) * 3),),
        "notes": ("A note.",),
        "summary": "They differ.",
    }
    return Comparison(**{**given, **facts})


@pytest.mark.parametrize(("most", "told"), [(None, "they differ"), (5.0, "fail")])
def test_a_difference_is_a_failure_only_where_a_limit_is_set(sheets, drawn, most, told):
    add_comparison(sheets, _comparison(max_difference_percent=most), JobCard())
    words = _words(sheets, drawn)
    assert told in words
    assert ("fail" in words) is (told == "fail")
    for said in (
        "They differ.",
        "More.",
        "cabin filter",
        "not stated",
        "Say it.",
        "A note.",
        "old",
    ):
        assert said in words


def test_a_refusal_is_said_and_no_table_made(sheets, drawn):
    refused = _comparison(
        refusal="These can't be compared.", steps=(), overlays=(), conditions=(), summary=""
    )
    add_comparison(sheets, refused, JobCard())
    words = _words(sheets, drawn)
    assert "These can't be compared." in words
    assert "speed" not in words


ODD = JobCard(
    work_order='W<&>\n"x"\x00\ud800',
    claim_number="C" * 300,
    vehicle="\u0634\u0627\u062d\u0646\u0629 \u6d4b\u8bd5 \U0001f697",
    complaint="\t\u202eabc\u0301 " * 50 + "\u6e2c\u8a66" * 400,
    vin="<script>",
)


@pytest.mark.parametrize("page", PageSize)
def test_odd_words_break_nothing(claim, tmp_path, page):
    many = ("m" * 900,) * 9
    content = claim(card=ODD, missing=many, amendments=many, fingerprint="f" * 300)
    write_claim_pdf(content, tmp_path / "a.pdf", page, {"a": b""}, lambda _: None)
    with pikepdf.open(tmp_path / "a.pdf") as document, document.open_metadata() as said:
        assert said["pdfaid:part"] == "3"
        assert said["dc:title"] == str(document.docinfo.Title)
        assert 'W<&> "x"' in said["dc:title"]
