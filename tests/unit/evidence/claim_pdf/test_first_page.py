"""The first page says what was left out, how much is not stated, and of checks that stand alone."""

from dataclasses import replace

import pytest

from meterlog.circuit import Isolation
from meterlog.evidence.circuit_files import JudgedCheck
from meterlog.evidence.claim_content import ClaimCircuit
from meterlog.evidence.claim_pdf.calibration import meter_name
from meterlog.evidence.claim_pdf.job_section import add_job
from meterlog.evidence.claim_pdf.limits_section import add_limits, limits_bases
from meterlog.evidence.claim_pdf.page_edges import claim_mark, side_title
from meterlog.evidence.claim_pdf.summary_page import add_summary
from meterlog.evidence.claim_pdf.writing import _chapters
from meterlog.model import CircuitCheck, Finding, FindingKind, Limits, Origin, Verdict
from meterlog.model.card_doubts import doubt_words
from meterlog.model.job_card import JobCard
from meterlog.profile import load_circuit


def _said(pages):
    return " ".join(" ".join(words for _, _, words, _ in page) for page in pages)


@pytest.fixture
def alone(claim):
    """Make a circuit check that was kept by itself."""

    def make(origin=None, name="circuit", **facts):
        recording = claim(origin).sides[0].recording
        circuit = load_circuit("low-side-linear-12v")
        check = CircuitCheck(circuit.name)
        judged = JudgedCheck(circuit, check, Isolation(circuit).verdict(check))
        return ClaimCircuit(name, recording, (judged,), **facts)

    return make


@pytest.mark.parametrize("bare", [False, True])
def test_it_says_that_customer_data_were_left_out(claim, sheets, drawn, bare):
    add_summary(sheets, claim(without_customer=bare))
    (page,) = drawn(sheets)
    assert ("Made without customer data" in _said([page])) is bare


def test_of_much_that_is_not_stated_it_says_how_much_and_the_first(claim, sheets, drawn):
    missing = tuple(f"Thing {k} is not stated." for k in range(20))
    content = claim(missing=missing)
    add_summary(sheets, content)
    said = _said(drawn(sheets))
    assert "20 things, the first of them: Thing 0 is not stated." in said
    assert "Thing 3 is" in said
    assert "Thing 4 is" not in said
    sheets.new_page()
    add_job(sheets, content)
    assert "Thing 19 is not stated." in _said(drawn(sheets)[1:])


def test_of_little_it_says_all(claim, sheets, drawn):
    add_summary(sheets, claim(missing=("This is not stated.", "That is not stated.")))
    assert "This is not stated. That is not stated." in _said(drawn(sheets))


def test_a_check_kept_by_itself_belongs_to_no_side(claim, alone, sheets, drawn):
    content = claim(circuits=(alone(), alone(name="circuit-2", lacking=("It was never sealed.",))))
    for _ in _chapters(sheets, content, {}):
        pass
    sheets.settle()
    said = _said(drawn(sheets))
    assert "Circuit check 1, kept by itself" in said
    assert "Circuit check 2, kept by itself" in said
    assert "Circuit check 1, before" not in said
    assert "Circuit check kept by itself, 2: It was never sealed." in said
    # A name of a file of the export stands nowhere in place of a chapter.
    assert "circuit.txt" not in said


def test_its_origin_counts_in_the_mark_of_all_pages(claim, alone):
    measured, simulated = claim(), claim(Origin.SIMULATED)
    assert claim_mark(replace(measured, circuits=(alone(),))) == ""
    check = alone(Origin.SIMULATED)
    assert claim_mark(replace(measured, circuits=(check,))) == "CIRCUIT: SIMULATED"
    assert claim_mark(replace(simulated, circuits=(check,))) == "SIMULATED"
    assert claim_mark(replace(simulated, circuits=(alone(),))) == "BEFORE: SIMULATED"
    assert side_title(check) == "Circuit check kept by itself"


def test_a_vin_that_fails_its_check_digit_is_told_on_both_pages(claim, sheets, drawn):
    card = replace(claim().card, vin="1M8GDM9AXKP042789")
    content = claim(card=card)
    (words,) = doubt_words(card)
    add_summary(sheets, content)
    sheets.new_page()
    add_job(sheets, content)
    for page in drawn(sheets):
        assert "".join(words.split()) in "".join(_said([page]).split())


