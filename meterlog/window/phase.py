"""Phase: what is under way in a session."""

from __future__ import annotations

from enum import StrEnum


class Phase(StrEnum):
    """What is under way, in words for the status line."""

    IDLE = "not recording"
    CONNECTING = "connecting…"
    RECORDING = "recording"
    SEALING = "sealing…"
    OPENING = "opening…"
    JUDGING = "judging…"
    MENDING = "sealing what was cut off…"
    SHOWING = "showing a recording"
