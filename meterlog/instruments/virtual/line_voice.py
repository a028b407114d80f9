"""LineVoice: a free-running logger that sends one line a reading without being asked."""

from __future__ import annotations

import math

from meterlog.instruments.virtual.meter import MeterModel, Shown, decimals
from meterlog.instruments.virtual.play import Play
from meterlog.instruments.virtual.voice import SLACK_S, read_window

BANNER = "VIRTUAL BENCH - simulated readings, all names invented"
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
        self._greeted = False

    def greet(self, now_s: float) -> None:
        """Begin anew with banner and header."""
        self._next = math.floor((now_s + self._quiet_s) / self._meter.interval_s) + 1
        self._greeted = False

    def hear(self, data: bytes, now_s: float) -> None:
        """Take no notice: this logger has no commands."""

    def due_s(self) -> float | None:
        """Give the time of the next line."""
        return self._next * self._meter.interval_s

    def say(self, now_s: float) -> list[bytes]:
        """Give all lines that are due."""
        said = []
        while (end_s := self._next * self._meter.interval_s) <= now_s + SLACK_S:
            said.extend(self._lead(end_s))
            said.append(self._row(read_window(self._play, self._meter, end_s), end_s))
            self._next += 1
        return said

    def _lead(self, end_s: float) -> list[bytes]:
        lead = []
        banner = f"{self._lines.comment} {BANNER}\r\n".encode()
        if not self._greeted:
            heads = [self._lines.delimiter.join(self._lines.columns)] * self._lines.header_lines
            lead = [f"{head}\r\n".encode() for head in heads]
        if self._lines.comment and (not self._greeted or end_s >= self._banner_s):
            lead.insert(0, banner)
            self._banner_s = end_s + _BANNER_EVERY_S
        self._greeted = True
        return lead

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
