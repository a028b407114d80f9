"""MeterTraps: everything that makes a sound circuit look faulty, or a faulty one sound.

Nothing here ever blames the vehicle. What is found is told as doubts; and a missing current that
the voltages deny is not held against the motor.
"""

from __future__ import annotations

import itertools
import operator
from collections.abc import Sequence
from datetime import datetime

from meterlog.analysis.absence import Absence
from meterlog.analysis.clamp_decade import decade_doubts
from meterlog.analysis.device_words import DeviceWords
from meterlog.analysis.levels import Levels
from meterlog.analysis.load_drop import LoadDrop, believed
from meterlog.analysis.long_table import Attic
from meterlog.analysis.off_current import OffCurrent
from meterlog.analysis.past_range_watch import PastRangeWatch
from meterlog.analysis.pieces import Piece
from meterlog.analysis.polarity import Polarity
from meterlog.analysis.rows import Rows
from meterlog.analysis.slipped_probe import SlippedProbes
from meterlog.analysis.stuck import StuckWatch
from meterlog.analysis.timeline import SpeedTimeline
from meterlog.analysis.volts_beyond import beyond_doubts
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

PROBES_NS = 1_000_000_000
"""So often, in the time of the recording, a live review looks for slipped probes."""


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
    attic : Attic or None
        Where is laid aside what is too much for memory.
    """

    def __init__(
        self,
        instruments: Sequence[Instrument],
        limits: Limits,
        timeline: SpeedTimeline,
        started_utc: datetime | None,
        attic: Attic | None = None,
    ) -> None:
        self._limits = limits
        self._timeline = timeline
        self._levels = Levels(attic)
        self._polarity = Polarity(self._levels, limits)
        self._slips = SlippedProbes(self._levels, limits)
        self._off = OffCurrent(self._levels, limits)
        self._stuck = StuckWatch(instruments, limits)
        self._past = PastRangeWatch(instruments)
        self._zeros = ZeroWatch(instruments, started_utc)
        self._words = DeviceWords()
        self._absence = Absence(instruments)
        self._drop = LoadDrop(self._levels, limits, *_feed(instruments))
        self._last_ns = 0
        self._plain: list[tuple[Piece, str]] = []
        self._plain_of: Sequence[Piece] = ()
        """The pieces last believed as they came."""
        self._probes: tuple[tuple[int, int], list[Doubt]] | None = None

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
            self._past.take(item)
            self._last_ns = max(self._last_ns, int(item.t_ns[-1]))

    def take_rows(self, rows: Rows) -> None:
        """Take rows side by side, each once."""
        self._levels.take(rows)

    def believed(self, pieces: Sequence[Piece]) -> list[tuple[Piece, str]]:
        """Give the pieces as they are to be told, each with why the voltages deny it, if so."""
        denied = self._drop.denied(pieces, self._timeline.changes)
        if denied:
            return believed(pieces, denied)
        # Thousands of pieces an hour: those of the last time are not put together again.
        differ = map(operator.is_not, self._plain_of, pieces)
        usual = min(len(self._plain_of), len(pieces))
        same = next(itertools.compress(itertools.count(), differ), usual)
        self._plain = [*self._plain[:same], *((piece, "") for piece in pieces[same:])]
        self._plain_of = pieces
        return self._plain

    def cause(self, piece: Piece) -> str:
        """Give why there is no data in a stretch; empty when nothing is known of it."""
        return self._absence.cause(piece.start_ns, piece.end_ns)

    def notes(self) -> list[str]:
        """Give what speaks for the measuring."""
        return self._zeros.notes()

    def doubts(
        self, steps: Sequence[Step], pieces: Sequence[tuple[Piece, str]], *, ended: bool = True
    ) -> tuple[Doubt, ...]:
        """Give everything that speaks against it, the gravest first.

        Parameters
        ----------
        steps : sequence of Step
        pieces : sequence of (Piece, str)
            As :meth:`believed` gives them.
        ended : bool
            False: more readings come, and a slipped probe may be told up to a second late.
        """
        return (
            *_quiet([(piece, why) for piece, why in pieces if why]),
            *decade_doubts(steps, self._limits),
            *beyond_doubts(steps, self._limits),
            *self._polarity.doubts(steps),
            *self._off.doubts(self._timeline.changes),
            *self._slipped(ended=ended),
            *self._stuck.doubts(self._levels, self._timeline),
            *self._past.doubts(),
            *self._words.doubts(),
            *self._zeros.doubts(self._levels, self._last_ns),
        )

    def _slipped(self, *, ended: bool) -> list[Doubt]:
        """Look for slipped probes; once a second is enough."""
        changes = self._timeline.changes
        asked = self._levels.end_ns // PROBES_NS, len(changes)
        if ended or self._probes is None or self._probes[0] != asked:
            self._probes = asked, self._slips.doubts(changes)
        return self._probes[1]


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
