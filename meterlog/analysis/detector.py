"""SpanDetector: Blocks and events in, Spans out, the same however they are cut."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import pairwise

from meterlog.analysis.align import Aligner
from meterlog.analysis.episodes import EpisodeBuilder
from meterlog.analysis.labels import Labeller, Stretch
from meterlog.analysis.pieces import Piece
from meterlog.analysis.rows import Rows, join_rows
from meterlog.analysis.time_notes import TimeNotes
from meterlog.analysis.timeline import SpeedTimeline
from meterlog.model import Block, Event, Instrument, Limits, Role, SpanKind

HOLD_NS = 250_000_000
"""Readings wait this long, in their own time, so that an event stamped a little later than a
reading that came first still finds it unjudged."""

GATHER_NS = 50_000_000
"""Rows are labelled together over so much of their time: one by one they cost fifty times as much,
and nobody sees a twentieth of a second."""

WINDOW = 65_536
"""Rows labelled at a time: small enough to stay in the processor's cache."""

UNKNOWN_APART_S = 0.1
"""So far apart two meters' times may be where nobody knows: what adapters and operating systems
hold back. Common practice, no source."""

_BACK = 2
"""Rows looked back at."""

RowsHook = Callable[[Rows, Sequence[Stretch]], None]


class SpanDetector:
    """Finds out what the motor was doing.

    Parameters
    ----------
    instruments : sequence of Instrument
        Those of the recording, roles assigned.
    limits : Limits
    timeline : SpeedTimeline or None
        To share with others; filled here from the events.
    on_rows : callable or None
        Called with rows and the stretches that cover them, once each, in order: for statistics.
    """

    def __init__(
        self,
        instruments: Sequence[Instrument],
        limits: Limits,
        timeline: SpeedTimeline | None = None,
        on_rows: RowsHook | None = None,
    ) -> None:
        self._aligner = Aligner(instruments)
        self.timeline = SpeedTimeline() if timeline is None else timeline
        apart_ns = volts_apart_ns(instruments)
        window_ns = _volts_window_ns(instruments) if apart_ns is None else apart_ns
        self._labeller = Labeller(limits, self.timeline, window_ns)
        self._builder = EpisodeBuilder(limits, self.timeline, self._aligner.silence_ns, apart_ns)
        self._on_rows = on_rows
        self._has_current = self._aligner.has(Role.MOTOR_CURRENT)
        self._waiting: list[Rows] = []
        self._behind = 0
        """Rows at the front of the waiting ones that are labelled and kept to look back at."""
        self.first_ns = 0
        self.last_ns = 0
        self._begun = False

    def feed(self, item: Block | Event) -> None:
        """Take the next Block of any instrument, or an event.

        Events may come up to :data:`HOLD_NS` of recording time later than readings with later
        stamps; everything else about the order and size of the items does not matter.
        """
        if isinstance(item, Event):
            self.timeline.add(item)
            return
        rows = self._aligner.feed(item)
        if rows is None:
            return
        self._waiting.append(rows)
        newest = int(rows.t_ns[-1])
        if newest - self._oldest_unlabelled_ns() > HOLD_NS + GATHER_NS:
            self._label(newest - HOLD_NS)

    def _oldest_unlabelled_ns(self) -> int:
        first = self._waiting[0]
        if len(first) > self._behind:
            return int(first.t_ns[self._behind])
        return int(self._waiting[1].t_ns[0])

    def pieces(self) -> list[Piece]:
        """Give the settled pieces, as Spans' worth, in time order; after :meth:`finish` all."""
        return self._builder.finished

    @property
    def state(self) -> tuple[int, SpanKind | None]:
        """Tell how many pieces are settled, and of which kind the open one is."""
        still_open = self._labeller.open_piece(self.last_ns)
        return len(self._builder.finished), None if still_open is None else still_open.kind

    @property
    def builder(self) -> EpisodeBuilder:
        """What has been settled, and what was passed over on the way."""
        return self._builder

    def provisional(self) -> list[Piece]:
        """Give the pieces of now: settled ones, and the open ones as if the end came here."""
        # A command that was marked late may have become known only after what it explains.
        self._builder.excuse(self.last_ns)
        builder = self._builder.copy()
        still_open = self._labeller.open_piece(self.last_ns)
        if still_open is not None:
            builder.add(still_open)
        builder.finish()
        return self._builder.finished[:-1] + builder.finished

    def finish(self) -> None:
        """Label everything that still waits, and end what is open."""
        rest = self._aligner.finish()
        if rest is not None:
            self._waiting.append(rest)
        self._label(None)
        still_open = self._labeller.open_piece(self.last_ns)
        if still_open is not None:
            self._builder.add(still_open)
        self._builder.finish()
        self._builder.excuse(None)

    def _label(self, horizon_ns: int | None) -> None:
        """Label the waiting rows up to the horizon, but keep one to look ahead to."""
        if not self._waiting:
            return
        rows, back = _join_all(self._waiting), self._behind
        count = len(rows)
        if horizon_ns is not None:
            count = min(int(rows.t_ns.searchsorted(horizon_ns, side="right")), count - 1)
        for start in range(back, count, WINDOW):
            stop = min(start + WINDOW, count)
            behind = min(start, _BACK)
            self._label_window(rows.part(start - behind, stop + 1), behind, stop - start)
        labelled = max(count, back)
        self._behind = min(labelled, _BACK)
        self._waiting = [rows.part(labelled - self._behind, len(rows))]

    def _label_window(self, rows: Rows, back: int, count: int) -> None:
        """Label ``count`` rows after the first ``back``; one more may follow to look ahead to."""
        end = back + count
        if self._has_current:
            for piece in self._labeller.label(rows, back, end):
                self._builder.add(piece)
            stretches = self._labeller.stretches
        else:
            stretches = self._by_speed_only(rows, back, end)
        if self._on_rows is not None:
            self._on_rows(rows, stretches)
        if not self._begun:
            self.first_ns, self._begun = int(rows.t_ns[back]), True
        self.last_ns = int(rows.t_ns[end - 1])

    def _by_speed_only(self, rows: Rows, start: int, stop: int) -> list[Stretch]:
        """Without a current channel nothing is judged, but steps still have their voltages."""
        t = rows.t_ns[start:stop]
        changes = self.timeline.between(int(t[0]), int(t[-1]))
        inner = [start + int(t.searchsorted(change.t_ns, side="left")) for change in changes]
        return [
            Stretch(a, b, self.timeline.at(int(rows.t_ns[a])), steady=False)
            for a, b in pairwise([start, *inner, stop])
            if b > a
        ]


