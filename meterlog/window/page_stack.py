"""PageStack: the pages that are made when they are turned to for the first time."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QStackedWidget, QVBoxLayout, QWidget

from meterlog.evidence.palette import Palette
from meterlog.window.pages import Page
from meterlog.window.theme import space_out
from meterlog.window.work_page import PageKey, WorkPage


class PageStack:
    """Places in the stack for pages, each with what makes it.

    A page that nobody turns to costs neither time at the start nor memory.

    Parameters
    ----------
    stack : QStackedWidget
        Filled up to the first of these pages.
    makers : mapping of Page to callable
    """

    def __init__(
        self, stack: QStackedWidget, makers: Mapping[Page, Callable[[], WorkPage]]
    ) -> None:
        self._makers = dict(makers)
        self._places: dict[Page, QVBoxLayout] = {}
        self._made: dict[Page, WorkPage] = {}
        self._look: tuple[Palette, int] | None = None
        for page in sorted(self._makers):
            place = QWidget()
            self._places[page] = QVBoxLayout(place)
            self._places[page].setContentsMargins(0, 0, 0, 0)
            stack.insertWidget(page, place)

    def __getitem__(self, page: Page) -> WorkPage:
        """Give a page, made now where it was not."""
        if page not in self._made:
            made = self._makers[page]()
            self._made[page] = made
            self._places[page].addWidget(made.widget)
            # What is added to a place that is on show already stays hidden until the next turn.
            made.widget.show()
            if self._look is not None:
                made.set_palette(*self._look)
                space_out(made.widget, self._look[1])
        return self._made[page]

    def __contains__(self, page: object) -> bool:
        return page in self._makers

    def begin(self, page: Page) -> None:
        """Turn to a page."""
        if page in self:
            self[page].begin()

    def tick(self) -> None:
        """Let every page made so far look after what it has under way."""
        for made in self._made.values():
            made.tick()

    def set_palette(self, palette: Palette, pixels: int) -> None:
        """Give all pages other colours, and text of ``pixels`` height."""
        self._look = palette, pixels
        for made in self._made.values():
            made.set_palette(palette, pixels)

    def keys(self, page: Page) -> tuple[PageKey, ...]:
        """Give the keys that act on a page now; none on a page of another kind."""
        return self[page].keys() if page in self else ()

    def key_of(self, page: Page, event: QKeyEvent) -> PageKey | None:
        """Give what a key press asks for on a page; None where it asks for nothing."""
        held = event.modifiers() & ~Qt.KeyboardModifier.KeypadModifier
        if held != Qt.KeyboardModifier.NoModifier:
            return None
        return next((one for one in self.keys(page) if event.key() in one.keys), None)

    def holding(self) -> Page | None:
        """Give the first page on which something is lost when the window closes now."""
        return next((page for page, made in self._made.items() if not made.may_close()), None)

    def close(self) -> None:
        """Let every page let go of its threads and files."""
        for made in self._made.values():
            made.close()
