"""WholeLines: items of a list no wider than the list, so that no end of a line is lost."""

from __future__ import annotations

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QSize
from PySide6.QtWidgets import (
    QAbstractItemView,
    QListView,
    QStyledItemDelegate,
    QStyleOptionViewItem,
)

_PADDING = 4
"""On either side, pixels: what the style sheet adds to an item, and a little."""


class WholeLines(QStyledItemDelegate):
    """Wraps for the width that is left inside the style sheet's padding.

    Qt measures text for the whole width and adds the padding afterwards: a line that just fits then
    reaches beyond the list, and is painted with three dots at its end. Heights follow the width.

    Parameters
    ----------
    view : QAbstractItemView
        Whose delegate this becomes.
    """

    def __init__(self, view: QAbstractItemView) -> None:
        super().__init__(view)
        if isinstance(view, QListView):
            # Else heights stay those of the width at which an item was first measured.
            view.setResizeMode(QListView.ResizeMode.Adjust)

    def sizeHint(
        self, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex
    ) -> QSize:
        """Give the size of an item, measured in the narrower room."""
        narrow = QStyleOptionViewItem(option)
        narrow.rect = option.rect.adjusted(_PADDING, 0, -_PADDING, 0)
        return super().sizeHint(narrow, index)
