"""LineVoice: a free-running logger that sends one line a reading without being asked."""

from __future__ import annotations

import math
from collections.abc import Mapping
from types import MappingProxyType

from meterlog.instruments.virtual.meter import MeterModel, Shown, decimals
from meterlog.instruments.virtual.play import Play
from meterlog.instruments.virtual.voice import BANNER, SLACK_S, Key, read_window

_BANNER_EVERY_S = 5.0


class LineVoice:
    """Speaks lines as the profile's ``[lines]`` describes them.

    Parameters
    ----------
    play : Play
    meter : MeterModel
    quiet_s : float, seconds of scenario time
        Silence after opening: programs empty the port once they have it open, and must not lose
        the banner by that.
    """

    keys: Mapping[str, Key] = MappingProxyType({})
    card: Mapping[str, object] = MappingProxyType({})

    def __init__(self, play: Play, meter: MeterModel, quiet_s: float = 0.0) -> None:
        self.reach_s = meter.integration_s
        self._play = play
        self._meter = meter
        self._quiet_s = quiet_s
        self._lines = meter.profile.lines
        channels = meter.profile.channels
        self._column = {channel.name: index for index, channel in enumerate(channels)}
        self._decimals = [decimals(channel) for channel in channels]
        self._time_decimals = max(0, round(3.0 + math.log10(self._lines.time_unit_s)))
        self._next = 1
        self._banner_s = 0.0
        self._lead_s: float | None = None

    def greet(self, now_s: float) -> None:
        """Begin anew with banner and header."""
        self._lead_s = now_s + self._quiet_s
        self._next = math.floor(self._lead_s / self._meter.interval_s) + 1

    def hear(self, data: bytes, now_s: float) -> None:
        """Take no notice: this logger has no commands."""

    def due_s(self) -> float | None:
        """Give the time of the next line."""
        return self._next * self._meter.interval_s if self._lead_s is None else self._lead_s

    def say(self, now_s: float) -> list[bytes]:
        """Give all lines that are due."""
        said = []
        if self._lead_s is not None and self._lead_s <= now_s + SLACK_S:
            said.extend(self._banner(self._lead_s))
            heads = [self._lines.delimiter.join(self._lines.columns)] * self._lines.header_lines
            said.extend(f"{head}\r\n".encode() for head in heads)
            self._lead_s = None
        while (end_s := self._next * self._meter.interval_s) <= now_s + SLACK_S:
            if end_s >= self._banner_s:
                said.extend(self._banner(end_s))
            said.append(self._row(read_window(self._play, self._meter, end_s), end_s))
            self._next += 1
        return said

    def news(self) -> list[tuple[float, str, str]]:
        """Give nothing: it does nothing by itself."""
        return []

    def _banner(self, now_s: float) -> list[bytes]:
        if not self._lines.comment:
            return []
        self._banner_s = now_s + _BANNER_EVERY_S
        return [f"{self._lines.comment} {BANNER}\r\n".encode()]

    def _row(self, shown: Shown, end_s: float) -> bytes:
        fields = [self._field(column, shown, end_s) for column in self._lines.columns]
        return (self._lines.delimiter.join(fields) + "\r\n").encode()

    def _field(self, column: str, shown: Shown, end_s: float) -> str:
        if column == "-":
            return "0"
        if column == "time":
            text = f"{end_s / self._lines.time_unit_s:.{self._time_decimals}f}"
        else:
            index = self._column[column]
            if shown.overload[0, index]:
                return self._lines.overload_texts[0]
            text = f"{shown.raw[0, index]:.{self._decimals[index]}f}"
        return text.replace(".", self._lines.decimal)
