"""SecondBehind: another run behind the trace on show, chosen by the job or by hand."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtWidgets import QWidget

from meterlog.model import standing
from meterlog.window.folder_dialog import ask_folder
from meterlog.window.job_at_hand import JobAtHand
from meterlog.window.long_work import LongWork
from meterlog.window.second_run import SecondRun, command_times
from meterlog.window.session import Session
from meterlog.window.words import later, say
from meterlog.work.job_folder import Side

_NO_START = later(
    "The second run waits for a commanded speed, or a rise of the current, to begin with."
)


class SecondBehind:
    """None at first; the same key puts it there and takes it away.

    Parameters
    ----------
    session : Session
    at_hand : JobAtHand
    window : QWidget
        Over which a folder is asked for.

    Attributes
    ----------
    laid : SecondRun or None
        To be drawn.
    """

    def __init__(self, session: Session, at_hand: JobAtHand, window: QWidget) -> None:
        self._session, self._at_hand, self._window = session, at_hand, window
        self._work: LongWork[SecondRun] = LongWork("second")
        self._reading: Path | None = None
        self._wanted: Path | None = None
        self._run: SecondRun | None = None
        self._start: int | None = None
        self._dialog: QWidget | None = None
        self.laid: SecondRun | None = None

    def turn(self) -> None:
        """Put another run behind the trace, or take it away."""
        if self._run is not None or self._wanted is not None:
            self._work.cancel()
            self._run = self.laid = self._wanted = None
            return
        other = self._other()
        if other is not None:
            self.load(other)
        elif self._session.recording:
            self._session.trouble = say(
                "The job has no other run yet. Another folder can be chosen once recording ends."
            )
        else:
            start = str(self._at_hand.jobs_folder().parent)
            dialog = ask_folder(
                self._window, say("A second run behind the trace: its folder"), start
            )
            dialog.fileSelected.connect(lambda name: self.load(Path(name)))
            self._dialog = dialog

    def load(self, folder: Path) -> None:
        """Read a run in a thread; it is shown as soon as both have a start in common."""
        self._run = self.laid = None
        self._wanted = folder
        # What was asked for before is wanted no more; this one is read once it has stopped.
        self._work.cancel()
        self._begin()

    def _begin(self) -> None:
        folder = self._wanted
        if folder is not None and self._work.begin(lambda tell: SecondRun.load(folder, tell)):
            self._reading = folder

    def _fetch(self) -> None:
        """Take what has been read; nothing of what was taken away before it came."""
        outcome, wanted = self._work.fetch(), self._wanted
        if outcome is None:
            return
        run, trouble = outcome
        if wanted is not None and wanted == self._reading and (run is not None or trouble):
            self._run, self._wanted = run, None
            self._session.trouble = trouble or self._session.trouble
        self._begin()

    def tick(self) -> None:
        """Take what has been read, and lay it on the run on show."""
        self._fetch()
        shown = self._session.shown
        if self._run is None or shown is None:
            return
        start = next(iter(command_times(standing(shown.events), None)), None)
        if self.laid is None or start != self._start:
            self.laid, self._start = self._run.laid_on(shown), start
            if self.laid is None and not self._session.trouble:
                self._session.trouble = say(_NO_START)
            elif self.laid is not None and self._session.trouble == say(_NO_START):
                self._session.trouble = ""

    def forget_place(self) -> None:
        """Lay it anew: another run is on show."""
        self.laid = None

    def close(self) -> None:
        """Stop reading."""
        self._work.cancel()

    def _other(self) -> Path | None:
        """Give the newest run of the job with the other part; None where there is none."""
        work, folder = self._at_hand.work, self._session.folder
        kept = next((one for one in work.recordings if one.folder == folder), None)
        side = kept.side if kept is not None else work.fitted
        return work.newest(Side.OLD if side is Side.NEW else Side.NEW)
