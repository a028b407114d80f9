"""CircuitTags: where words go in a drawing so that they cover neither lines nor each other."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import product

import numpy as np
from PySide6.QtCore import QPointF, QRectF, QSizeF

_GAP = 2.0
_LINE, _BOX, _WORDS, _DOT = 0.25, 1.0, 4.0, 8.0
"""What covering a line, a symbol, other words or a dot counts, by its area."""
_TOUCHED = 3.0
"""What covering any bit of other words or of a dot counts besides, in areas of the tag."""
_FAR = 0.3
"""What standing a line of text further off counts against covering a symbol with all of it."""
_LINES = (0.0, *(way * off / 2 for off in range(1, 11) for way in (-1, 1)))
"""How far off a tag may stand that must stand somewhere, in lines of text."""
_WIDTHS = (0.0, -0.5, 0.5, -1.0, 1.0)
"""And to the side, in its own widths."""
_ASIDE = 2.0
"""A width to the side counts as so many lines."""


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
        (self._area,) = _edges([area])
        dots, boxes, lines = list(dots), list(boxes), list(lines)
        self._taken = _edges([*dots, *boxes, *lines])
        weights = [_DOT] * len(dots) + [_BOX] * len(boxes) + [_LINE] * len(lines)
        self._weights = np.array(weights, dtype=np.float64)

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
        wide, high = size.width(), size.height()
        near = _places(around, size)
        costs = self._covered(near)
        best = int(costs.argmin())
        if costs[best] > 0.0:
            if not must:
                return None
            # What is not read beside its own dot is read as another one's: only what must stand.
            tried, far = [near], [np.zeros(len(near))]
            for down, aside in product(_LINES, _WIDTHS):
                tried.append(near + np.tile((aside * wide, down * high), 2))
                off = abs(down) + _ASIDE * abs(aside)
                far.append(np.full(len(near), _FAR * off * wide * high))
            near = np.concatenate(tried)
            costs = self._covered(near) + np.concatenate(far)
            best = int(costs.argmin())
        if not np.isfinite(costs[best]):
            return None
        left, top = map(float, near[best, :2])
        self._taken = np.concatenate([self._taken, near[best : best + 1]])
        self._weights = np.append(self._weights, _WORDS)
        return QRectF(QPointF(left, top), size)

    def _covered(self, places: np.ndarray) -> np.ndarray:
        """Give what each place costs; infinite where it leaves the area."""
        low = np.maximum(places[:, None, :2], self._taken[None, :, :2])
        high = np.minimum(places[:, None, 2:], self._taken[None, :, 2:])
        both = np.clip(high - low, 0.0, None)
        shared = both[:, :, 0] * both[:, :, 1]
        costs = shared @ self._weights
        size = places[0, 2:] - places[0, :2]
        touched = (shared[:, self._weights >= _WORDS] > 0.0).any(axis=1)
        costs += touched * _TOUCHED * size[0] * size[1]
        inside = (places[:, :2] >= self._area[:2]).all(1) & (places[:, 2:] <= self._area[2:]).all(1)
        return np.where(inside, costs, np.inf)


def _edges(boxes: Sequence[QRectF]) -> np.ndarray:
    """Give left, top, right and bottom of each."""
    edges = [(one.left(), one.top(), one.right(), one.bottom()) for one in boxes]
    return np.array(edges, dtype=np.float64).reshape(-1, 4)


def _places(around: QRectF, size: QSizeF) -> np.ndarray:
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
    return np.array([(x, y, x + wide, y + high) for x, y in spots], dtype=np.float64)
