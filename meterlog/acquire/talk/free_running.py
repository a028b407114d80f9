"""FreeRunning: the conversation with an instrument that sends without being asked."""

from __future__ import annotations

import time
from collections.abc import Callable, Mapping
from dataclasses import replace
from types import MappingProxyType
from typing import Protocol

from meterlog.acquire.choice import MeterChoice
from meterlog.acquire.clock import Clock
from meterlog.acquire.talk.conversation import Heard
from meterlog.acquire.talk.open_port import OpenPort
from meterlog.acquire.talk.virtual_sign import VirtualSign
from meterlog.instruments import (
    AsciiLineDecoder,
    Decoder,
    LcdFrameDecoder,
    Readings,
    Remark,
)
from meterlog.model import Identity
from meterlog.profile import MeterProfile

BANNER_S = 0.3
"""So long an instrument has to say, on opening, that it is virtual."""
_MOST_TURNS = 64


class JoiningDecoder(Decoder, Protocol):
    """A decoder of a stream that nobody began for us."""

    def skip_to_end(self) -> None:
        """Forget the line or frame that has begun, and its rest: it was joined in the middle."""
        ...


DECODERS: Mapping[str, Callable[[MeterProfile], JoiningDecoder]] = MappingProxyType(
    {
        "ascii-lines": lambda profile: AsciiLineDecoder(profile.lines, profile.channels),
        "lcd-frames": lambda profile: LcdFrameDecoder(profile.channels),
    }
)
"""One entry for each dialect that is spoken without a question."""


class FreeRunning:
    """Listens to lines or frames.

    Parameters
    ----------
    choice : MeterChoice
    clock : Clock
    skip_first_partial : bool
        Skip up to the end of the first line or frame after the beginning: what comes first is
        likely the rest of one whose front was dropped, and half a number looks like a number.
    """

    watched = True
    repeated = 0

    def __init__(
        self, choice: MeterChoice, clock: Clock, *, skip_first_partial: bool = True
    ) -> None:
        self.identity = Identity()
        self.simulated = False
        self._choice = choice
        self._clock = clock
        self._skip_first_partial = skip_first_partial
        self.port = OpenPort(choice)
        self._decoder = self._new_decoder()
        self._refused_before = 0
        self._last_refused = b""
        self._said_before: list[Remark] = []
        """What was remarked before the beginning, such as a low battery, and still holds."""

    def _new_decoder(self) -> JoiningDecoder:
        return DECODERS[self._choice.profile.dialect](self._choice.profile)

    @property
    def byte_s(self) -> float:
        """Time that one byte takes on the way, seconds; 0 where there is no serial wire."""
        return self.port.byte_s

    @property
    def refused(self) -> int:
        """Lines or frames not understood since the beginning."""
        return self._refused_before + self._decoder.refused

    @property
    def last_refused(self) -> bytes:
        """The last of them, at most 200 bytes."""
        return self._decoder.last_refused or self._last_refused

    def open(self) -> tuple[str, ...]:
        """Open the port and wait a little for a line that says that all is simulated."""
        self._decoder = self._new_decoder()
        link, sign = self.port.open(), VirtualSign()
        until = time.monotonic() + BANNER_S
        while not sign.seen and (left := until - time.monotonic()) > 0:
            data = link.read(left)
            sign.hear(data)
            self._pass_over(data)
        self.simulated = sign.seen
        return ()

    def reopen(self) -> tuple[str, ...]:
        """Open the port again; header lines are expected again."""
        self.port.close()
        self._refused_before += self._decoder.refused
        self._last_refused = self._decoder.last_refused or self._last_refused
        self._decoder = self._new_decoder()
        self.port.open()
        self._skip_partial()
        return ()

    def begin(self) -> None:
        """Forget all that came before now; header lines among it count as such."""
        link = self.port.link
        for _ in range(_MOST_TURNS):
            data = link.read(0.0)
            if not data:
                break
            self._pass_over(data)
        self._skip_partial()
        self._refused_before = -self._decoder.refused

    def _pass_over(self, data: bytes) -> None:
        """Understand, but keep no reading of, what came before the beginning."""
        self._said_before += self._decoder.feed(data).remarks

    def _skip_partial(self) -> None:
        if self._skip_first_partial:
            self._decoder.skip_to_end()

    def hear(self, wait_s: float) -> Heard:
        """Listen for at most ``wait_s``."""
        data = self.port.link.read(wait_s)
        arrived_ns = self._clock.now_ns()
        return Heard(data, arrived_ns, self._with_said_before(self._decoder.feed(data)))

    def _with_said_before(self, readings: Readings) -> Readings:
        if not self._said_before or not len(readings):
            return readings
        before = [replace(remark, row=0) for remark in self._said_before]
        self._said_before = []
        return replace(readings, remarks=(*before, *readings.remarks))

    def close(self) -> None:
        """Close the port."""
        self.port.close()
