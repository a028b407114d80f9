"""PhotosSection: the photos of a claim, scaled, two beside each other."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QImage, QImageReader, QPainter

from meterlog.evidence.claim_pdf.page_look import FAINT
from meterlog.evidence.claim_pdf.sheets import Draw, Sheets

_MOST = 1400
"""Pixels of a photo's longer side: about 400 to the inch at the size it has on the page."""
_BETWEEN = 16.0
_HIGH = 300.0


def add_photos(sheets: Sheets, photos: Sequence[Path]) -> None:
    """Put the chapter; nothing without photos. One that can't be read is said in words."""
    if not photos:
        return
    sheets.heading("Photos", chapter=True, keep=_HIGH)
    wide = (sheets.width - _BETWEEN) / 2.0
    numbered = [(number, path, *_read(path)) for number, path in enumerate(photos, 1)]
    good = [(number, path, image) for number, path, image, _ in numbered if image is not None]
    for start in range(0, len(good), 2):
        _pair(sheets, good[start : start + 2], wide)
    for number, path, image, why in numbered:
        if image is None:
            sheets.words(f"Photo {number}, {path.name}: can't be shown: {why}.")


def _pair(sheets: Sheets, photos: Sequence[tuple[int, Path, QImage]], wide: float) -> None:
    sizes = [_fitted(image, wide) for _, _, image in photos]
    captions = [
        sheets.lines_of(f"Photo {number}: {path.name}", FAINT, wide) for number, path, _ in photos
    ]
    high = max(height for _, height in sizes)
    line = sheets.line_height(FAINT)
    below = line * max(map(len, captions))
    sheets.need(high + below + 12.0)
    for at, ((_, _, image), (width, height)) in enumerate(zip(photos, sizes, strict=True)):
        left = sheets.left + at * (wide + _BETWEEN)
        sheets.draw(_painted(image, QRectF(left, sheets.y, width, height)))
        for number, words in enumerate(captions[at]):
            sheets.write_line(words, FAINT, left, sheets.y + height + 3.0 + number * line)
    sheets.y += high + below + 12.0


def _painted(image: QImage, rect: QRectF) -> Draw:
    def paint(painter: QPainter) -> None:
        painter.drawImage(rect, image, QRectF(image.rect()))

    return paint


def _fitted(image: QImage, wide: float) -> tuple[float, float]:
    share = min(wide / image.width(), _HIGH / image.height())
    return image.width() * share, image.height() * share


def _read(path: Path) -> tuple[QImage | None, str]:
    """Read a photo upright and no larger than needed; None with the reason where it can't be."""
    if not path.is_file():
        return None, "there is no such file"
    reader = QImageReader(str(path))
    # By what it is, not by the ending of its name.
    reader.setDecideFormatFromContent(True)
    reader.setAutoTransform(True)
    size = reader.size()
    if size.isValid() and max(size.width(), size.height()) > _MOST:
        bounds = QSize(_MOST, _MOST)
        reader.setScaledSize(size.scaled(bounds, Qt.AspectRatioMode.KeepAspectRatio))
    image = reader.read()
    if image.isNull() or not image.width() or not image.height():
        return None, reader.errorString() or "it is no picture"
    return _opaque(image), ""


def _opaque(image: QImage) -> QImage:
    """Lay a picture on white: PDF/A-1, on which the pages are built, knows nothing see-through."""
    whole = QImage(image.size(), QImage.Format.Format_RGB32)
    whole.fill(Qt.GlobalColor.white)
    painter = QPainter(whole)
    painter.drawImage(0, 0, image)
    painter.end()
    return whole
