"""BeforeSecond: which conditions differ from the first run's, told before the second one starts."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QEvent, QObject, Qt, QTimer, Signal
from PySide6.QtWidgets import QFrame, QLabel, QScrollArea, QVBoxLayout, QWidget

from meterlog.window.job_at_hand import JobAtHand
from meterlog.window.long_work import LongWork
from meterlog.window.sentences import sentence
from meterlog.window.words import say
from meterlog.work.first_run import FirstRun, first_run
from meterlog.work.job_folder import Side

_FETCH_MS = 30
_BOX_LINES = 7
"""The head and six warnings; what is more is scrolled to."""


class BeforeSecondWatch(QObject):
    """Keeps the warnings for the next run of the job at hand. ``changed`` tells of new ones.

    There are some only while the new part is fitted and a run with the old one is there. The head
    of that run is read in a thread.

    Parameters
    ----------
    at_hand : JobAtHand
    voltage_planned : callable
        Tells whether the motor voltage would be read in the next run.
    parent : QObject or None
        With it ends the watching: what was read is not asked for after it has gone.

    Attributes
    ----------
    warnings : tuple of str
    trouble : str
        Why the first run's conditions are not known; empty when they are, or none are needed.
    """

    changed = Signal()

    def __init__(
        self,
        at_hand: JobAtHand,
        voltage_planned: Callable[[], bool],
        parent: QObject | None = None,
    ) -> None:
        super().__init__(parent)
        self._at_hand = at_hand
        self._voltage_planned = voltage_planned
        self._read: LongWork[FirstRun] = LongWork("first-run")
        self._wanted: Path | None = None
        self._asked: Path | None = None
        self._first: FirstRun | None = None
        self._recording = False
        self.warnings: tuple[str, ...] = ()
        self.trouble = ""
        self._timer = QTimer(self)
        self._timer.setInterval(_FETCH_MS)
        self._timer.timeout.connect(self._fetch)
        at_hand.listeners.append(self.look)
        self.look()

    @property
    def done(self) -> bool:
        """True once there is a run with the new part."""
        return self._at_hand.work.newest(Side.NEW) is not None

    @property
    def first(self) -> FirstRun | None:
        """The run that the next one will be compared with; None where there is none, or not yet."""
        return self._first

    @property
    def expected(self) -> bool:
        """True while the next run will be compared with one of the job, which may warn of much."""
        return self._wanted is not None

    def bar(self, *, recording: bool) -> None:
        """Say nothing while a recording is in progress: it is too late then."""
        self._recording = recording
        self.look()

    def look(self) -> None:
        """Look again at the job, the conditions and the plan."""
        work, before = self._at_hand.work, self.expected
        self._wanted = work.newest(Side.OLD) if work.fitted is Side.NEW else None
        if self._wanted is None:
            self._first, self._asked, self.trouble = None, None, ""
        elif self._wanted != self._asked and not self._read.busy:
            self._first, self.trouble = None, ""
            self._asked = folder = self._wanted
            self._read.begin(lambda _: _read(folder))
            self._timer.start()
        self._tell(turned=before is not self.expected)

    def _fetch(self) -> None:
        outcome = self._read.fetch()
        if outcome is None:
            return
        self._timer.stop()
        self._first, self.trouble = outcome
        if self._asked != self._wanted:
            self._first, self.trouble, self._asked = None, "", None
        self.look()

    def _tell(self, *, turned: bool) -> None:
        said: tuple[str, ...] = ()
        if self._recording:
            pass
        elif self._first is not None:
            from meterlog.analysis.compare import condition_warnings

            known = self._first.voltage_read and self._voltage_planned()
            said = condition_warnings(
                self._first.conditions, self._at_hand.conditions, voltage_known=known
            )
        elif self.trouble:
            said = (
                say(
                    "The conditions of the first run are not known: {trouble}", trouble=self.trouble
                ),
            )
        if said != self.warnings or turned:
            self.warnings = said
            self.changed.emit()


def _read(folder: Path) -> FirstRun:
    # Loaded here, in the thread: it brings the whole comparison with it.
    import meterlog.analysis.compare  # noqa: F401

    return first_run(folder)


class BeforeSecondLine(QLabel):
    """The warnings in a banner, hidden where there are none. For the Meters and the Trace page.

    Parameters
    ----------
    watch : BeforeSecondWatch
    most : int
        How many are said in full; of the others how many there are.
    once : bool
        Say nothing any more once there is a run with the new part.
    """

    def __init__(
        self,
        watch: BeforeSecondWatch,
        most: int = 12,
        parent: QWidget | None = None,
        *,
        once: bool = False,
    ) -> None:
        super().__init__("", parent)
        self._watch = watch
        self._most = most
        self._once = once
        self.setProperty("rank", "caution")
        self.setWordWrap(True)
        self.setAccessibleName(say("conditions that differ from the first run's"))
        watch.changed.connect(self.show_warnings)
        self.show_warnings()

    def show_warnings(self) -> None:
        """Show what the watch says now."""
        said = () if self._once and self._watch.done else self._watch.warnings
        lines = [f"⚠ {sentence(words)}" for words in said[: self._most]]
        if len(said) > self._most:
            lines.append(
                say("… and {said} more, on the Meters page (M)", said=len(said) - self._most)
            )
        if lines:
            lines.insert(0, say("Before the run with the new part:"))
        self.setText("\n".join(lines))
        if not lines:
            self.hide()
        elif self.parent() is not None:  # else it would be a window of its own
            self.show()


class BeforeSecondBox(QScrollArea):
    """The same in a box of one height, so that a warning that comes or goes moves nothing.

    It takes room while the next run is the second one, whether there is a warning or not.

    Parameters
    ----------
    watch : BeforeSecondWatch
    parent : QWidget
    """

    def __init__(self, watch: BeforeSecondWatch, parent: QWidget) -> None:
        super().__init__(parent)
        self._watch = watch
        body = QWidget()
        self.line = BeforeSecondLine(watch, parent=body)
        column = QVBoxLayout(body)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.line)
        column.addStretch(1)
        self.setWidget(body)
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setAccessibleName(say("what differs from the first run"))
        watch.changed.connect(self._show)
        self._show()

    def _show(self) -> None:
        self.setVisible(self._watch.expected)

    def changeEvent(self, event: QEvent) -> None:
        """Stand as high as its lines of text."""
        super().changeEvent(event)
        if event.type() in {QEvent.Type.FontChange, QEvent.Type.StyleChange}:
            self.setFixedHeight(round((_BOX_LINES + 0.7) * self.fontMetrics().lineSpacing()))