def test_it_says_when_by_what_and_by_which_limits(claim, sheets, drawn, desk):
    found = Finding(
        FindingKind.STEP_CURRENT, Verdict.PASS, 10, 15, 0, 4.0, "A", 0.2, 5.0, 1, "A sentence."
    )
    content = claim(review=replace(desk.review(), findings=(found,)))
    about = content.sides[0].recording.about
    limits = Limits("shop", basis="The maker's table.", text="a_line = 1\n")
    content.sides[0].recording.about = replace(about, limits=limits)
    add_summary(sheets, content)
    sheets.new_page()
    add_limits(sheets, content.sides)
    first, second = (_said([page]) for page in drawn(sheets))
    assert "Pack made 2026-06-01 06:00 UTC" in first
    assert f"Recorded {about.started_utc:%Y-%m-%d %H:%M} UTC, " in first
    assert meter_name(about.instruments[0]) in first
    for page in (first, second):
        assert "Limits shop: The maker's table." in page
    assert "a_line = 1" in second


def test_long_words_are_shortened_before_the_table_goes(claim, sheets, drawn, desk, told):
    found = Finding(
        FindingKind.STEP_CURRENT, Verdict.PASS, 10, 15, 0, 4.0, "A", 0.2, 5.0, 1, "A sentence."
    )
    long = replace(desk.review(), findings=(found,), verdict=told(paragraph="words " * 400))
    content = claim(review=long, missing=("x " * 900,), card=JobCard(complaint="y " * 900))
    content = replace(content, sides=content.sides * 3)
    add_summary(sheets, content)
    (page,) = drawn(sheets)
    assert "before: verdict" in _said([page])
    assert " …" in _said([page])


def test_the_table_becomes_a_sentence_before_a_verdict_loses_what_speaks_against_it(
    claim, sheets, drawn, desk, told
):
    findings = tuple(
        Finding(
            FindingKind.STEP_CURRENT, Verdict.PASS, 10, 15, 0, 4.0, "A", 0.2, 5.0, speed, "It ran."
        )
        for speed in range(1, 9)
    )
    paragraph = f"{'words ' * 480} Against it: the last of it."
    review = replace(desk.review(), findings=findings, verdict=told(paragraph=paragraph))
    content = claim(review=review, card=JobCard(complaint="words " * 470))
    limits = Limits("shop", basis="The maker's table.")
    content.sides[0].recording.about = replace(content.sides[0].recording.about, limits=limits)
    add_summary(sheets, content)
    (page,) = drawn(sheets)
    said = " ".join(_said([page]).split())
    assert "Against it: the last of it." in said
    assert "before: verdict" not in said
    assert "speed 8: before 4.00 ± 0.20 pass." in said
    # By which limits stays, as nobody may take shop defaults for the maker's.
    assert "Limits shop: The maker's table." in said


@pytest.mark.parametrize("sides", [1, 2, 3])
def test_on_a_crowded_page_what_comes_next_goes_before_what_speaks_against(
    claim, sheets, drawn, desk, told, sides
):
    against = "Against it: the last of it, which nobody may miss."
    text = f"A fault was found. {'rests ' * 60}{against} Next: {'look ' * 300}"
    shorter = (f"A fault was found. {'rests ' * 60}{against}", f"A fault was found. {against}")
    verdict = replace(told(paragraph=text), shorter=shorter)
    content = claim(
        review=replace(desk.review(), verdict=verdict),
        missing=tuple("x " * 300 for _ in range(9)),
        card=JobCard(complaint="y " * 900, cause="z " * 900, correction="z " * 900),
    )
    lacking = tuple(f"Doubt {number}." for number in range(10))
    side = replace(content.sides[0], lacking=lacking)
    add_summary(sheets, replace(content, sides=(side,) * sides))
    (page,) = drawn(sheets)
    said = " ".join(_said([page]).split())
    assert said.count(f"{against} …") == sides
    assert "look look" not in said
    told = said.count("Doubt ") // sides
    assert 1 <= told < 10
    assert said.count(f"Doubt {told - 1}. and {10 - told} more, on the pages that") == sides
    assert "Where … stands, the pages that follow have the rest." in said


def test_limits_that_rest_on_the_same_are_told_in_one_sentence():
    ours = [Limits("shop", basis="By hand."), Limits("shop, amended", basis="By hand. ")]
    assert limits_bases(ours) == ["Limits shop; shop, amended: By hand."]
    assert limits_bases([ours[0], ours[0]]) == ["Limits shop: By hand."]
    assert len(limits_bases([*ours, Limits("maker", basis="The maker's.")])) == 2
