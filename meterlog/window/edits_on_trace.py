"""EditsOnTrace: the panel of edits beside the trace, and the marks that are picked in it."""

from __future__ import annotations

from meterlog.window.edits import EditsPanel
from meterlog.window.run_page import RunPage
from meterlog.window.session import Session
from meterlog.window.words import later, say

_NOT_NOW = later(
    "Edits are made on top of a recording that is sealed: open one, or stop this one first."
)


class EditsOnTrace:
    """The same key shows the panel in the place of findings and steps, and takes it away.

    Parameters
    ----------
    session : Session
    page : RunPage
    """

    def __init__(self, session: Session, page: RunPage) -> None:
        self._session, self._page = session, page
        self.panel = EditsPanel(session)
        page.put_aside(self.panel)
        self.panel.hide()
        self.panel.closed.connect(self.leave)
        self.panel.mark_chosen.connect(
            lambda mark: page.show_pending(None if mark is None else mark.t_ns)
        )
        self.panel.pending_changed.connect(page.show_pending)
        page.clicked.connect(self._on_click)

    def turn(self) -> None:
        """Show the panel or take it away."""
        if not self.panel.isHidden():
            self.leave()
            return
        shown = self._session.shown
        if shown is None or shown.live or self._session.recording:
            self._session.trouble = say(_NOT_NOW)
            return
        self._page.show_aside(self.panel)
        self.panel.show_session(self._session)
        self.panel.form.marks.setFocus()

    def undo(self) -> bool:
        """Take back the last edit where the panel is open; False where it is not."""
        if self.panel.isHidden():
            return False
        self.panel.undo_edit()
        return True

    def leave(self) -> None:
        """Show findings and steps again."""
        self.panel.hide()
        self._page.show_pending(None)
        self._page.show_aside(None)
        self._page.setFocus()

    def tick(self) -> None:
        """Follow the session; while recording there is nothing to edit."""
        if self.panel.isHidden():
            return
        if self._session.recording:
            self.leave()
        else:
            self.panel.show_session(self._session)

    def _on_click(self, t_ns: int) -> None:
        if not self.panel.isHidden():
            self.panel.pick(t_ns)
