"""File dialogs: they ask for a file or folder while everything behind them goes on."""

from __future__ import annotations

from PySide6.QtWidgets import QFileDialog, QWidget


def ask_folder(parent: QWidget, title: str, start: str) -> QFileDialog:
    """Open a dialog for a folder and return at once; ``fileSelected`` tells what was chosen.

    Parameters
    ----------
    parent : QWidget
    title : str
    start : str
        The folder to begin in.

    Returns
    -------
    QFileDialog
        To be kept as long as it is open.
    """
    dialog = QFileDialog(parent, title)
    dialog.setFileMode(QFileDialog.FileMode.Directory)
    dialog.setOption(QFileDialog.Option.ShowDirsOnly)
    dialog.setOption(QFileDialog.Option.DontUseNativeDialog)
    dialog.setDirectory(start)
    show_beside(dialog)
    return dialog


def show_beside(dialog: QFileDialog) -> None:
    """Show a dialog that locks nothing: a recording behind it can be marked and stopped.

    ``QDialog.open`` would lock its window.
    """
    dialog.setModal(False)
    dialog.show()
    dialog.raise_()
    dialog.activateWindow()
