"""CheckDesk: checks a pack or a recording in a process of its own."""

from __future__ import annotations

from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QFileDialog

from meterlog.window.claim_page.claim_page import ClaimPage
from meterlog.window.folder_dialog import show_beside
from meterlog.window.long_process import LongProcess
from meterlog.window.long_work import Progress
from meterlog.window.words import say

if TYPE_CHECKING:
    from meterlog.evidence.checked import Checked


class CheckDesk:
    """The check of the Claim page.

    Parameters
    ----------
    page : ClaimPage
    """

    def __init__(self, page: ClaimPage) -> None:
        self._page = page
        self._checking: LongProcess[Checked] = LongProcess("check")
        self._wanted: tuple[Path, str] | None = None
        self._asking: QFileDialog | None = None
        page.check.file.connect(self.ask_file)
        page.check.folder.connect(self.ask_folder)

    def ask_file(self) -> None:
        """Let the technician choose a zip or a PDF."""
        dialog = self._dialog(say("Choose the zip or the PDF of a pack"))
        dialog.setFileMode(QFileDialog.FileMode.ExistingFile)
        dialog.setNameFilters([say("Packs (*.zip *.pdf)"), say("All (*)")])
        show_beside(dialog)

    def ask_folder(self) -> None:
        """Let the technician choose the folder of a pack or a recording."""
        dialog = self._dialog(say("Choose the folder of a pack or of a recording"))
        dialog.setFileMode(QFileDialog.FileMode.Directory)
        dialog.setOption(QFileDialog.Option.ShowDirsOnly)
        show_beside(dialog)

    def _dialog(self, title: str) -> QFileDialog:
        dialog = QFileDialog(self._page.window(), title)
        dialog.setOption(QFileDialog.Option.DontUseNativeDialog)
        made = self._page.made.folder
        if made is not None and made.is_dir():
            dialog.setDirectory(str(made))
        dialog.fileSelected.connect(lambda name: self.check(Path(name)))
        self._asking = dialog
        return dialog

    def check(self, path: Path) -> None:
        """Begin to check; what is being checked is stopped first, and its outcome dropped."""
        self._wanted = path, self._page.check.key.text().strip()
        self._page.check.show_busy(path.name)
        self._checking.cancel()
        self._begin()

    def _begin(self) -> None:
        if self._wanted is not None and self._checking.begin(partial(_checked, *self._wanted)):
            self._wanted = None

    def tick(self) -> None:
        """Show the outcome."""
        done = self._checking.fetch()
        if done is None:
            return
        if self._wanted is not None:
            self._begin()
            return
        checked, trouble = done
        if checked is not None:
            self._page.check.show_checked(checked)
        else:
            self._page.check.show_trouble(trouble)
        self._page.bring_into_sight(self._page.check)

    def close(self) -> None:
        """Wait until it has stopped: it takes away what it unpacked."""
        self._wanted = None
        self._checking.cancel()
        self._checking.wait()


def _checked(path: Path, key: str, progress: Progress) -> Checked:
    from meterlog.work.checked_edits import check_all

    progress(0.0)
    return check_all(path, key)
