"""TypedLines: the two lines of the Trace page that take words and readings from the keyboard."""

from __future__ import annotations

from typing import TYPE_CHECKING

from meterlog.model import EventKind
from meterlog.window.pages import Page
from meterlog.window.run_page import RunPage
from meterlog.window.session import Phase, Session

if TYPE_CHECKING:
    from meterlog.window.main_window import MainWindow


MARK = "mark"
"""How a note begins that is a mark alone; it goes into the recording as it stands."""


class TypedLines:
    """Opens them, and puts what was typed into the run.

    Parameters
    ----------
    window : MainWindow
    session : Session
    page : RunPage
    """

    def __init__(self, window: MainWindow, session: Session, page: RunPage) -> None:
        self._window, self._session, self._page = window, session, page
        page.note.kept.connect(lambda words, at_ns: session.mark(EventKind.NOTE, words, at_ns))
        page.typing.typed.connect(self._on_typed)

    def note(self) -> None:
        """Open the line for a note, as of now."""
        if self._session.phase is not Phase.RECORDING:
            self._session.mark(EventKind.NOTE)
            return
        self._window.show_page(Page.RUN)
        self._page.note.ask(self._session.now_ns())

    def mark(self) -> None:
        """Mark this instant with a number, to be explained later."""
        shown = self._session.shown
        events = () if shown is None else shown.events
        count = sum(
            one.kind is EventKind.NOTE and one.value.startswith(f"{MARK} ") for one in events
        )
        self._session.mark(EventKind.NOTE, f"{MARK} {count + 1}")

    def ask_reading(self) -> None:
        """Open the line for readings typed by hand, or say why there is none."""
        typed = self._session.typed_instruments()
        if typed:
            self._window.show_page(Page.RUN)
            self._page.typing.ask(typed)

    def _on_typed(self, key: str, values: tuple[float, ...]) -> None:
        self._session.trouble = ""
        if self._session.type_reading(key, values):
            self._page.typing.show_taken(values)
        else:
            self._page.typing.refuse(self._session.trouble)
