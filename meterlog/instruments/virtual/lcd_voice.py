"""LcdVoice: a hand-held meter that sends a picture of its display a few times a second."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType

import numpy as np
from numpy.typing import NDArray

from meterlog.instruments.virtual.display_range import AutoRange, DisplayRange, display_ranges
from meterlog.instruments.virtual.lcd_frame import DIGITS, Picture, lcd_frame
from meterlog.instruments.virtual.meter import RANGES, MeterModel
from meterlog.instruments.virtual.play import Play
from meterlog.instruments.virtual.voice import BANNER, SLACK_S, Key, window_mean
from meterlog.model import Quantity
from meterlog.model.errors import UsageError

BLANK_S = 0.5
"""So long a meter sends nothing while it changes range or its dial is turned. Common practice of
hand-held meters, no source."""
_OVER = " 0L "
_OPEN_CIRCUIT = Picture(_OVER, 2, signs=frozenset({"OHM", "M", "AUTO"}))


class LcdVoice:
    """Speaks frames of LCD segments.

    The first thing after opening is a line that says that the meter is a virtual one.

    Parameters
    ----------
    play : Play
    meter : MeterModel
        With one channel.
    quiet_s : float, seconds of scenario time
        Silence after opening: programs empty the port once they have it open.

    Raises
    ------
    UsageError
        If the meter has more than one channel: there is but one display.
    """

    card: Mapping[str, object] = MappingProxyType({})

    def __init__(self, play: Play, meter: MeterModel, quiet_s: float = 0.0) -> None:
        channels = meter.profile.channels
        if len(channels) != 1:
            raise UsageError(
                f"has {len(channels)} channels, but a frame shows one.",
                subject=meter.key,
                remedy="Give its profile one channel.",
            )
        self.reach_s = meter.integration_s
        self.keys: Mapping[str, Key] = {
            "dial": self._turn_dial,
            "range": self._press_range,
            "battery-low": self._drain,
        }
        self._play = play
        self._meter = meter
        self._channel = channels[0]
        self._quiet_s = quiet_s
        self._own = "V" if self._channel.quantity is Quantity.VOLTAGE else "A"
        self._dial = self._own
        self._auto = AutoRange(self._fresh_ranges())
        self._battery_low = False
        self._settled = False
        self._shown: Picture | None = None
        self._blank_until_s = 0.0
        self._next = 1
        self._banner_s: float | None = None
        self._news: list[tuple[float, str, str]] = []
        self._set_range()

    def greet(self, now_s: float) -> None:
        """Begin anew with the line that says that it is virtual."""
        self._banner_s = now_s + self._quiet_s
        self._next = math.floor(self._banner_s / self._meter.interval_s) + 1

    def hear(self, data: bytes, now_s: float) -> None:
        """Take no notice: such meters only send."""

    def due_s(self) -> float | None:
        """Give the time of the next frame, or of the line before the first."""
        if self._banner_s is not None:
            return self._banner_s
        return self._next * self._meter.interval_s

    def say(self, now_s: float) -> list[bytes]:
        """Give all frames that are due."""
        said = []
        if self._banner_s is not None and self._banner_s <= now_s + SLACK_S:
            said.append(f"# {BANNER}\r\n".encode())
            self._banner_s = None
        while (end_s := self._next * self._meter.interval_s) <= now_s + SLACK_S:
            self._next += 1
            picture = self._look(end_s)
            if picture is not None:
                said.append(lcd_frame(picture))
        return said

    def news(self) -> list[tuple[float, str, str]]:
        """Give the changes of range since the last call."""
        news, self._news = self._news, []
        return news

    def _look(self, end_s: float) -> Picture | None:
        """Give what the display shows at ``end_s``; None while it is blank."""
        if self._meter.held and self._shown is not None:
            return self._signed(self._shown)
        mean = window_mean(self._play, self._meter.integration_s, end_s)
        if self._dial == self._own:
            self._fit(float(self._meter.true(mean)[0, 0]), end_s)
        if end_s + SLACK_S < self._blank_until_s:
            return None
        self._shown = self._measure(mean) if self._dial == self._own else self._elsewhere()
        return self._signed(self._shown)

    def _measure(self, mean: NDArray[np.float64]) -> Picture:
        shown = self._meter.show(mean)
        now = self._auto.now
        over = bool(shown.overload[0, 0])
        raw = float(shown.raw[0, 0])
        digits = _OVER if over else f"{now.number(raw):0{DIGITS}d}"
        minus = bool(shown.negative[0, 0]) if over else raw < 0.0
        signs = {self._own, "DC", now.multiplier, "AUTO" if self._auto.automatic else ""}
        return Picture(digits, now.point, minus, frozenset(signs - {""}))

    def _elsewhere(self) -> Picture:
        """Give what it shows on a position of the dial for which its leads are not plugged in."""
        if self._dial == "OHM":
            return _OPEN_CIRCUIT
        return Picture("0000", 1, signs=frozenset({self._dial, "DC", "AUTO"}))

    def _signed(self, picture: Picture) -> Picture:
        more = {"RS232", "BATTERY" if self._battery_low else "", "HOLD" if self._meter.held else ""}
        return replace(picture, signs=picture.signs | (more - {""}))

    def _fresh_ranges(self) -> tuple[DisplayRange, ...]:
        usual = RANGES[self._channel.quantity]
        return display_ranges(self._channel, self._meter.profile.counts, usual)

    def _set_range(self) -> None:
        self._meter.use(0, self._auto.now.accuracy, self._auto.now.top)

    def _fit(self, value: float, now_s: float) -> None:
        if now_s + SLACK_S < self._blank_until_s or not self._auto.fit(value):
            pass
        elif self._settled:
            self._change_range(now_s)
        else:
            # It was switched on long before anybody looked.
            self._set_range()
        self._settled = True

    def _change_range(self, now_s: float) -> None:
        self._set_range()
        self._blank_until_s = now_s + BLANK_S
        self._news.append((now_s, "ranged", f"{self._auto.now.top:g} {self._channel.unit}"))

    def _turn_dial(self, words: str, now_s: float) -> None:
        self._dial = words
        self._meter.hold(on=False)
        self._blank_until_s = now_s + BLANK_S

    def _press_range(self, words: str, now_s: float) -> None:
        if words == "auto":
            self._auto.automatic = True
            return
        before = self._auto.now
        self._auto.press()
        if self._auto.now is not before:
            self._change_range(now_s)

    def _drain(self, words: str, _now_s: float) -> None:
        self._battery_low = words == "on"
