"""Writing: a claim as one PDF: a summary on its first page, and all that it rests on."""

from __future__ import annotations

import tempfile
from collections.abc import Callable, Iterator, Mapping
from datetime import UTC, datetime
from io import BytesIO
from pathlib import Path

from PySide6.QtCore import QBuffer, QIODevice, QMarginsF, qVersion
from PySide6.QtGui import QPageLayout, QPageSize, QPainter, QPdfWriter

import meterlog
from meterlog.evidence.claim_content import ClaimContent, ClaimSide, PageSize
from meterlog.evidence.claim_pdf.archive_form import Told, write_archived
from meterlog.evidence.claim_pdf.circuit_section import add_circuit
from meterlog.evidence.claim_pdf.comparison_section import add_comparison
from meterlog.evidence.claim_pdf.job_section import add_job
from meterlog.evidence.claim_pdf.method_section import add_method
from meterlog.evidence.claim_pdf.page_edges import add_edges, claim_title
from meterlog.evidence.claim_pdf.page_look import UNITS_PER_INCH, paper_size
from meterlog.evidence.claim_pdf.photos_section import add_photos
from meterlog.evidence.claim_pdf.proof_section import add_proof
from meterlog.evidence.claim_pdf.sheets import Mark, Sheets
from meterlog.evidence.claim_pdf.side_section import add_side
from meterlog.evidence.claim_pdf.summary_page import add_summary
from meterlog.evidence.packed_ahead import Packed, none_packed
from meterlog.evidence.pdf_form import LIBRARY
from meterlog.evidence.picture_screen import need_fonts
from meterlog.model.errors import EvidenceError
from meterlog.recording import UNDATED

_DOTS_PER_INCH = 144
"""Lines and letters have no dots. Hatches have: with many more they are too fine to be told."""
_SIZES = {PageSize.A4: QPageSize.PageSizeId.A4, PageSize.LETTER: QPageSize.PageSizeId.Letter}


def write_claim_pdf(
    content: ClaimContent,
    path: Path,
    page: PageSize,
    attachments: Mapping[str, bytes],
    progress: Callable[[float], None],
    packed: Callable[[str], Packed | None] = none_packed,
) -> None:
    """Write the PDF of a claim, a PDF/A-3b; works without a screen.

    Equal contents give equal files on one machine.

    Parameters
    ----------
    content : ClaimContent
    path : Path
        Its folder must exist; a file there is replaced once the new one is whole.
    page : PageSize
    attachments : mapping of str to bytes
        Files that it carries inside, by name.
    progress : callable
        Called with the part done, 0 to 1. May raise to cancel.
    packed : callable
        Gives one of the attachments, by its name, as it has been packed already, or None.

    Raises
    ------
    EvidenceError
        If there are no fonts on this machine, or the file can't be written.
    RecordingError
        If a block of a recording can't be read.
    """
    need_fonts(path)
    _try_place(path)
    # Drawn in memory: what a full disk cuts off, Qt does not tell.
    drawn = QBuffer()
    drawn.open(QIODevice.OpenModeFlag.WriteOnly)
    marks = _draw(content, drawn, path, page, attachments, progress)
    pages = BytesIO(drawn.data().data())
    drawn.close()
    told = _told(content)
    try:
        write_archived(pages, path, attachments, told, marks, lambda: progress(0.95), packed)
    except OSError as error:
        raise _cannot(path, error.strerror or str(error)) from error
    progress(1.0)


def _try_place(path: Path) -> None:
    """Find out whether it can be written before all is drawn."""
    try:
        with tempfile.TemporaryFile(dir=path.parent):
            pass
    except OSError as error:
        raise _cannot(path, error.strerror or str(error)) from error


def _told(content: ClaimContent) -> Told:
    creator, producer = f"meterlog {meterlog.__version__}", f"Qt {qVersion()}, {LIBRARY}"
    return Told(claim_title(content), creator, producer, _made(content))


def _draw(
    content: ClaimContent,
    drawn: QBuffer,
    path: Path,
    page: PageSize,
    attachments: Mapping[str, bytes],
    progress: Callable[[float], None],
) -> list[Mark]:
    """Draw all pages; give where chapters begin. Errors name ``path``."""
    writer = _writer(drawn, page, claim_title(content))
    sheets = Sheets(writer, paper_size(page))
    for done in _chapters(sheets, content, attachments):
        progress(0.6 * done)
    sheets.settle()
    add_edges(sheets, content)
    _paint(writer, sheets, path, lambda part: progress(0.6 + 0.35 * part))
    return sheets.marks


def _writer(drawn: QBuffer, page: PageSize, title: str) -> QPdfWriter:
    writer = QPdfWriter(drawn)
    writer.setPdfVersion(QPdfWriter.PdfVersion.PdfVersion_A1b)
    writer.setResolution(_DOTS_PER_INCH)
    size, upright = QPageSize(_SIZES[page]), QPageLayout.Orientation.Portrait
    writer.setPageLayout(QPageLayout(size, upright, QMarginsF(0.0, 0.0, 0.0, 0.0)))
    writer.setTitle(title)
    return writer


def _chapters(
    sheets: Sheets, content: ClaimContent, attachments: Mapping[str, bytes]
) -> Iterator[float]:
    """Put all chapters on the sheets; give the part done after each."""
    add_summary(sheets, content)
    sheets.new_page()
    add_job(sheets, content)
    yield 0.05
    count = len(content.sides)
    for number, side in enumerate(content.sides, 1):
        add_side(sheets, side, content.card)
        yield 0.05 + 0.5 * number / count
    add_comparison(sheets, content.comparison, content.card)
    checks = [(one, part) for part in content.recordings for one in part.checks]
    for number, (one, part) in enumerate(checks, 1):
        which = f" {number}" if len(checks) > 1 else ""
        whose = part.name if isinstance(part, ClaimSide) else "kept by itself"
        add_circuit(sheets, one, f"Circuit check{which}, {whose}")
        yield 0.55 + 0.3 * number / len(checks)
    add_photos(sheets, content.photos, content.photo_names)
    yield 0.9
    add_method(sheets, content)
    add_proof(sheets, content, attachments)
    yield 1.0


def _paint(
    writer: QPdfWriter, sheets: Sheets, path: Path, progress: Callable[[float], None]
) -> None:
    painter = QPainter()
    if not painter.begin(writer):
        raise _cannot(path, "it can't be begun")
    try:
        share = _DOTS_PER_INCH / UNITS_PER_INCH
        painter.scale(share, share)
        for number, page in enumerate(sheets.pages):
            if number and not writer.newPage():
                raise EvidenceError(
                    "a page can't be begun.", subject=str(path), remedy="Free some memory."
                )
            for draw in page:
                painter.save()
                draw(painter)
                painter.restore()
            progress((number + 1) / len(sheets.pages))
    finally:
        painter.end()


def _made(content: ClaimContent) -> datetime:
    """Give when the claim was made; where that is not said, when its last run began."""
    try:
        made = datetime.fromisoformat(content.made_utc)
    except ValueError:
        return max((one.recording.about.started_utc for one in content.recordings), default=UNDATED)
    return made if made.tzinfo is not None else made.replace(tzinfo=UTC)


def _cannot(path: Path, why: str) -> EvidenceError:
    return EvidenceError(
        f"the PDF can't be written: {why}.",
        subject=str(path),
        remedy="Choose a folder that you may write to, on a disk with room.",
    )
