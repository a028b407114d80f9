"""MeterTraps: everything that makes a sound circuit look faulty, or a faulty one sound.

Nothing here ever blames the vehicle. What is found is told as doubts; and a missing current that
the voltages deny is not held against the motor.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime

from meterlog.analysis.absence import Absence
from meterlog.analysis.clamp_decade import decade_doubts
from meterlog.analysis.device_words import DeviceWords
from meterlog.analysis.levels import Levels
from meterlog.analysis.load_drop import LoadDrop, believed
from meterlog.analysis.pieces import Piece
from meterlog.analysis.polarity import polarity_doubts
from meterlog.analysis.rows import Rows
from meterlog.analysis.slipped_probe import slipped_probe_doubts
from meterlog.analysis.stuck import StuckWatch
from meterlog.analysis.timeline import SpeedTimeline
from meterlog.analysis.zero_watch import ZeroWatch
from meterlog.model import (
    Block,
    Channel,
    Doubt,
    DoubtKind,
    Event,
    Instrument,
    Limits,
    Role,
    Step,
)


class MeterTraps:
    """Watches the meters while the reviewer watches the motor.

    Parameters
    ----------
    instruments : sequence of Instrument
    limits : Limits
    timeline : SpeedTimeline
        The detector's.
    started_utc : datetime or None
        Wall time of the recording's zero, for the age of zeros.
    """

    def __init__(
        self,
        instruments: Sequence[Instrument],
        limits: Limits,
        timeline: SpeedTimeline,
        started_utc: datetime | None,
    ) -> None:
        self._limits = limits
        self._timeline = timeline
        self._levels = Levels()
        self._stuck = StuckWatch(instruments, limits)
        self._zeros = ZeroWatch(instruments, started_utc)
        self._words = DeviceWords()
        self._absence = Absence(instruments)
        self._drop = LoadDrop(self._levels, limits, *_feed(instruments))
        self._last_ns = 0

    @property
    def levels(self) -> Levels:
        """Current and voltages of the whole recording; filled by :meth:`take_rows`."""
        return self._levels

    def take(self, item: Block | Event) -> None:
        """Take the next Block or Event, as it came."""
        self._absence.take(item)
        if isinstance(item, Event):
            self._zeros.take(item)
            self._words.take(item)
        elif len(item):
            self._stuck.take(item)
            self._last_ns = max(self._last_ns, int(item.t_ns[-1]))

    def take_rows(self, rows: Rows) -> None:
        """Take rows side by side, each once."""
        self._levels.take(rows)

    def believed(self, pieces: Sequence[Piece]) -> list[tuple[Piece, str]]:
        """Give the pieces as they are to be told, each with why the voltages deny it, if so."""
        return believed(pieces, self._drop.denied(pieces, self._timeline.changes))

    def cause(self, piece: Piece) -> str:
        """Give why there is no data in a stretch; empty when nothing is known of it."""
        return self._absence.cause(piece.start_ns, piece.end_ns)

    def notes(self) -> list[str]:
        """Give what speaks for the measuring."""
        return self._zeros.notes()

    def doubts(
        self, steps: Sequence[Step], pieces: Sequence[tuple[Piece, str]]
    ) -> tuple[Doubt, ...]:
        """Give everything that speaks against it, the gravest first."""
        levels, limits = self._levels, self._limits
        return (
            *_quiet([(piece, why) for piece, why in pieces if why]),
            *decade_doubts(steps, limits),
            *polarity_doubts(steps, levels, limits),
            *slipped_probe_doubts(levels, limits, self._timeline.changes),
            *self._stuck.doubts(levels, self._timeline),
            *self._words.doubts(),
            *self._zeros.doubts(levels, self._last_ns),
        )


def _feed(instruments: Sequence[Instrument]) -> tuple[Channel | None, float]:
    """Give the feed's channel, and how late it may be against the current, in seconds."""
    for instrument in instruments:
        index = instrument.column(Role.MOTOR_FEED)
        if index is not None:
            channel = instrument.channels[index]
            beside = instrument.column(Role.MOTOR_CURRENT) is not None
            return channel, 0.0 if beside else channel.interval_s + channel.integration_s
    return None, 0.0


def _quiet(denied: Sequence[tuple[Piece, str]]) -> list[Doubt]:
    if not denied:
        return []
    (first, why), (last, _) = denied[0], denied[-1]
    text = (
        f"The current reads nothing from {first.start_ns / 1e9:.1f} s to"
        f" {last.end_ns / 1e9:.1f} s{' at times' if len(denied) > 1 else ''}, but {why}: has the"
        f" clamp's battery died, or has it switched itself off or slipped off the wire? Put that"
        f" right and measure again."
    )
    return [Doubt(DoubtKind.CLAMP_QUIET, text, first.start_ns, last.end_ns)]
