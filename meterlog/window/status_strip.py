"""StatusStrip: is it connected, is it recording, is it being kept. Always in sight."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtWidgets import QHBoxLayout, QLabel, QWidget

from meterlog.evidence.ticks import time_text
from meterlog.window.session import Phase, Session
from meterlog.work import RunStatus


def disk_words(free: int) -> str:
    """Write free disk space."""
    if free < 0:
        return "disk: not known"
    return f"disk {free / 1e9:.1f} GB free" if free >= 1e9 else f"disk {free / 1e6:.0f} MB free"


def meter_words(status: RunStatus) -> str:
    """Write how each meter is doing."""
    parts = []
    for meter in status.meters:
        state = "connected" if meter.alive else "NOT CONNECTED"
        words = f"{meter.key}: {state}"
        parts.append(f"{words} ({meter.message})" if meter.message else words)
    return " · ".join(parts)


def rows_words(status: RunStatus) -> str:
    """Write how many readings there are, and how many lines were not understood."""
    words = f"{sum(status.rows.values()):,} readings"
    return f"{words}, {status.refused:,} refused" if status.refused else words


def phase_words(phase: Phase, status: RunStatus, folder: Path | None) -> str:
    """Write what is under way, for how long, and where it goes."""
    if phase in {Phase.IDLE, Phase.CONNECTING, Phase.OPENING}:
        return phase.value
    name = folder.name if folder else ""
    sign = "● " if phase is Phase.RECORDING else ""
    return f"{sign}{phase.value} {time_text(status.elapsed_s, 60.0)} · {name}"


def alarm_words(phase: Phase, status: RunStatus) -> str:
    """Give what the red banner says; empty when all that comes in is kept."""
    if phase not in {Phase.RECORDING, Phase.SEALING}:
        return ""
    if status.failed:
        return f"NOTHING IS BEING KEPT: {status.failed}"
    lost = [meter.key for meter in status.meters if not meter.alive]
    if lost:
        return f"NO READINGS FROM {', '.join(lost)}: check plug, cable and power."
    if 0 <= status.disk_free < 50_000_000:
        return f"The disk is nearly full: {disk_words(status.disk_free)}."
    if status.faults:
        return f"A part of the program failed: {status.faults[-1]}"
    return ""


class StatusStrip(QWidget):
    """One line of words."""

    def __init__(self) -> None:
        super().__init__()
        self.phase = QLabel("")
        self.meters = QLabel("")
        self.rows = QLabel("")
        self.disk = QLabel("")
        layout = QHBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(14)
        for label, name, stretch in self._labels():
            label.setAccessibleName(name)
            layout.addWidget(label, stretch)

    def _labels(self) -> Sequence[tuple[QLabel, str, int]]:
        return (
            (self.phase, "what is under way", 0),
            (self.meters, "meters", 1),
            (self.rows, "readings kept", 0),
            (self.disk, "room on the disk", 0),
        )

    def show_session(self, session: Session) -> None:
        """Show how the session is doing."""
        status = session.status
        self.phase.setText(phase_words(session.phase, status, session.folder))
        self.meters.setText(meter_words(status))
        self.rows.setText(rows_words(status) if session.shown else "")
        self.disk.setText(disk_words(status.disk_free))
        self.disk.setVisible(session.recording)
