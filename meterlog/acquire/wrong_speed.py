"""SpeedWatch: tells a wrong line speed from a wrong profile, by bytes that nobody understands."""

from __future__ import annotations

from meterlog.instruments import LineCounts
from meterlog.instruments.line_speed import Doubt, doubt
from meterlog.model import link_text
from meterlog.profile import MeterProfile

ENOUGH_BYTES = 64
LEAST_NS = 1_000_000_000
BEAT_NS = 200_000_000
ENOUGH_BEATS = 4
PAUSE_S = 3.0
_KEPT = 512


class SpeedWatch:
    """Looks at what came since the last reading.

    Nothing is said before 64 bytes have come over at least a second, in at least four arrivals
    0.2 s apart, and no pause of 3 s (or three of the profile's intervals) among them: garbage after
    a plug was put in, a half line or noise is soon over, and ended by a reading.

    Parameters
    ----------
    profile : MeterProfile
    """

    def __init__(self, profile: MeterProfile) -> None:
        self._profile = profile
        self._pause_ns = round(max(PAUSE_S, 3.0 * profile.interval_s) * 1e9)
        self._counts = LineCounts()
        self._framing_before = 0
        self._told = False
        self._heard_ns = 0
        self.restart()

    def restart(self) -> None:
        """Begin anew: the port was lost, or a reading has come."""
        self._told = False
        self._begin()

    def _begin(self) -> None:
        self._data = bytearray()
        self._bytes = 0
        self._first_ns: int | None = None
        self._beat_ns = 0
        self._beats = 0
        self._framing_before = self._counts.framing

    def counted(self, counts: LineCounts) -> None:
        """Note the system's counts since the line was opened."""
        if counts.framing < self._counts.framing:
            self._framing_before = 0  # opened anew
        self._counts = counts

    def heard(self, data: bytes, readings: int, example: bytes, now_ns: int) -> str:
        """Note what came.

        Parameters
        ----------
        data : bytes
        readings : int
            How many readings it completed.
        example : bytes
            The last line or frame that was not understood.
        now_ns : int, nanoseconds since the recording's zero

        Returns
        -------
        str
            What to report, once until a reading comes; else empty.
        """
        if readings:
            self.restart()
            return ""
        if not data:
            return ""
        if now_ns - self._heard_ns > self._pause_ns:
            self._begin()
        self._heard_ns = now_ns
        self._data = (self._data + data)[-_KEPT:]
        self._bytes += len(data)
        if self._first_ns is None:
            self._first_ns = now_ns
        if not self._beats or now_ns - self._beat_ns >= BEAT_NS:
            self._beats += 1
            self._beat_ns = now_ns
        if self._told or not self._enough(now_ns - self._first_ns):
            return ""
        share = (self._counts.framing - self._framing_before) / self._bytes
        found = doubt(bytes(self._data), self._profile.dialect, share)
        # A long head of comments is no text that the profile does not expect.
        if found is None or (found is Doubt.TEXT and not example):
            return ""
        self._told = True
        return self._words(found, example)

    def _enough(self, for_ns: int) -> bool:
        return self._bytes >= ENOUGH_BYTES and for_ns >= LEAST_NS and self._beats >= ENOUGH_BEATS

    def _words(self, found: Doubt, example: bytes) -> str:
        if found is Doubt.SPEED:
            return (
                f"{link_text.WRONG_SPEED}: the line speed is probably not "
                f"{self._profile.link.short}; set baud in the profile or on the meter; "
                "`meterlog ports --ask` with this port tries other profiles"
            )
        if found is Doubt.FRAMES:
            return f"{link_text.OTHER_FRAMES}; choose another one"
        shown = repr((example or bytes(self._data))[:60])[1:]
        return f"{link_text.OTHER_TEXT}: {shown}; choose another profile"
