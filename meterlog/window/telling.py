"""Telling: what is always in sight in words: status, alarm, message and the start button."""

from __future__ import annotations

import time
from pathlib import Path
from typing import TYPE_CHECKING

from meterlog.window.disk_watch import DiskWatch
from meterlog.window.doubts_told import DoubtsTold
from meterlog.window.job_of_session import JobOfSession
from meterlog.window.plain_note import PlainNote
from meterlog.window.sentences import sentence
from meterlog.window.session import Phase, Session
from meterlog.window.sound import SoundDesk
from meterlog.window.status_strip import StatusStrip, alarm_words
from meterlog.window.stop_asked import StopAsked
from meterlog.window.words import later, say

if TYPE_CHECKING:
    from meterlog.window.main_window import MainWindow

_STOP_AGAIN = later("Press Enter (or S) once more within 2 seconds to stop and seal.")
_CLOSE_AGAIN = later(
    "This is being recorded. Close once more, or press Enter, within 2 seconds to stop, seal and"
    " close."
)
_SEALING = later("Sealing the recording… the window closes by itself when that is done.")
_CONNECTING = later("Ports are being opened… the window closes by itself when that is done.")
_CLOSING = later("The window closes by itself when this is done.")


class Telling:
    """Says a few times a second how everything stands.

    Parameters
    ----------
    window : MainWindow
    session : Session
    job : JobOfSession
    sound : SoundDesk
    """

    def __init__(
        self, window: MainWindow, session: Session, job: JobOfSession, sound: SoundDesk
    ) -> None:
        self._window, self._session, self._job, self._sound = window, session, job, sound
        self.status = StatusStrip()
        self._doubts = DoubtsTold()
        self._disk = DiskWatch()

    def show(self, recordings: Path, *, stop: StopAsked, closing: bool) -> None:
        """Write everything anew.

        Parameters
        ----------
        recordings : Path
            Where the next recording goes.
        stop : StopAsked
            Whether the stop key was pressed once, or the window to be closed, just now.
        closing : bool
            The window closes as soon as all is sealed.
        """
        session, window = self._session, self._window
        self._disk.tick(recordings)
        self.status.show_session(session, self._disk.free)
        self.status.job.setText(self._job.words)
        self.status.sound.setText(self._sound.words)
        window.sound_alarm(alarm_words(session.phase, session.status))
        told = (sentence(session.trouble), self._doubt_words())
        plain = isinstance(session.trouble, PlainNote) and not (told[1] or stop.pending or closing)
        again = say(_CLOSE_AGAIN if stop.closing else _STOP_AGAIN)
        words = again if stop.pending else "\n".join(one for one in told if one)
        window.say(_closing_words(session.phase) if closing else words, plain=plain)
        recording = session.phase is Phase.RECORDING
        window.header.show_start(recording=recording, asked=stop.pending)

    def _doubt_words(self) -> str:
        """Say what has just begun to speak against a meter."""
        if self._session.phase is not Phase.RECORDING:
            self._doubts.forget()
            return ""
        return self._doubts.words(self._session.review.doubts, time.monotonic())


def _closing_words(phase: Phase) -> str:
    if phase in {Phase.RECORDING, Phase.SEALING}:
        return say(_SEALING)
    return say(_CONNECTING if phase is Phase.CONNECTING else _CLOSING)
