"""A painter that notes what it writes, and claims made of the small invented recording."""

from dataclasses import replace

import pytest
from PySide6.QtCore import QBuffer, QIODevice
from PySide6.QtGui import QImage, QPainter, QPdfWriter

from meterlog.evidence.claim_content import ClaimContent, ClaimSide, PageSize
from meterlog.evidence.claim_pdf.page_look import paper_size
from meterlog.evidence.claim_pdf.sheets import Sheets
from meterlog.model import Outcome, Ranked, RunVerdict, Sureness
from meterlog.model.job_card import JobCard, PartIdentity


class Notes(QPainter):
    """Notes each text that is drawn at a point, with that point and the font."""

    def __init__(self, image):
        super().__init__(image)
        self.texts = []

    def drawText(self, at, *words):  # noqa: N802 - as Qt names it
        if len(words) == 1:
            place = self.transform().map(at)
            self.texts.append((place.x(), place.y(), words[0], self.font()))
        super().drawText(at, *words)


@pytest.fixture
def sheets(qapp):
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QPdfWriter(buffer)
    writer.setResolution(1200)
    one = Sheets(writer, paper_size(PageSize.A4))
    one.kept_alive = buffer
    return one


@pytest.fixture
def drawn():
    """Give what stands on each page: (x, y, words, font), from what was laid out."""

    def draw(sheets):
        pages = []
        for page in sheets.pages:
            image = QImage(sheets.paper.toSize(), QImage.Format.Format_RGB32)
            notes = Notes(image)
            for one in page:
                notes.save()
                one(notes)
                notes.restore()
            pages.append(notes.texts)
            notes.end()
        return pages

    return draw


def verdict(outcome=Outcome.FAULT, paragraph="The motor opens inside (invented)."):
    one = Ranked(
        "The motor opens inside.", "motor", Sureness.PROVEN, 0.9999, ("one dead stretch",),
        ("no tap test",), "Tap it.",
    )  # fmt: skip
    return RunVerdict(outcome, paragraph, (one,), ("Dropouts shorter than 0.2 s.",))


CARD = JobCard(
    work_order="W-1 (invented)",
    vehicle="invented van",
    complaint="Fan stops, runs again when hit.",
    old_part=PartIdentity("fan motor", "X-1", "7", "2107"),
)


@pytest.fixture
def claim(desk, tmp_path):
    """Make a claim of one run; facts of its content may be given."""

    def make(origin=None, review=None, **facts):
        folder = tmp_path / f"run-{len(list(tmp_path.iterdir()))}"
        recording = desk.make(folder) if origin is None else desk.make(folder, origin)
        judged = replace(desk.review(), verdict=verdict()) if review is None else review
        side = ClaimSide("before", recording, judged)
        given = {"made_utc": "2026-06-01T08:00:00+02:00", **facts}
        return ClaimContent(**{"card": CARD, "sides": (side,), **given})

    return make


@pytest.fixture
def told():
    """Make a verdict with a given outcome and paragraph."""
    return verdict
