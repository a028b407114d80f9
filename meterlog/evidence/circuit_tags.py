"""CircuitTags: where words go in a drawing so that they cover neither lines nor each other."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from PySide6.QtCore import QPointF, QRectF, QSizeF

_GAP = 2.0
_LINE, _WORDS, _DOT = 0.25, 4.0, 8.0
"""What covering a line, other words or a dot counts against covering a symbol."""
_FAR = 0.3
"""What standing a line of text further off counts against covering a symbol with all of it."""


class CircuitTags:
    """Finds room for one tag after the other; the first have the choice.

    Parameters
    ----------
    area : QRectF
        No tag may leave it.
    dots, boxes, lines : iterable of QRectF
        What is covered only if there is no other room: lines first, other tags later, dots last.
    """

    def __init__(
        self,
        area: QRectF,
        dots: Iterable[QRectF] = (),
        boxes: Iterable[QRectF] = (),
        lines: Iterable[QRectF] = (),
    ) -> None:
        self._area = area
        self._dots = list(dots)
        self._boxes = list(boxes)
        self._words: list[QRectF] = []
        self._lines = list(lines)

    def place(self, around: QRectF, size: QSizeF, *, must: bool = False) -> QRectF | None:
        """Find room beside something.

        Parameters
        ----------
        around : QRectF
            What the tag belongs to.
        size : QSizeF
        must : bool
            Where there is no room, take the place that covers least.

        Returns
        -------
        QRectF or None
            None where there is no room. What is given counts as taken from now on.
        """
        near = _places(around, size)
        # What is not read beside its own dot is read as another one's: only what must stand there.
        high = size.height()
        tried = [(place, 0.0) for place in near]
        for by in (-1.0, 1.0, -2.0, 2.0, -3.0) if must else ():
            far = _FAR * abs(by) * high * size.width()
            tried += [(one.translated(0.0, by * high), far) for one in near[:8]]
        best, least = None, float("inf")
        for place, far in tried:
            if not self._area.contains(place):
                continue
            covered = self._covered(place) + far
            if covered < least:
                best, least = place, covered
            if covered == 0.0:
                break
        if best is None or (least > 0.0 and not must):
            return None
        self._words.append(best)
        return best

    def _covered(self, place: QRectF) -> float:
        least = _LINE * _shared(place, self._lines) + _shared(place, self._boxes)
        return least + _WORDS * _shared(place, self._words) + _DOT * _shared(place, self._dots)


def _shared(place: QRectF, others: Iterable[QRectF]) -> float:
    both = (one.intersected(place) for one in others)
    return sum(one.width() * one.height() for one in both if not one.isEmpty())


def _places(around: QRectF, size: QSizeF) -> Sequence[QRectF]:
    wide, high = size.width(), size.height()
    middle = around.center()
    left, right = around.left() - wide - _GAP, around.right() + _GAP
    above, below = around.top() - high - _GAP, around.bottom() + _GAP
    level, centred = middle.y() - high / 2.0, middle.x() - wide / 2.0
    spots = [
        (right, level), (centred, above), (centred, below), (left, level),
        (right, above), (right, below), (left, above), (left, below),
        (middle.x(), above), (middle.x(), below), (middle.x() - wide, above),
        (middle.x() - wide, below),
    ]  # fmt: skip
    return [QRectF(QPointF(x, y), size) for x, y in spots]
