"""PhotoDesk: chooses, copies, shows and takes off the photos of the job at hand."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path, PurePath

from PySide6.QtWidgets import QFileDialog

from meterlog.model.errors import MeterlogError
from meterlog.model.job_card import JobCard, with_value
from meterlog.window.folder_dialog import show_beside
from meterlog.window.job_at_hand import JobAtHand
from meterlog.window.job_page.card_turns import Change
from meterlog.window.job_page.job_page import JobPage
from meterlog.window.job_page.photo_files import KINDS, Thumb, copy_in, thumbs_of
from meterlog.window.job_page.photo_list import thumb_pixels
from meterlog.window.long_work import LongWork
from meterlog.window.remedies_here import remedy_here
from meterlog.window.words import say, say_many
from meterlog.work.job_cards import change_card
from meterlog.work.job_folder import CARD


class PhotoDesk:
    """The photos of the Job page.

    Parameters
    ----------
    at_hand : JobAtHand
    page : JobPage
    change : callable
        Changes the card of the job at hand, so that it can be undone: words, and the change.
    """

    def __init__(
        self, at_hand: JobAtHand, page: JobPage, change: Callable[[str, Change], None]
    ) -> None:
        self._at_hand, self._page, self._change = at_hand, page, change
        self._copying: LongWork[tuple[str, ...]] = LongWork("photos")
        self._making: LongWork[tuple[Thumb, ...]] = LongWork("small-pictures")
        self._copied_to: Path | None = None
        self._pixels = thumb_pixels(12)
        self._shown: tuple[object, ...] | None = None
        self._listed: Path | None = None
        self._wanted: tuple[object, ...] = ()
        self._asking: QFileDialog | None = None
        page.photos.add.connect(self.ask)
        page.photos.remove.connect(self.remove)
        page.photos.copying.cancelled.connect(self._copying.cancel)

    def set_text_height(self, pixels: int) -> None:
        """Take text of another height; the small pictures grow with it."""
        self._pixels = thumb_pixels(pixels)
        self.look_again()

    def ask(self) -> None:
        """Let the technician choose pictures."""
        dialog = QFileDialog(self._page.window(), say("Add photos to the job"))
        dialog.setFileMode(QFileDialog.FileMode.ExistingFiles)
        dialog.setOption(QFileDialog.Option.DontUseNativeDialog)
        dialog.setNameFilters(
            [
                say("Pictures ({names})", names=" ".join(f"*.{one}" for one in KINDS)),
                say("All (*)"),
            ]
        )
        dialog.filesSelected.connect(lambda names: self.add([Path(name) for name in names]))
        self._asking = dialog
        show_beside(dialog)

    def leave(self) -> None:
        """Ask for no more pictures: another job comes, which they are not of."""
        if self._asking is not None:
            self._asking.close()

    def add(self, files: Sequence[Path]) -> None:
        """Copy pictures into the job's folder and put them on its card."""
        if not files:
            return
        try:
            job = self._at_hand.begin()
        except MeterlogError as error:
            self._page.tell(remedy_here(str(error)))
            return
        if self._copying.begin(lambda progress: copy_in(files, job, progress)):
            self._copied_to = job
            self._page.tell("")
            self.tick()
        else:
            self._page.tell(say("Photos are being copied: add these when that is done."))

    def remove(self, name: str) -> None:
        """Take a photo off the card; its file stays."""
        self._change(
            say("photo {name} taken off", name=PurePath(name).name),
            lambda card: _with_photos(card, [one for one in card.photos if one != name]),
        )
        self._page.tell(
            say(
                "{name} is off the card. Its file stays; undo puts it back.",
                name=PurePath(name).name,
            )
        )

    def look_again(self) -> None:
        """Make the small pictures anew where they are not those of the card."""
        folder, photos = self._at_hand.folder, self._at_hand.card.photos
        there = tuple((folder / one).exists() for one in photos) if folder is not None else ()
        self._wanted = (folder, photos, there, self._pixels)
        if folder != self._listed:
            # Those of the job before go at once: making small ones of these takes a while.
            self._listed = folder
            self._page.photos.show_photos([Thumb(one, None) for one in photos])
        if self._wanted == self._shown:
            return
        if self._making.busy:
            self._making.cancel()
            return
        wanted, pixels = self._wanted, self._pixels
        self._shown = wanted
        if folder is None or not photos:
            self._page.photos.show_photos(())
            return
        self._making.begin(lambda progress: thumbs_of(photos, folder, pixels, progress))

    def tick(self) -> None:
        """Fetch what is done."""
        strip = self._page.photos.copying
        copied = self._copying.fetch()
        if self._copying.busy:
            strip.show_part(
                say("Copying photos"), self._copying.part, stopping=self._copying.cancelling
            )
        elif copied is not None:
            strip.hide()
            self._take(*copied)
        made = self._making.fetch()
        if made is not None:
            thumbs, trouble = made
            if thumbs is None and not trouble:
                self._shown = None  # stopped for others; it may be these that are wanted again
            elif self._wanted == self._shown:
                if thumbs is not None:
                    self._page.photos.show_photos(thumbs)
                if trouble:
                    self._page.tell(trouble)
        if not self._making.busy and self._wanted != self._shown:
            self.look_again()

    def _take(self, names: tuple[str, ...] | None, trouble: str) -> None:
        """Put what was copied on the card of the job it was copied for."""
        if trouble:
            self._page.tell(trouble)
        if not names or self._copied_to is None:
            return

        def change(card: JobCard) -> JobCard:
            return _with_photos(card, list(dict.fromkeys((*card.photos, *names))))

        many = len(names)
        if self._copied_to == self._at_hand.folder:
            self._change(
                say_many(many, "{many} photo added", "{many} photos added", many=many),
                change,
            )
            return
        try:
            change_card(self._copied_to / CARD, change)
        except MeterlogError as error:
            self._page.tell(remedy_here(str(error)))

    @property
    def copying(self) -> bool:
        """True while pictures are being copied."""
        return self._copying.busy

    def close(self) -> None:
        """Let go of threads."""
        for work in (self._copying, self._making):
            work.cancel()
            work.wait()


def _with_photos(card: JobCard, photos: Sequence[str]) -> JobCard:
    return with_value(card, "photos", "\n".join(photos))
