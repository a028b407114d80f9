"""EditsPanel: amend marks and limits of the recording on show, on top of it."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from meterlog.model import Event, EventKind, Role
from meterlog.model.amendment import Amendment, amendment_words
from meterlog.model.errors import MeterlogError
from meterlog.window.edits.edit_form import EditForm
from meterlog.window.edits.last_editor import LastEditor
from meterlog.window.edits.limit_words import limit_words
from meterlog.window.edits.pending_edit import (
    PendingEdit,
    limiting,
    moving,
    putting_back,
    relabelling,
    withdrawing,
)
from meterlog.window.numbers import figure_words, in_numbers, with_points
from meterlog.window.remedies_here import remedy_here
from meterlog.window.sentences import sentence
from meterlog.window.session import Session
from meterlog.window.shown import Shown
from meterlog.window.words import later, say

if TYPE_CHECKING:
    from meterlog.work.edits_on_top import EditsOnTop

_NONE = later("No edits were made.")
_NOT_WRITTEN = later("NOT WRITTEN YET: ")
_NEEDS_WHY = later("Say why, then write it: a reviewer will ask.")
_NEEDS_WHO = later("Say who makes the edit.")
_DROPPED = later("Dropped: nothing had been written.")
_UNDONE = later("Undone by an edit on top; both stay listed.")
_REDONE = later("Done again by an edit on top.")
_WRITTEN = later("Written on top of the recording, which stays as it is.")


class EditsPanel(QWidget):
    """Marks, what can be done to them, limits, and the list of edits.

    Parameters
    ----------
    session : Session
        Its recording is the one that is amended.
    last : LastEditor or None
        Who made edits the last time; None: that in the user's settings folder.
    """

    mark_chosen = Signal(object)
    """Emitted with the Event chosen in the list, or None: the page looks at it."""
    pending_changed = Signal(object)
    """Emitted with where the mark would stand, nanoseconds, or None: the page draws it."""
    closed = Signal()
    """Emitted when Esc leaves the panel and there was nothing to drop."""

    def __init__(self, session: Session, last: LastEditor | None = None) -> None:
        super().__init__()
        self._session = session
        self._last = last or LastEditor()
        self._shown: Shown | None = None
        self._pending: PendingEdit | None = None
        self._said_when_done = ""
        self._amended = "", 0
        """The recording that is being amended, and how many edits it had before."""
        self._had_focus = False
        self._can = False, False
        self.form = form = EditForm()
        page = QVBoxLayout(self)
        page.setContentsMargins(0, 0, 0, 0)
        page.addWidget(form)
        self._connect()
        self.show_session(session)

    def _connect(self) -> None:
        self.form.marks.chosen.connect(self._on_mark)
        self.form.at.moved.connect(self._nudge)
        self.form.back.clicked.connect(lambda: self._nudge(-1))
        self.form.on.clicked.connect(lambda: self._nudge(1))
        self.form.at.textEdited.connect(lambda _: self._on_at())
        self.form.speed.textEdited.connect(lambda _: self._on_speed())
        self.form.withdraw.clicked.connect(self._on_withdraw)
        self.form.limit.activated.connect(lambda _: self._show_value())
        self.form.value.textEdited.connect(lambda _: self._on_value())
        for field in (self.form.at, self.form.speed, self.form.value, self.form.who, self.form.why):
            field.returnPressed.connect(self._on_write)
            field.dropped.connect(self._on_drop)
        self.form.write.clicked.connect(self._on_write)
        self.form.drop.clicked.connect(self._on_drop)
        self.form.undo.clicked.connect(self.undo_edit)
        self.form.redo.clicked.connect(self.redo_edit)

    @property
    def pending(self) -> PendingEdit | None:
        """The edit that is being made and is not written yet."""
        return self._pending

    def show_session(self, session: Session) -> None:
        """Show marks, limits and edits of the recording on show; nothing is done for no change."""
        shown = session.shown
        busy = session.busy or session.recording
        usable = shown is not None and shown.top is not None and not busy
        self.setEnabled(usable)
        another = shown is not self._shown
        if another:
            self._take(shown)
        if self._said_when_done and not session.busy:
            said, self._said_when_done = self._said_when_done, ""
            self._say(self._outcome(said))
            if usable and self._had_focus:
                self.form.marks.setFocus(Qt.FocusReason.OtherFocusReason)

    def _outcome(self, said: str) -> str:
        """Say what came of the edit: nothing beside another recording than it was made on."""
        shown, (amended, before) = self._shown, self._amended
        if shown is None or shown.about.recording_id != amended:
            return ""
        written = shown.top is not None and len(shown.top.edits) > before
        return said if written else self._session.trouble

    def _take(self, shown: Shown | None) -> None:
        same = (
            self._shown is not None and shown is not None
            and self._shown.about.recording_id == shown.about.recording_id
        )  # fmt: skip
        self._shown = shown
        self._set_pending(None)
        if not same:
            self._say("")
            self.form.why.clear()
            technician = "" if shown is None else shown.about.job.technician
            self.form.who.setText(self._last.load(technician))
        top = None if shown is None else shown.top
        marks = None if top is None else top.amended.marks
        self.form.marks.show_marks(
            () if marks is None else marks.standing, () if marks is None else marks.withdrawn
        )
        self._list_limits(top)
        self._list_edits(top)

    def _list_limits(self, top: EditsOnTop | None) -> None:
        before = self.form.limit.currentData()
        self.form.limit.clear()
        for key, value in _limits(top).items():
            self.form.limit.addItem(limit_words(key, value), key)
            tip = f"{limit_words(key, value)}  ({key})"
            self.form.limit.setItemData(
                self.form.limit.count() - 1, tip, Qt.ItemDataRole.ToolTipRole
            )
        view = self.form.limit.view()
        scroll = view.verticalScrollBar().sizeHint().width()
        view.setMinimumWidth(view.sizeHintForColumn(0) + scroll)
        self.form.limit.setCurrentIndex(max(self.form.limit.findData(before), 0))
        self._show_value()

    def _list_edits(self, top: EditsOnTop | None) -> None:
        from meterlog.work.edits_on_top import turns

        self.form.edits.clear()
        edits = () if top is None else top.edits
        done, undone = turns(edits)
        for one in reversed(edits):
            self.form.edits.addItem(sentence(amendment_words(one)))
        for words in () if top is None else top.damage:
            self.form.edits.insertItem(0, f"⚠ {words}")
        if not self.form.edits.count():
            self.form.edits.addItem(say(_NONE))
        self._can = bool(done), bool(undone)
        self._show_turns()

    def _show_turns(self) -> None:
        self.form.undo.setEnabled(self._pending is not None or self._can[0])
        self.form.redo.setEnabled(self._pending is None and self._can[1])
        self.form.write.setEnabled(self._pending is not None)
        self.form.drop.setEnabled(self._pending is not None)

    def pick(self, t_ns: int) -> bool:
        """Choose the mark nearest to an instant, as picked in the trace; False without marks."""
        return self.form.marks.choose_near(t_ns)

    def _on_mark(self, mark: Event | None) -> None:
        out = self.form.marks.is_withdrawn()
        self.form.at.show_seconds("" if mark is None else _seconds(mark.t_ns))
        steps = mark is not None and mark.kind is EventKind.SPEED and not out
        self.form.speed.setText(mark.value if mark is not None and steps else "")
        self.form.speed.setEnabled(steps)
        for widget in (self.form.at, self.form.back, self.form.on):
            widget.setEnabled(mark is not None and not out)
        self.form.withdraw.setEnabled(mark is not None)
        self.form.withdraw.offer_back(out=out)
        if self._pending is not None:
            self._set_pending(None)
            self._say(say(_DROPPED))
        self.mark_chosen.emit(mark)

    def _sample_ns(self) -> int:
        """Give the time from one reading of the motor current to the next."""
        instruments = () if self._shown is None else self._shown.about.instruments
        every = [one for meter in instruments for one in meter.channels]
        current = [one for one in every if one.role is Role.MOTOR_CURRENT] or every
        return round(1e9 * min((one.interval_s for one in current), default=0.1))

    def _nudge(self, samples: int) -> None:
        mark = self.form.marks.mark()
        if mark is None or self.form.marks.is_withdrawn():
            return
        pending = self._pending
        moved = pending is not None and pending.t_ns is not None and self.form.at.isModified()
        now_ns = pending.t_ns if moved and pending is not None else mark.t_ns
        end_ns = 0 if self._shown is None else self._shown.end_ns
        wanted_ns = (now_ns or 0) + samples * self._sample_ns()
        t_ns = min(max(wanted_ns, 0), end_ns)
        self.form.at.show_seconds(_seconds(t_ns))
        self.form.at.setModified(True)
        self._prepare(moving(mark, t_ns) if t_ns != mark.t_ns else None)

    def _on_at(self) -> None:
        from meterlog.work.amended_marks import parse_seconds

        mark = self.form.marks.mark()
        if mark is None:
            return
        try:
            t_ns = parse_seconds(self.form.at.text())
        except MeterlogError as error:
            self._set_pending(None)
            self._say(sentence(str(error)))
            return
        self.form.at.setModified(True)
        self._prepare(moving(mark, t_ns) if t_ns != mark.t_ns else None)

    def _on_speed(self) -> None:
        mark, text = self.form.marks.mark(), self.form.speed.text().strip()
        if mark is not None:
            self._prepare(relabelling(mark, text) if text and text != mark.value else None)

    def _on_withdraw(self) -> None:
        mark = self.form.marks.mark()
        if mark is not None:
            out = self.form.marks.is_withdrawn()
            self._prepare(putting_back(mark) if out else withdrawing(mark))

    def _show_value(self) -> None:
        top = None if self._shown is None else self._shown.top
        value = _limits(top).get(str(self.form.limit.currentData() or ""), "")
        self.form.value.setText(figure_words(value))
        self.form.limit.setToolTip(
            str(self.form.limit.currentData(Qt.ItemDataRole.ToolTipRole) or "")
        )

    def _on_value(self) -> None:
        top = None if self._shown is None else self._shown.top
        key, new = (
            str(self.form.limit.currentData() or ""),
            with_points(self.form.value.text().strip()),
        )
        old = _limits(top).get(key, "")
        self._prepare(limiting(key, old, new) if key and new != old else None)

    def _prepare(self, pending: PendingEdit | None) -> None:
        """Take an edit for the one that is being made; say at once why it can't be."""
        top = None if self._shown is None else self._shown.top
        self._set_pending(pending)
        if pending is None or top is None:
            self._say("")
            return
        try:
            top.check(pending.make(top, self.form.who.text() or "?", self.form.why.text() or "?"))
        except MeterlogError as error:
            self._set_pending(None)
            self._say(remedy_here(str(error)))
            return
        self._say(
            f"{say(_NOT_WRITTEN)}{pending.words}."
            f" {'' if self.form.why.text() else say(_NEEDS_WHY)}".strip()
        )

    def _set_pending(self, pending: PendingEdit | None) -> None:
        self._pending = pending
        if pending is None:
            self.form.at.setModified(False)
        self._show_turns()
        self.pending_changed.emit(None if pending is None else pending.t_ns)

    def _on_write(self) -> None:
        pending = self._pending
        if pending is None:
            return
        who, why = self.form.who.text().strip(), self.form.why.text().strip()
        if not who or not why:
            self._say(
                f"{say(_NOT_WRITTEN)}{pending.words}. {say(_NEEDS_WHY if who else _NEEDS_WHO)}"
            )
            (self.form.why if who else self.form.who).setFocus(Qt.FocusReason.OtherFocusReason)
            return
        self._last.keep(who)
        self._go(lambda top: pending.make(top, who, why), say(_WRITTEN))

    def _on_drop(self) -> None:
        self.form.marks.setFocus(Qt.FocusReason.OtherFocusReason)
        if self._pending is None:
            self.closed.emit()
            return
        self._set_pending(None)
        self._on_mark(self.form.marks.mark())
        self._show_value()
        self._say(say(_DROPPED))

    def undo_edit(self) -> None:
        """Drop the edit that is not written yet; else undo the newest one by one on top of it."""
        if self._pending is not None:
            self._on_drop()
            return
        who = self.form.who.text().strip()
        self._go(lambda top: top.undoing(who), say(_UNDONE))

    def redo_edit(self) -> None:
        """Do again what was undone last, by an edit on top."""
        who = self.form.who.text().strip()
        self._go(lambda top: top.redoing(who), say(_REDONE))

    def _go(self, make: Callable[[EditsOnTop], Amendment], said: str) -> None:
        if not self.form.who.text().strip():
            self._say(say(_NEEDS_WHO))
            self.form.who.setFocus(Qt.FocusReason.OtherFocusReason)
            return
        if self._session.busy:
            return
        if not self._session.amend(make):
            self._say(self._session.trouble)
            return
        shown = self._shown
        if shown is not None and shown.top is not None:
            self._amended = shown.about.recording_id, len(shown.top.edits)
        # What is not written yet stays until it is: it may be refused.
        self._said_when_done = said
        # Once it is disabled, the focus is lost and the keys are the frame's.
        self._had_focus = any(one.hasFocus() for one in self.form.in_order())

    def _say(self, words: str) -> None:
        rank = "caution" if words.startswith(say(_NOT_WRITTEN)) else "second"
        self.form.told.say(words)
        if self.form.said.property("rank") != rank:
            self.form.said.setProperty("rank", rank)
            self.form.said.style().polish(self.form.said)


def _limits(top: EditsOnTop | None) -> dict[str, str]:
    from meterlog.work.amended_limits import limit_values

    return {} if top is None else limit_values(top.amended.limits, top.amended.marks.speeds)


def _seconds(t_ns: int) -> str:
    from meterlog.work.amended_marks import seconds_text

    return in_numbers(seconds_text(t_ns))
