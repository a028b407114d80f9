"""The whole PDF of a claim: what stands on its pages, and what it does with bad things."""

import re
from dataclasses import replace

import pikepdf
import pytest
from PySide6.QtGui import QColor, QImage

from meterlog.evidence.claim_content import PageSize
from meterlog.evidence.claim_pdf import write_claim_pdf
from meterlog.evidence.claim_pdf.job_section import add_job
from meterlog.evidence.claim_pdf.photos_section import add_photos
from meterlog.evidence.claim_pdf.side_section import add_side
from meterlog.evidence.claim_pdf.summary_page import add_summary
from meterlog.model import Origin, Outcome
from meterlog.model.errors import EvidenceError
from meterlog.model.job_card import JobCard


def _said(pages):
    return " ".join(words for page in pages for _, _, words, _ in page)


def _write(content, path, page=PageSize.A4, attached=None, progress=lambda _: None):
    write_claim_pdf(content, path, page, attached or {}, progress)
    return path


def test_equal_contents_give_equal_files(claim, tmp_path):
    content = claim()
    first = _write(content, tmp_path / "a.pdf", attached={"a.csv": b"1"}).read_bytes()
    assert _write(content, tmp_path / "b.pdf", attached={"a.csv": b"1"}).read_bytes() == first
    assert sorted(path.name for path in tmp_path.glob("*.p*")) == ["a.pdf", "b.pdf"]


def test_progress_goes_up_to_the_end_and_may_cancel(claim, tmp_path):
    told = []
    _write(claim(), tmp_path / "a.pdf", progress=told.append)
    assert told == sorted(told)
    assert told[-1] == 1.0

    def cancel(part):
        if part > 0.7:
            raise InterruptedError

    with pytest.raises(InterruptedError):
        _write(claim(), tmp_path / "b.pdf", progress=cancel)
    assert not list(tmp_path.glob("b.pdf*"))


def test_a_folder_that_is_not_there_is_said(claim, tmp_path):
    with pytest.raises(EvidenceError, match="can't be written"):
        _write(claim(), tmp_path / "none" / "a.pdf")


@pytest.mark.parametrize(
    ("stated", "dated"),
    [
        ("2026-06-01T08:00:00+02:00", "D:20260601060000Z"),
        ("2026-06-01T08:00:00", "D:20260601080000Z"),
        ("", "D:20260504102030Z"),
        ("lately", "D:20260504102030Z"),
    ],
)
def test_the_dates_are_those_of_the_claim_else_of_its_last_run(claim, tmp_path, stated, dated):
    path = _write(claim(made_utc=stated), tmp_path / "a.pdf")
    with pikepdf.open(path) as document:
        assert document.docinfo.CreationDate == dated


def test_nothing_on_the_card_and_no_run_is_a_pdf_all_the_same(claim, tmp_path):
    content = replace(claim(), card=JobCard(), sides=())
    with pikepdf.open(_write(content, tmp_path / "a.pdf")) as document:
        assert len(document.pages) >= 2


def test_the_first_page_holds_all_that_decides(claim, sheets, drawn):
    content = claim(origin=Origin.SIMULATED, missing=("the odometer",), amendments=("one edit",))
    add_summary(sheets, content)
    (page,) = drawn(sheets)
    said = _said([page])
    for words in (
        "Cabin fan: work order W-1 (invented)",
        "They prove nothing about any vehicle.",
        "fan motor, number X-1, serial 7, date code 2107",
        "Fan stops, runs again when hit.",
        "Before the repair fault found",
        "The motor opens inside (invented).",
        "when its calibration is due is not stated",
        "the odometer",
        "1 made on top of the recordings",
    ):
        assert words in said
    assert not sheets.is_shortened


@pytest.mark.parametrize("size", [1, 40, 400, 4000])
def test_however_long_the_words_the_summary_is_one_page_and_says_so(
    claim, sheets, drawn, told, desk, size
):
    many = "words without end " * size
    review = replace(desk.review(), verdict=told(Outcome.CANT_TELL, many))
    card = JobCard(complaint=many, vehicle=many, vin="V" * 3 * size, customer=many)
    missing = tuple(f"thing {k}" for k in range(size))
    content = claim(review=review, card=card, missing=missing)
    content = replace(content, sides=(*content.sides, replace(content.sides[0], name="after")))
    add_summary(sheets, content)
    (page,) = drawn(sheets)
    assert max(y for _, y, _, _ in page) <= sheets.bottom
    assert ("Where … stands" in _said([page])) is (size > 40)
    assert "Before the repair can't tell" in _said([page])
    assert "After the repair can't tell" in _said([page])


def test_the_card_is_told_in_full(claim, sheets, drawn):
    card = JobCard(complaint="words without end " * 1500, hours="12 h", filter="used")
    add_job(sheets, claim(card=card, without_customer=True))
    said = _said(drawn(sheets))
    assert said.count("without end") == 1500
    assert re.search(r"Hours 12 h", said)
    assert "Filter used" in said
    assert "Made without customer data" in said


def test_a_run_tells_verdict_steps_and_findings(claim, sheets, drawn):
    (side,) = claim().sides
    add_side(sheets, replace(side, lacking=("a check can't be judged",)), JobCard())
    said = _said(drawn(sheets))
    for words in (
        "1. motor (proven; beyond its limit with probability above 0.999)",
        "rests on: one dead stretch",
        "against it: no tap test",
        "next: Tap it.",
        "a check can't be judged",
        "No current for 2.0 s although 12.5 V stood across the motor.",
        "0.010 ± 0.020 A",
    ):
        assert words in said
    assert "nan" not in said


def test_photos_are_shown_and_bad_ones_said_in_words(claim, sheets, drawn, tmp_path):
    image = QImage(300, 200, QImage.Format.Format_ARGB32)
    image.fill(QColor(255, 0, 0, 80))
    good, bad = tmp_path / "label.png", tmp_path / "plug.jpg"
    image.save(str(good))
    bad.write_bytes(b"no picture")
    add_photos(sheets, (good, bad, tmp_path / "gone.jpg"))
    said = _said(drawn(sheets))
    assert "Photo 1: label.png" in said
    assert "Photo 2, plug.jpg: can't be shown: " in said
    assert "Photo 3, gone.jpg: can't be shown: there is no such file." in said


def test_a_photo_is_put_in_no_larger_than_paper_can_show(sheets, tmp_path, claim):
    image = QImage(3000, 500, QImage.Format.Format_RGB32)
    image.fill(QColor("blue"))
    path = tmp_path / "wide.png"
    image.save(str(path))
    content = claim(photos=(path,) * 5)
    out = _write(content, tmp_path / "a.pdf")
    with pikepdf.open(out) as document:
        images = [
            one
            for one in document.objects
            if isinstance(one, pikepdf.Stream) and one.get("/Subtype") == "/Image"
        ]
        sizes = [(int(one.Width), int(one.Height)) for one in images]
    assert set(sizes) == {(1050, 175)}