def _join_all(parts: Sequence[Rows]) -> Rows:
    """Join pairwise, so that many small parts are not copied once for each other."""
    level = list(parts)
    while len(level) > 1:
        level = [
            join_rows(level[i], level[i + 1]) if i + 1 < len(level) else level[i]
            for i in range(0, len(level), 2)
        ]
    return level[0]


def _volts_window_ns(instruments: Sequence[Instrument]) -> int:
    """Half of how much longer the voltages are averaged than the current."""
    windows: dict[Role, float] = {}
    for instrument in instruments:
        for channel in instrument.channels:
            windows.setdefault(channel.role, channel.integration_s)
    current = windows.get(Role.MOTOR_CURRENT, 0.0)
    volts = max(windows.get(Role.MOTOR_FEED, 0.0), windows.get(Role.MOTOR_RETURN, 0.0))
    return round(max(0.0, volts - current) / 2.0 * 1e9)


def volts_apart_ns(instruments: Sequence[Instrument]) -> int | None:
    """Give how much later the voltages may have been read than the current beside them.

    Returns
    -------
    int or None, nanoseconds
        Half of how much longer they are averaged, and twice the standard uncertainty of one
        meter's times against the other's as it was known when they were connected
        (:data:`UNKNOWN_APART_S` where it was not). None where one meter reads both, or one of them
        is not there.
    """
    homes = _homes(instruments)
    current = homes.get(Role.MOTOR_CURRENT)
    others = [homes[role] for role in (Role.MOTOR_FEED, Role.MOTOR_RETURN) if role in homes]
    others = [one for one in others if current is not None and one.key != current.key]
    if current is None or not others:
        return None
    times = TimeNotes(instruments)
    agreements = [times.agreement_s(current, other) for other in others]
    apart_s = max(2.0 * one if one is not None else UNKNOWN_APART_S for one in agreements)
    return _volts_window_ns(instruments) + round(1e9 * apart_s)


def _homes(instruments: Sequence[Instrument]) -> dict[Role, Instrument]:
    homes: dict[Role, Instrument] = {}
    for instrument in instruments:
        for channel in instrument.channels:
            homes.setdefault(channel.role, instrument)
    return homes
