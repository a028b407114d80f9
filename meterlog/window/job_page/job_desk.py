"""JobDesk: ties the job at hand to its page: each entry is kept at once."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime
from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFileDialog, QWidget

from meterlog.evidence.palette import Palette
from meterlog.model.calibration import instrument_name, overdue_words
from meterlog.model.errors import DiskFailed, MeterlogError
from meterlog.model.job_card import JobCard, filled, with_value
from meterlog.window.folder_dialog import show_beside
from meterlog.window.job_at_hand import JobAtHand
from meterlog.window.job_page.card_groups import field_words, missing_fields
from meterlog.window.job_page.card_turns import CardTurns, Change
from meterlog.window.job_page.job_page import JobPage
from meterlog.window.job_page.jobs_shown import JobsShown
from meterlog.window.job_page.photo_desk import PhotoDesk
from meterlog.window.remedies_here import remedy_here
from meterlog.window.words import say, say_many
from meterlog.window.work_page import PageKey
from meterlog.work.card_templates import CardTemplates
from meterlog.work.job_folder import Side
from meterlog.work.kept_meters import KeptMeters

_Key = Qt.Key


class JobDesk:
    """The Job page with its working parts.

    Parameters
    ----------
    at_hand : JobAtHand
    """

    def __init__(self, at_hand: JobAtHand) -> None:
        self.at_hand = at_hand
        self.page = JobPage()
        self.turns = CardTurns()
        self.photos = PhotoDesk(at_hand, self.page, self._on_card)
        self._templates = CardTemplates()
        self._other = False
        self._kept_at = ""
        self._asked_about: frozenset[str] = frozenset()
        self._asking: QFileDialog | None = None
        at_hand.listeners.append(self._show)
        at_hand.leaving.append(self._leave)
        page = self.page
        page.form.entered.connect(self._on_entry)
        page.missing.chosen.connect(page.form.go_to)
        page.new.clicked.connect(self.new)
        page.open.clicked.connect(self._ask_job)
        page.last.clicked.connect(self.open_last)
        page.undo.clicked.connect(self._undo)
        page.redo.clicked.connect(self._redo)
        page.templates.signals.fill.connect(self._fill_in)
        page.templates.signals.keep.connect(self._keep_as)
        for side, button in page.sides.items():
            button.clicked.connect(lambda _, side=side: self._fit(side))
        self._show()

    @property
    def widget(self) -> QWidget:
        """What stands in the stack of pages."""
        return self.page

    def begin(self) -> None:
        """Look again at the job's files, templates, meters and photos: the page is turned to."""
        self._try(self.at_hand.look_again)
        self._show()
        self.page.templates.show_names(self._templates.names())
        self._show_meters()
        self.photos.look_again()

    def tick(self) -> None:
        """Fetch photos that are copied or made small by now."""
        self.photos.tick()

    def set_palette(self, palette: Palette, pixels: int) -> None:
        """Take other colours, and text of ``pixels`` height."""
        self.page.set_palette(palette, pixels)
        self.photos.set_text_height(pixels)

    def keys(self) -> tuple[PageKey, ...]:
        """Give the keys of this page."""
        return (
            PageKey((_Key.Key_A,), "A", say("next that is missing"), self._next_missing),
            PageKey((_Key.Key_X,), "X", say("old or new part in the vehicle"), self._other_part),
            PageKey((_Key.Key_P,), "P", say("add photos"), self.photos.ask),
            PageKey((_Key.Key_U,), "U", say("undo"), self._undo),
            PageKey((_Key.Key_Y,), "Y", say("redo"), self._redo),
            PageKey((_Key.Key_Q,), "Q", say("new job"), self.new),
            PageKey((_Key.Key_I,), "I", say("open a job"), self._ask_job),
        )

    def may_close(self) -> bool:
        """Keep what is being typed; where something can't be kept, say so and stay, but once."""
        self.page.form.commit()
        left = [field_words(key) for key in self.page.form.waiting]
        if self.photos.copying:
            left.append(say("photos that are being copied"))
        # What was said of others says nothing of one that can't be kept since.
        if set(left) <= self._asked_about:
            return True
        self._asked_about = frozenset(left)
        self.page.tell(
            say("Not kept: {left}. Close once more to leave without it.", left=", ".join(left))
        )
        return False

    def close(self) -> None:
        """Let go of threads and files."""
        self.photos.close()
        if self._show in self.at_hand.listeners:
            self.at_hand.listeners.remove(self._show)
            self.at_hand.leaving.remove(self._leave)

    # The job

    def open_last(self) -> bool:
        """Continue the job of the last time; False where there is none."""
        folder = self.at_hand.last_folder()
        return folder is not None and self.open(folder)

    def open(self, folder: Path) -> bool:
        """Turn to the job in a folder; False, and said on the page, where it holds none."""
        self.page.tell("")
        return self._try(lambda: self.at_hand.open(folder))

    def new(self) -> None:
        """Turn to a job of which nothing is known yet; the one at hand is kept."""
        self.page.tell("")
        if self._try(self.at_hand.new):
            self.page.form.go_to("work_order")

    def _leave(self) -> None:
        """Keep what is being typed before another job comes.

        Raises
        ------
        DiskFailed
            If it can't be kept; it is told at its field, too.
        """
        self.page.form.commit()
        waiting = self.page.form.waiting
        if waiting:
            self.page.form.go_to(waiting[0])
            raise DiskFailed(
                say("Not kept yet: {names}.", names=", ".join(map(field_words, waiting))),
                remedy=say("See there why, or empty the field; then turn to the other job."),
            )
        self.photos.leave()
        self._other = True

    def _ask_job(self) -> None:
        dialog = QFileDialog(self.page.window(), say("Open a job: choose its folder"))
        dialog.setFileMode(QFileDialog.FileMode.Directory)
        dialog.setOption(QFileDialog.Option.ShowDirsOnly)
        dialog.setOption(QFileDialog.Option.DontUseNativeDialog)
        JobsShown(dialog)
        jobs = self.at_hand.jobs_folder()
        dialog.setDirectory(str(jobs if jobs.is_dir() else jobs.parent))
        dialog.fileSelected.connect(lambda name: self.open(Path(name)))
        self._asking = dialog
        show_beside(dialog)

    # Entries

    def _on_entry(self, key: str, text: str) -> None:
        before = self.at_hand.card
        try:
            # Looked at before the disk is: a text that no file can hold.
            with_value(before, key, text)
            self.at_hand.enter(key, text)
        except MeterlogError as error:
            self.page.form.refuse(key, remedy_here(str(error)))
            return
        self._asked_about = frozenset()
        self._note(field_words(key), before)

    def _note(self, words: str, before: JobCard) -> None:
        self.turns.note(words, before, self.at_hand.card)
        self._kept_at = datetime.now().astimezone().strftime("%H:%M:%S")
        self._show_kept()
        self._show_turns()

    def _on_card(self, words: str, change: Change) -> None:
        """Change the card otherwise than by typing."""
        before = self.at_hand.card
        if self._try(lambda: self.at_hand.change(change)):
            self._note(words, before)

    def _undo(self) -> None:
        self._turn(self.turns.undo, say("Taken back"))

    def _redo(self) -> None:
        self._turn(self.turns.redo, say("Put in again"))

    def _turn(self, turn: Callable[[Callable[[Change], None]], str], lead: str) -> None:
        self.page.form.commit()
        try:
            words = turn(self.at_hand.change)
        except MeterlogError as error:
            self.page.tell(remedy_here(str(error)))
            return
        self.page.tell(f"{lead}: {words}." if words else say("There is nothing to take back here."))
        if words:
            self._kept_at = datetime.now().astimezone().strftime("%H:%M:%S")
            self._show_kept()
        self._show_turns()

    def _fit(self, side: Side) -> None:
        if self._try(lambda: self.at_hand.fit(side)):
            self.page.tell("")
        self.page.show_fitted(self.at_hand.work.fitted)

    def _other_part(self) -> None:
        self._fit(Side.OLD if self.at_hand.work.fitted is Side.NEW else Side.NEW)

    def _next_missing(self) -> None:
        missing = missing_fields(self.at_hand.card)
        named = [key for key, _ in missing if key in self.page.form.boxes]
        if named:
            self.page.form.go_to(named[0])
        else:
            only = say("Only photos are missing."), say("Nothing is missing for a claim.")
            self.page.tell(only[0] if missing else only[1])

    # Templates

    def _fill_in(self, name: str) -> None:
        self.page.form.commit()

        def fill() -> None:
            template = self._templates.load(name)
            self._on_card(
                say("filled in from {name}", name=name), lambda card: filled(card, template)
            )

        if name and self._try(fill):
            self.page.tell(
                say("Empty fields are filled in from {name}; what stood there stays.", name=name)
            )

    def _keep_as(self, name: str) -> None:
        self.page.form.commit()
        if not name:
            self.page.tell(say("Give the template a name first."))
            self.page.templates.name.setFocus(Qt.FocusReason.TabFocusReason)
        elif self._try(lambda: self._templates.keep(name, self.at_hand.card)):
            self.page.templates.name.clear()
            self.page.templates.show_names(self._templates.names())
            self.page.templates.box.setCurrentText(name)
            self.page.tell(
                say(
                    "Kept as template {name}, without what belongs to this one job"
                    " (customer, complaint, serial numbers, dates, photos).",
                    name=name,
                )
            )

    # What is shown

    def _show(self) -> None:
        """Show the job at hand."""
        at_hand, page = self.at_hand, self.page
        if self._other:
            self.turns.forget()
            self._kept_at = ""
        page.form.show_card(at_hand.card, other=self._other)
        self._other = False
        page.missing.show_missing(missing_fields(at_hand.card))
        page.show_fitted(at_hand.work.fitted)
        last = at_hand.last_folder() if at_hand.folder is None else None
        page.last.setVisible(last is not None)
        if last is not None:
            page.last.setText(say("Continue {last}", last=last.name))
        self._show_kept()
        self._show_turns()
        self.photos.look_again()

    def _show_kept(self) -> None:
        folder = self.at_hand.folder
        if folder is None:
            words = say("A new job. Nothing here is needed to measure; each entry is kept at once.")
        else:
            when = say("Kept {kept_at}", kept_at=self._kept_at) if self._kept_at else say("Kept")
            words = say("{when} in {folder}", when=when, folder=folder)
        self.page.kept.setText(words)

    def _show_turns(self) -> None:
        self.page.undo.setEnabled(self.turns.can_undo)
        self.page.redo.setEnabled(self.turns.can_redo)

    def _show_meters(self) -> None:
        known = KeptMeters().known()
        today = datetime.now().astimezone().date()
        overdue = [one for one in known if overdue_words((one,), today)]
        if overdue:
            lines = (
                say(
                    "{meter}: calibration OVERDUE since {calibration_due}.",
                    meter=instrument_name(one),
                    calibration_due=one.identity.calibration_due,
                )
                for one in overdue
            )
            self.page.show_meters("\n".join(lines), overdue=True)
        else:
            many = len(known)
            words = say_many(
                many,
                "Calibration in date: {many} meter known.",
                "Calibration in date: {many} meters known.",
                many=many,
            )
            self.page.show_meters(words if many else "", overdue=False)

    def _try(self, do: Callable[[], object]) -> bool:
        """Do something; where it can't be done, say why on the page."""
        try:
            do()
        except MeterlogError as error:
            self.page.tell(remedy_here(str(error)))
            return False
        return True
