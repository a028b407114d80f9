"""StatusStrip: is it connected, is it recording, is it being kept. Always in sight."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtWidgets import QHBoxLayout, QLabel, QWidget

from meterlog.evidence.ticks import time_text
from meterlog.window.elided_label import ElidedLabel
from meterlog.window.numbers import in_numbers, number
from meterlog.window.remedies_here import remedy_while_recording
from meterlog.window.sentences import sentence
from meterlog.window.session import Phase, Session
from meterlog.window.words import say
from meterlog.work import RunStatus


def disk_words(free: int) -> str:
    """Write free disk space."""
    if free < 0:
        return say("disk: not known")
    return (
        say("disk {free} GB free", free=number(free / 1e9, ".1f"))
        if free >= 1e9
        else say("disk {free} MB free", free=number(free / 1e6, ".0f"))
    )


def meter_words(status: RunStatus) -> str:
    """Write how each meter is doing."""
    parts = []
    for meter in status.meters:
        state = say("connected") if meter.alive else say("NOT CONNECTED")
        state = say("typed by hand") if meter.typed else state
        words = f"{meter.key}: {state}"
        # The first sentence: the line is one line, and the banner has it all.
        why = sentence(meter.message.partition(". ")[0])
        parts.append(f"{words} ({why})" if why else words)
    return " · ".join(parts)


def rows_words(status: RunStatus) -> str:
    """Write how many readings there are, and how many lines were not understood."""
    if not status.rows:
        return ""  # they have not been counted
    words = say("{values} readings", values=number(sum(status.readings.values()), ","))
    words += (
        say(", {refused} refused", refused=number(status.refused, ",")) if status.refused else ""
    )
    words += (
        say(", {lost_rows} rows lost", lost_rows=number(status.lost_rows, ","))
        if status.lost_rows
        else ""
    )
    return (
        say("{words}, {lost} bytes lost", words=words, lost=number(status.lost, ","))
        if status.lost
        else words
    )


def phase_words(phase: Phase, status: RunStatus, folder: Path | None) -> str:
    """Write what is under way, for how long, and where it goes."""
    if phase in {Phase.IDLE, Phase.CONNECTING, Phase.OPENING}:
        return say(phase.value)
    name = folder.name if folder else ""
    sign = "● " if phase is Phase.RECORDING else ""
    words = f"{sign}{say(phase.value)} {in_numbers(time_text(status.elapsed_s, 60.0))}"
    return f"{words} · {name}" if name else words


def alarm_words(phase: Phase, status: RunStatus) -> str:
    """Give what the red banner says; empty when all that comes in is kept."""
    if phase not in {Phase.RECORDING, Phase.SEALING}:
        return ""
    if status.failed:
        return say("NOTHING IS BEING KEPT: {failed}", failed=sentence(status.failed))
    if status.moved:
        return say("ANOTHER DISK: {moved}", moved=sentence(status.moved))
    # Once it has ended no meter is asked any more, and what it says of itself is no alarm.
    silent = _silent_words(status) if phase is Phase.RECORDING else ""
    return silent or _disk_alarm(status) or _fault_words(status)


def _silent_words(status: RunStatus) -> str:
    silent = [meter for meter in status.meters if not meter.alive]
    if not silent:
        return ""
    names = ", ".join(meter.key for meter in silent)
    reason = remedy_while_recording(silent[0].message) if len(silent) == 1 else ""
    return say(
        "NO READINGS FROM {names}: {reason}",
        names=names,
        reason=reason or say("check plug, cable and power."),
    )


def _disk_alarm(status: RunStatus) -> str:
    if 0 <= status.disk_free < 50_000_000:
        return say("The disk is nearly full: {disk}.", disk=disk_words(status.disk_free))
    if status.falls_behind:
        return say(
            "The disk does not keep up: {waiting} pieces wait. None is lost yet.",
            waiting=number(status.waiting, ","),
        )
    return ""


def _fault_words(status: RunStatus) -> str:
    return (
        say("A part of the program failed: {faults}", faults=status.faults[-1])
        if status.faults
        else ""
    )


class StatusStrip(QWidget):
    """One line of words."""

    def __init__(self) -> None:
        super().__init__()
        self.phase, self.rows, self.disk = QLabel(""), QLabel(""), QLabel("")
        # Where there is too little room, these give way, and show that they do.
        self.job, self.meters = ElidedLabel(), ElidedLabel()
        self.sound, self.awake = ElidedLabel(), ElidedLabel()
        layout = QHBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(14)
        for label, name, stretch in self._labels():
            label.setAccessibleName(name)
            layout.addWidget(label, stretch)

    def _labels(self) -> Sequence[tuple[QLabel, str, int]]:
        return (
            (self.phase, say("what is under way"), 0),
            (self.job, say("job at hand, and which part is in"), 0),
            (self.meters, say("meters"), 1),
            (self.rows, say("readings kept"), 0),
            (self.sound, say("sound"), 0),
            (self.awake, say("is the computer kept awake"), 0),
            (self.disk, say("room on the disk"), 0),
        )

    def _caution(self, *, wrong: bool) -> None:
        """Put the meters' words on the caution colour, or back."""
        rank = "caution" if wrong else ""
        if self.meters.property("rank") != rank:
            self.meters.setProperty("rank", rank)
            # A style sheet looks at properties only when it is put on.
            self.meters.style().unpolish(self.meters)
            self.meters.style().polish(self.meters)

    def show_session(self, session: Session, free: int = -1) -> None:
        """Show how the session is doing, and the free bytes where the next recording goes."""
        status = session.status
        # Which recording it is stands at the top.
        self.phase.setText(phase_words(session.phase, status, None))
        asked = session.phase is Phase.RECORDING
        self.meters.setText(meter_words(status) if asked else "")
        wrong = any(not meter.alive or meter.message for meter in status.meters)
        self._caution(wrong=asked and wrong)
        self.rows.setText(rows_words(status) if session.shown else "")
        # How it is; why, and what to do, is in the tip.
        self.awake.setText(sentence(status.sleep.partition(":")[0]) if session.recording else "")
        self.awake.setToolTip(status.sleep)
        self.disk.setText(disk_words(status.disk_free if session.recording else free))
