"""Closing: whether the window may go; what is recorded is sealed first, what is typed is kept."""

from __future__ import annotations

from meterlog.window.page_stack import PageStack
from meterlog.window.pages import Page
from meterlog.window.session import Phase, Session
from meterlog.window.stop_asked import StopAsked
from meterlog.window.typed_lines import TypedLines


class Closing:
    """Asked each time somebody closes the window.

    Parameters
    ----------
    session : Session
    pages : PageStack
    lines : TypedLines
    stop : StopAsked

    Attributes
    ----------
    waits : bool
        The window closes by itself as soon as what is under way has ended.
    held_by : Page or None
        The page on which something would have been lost the last time.
    """

    def __init__(
        self, session: Session, pages: PageStack, lines: TypedLines, stop: StopAsked
    ) -> None:
        self._session, self._pages, self._lines, self._stop = session, pages, lines, stop
        self.waits = False
        self.held_by: Page | None = None

    def may(self, *, at_once: bool) -> bool:
        """Tell whether nothing would be lost; if it would, begin to seal, or ask once more.

        Parameters
        ----------
        at_once : bool
            Nobody can be asked: what can't be kept is lost.
        """
        session, self.held_by = self._session, None
        recording = session.phase is Phase.RECORDING
        asks = recording and not self.waits and not at_once
        if asks and not self._stop.again(closing=True):
            return False
        session.stop_judging()
        self._lines.keep_note()
        if recording or session.busy:
            self.waits = True
            return False
        # A page that holds the window is turned to, and closes nothing by itself: only whoever
        # closes it once more after what is said there may lose something.
        self.held_by = self._pages.holding()
        return at_once or self.held_by is None

    def stopped(self) -> None:
        """Note that the recording is being stopped: by whoever wanted to close, perhaps."""
        self.waits |= self._stop.closing

    def goes(self) -> bool:
        """Go on with a closing that waits; True once the window may be closed anew."""
        if not self.waits or self._session.busy:
            return False
        if self._session.phase is Phase.RECORDING:
            self._session.stop()
            return False
        self.waits = False
        return True
