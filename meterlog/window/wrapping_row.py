"""WrappingRow: groups of controls in a row that goes on in the next line where it is full."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QPoint, QRect, QSize, Qt
from PySide6.QtWidgets import QHBoxLayout, QLabel, QLayout, QLayoutItem, QWidget

_GAP = 10
_LINE_GAP = 3


class WrappingRow(QLayout):
    """A layout of groups, each a label and its controls; a group is never torn apart.

    Parameters
    ----------
    parent : QWidget
    """

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._items: list[QLayoutItem] = []
        self._groups: list[tuple[str, tuple[QWidget, ...]]] = []
        self.setContentsMargins(0, 0, 0, 0)

    def fill(self, groups: Sequence[tuple[str, Sequence[QWidget]]]) -> None:
        """Lay out groups anew: (label, controls) each; controls may have been there before."""
        old, self._items = dict(zip(self._groups, self._items, strict=True)), []
        self._groups = [(words, tuple(widgets)) for words, widgets in groups]
        for words, widgets in self._groups:
            stays = old.pop((words, widgets), None)
            if stays is not None:
                # To show a group takes as long as to lay out all of the page.
                self._items.append(stays)
                for hidden in (one for one in widgets if one.isHidden()):
                    hidden.show()
                continue
            group = QWidget()
            row = QHBoxLayout(group)
            row.setContentsMargins(0, 0, 0, 0)
            row.setSpacing(3)
            if words:
                label = QLabel(words)
                label.setProperty("rank", "second")
                row.addWidget(label)
            for widget in widgets:
                row.addWidget(widget)
                # What came from another group was hidden on the way.
                widget.show()
            self.addWidget(group)
            group.show()
        for item in old.values():
            gone = item.widget()
            if gone is not None:
                # Until it is deleted it would show through, under what stands there now.
                gone.hide()
                gone.deleteLater()
        self.invalidate()

    def addItem(self, item: QLayoutItem) -> None:
        """Add a group."""
        self._items.append(item)

    def count(self) -> int:
        """Give the number of groups."""
        return len(self._items)

    def itemAt(self, index: int) -> QLayoutItem | None:
        """Give a group; None beyond the last."""
        return self._items[index] if 0 <= index < len(self._items) else None

    def takeAt(self, index: int) -> QLayoutItem | None:
        """Take a group out; None beyond the last."""
        return self._items.pop(index) if 0 <= index < len(self._items) else None

    def expandingDirections(self) -> Qt.Orientation:
        """Say that it takes no more room than it needs."""
        return Qt.Orientation(0)

    def hasHeightForWidth(self) -> bool:
        """Say that its height depends on its width."""
        return True

    def heightForWidth(self, width: int) -> int:
        """Give the height of all lines."""
        return self._lay(QRect(0, 0, width, 0), move=False)

    def setGeometry(self, rect: QRect) -> None:
        """Put every group in its place."""
        super().setGeometry(rect)
        self._lay(rect, move=True)

    def sizeHint(self) -> QSize:
        """Give the room one line needs."""
        sizes = [item.sizeHint() for item in self._items]
        wide = sum(size.width() + _GAP for size in sizes)
        return QSize(wide, max((size.height() for size in sizes), default=0))

    def minimumSize(self) -> QSize:
        """Give the room of the largest group."""
        sizes = [item.sizeHint() for item in self._items]
        return QSize(
            max((size.width() for size in sizes), default=0),
            max((size.height() for size in sizes), default=0),
        )

    def _lay(self, rect: QRect, *, move: bool) -> int:
        x, y, line = rect.x(), rect.y(), 0
        for item in self._items:
            widget = item.widget()
            if widget is not None and all(
                isinstance(child, QLabel) or child.isHidden()
                for child in widget.findChildren(
                    QWidget, options=Qt.FindChildOption.FindDirectChildrenOnly
                )
            ):
                if move:
                    # Where it stood before, its label would paint over what stands there now.
                    item.setGeometry(QRect(rect.x(), y, 0, 0))
                continue
            size = item.sizeHint()
            if x > rect.x() and x + size.width() > rect.right() + 1:
                x, y, line = rect.x(), y + line + _LINE_GAP, 0
            if move:
                item.setGeometry(QRect(QPoint(x, y), size))
            x += size.width() + _GAP
            line = max(line, size.height())
        return y + line - rect.y()
