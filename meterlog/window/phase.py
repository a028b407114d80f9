"""Phase: what is under way in a session; PhaseLog: each that was gone into, in order."""

from __future__ import annotations

from collections.abc import Iterator
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


class PhaseLog:
    """Each phase that was gone into, for those who look only now and then.

    A small recording is read and judged between two looks: who compared the phase with the one
    seen last would miss that there is another recording on show.
    """

    def __init__(self) -> None:
        self._gone_into = [Phase.IDLE]

    @property
    def now(self) -> Phase:
        """The phase gone into last."""
        return self._gone_into[-1]

    def go(self, phase: Phase) -> None:
        """Go into a phase; nothing where it is the one there is."""
        if phase is not self.now:
            self._gone_into.append(phase)

    def mark(self) -> PhaseMark:
        """Give a reader's place in the log: after what is in it now."""
        return PhaseMark(self._gone_into, len(self._gone_into))


class PhaseMark:
    """How far one reader has read in a log of phases."""

    def __init__(self, gone_into: list[Phase], seen: int) -> None:
        self._gone_into, self._seen = gone_into, seen

    def turns(self) -> Iterator[tuple[Phase, Phase]]:
        """Go through the turns since the last time: phase before and phase then."""
        while self._seen < len(self._gone_into):
            self._seen += 1
            yield self._gone_into[self._seen - 2], self._gone_into[self._seen - 1]
