"""PhotosSection: the photos of a claim, scaled, two beside each other.

Each is read when it is painted and not kept: a hundred of them would fill the memory.
"""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QImage, QImageIOHandler, QImageReader, QPainter

from meterlog.evidence.claim_pdf.page_look import FAINT
from meterlog.evidence.claim_pdf.sheets import Draw, Sheets

_MOST = 1050
"""Pixels of a photo's longer side: about 300 to the inch at the size it has on the page."""
_BETWEEN = 16.0
_HIGH = 300.0


def add_photos(sheets: Sheets, photos: Sequence[Path], names: Sequence[str] = ()) -> None:
    """Put the chapter; nothing without photos. One that can't be read is said in words.

    Parameters
    ----------
    sheets : Sheets
    photos : sequence of Path
    names : sequence of str
        What each was called before it was put into the pack; empty where that is not to be said.
    """
    if not photos:
        return
    sheets.heading("Photos", chapter=True, keep=_HIGH)
    wide = (sheets.width - _BETWEEN) / 2.0
    numbered = [(number, path, *_size(path)) for number, path in enumerate(photos, 1)]
    called = [f", called {name} on the job card" if name else "" for name in names]
    captions = {
        path: f"Photo {number}: {path.name}{called[number - 1] if called else ''}"
        for number, path in enumerate(photos, 1)
    }
    good = [(captions[path], path, size) for _, path, size, _ in numbered if size is not None]
    for start in range(0, len(good), 2):
        _pair(sheets, good[start : start + 2], wide)
    for number, path, size, why in numbered:
        if size is None:
            sheets.words(f"Photo {number}, {path.name}: can't be shown: {why}.")


def _pair(sheets: Sheets, photos: Sequence[tuple[str, Path, QSize]], wide: float) -> None:
    sizes = [_fitted(size, wide) for _, _, size in photos]
    captions = [sheets.lines_of(caption, FAINT, wide) for caption, _, _ in photos]
    high = max(height for _, height in sizes)
    line = sheets.line_height(FAINT)
    below = line * max(map(len, captions))
    sheets.need(high + below + 12.0)
    for at, ((_, path, _), (width, height)) in enumerate(zip(photos, sizes, strict=True)):
        left = sheets.left + at * (wide + _BETWEEN)
        sheets.draw(_painted(path, QRectF(left, sheets.y, width, height)))
        for number, words in enumerate(captions[at]):
            sheets.write_line(words, FAINT, left, sheets.y + height + 3.0 + number * line)
    sheets.y += high + below + 12.0


def _painted(path: Path, rect: QRectF) -> Draw:
    def paint(painter: QPainter) -> None:
        reader = _reader(path)
        size = reader.size()
        if max(size.width(), size.height()) > _MOST:
            bounds = QSize(_MOST, _MOST)
            reader.setScaledSize(size.scaled(bounds, Qt.AspectRatioMode.KeepAspectRatio))
        image = reader.read()
        if image.isNull():
            painter.setFont(FAINT.font())
            words = f"can't be shown: {reader.errorString()}"
            painter.drawText(rect, Qt.TextFlag.TextWordWrap, words)
        else:
            opaque = _opaque(image)
            painter.drawImage(rect, opaque, QRectF(opaque.rect()))

    return paint


def _fitted(size: QSize, wide: float) -> tuple[float, float]:
    share = min(wide / size.width(), _HIGH / size.height())
    return size.width() * share, size.height() * share


def _reader(path: Path) -> QImageReader:
    reader = QImageReader(str(path))
    # By what it is, not by the ending of its name.
    reader.setDecideFormatFromContent(True)
    reader.setAutoTransform(True)
    return reader


def _size(path: Path) -> tuple[QSize | None, str]:
    """Give a photo's size when upright; None with the reason where it can't be read."""
    if not path.is_file():
        return None, "there is no such file"
    reader = _reader(path)
    size = reader.size()
    if not reader.canRead() or not size.isValid() or not size.width() or not size.height():
        return None, reader.errorString() or "it is no picture"
    turned = reader.transformation() & QImageIOHandler.Transformation.TransformationRotate90
    return (size.transposed() if turned else size), ""


def _opaque(image: QImage) -> QImage:
    """Lay a picture on white: PDF/A-1, on which the pages are built, knows nothing see-through."""
    whole = QImage(image.size(), QImage.Format.Format_RGB32)
    whole.fill(Qt.GlobalColor.white)
    painter = QPainter(whole)
    painter.drawImage(0, 0, image)
    painter.end()
    return whole
