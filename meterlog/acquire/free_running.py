"""FreeRunning: the conversation with a logger that sends lines without being asked."""

from __future__ import annotations

import time

from meterlog.acquire.choice import MeterChoice
from meterlog.acquire.clock import Clock
from meterlog.acquire.conversation import Heard
from meterlog.instruments import AsciiLineDecoder, Link, open_link
from meterlog.model import Identity

BANNER_S = 0.3
"""So long a logger has to say, by a comment, that it is virtual."""
_VIRTUAL = b"VIRTUAL BENCH"
_MOST_TURNS = 64
LATE_INTERVALS = 1.5
"""An arrival this many intervals after the last one was held up on the way."""
_GATHER_S = 0.010
_GATHER_TURNS = 10


class FreeRunning:
    """Listens to lines.

    Parameters
    ----------
    choice : MeterChoice
    clock : Clock
    skip_first_partial : bool
        Skip up to the first line end after the beginning: what comes first is likely the rest of
        a line whose front was dropped, and half a number looks like a number.
    """

    def __init__(
        self, choice: MeterChoice, clock: Clock, *, skip_first_partial: bool = True
    ) -> None:
        self.identity = Identity()
        self.simulated = False
        self._choice = choice
        self._clock = clock
        self._skip_first_partial = skip_first_partial
        self._link: Link | None = None
        self._decoder = self._new_decoder()
        self._refused_before = 0
        self._last_refused = b""
        self._late_ns = round(LATE_INTERVALS * choice.channels[0].interval_s * 1e9)
        self._gather_s = min(_GATHER_S, choice.channels[0].interval_s / 2.0)
        self._arrived_ns: int | None = None

    def _new_decoder(self) -> AsciiLineDecoder:
        return AsciiLineDecoder(self._choice.profile.lines, self._choice.profile.channels)

    @property
    def refused(self) -> int:
        """Lines not understood since the beginning."""
        return self._refused_before + self._decoder.refused

    @property
    def last_refused(self) -> bytes:
        """The last of them, at most 200 bytes."""
        return self._decoder.last_refused or self._last_refused

    def open(self) -> tuple[str, ...]:
        """Open the port and wait a little for a comment that says that all is simulated."""
        self._decoder = self._new_decoder()
        self._link = open_link(self._choice.url, self._choice.profile.link)
        until = time.monotonic() + BANNER_S
        while not self.simulated and (left := until - time.monotonic()) > 0:
            self._decoder.feed(self._link.read(left))
            self.simulated = any(_VIRTUAL in comment for comment in self._decoder.comments)
        return ()

    def reopen(self) -> tuple[str, ...]:
        """Open the port again; header lines are expected again."""
        self.close()
        self._refused_before += self._decoder.refused
        self._last_refused = self._decoder.last_refused or self._last_refused
        self._decoder = self._new_decoder()
        self._link = open_link(self._choice.url, self._choice.profile.link)
        if self._skip_first_partial:
            self._decoder.skip_to_end()
        return ()

    def begin(self) -> None:
        """Forget all that came before now; header lines among it count as such."""
        link = self._opened()
        for _ in range(_MOST_TURNS):
            data = link.read(0.0)
            if not data:
                break
            self._decoder.feed(data)
        if self._skip_first_partial:
            self._decoder.skip_to_end()
        self._refused_before = -self._decoder.refused

    def hear(self, wait_s: float) -> Heard:
        """Listen for at most ``wait_s``."""
        data = self._opened().read(wait_s)
        arrived_ns = self._clock.now_ns()
        if data:
            if self._arrived_ns is not None and arrived_ns - self._arrived_ns > self._late_ns:
                data += self._gather()
                arrived_ns = self._clock.now_ns()
            self._arrived_ns = arrived_ns
        return Heard(data, arrived_ns, self._decoder.feed(data))

    def _gather(self) -> bytes:
        """Take what was held up together with a late arrival.

        A sender or a system that was busy for a while hands over several lines one right after
        the other. Only taken together can they be given back the intervals at which they were
        read; taken one by one, the pause would look like missing readings.
        """
        parts = []
        for _ in range(_GATHER_TURNS):
            more = self._opened().read(self._gather_s)
            if not more:
                break
            parts.append(more)
        return b"".join(parts)

    def _opened(self) -> Link:
        if self._link is None:
            raise RuntimeError("open() comes first")
        return self._link

    def close(self) -> None:
        """Close the port."""
        if self._link is not None:
            self._link.close()
