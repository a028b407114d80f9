"""Listening: what comes from a port by itself, heard with the ears of several profiles at once."""

from __future__ import annotations

import math
import threading
import time
from collections.abc import Sequence
from dataclasses import replace

from meterlog.acquire.asking.port_answer import Fit, live_values
from meterlog.acquire.talk import VirtualSign
from meterlog.instruments import AsciiLineDecoder, LcdFrameDecoder, Link, Readings
from meterlog.model import UNUSABLE
from meterlog.profile import MeterProfile

FREE_RUNNING = ("ascii-lines", "lcd-frames")
LONGEST_S = 0.95
_SHORTEST_S = 0.4
_INTERVALS = 2.5
_SLICE_S = 0.05
_ENOUGH_ROWS = 5
_JOINED_S = 0.03
"""What comes sooner after opening had probably begun before."""
_KEPT = 4_096
_TALKS_BYTES, _TALKS_S = 32, 0.3


def listen_s(profiles: Sequence[MeterProfile]) -> float:
    """Give how long to listen for meters of these profiles; always under a second."""
    slowest = max((profile.interval_s for profile in profiles), default=0.0)
    return min(LONGEST_S, max(_SHORTEST_S, _INTERVALS * slowest))


class _Ear:
    """One profile's decoder, and what it has understood."""

    def __init__(self, profile: MeterProfile) -> None:
        self.profile = profile
        self.rows = 0
        self.usable = False
        self.readings: Readings | None = None
        self.remarks: dict[str, None] = {}
        self._first_s = self._last_s = 0.0
        if profile.dialect == "lcd-frames":
            self.decoder: AsciiLineDecoder | LcdFrameDecoder = LcdFrameDecoder(profile.channels)
        else:
            # Head lines may have gone by before; where they come they are not held against it.
            layout = replace(profile.lines, header_lines=0)
            self.decoder = AsciiLineDecoder(layout, profile.channels)

    def feed(self, data: bytes, now_s: float) -> None:
        readings = self.decoder.feed(data)
        self.remarks.update((remark.text, None) for remark in readings.remarks)
        if not len(readings):
            return
        self._first_s = self._first_s if self.rows else now_s
        self._last_s = now_s
        self.rows += len(readings)
        usable = bool(((readings.flags & int(UNUSABLE)) == 0).any())
        if usable or not self.usable:
            self.readings = readings
        self.usable = self.usable or usable

    @property
    def understands(self) -> bool:
        """More was understood than not; a frame of a display can't be understood by chance."""
        if self.profile.dialect == "lcd-frames":
            return self.rows > 0
        return self.rows > self.decoder.refused - self.profile.lines.header_lines

    @property
    def pace_fits(self) -> bool:
        """The readings come about as often as the profile says; True while that can't be told."""
        if self.rows < _ENOUGH_ROWS or self._last_s <= self._first_s:
            return True
        interval_s = (self._last_s - self._first_s) / (self.rows - 1)
        return abs(math.log2(interval_s / self.profile.interval_s)) <= 1.0


class Listening:
    """Listens once with the decoders of all profiles that talk without being asked.

    Parameters
    ----------
    profiles : sequence of MeterProfile
        Others than free-running ones are passed over.
    sign : VirtualSign
        Told all that is heard.

    Attributes
    ----------
    heard : bytes
        The last few thousand bytes that came.
    """

    def __init__(self, profiles: Sequence[MeterProfile], sign: VirtualSign) -> None:
        self.heard = b""
        self._ears = [_Ear(p) for p in profiles if p.dialect in FREE_RUNNING]
        self._sign = sign
        self._count = 0
        self._first_s = self._last_s = 0.0

    def listen(self, link: Link, seconds: float, stop: threading.Event) -> None:
        """Listen for ``seconds``, less when it is clear sooner, or when ``stop`` is set.

        Raises
        ------
        LinkLost
            If the port went away.
        """
        start_s = time.monotonic()
        while self._ears and not stop.is_set() and not self._clear():
            left_s = start_s + seconds - time.monotonic()
            if left_s <= 0.0:
                break
            data = link.read(min(left_s, _SLICE_S))
            if data:
                self._take(data, time.monotonic(), start_s)

    def _take(self, data: bytes, now_s: float, start_s: float) -> None:
        if not self._count:
            self._first_s = now_s
            if now_s - start_s < _JOINED_S:
                for ear in self._ears:
                    ear.decoder.skip_to_end()
        self._count += len(data)
        self._last_s = now_s
        self.heard = (self.heard + data)[-_KEPT:]
        self._sign.hear(data)
        for ear in self._ears:
            ear.feed(data, now_s)

    def _clear(self) -> bool:
        return any(ear.rows >= _ENOUGH_ROWS and ear.understands for ear in self._ears)

    @property
    def talks(self) -> bool:
        """Whether something talks without being asked: no mere greeting."""
        return self._count >= _TALKS_BYTES and self._last_s - self._first_s >= _TALKS_S

    def fits(self) -> list[tuple[MeterProfile, Fit]]:
        """Give the profiles that understood what came; those at their pace first."""
        ears = [ear for ear in self._ears if ear.understands]
        if any(ear.usable for ear in ears):
            # A frame in amperes is understood by a profile for volts, but tells it nothing.
            ears = [ear for ear in ears if ear.usable]
        ears.sort(key=lambda ear: not ear.pace_fits)
        return [(ear.profile, _fit(ear)) for ear in ears]


def _fit(ear: _Ear) -> Fit:
    profile = ear.profile
    if profile.dialect == "lcd-frames":
        why = "frames of display segments"
    else:
        many = len(profile.lines.columns)
        why = f"lines of {many} column{'' if many == 1 else 's'}"
    values = live_values(profile.channels, ear.readings) if ear.readings is not None else ()
    note = "" if ear.usable else "; ".join(ear.remarks)
    return Fit(profile.name, profile.title, why, values, note)
