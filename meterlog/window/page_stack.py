"""PageStack: the pages that are made after the first paint, or when they are turned to."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QStackedWidget, QVBoxLayout, QWidget

from meterlog.evidence.palette import Palette
from meterlog.window.pages import Page
from meterlog.window.theme import space_out
from meterlog.window.work_page import PageKey, WorkPage


class PageStack:
    """Places in the stack for pages, each with what makes it.

    None of them keeps the window from its first paint. They are made in turns after that, see
    :meth:`making`; one that is turned to before is made at once.

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
        self._steps: dict[Page, Iterator[None]] = {}
        self._asked: set[Page] = set()
        self._closed = False
        self._look: tuple[Palette, int] | None = None
        for page in sorted(self._makers):
            place = QWidget()
            self._places[page] = QVBoxLayout(place)
            self._places[page].setContentsMargins(0, 0, 0, 0)
            stack.insertWidget(page, place)

    def __getitem__(self, page: Page) -> WorkPage:
        """Give a page; what is left to do of making it is done now."""
        for _ in self._left(page):
            pass
        self._asked.add(page)
        return self._made[page]

    def making(self, pages: Iterable[Page] | None = None) -> Iterator[None]:
        """Make pages that nobody turned to so far, in steps between which a picture can be painted.

        Parameters
        ----------
        pages : iterable of Page or None
            Of these those that are made here; None: all.
        """
        for page in self._makers if pages is None else self._makers.keys() & set(pages):
            while not self._closed and next(self._left(page), self) is not self:
                yield

    def _left(self, page: Page) -> Iterator[None]:
        """Give what is left to do until a page is made; whoever asks, it is done once."""
        if page not in self._steps:
            self._steps[page] = self._make(page)
        return self._steps[page]

    def _make(self, page: Page) -> Iterator[None]:
        try:
            made = self._makers[page]()
        except BaseException:
            del self._steps[page]  # who turns to it again finds out, too
            raise
        self._made[page] = made
        self._places[page].addWidget(made.widget)
        # What is added to a place that is on show already stays hidden until the next turn.
        made.widget.show()
        yield
        if self._look is not None:
            made.set_palette(*self._look)
            yield
            space_out(made.widget, self._look[1])
            yield

    def __contains__(self, page: object) -> bool:
        return page in self._makers

    def begin(self, page: Page) -> None:
        """Turn to a page."""
        if page in self:
            self[page].begin()

    def tick(self) -> None:
        """Let every page that was asked for so far look after what it has under way."""
        for page in self._asked:
            self._made[page].tick()

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
        """Let every page let go of its threads and files; none is made ahead any more."""
        self._closed = True
        for made in self._made.values():
            made.close()
