"""JudgingStrip: how far the judgement of a long recording has come, and its end."""

from __future__ import annotations

from PySide6.QtGui import QKeySequence

from meterlog.window.long_work_strip import LongWorkStrip
from meterlog.window.session import Phase, Session
from meterlog.window.words import say

_KEY = "C"
"""As on the claim page. The found speeds, whose key it is here, are not known while it judges."""


class JudgingStrip(LongWorkStrip):
    """One line above the trace, while a recording that is on show already is judged."""

    def __init__(self) -> None:
        super().__init__()
        self._session: Session | None = None
        self.cancelled.connect(self._stop)

    def show_session(self, session: Session) -> None:
        """Show how far it is; hide where nothing is being judged."""
        self._session = session
        if session.phase is not Phase.JUDGING:
            self.hide()
            return
        words = say("judging: findings come when all has been read")
        self.show_part(words, session.judging.part, stopping=session.judging.stopping)
        if not session.judging.stopping:
            self.stop.setText(say("Cancel ({key})", key=_KEY))
            self.stop.setShortcut(QKeySequence(_KEY))  # a button's text takes its key away

    def _stop(self) -> None:
        if self._session is not None:
            self._session.stop_judging()
            self.show_session(self._session)
