"""TypedLines: the two lines of the Trace page that take words and readings from the keyboard."""

from __future__ import annotations

from typing import TYPE_CHECKING

from meterlog.model import EventKind
from meterlog.window.pages import Page
from meterlog.window.refusals import no_mark
from meterlog.window.run_page import RunPage
from meterlog.window.session import Phase, Session
from meterlog.window.words import later, say

if TYPE_CHECKING:
    from meterlog.window.main_window import MainWindow


MARK = "mark"
"""How a note begins that is a mark alone; it goes into the recording as it stands."""
_NONE_TYPED = later(
    "No meter of this recording is typed by hand: add typed-volts or typed-amps on the Meters page."
)


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
        """Open the line for a note, as of now; it says why where none can be kept."""
        self._window.show_page(Page.RUN)
        if self._session.phase is Phase.RECORDING:
            self._page.note.ask(self._session.now_ns())
        else:
            self._page.note.explain(no_mark(self._session.phase))

    def keep_note(self) -> None:
        """Keep a note that is being typed in this recording: it ends, and nothing may be lost."""
        if self._session.phase is Phase.RECORDING and not self._page.note.typed_before:
            self._page.note.keep()

    def mark(self) -> None:
        """Mark this instant with a number, to be explained later."""
        shown = self._session.shown
        events = () if shown is None else shown.events
        count = sum(
            one.kind is EventKind.NOTE and one.value.startswith(f"{MARK} ") for one in events
        )
        self._session.mark(EventKind.NOTE, f"{MARK} {count + 1}")

    def ask_reading(self) -> None:
        """Open the line for readings typed by hand; it says why where none can be taken.

        It opens all the same: whoever presses the key goes on typing, and digits and Enter would
        be commands.
        """
        run, shown = self._session.run, self._session.shown
        self._window.show_page(Page.RUN)
        if run is None or shown is None:
            self._page.typing.explain(no_mark(self._session.phase))
            return
        typed = tuple(one for one in shown.about.instruments if one.typed)
        if typed:
            self._page.typing.ask(typed)
        else:
            self._page.typing.explain(say(_NONE_TYPED))

    def ask_again(self) -> None:
        """Let a line that is open say what holds now: a recording began or ended.

        One that is being typed into stays open, what was typed included.
        """
        typing, note = self._page.typing, self._page.note
        if typing.field.hasFocus():
            self.ask_reading()
        else:
            typing.close_line()
        recording = self._session.phase is Phase.RECORDING
        if note.field.hasFocus():
            self.note()
        else:
            note.follow(self._session.now_ns() if recording else None, no_mark(self._session.phase))

    def _on_typed(self, key: str, values: tuple[float, ...]) -> None:
        self._session.trouble = ""
        if self._session.type_reading(key, values):
            shown = self._session.shown
            nominal_v = None if shown is None else shown.about.limits.nominal_v
            self._page.typing.show_taken(values, nominal_v)
        else:
            self._page.typing.refuse(self._session.trouble)
