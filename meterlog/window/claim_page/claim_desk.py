"""ClaimDesk: ties the job at hand to the Claim page, and makes the pack in a process of its own."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, QUrl
from PySide6.QtGui import QDesktopServices
from PySide6.QtWidgets import QFileDialog, QWidget

from meterlog.evidence.palette import Palette
from meterlog.model.errors import MeterlogError
from meterlog.profile.full_path import typed_path
from meterlog.window.claim_page.check_desk import CheckDesk
from meterlog.window.claim_page.claim_page import ClaimPage
from meterlog.window.claim_page.claim_plan import A4, LETTER, ClaimPlan, key_wants_words, make
from meterlog.window.claim_page.side_choice import tell
from meterlog.window.claim_page.sides_desk import SidesDesk
from meterlog.window.folder_dialog import show_beside
from meterlog.window.job_at_hand import JobAtHand
from meterlog.window.long_process import LongProcess
from meterlog.window.remedies_here import remedy_here
from meterlog.window.session import Session
from meterlog.window.words import later, say
from meterlog.window.work_page import PageKey
from meterlog.work.card_photos import photo_words
from meterlog.work.job_folder import JobWork, change_work, fresh_pack

if TYPE_CHECKING:
    from meterlog.work.claim import ClaimMade

_Key = Qt.Key
_STOP_FIRST = later("Stop the recording first, then make the pack.")


class ClaimDesk:
    """The Claim page with its working parts.

    Parameters
    ----------
    at_hand : JobAtHand
    session : Session
        No pack is made while it records: a recording needs the machine more.
    """

    def __init__(self, at_hand: JobAtHand, session: Session) -> None:
        self.at_hand, self._session = at_hand, session
        self.page = ClaimPage()
        self.sides = SidesDesk(at_hand, self.page)
        self.check = CheckDesk(self.page)
        self._making: LongProcess[ClaimMade] = LongProcess("claim")
        self._plan: ClaimPlan | None = None
        self._made: dict[Path, tuple[Path, ClaimMade]] = {}
        """The pack made last of each job: its folder, and what it is."""
        self._job: Path | None = None
        self._default_out = ""
        self._asked_to_close = False
        self._barred = False
        self._asking: QFileDialog | None = None
        at_hand.listeners.append(self._show)
        at_hand.leaving.append(self._leave)
        page = self.page
        page.make.clicked.connect(self.make)
        page.making.cancelled.connect(self._making.cancel)
        page.options.changed.connect(self._show_card)
        self.sides.on_facts = self._show_card
        page.options.browse.connect(self._ask_out)
        page.options.passphrase.returnPressed.connect(self.make)
        page.made.opened.connect(self._open)
        page.made.checked.connect(self._check_made)
        self._show()

    @property
    def widget(self) -> QWidget:
        """What stands in the stack of pages."""
        return self.page

    def begin(self) -> None:
        """Look again at the job, its recordings and the key: the page is turned to."""
        try:
            self.at_hand.look_again()
        except MeterlogError as error:
            tell(self.page.said, remedy_here(str(error)))
        self._show()
        self.sides.read_again()
        self.page.options.show_key(wants_words=key_wants_words())

    def tick(self) -> None:
        """Fetch what is done."""
        self.sides.tick()
        self.check.tick()
        self._bar(recording=self._session.recording)
        done = self._making.fetch()
        if self._making.busy:
            self._show_part()
        elif done is not None:
            self._take(*done)

    def set_palette(self, palette: Palette, pixels: int) -> None:
        """Colours and text come with the style sheet."""

    def keys(self) -> tuple[PageKey, ...]:
        """Give the keys of this page."""
        busy = self._making.busy
        making = (
            PageKey((_Key.Key_C,), "C", say("cancel"), self._making.cancel)
            if busy
            else PageKey((_Key.Key_P,), "P", say("make the pack"), self.make)
        )
        customer = self.page.options.without_customer
        made = (PageKey((_Key.Key_X,), "X", say("open its folder"), self._open_folder),)
        return (
            making,
            PageKey((_Key.Key_H,), "H", say("with, without customer"), customer.toggle),
            PageKey((_Key.Key_Y,), "Y", say("A4, Letter"), self._other_paper),
            PageKey((_Key.Key_V,), "V", say("check a pack"), self.check.ask_file),
            *(made if self.page.made.folder is not None else ()),
            PageKey(
                (_Key.Key_PageDown,), "PgUp PgDn", say("read on"), lambda: self.page.read_on(1)
            ),
            PageKey((_Key.Key_PageUp,), "", "", lambda: self.page.read_on(-1)),
        )

    def may_close(self) -> bool:
        """Say once that a pack is under way."""
        if not self._making.busy or self._asked_to_close:
            return True
        self._asked_to_close = True
        tell(self.page.said, say("The pack is being made. Close once more to leave without it."))
        return False

    def close(self) -> None:
        """Let go of threads; a pack under way is cancelled and nothing of it stays."""
        if self._show in self.at_hand.listeners:
            self.at_hand.listeners.remove(self._show)
            self.at_hand.leaving.remove(self._leave)
        self._making.cancel()
        self._making.wait()
        self.sides.close()
        self.check.close()

    def _leave(self) -> None:
        """Ask nothing more of the job at hand: another one comes."""
        self.sides.leave()
        if self._asking is not None:
            self._asking.close()

    # Making

    def plan(self) -> ClaimPlan:
        """Give what the page says now.

        Raises
        ------
        DiskFailed
            If the job has no folder yet and none can be made.
        """
        job = self.at_hand.begin()
        page, options = self.page, self.page.options
        typed = options.out.text().strip()
        return ClaimPlan(
            job=job,
            card=self.at_hand.card,
            before=page.before.folder,
            after=page.after.folder,
            circuits=page.circuits.folders,
            out=job / typed_path(typed) if typed else fresh_pack(job),
            page=options.paper,
            without_customer=options.without_customer.isChecked(),
            signed=options.signed.isChecked(),
            passphrase="" if options.passphrase.isHidden() else options.passphrase.text(),
            decimal_comma=options.comma.isChecked(),
        )

    def make(self) -> None:
        """Begin to make the pack."""
        if self._making.busy:
            return
        tell(self.page.said, "")
        if self._session.recording:
            tell(self.page.said, say(_STOP_FIRST))
            return
        try:
            plan = self.plan()
        except MeterlogError as error:
            tell(self.page.said, remedy_here(str(error)))
            return
        self._plan, self._asked_to_close = plan, False
        self._made.pop(plan.job, None)
        self.page.made.forget()
        self._making.begin(partial(make, plan))
        self._enable_make()
        self._show_part()

    def _bar(self, *, recording: bool) -> None:
        """Let no pack be made while a recording is in progress, and say so in its place."""
        if recording is self._barred:
            return
        self._barred = recording
        self._enable_make()
        tell(self.page.said, say(_STOP_FIRST) if recording else "")
        # What was being recorded is sealed now.
        self.sides.read_again()

    def _enable_make(self) -> None:
        self.page.make.setDisabled(self._barred or self._making.busy)

    def _show_part(self) -> None:
        making = self._making
        self.page.making.show_part(say("Making the pack"), making.part, stopping=making.cancelling)

    def _take(self, made: ClaimMade | None, trouble: str) -> None:
        page, plan, self._plan = self.page, self._plan, None
        page.making.hide()
        self._enable_make()
        page.options.show_key(wants_words=key_wants_words())
        if made is None or plan is None:
            tell(page.said, trouble or say("Cancelled: nothing of the pack is left."))
            return
        page.options.passphrase.clear()
        self._made[plan.job] = plan.out, made
        if plan.job == self.at_hand.folder:
            page.options.out.clear()
            page.made.show_made(plan.out, made)
            page.bring_into_sight(page.made)
        else:
            job, out = plan.job.name, plan.out
            tell(page.said, say("The pack of the job {job} is made: {folder}", job=job, folder=out))
        try:
            self._keep(plan)
        except MeterlogError as error:
            tell(page.said, remedy_here(str(error)))
        self._show_out()

    def _keep(self, plan: ClaimPlan) -> None:
        """Put the pack on the list of the job it was made of, though another is at hand now."""
        if plan.job == self.at_hand.folder:
            self.at_hand.take_pack(plan.out)
            return

        def taking(work: JobWork) -> JobWork:
            return work.taking_pack(plan.out)

        change_work(plan.job, taking)

    def _ask_out(self) -> None:
        dialog = QFileDialog(self.page.window(), say("Choose an empty folder for the pack"))
        dialog.setFileMode(QFileDialog.FileMode.Directory)
        dialog.setOption(QFileDialog.Option.ShowDirsOnly)
        dialog.setOption(QFileDialog.Option.DontUseNativeDialog)
        job = self.at_hand.folder or self.at_hand.jobs_folder()
        dialog.setDirectory(str(next(one for one in (job, *job.parents) if one.is_dir())))
        dialog.fileSelected.connect(lambda name: self._choose_out(Path(name)))
        self._asking = dialog
        show_beside(dialog)

    def _choose_out(self, folder: Path) -> None:
        """Take the folder, or where it holds something, one in it."""
        try:
            filled = any(folder.iterdir())
        except OSError:
            filled = False
        self.page.options.show_out(fresh_pack(folder) if filled else folder)

    # What is shown

    def _show(self) -> None:
        """Show the job at hand."""
        self.sides.show()
        self._show_card()
        self._show_out()
        if self.at_hand.folder != self._job:
            self._job = self.at_hand.folder
            self._show_made()

    def _show_made(self) -> None:
        """Show the pack that was made of this job; that of another one is none of it."""
        made = None if self._job is None else self._made.get(self._job)
        if made is None:
            self.page.made.forget()
        else:
            self.page.made.show_made(*made)

    def _show_card(self) -> None:
        customer = self.page.options.without_customer.isChecked()
        card, path = self.at_hand.card, self.at_hand.card_path
        lost = photo_words(card, path) if path is not None else ()
        doubts = self.sides.doubts()
        self.page.card.show_card(card, without_customer=customer, lost=lost, doubts=doubts)

    def _show_out(self) -> None:
        """Propose the next free folder, where no other is typed."""
        options, folder = self.page.options, self.at_hand.folder
        if options.out.text() not in {"", self._default_out}:
            return
        self._default_out = str(fresh_pack(folder)) if folder is not None else ""
        options.out.setPlaceholderText(say("claim-1 in the job's folder"))
        options.out.setText(self._default_out)
        options.out.setToolTip(self._default_out)

    def _other_paper(self) -> None:
        options = self.page.options
        options.set_paper(A4 if options.paper == LETTER else LETTER)

    def _check_made(self, path: object) -> None:
        if isinstance(path, Path):
            self.check.check(path)

    def _open_folder(self) -> None:
        self._open(self.page.made.folder)

    def _open(self, path: object) -> None:
        """Show a file or folder with the system's own program."""
        if not isinstance(path, Path):
            return
        if not path.exists():
            tell(self.page.said, say("{path} is not there any more.", path=path))
        elif not opener(QUrl.fromLocalFile(str(path))):
            tell(self.page.said, say("No program opens it here. It lies at {path}.", path=path))


opener: Callable[[QUrl], bool] = QDesktopServices.openUrl
"""Shows a file with the system's own program; false where none does."""
