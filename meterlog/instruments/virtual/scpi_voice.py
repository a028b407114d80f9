"""ScpiVoice: a bench meter that speaks SCPI."""

from __future__ import annotations

import math
from collections.abc import Mapping
from types import MappingProxyType

from meterlog.instruments.virtual.meter import RANGES, MeterModel, Shown
from meterlog.instruments.virtual.play import Play
from meterlog.instruments.virtual.scpi_server import ScpiServer, Wait
from meterlog.instruments.virtual.voice import Key, read_window
from meterlog.model import Quantity

_WORDS = {"", "AUTO", "DEF", "DEFAULT", "MAX", "MAXIMUM", "MIN", "MINIMUM"}


class ScpiVoice:
    """Answers as an instrument that measures when asked.

    ``READ?`` measures anew; ``INIT`` starts one measurement, ``FETC?`` waits for it and gives the
    last one again and again. With ``INIT:CONT ON`` each ``FETC?`` gives the newest.

    Parameters
    ----------
    play : Play
    meter : MeterModel

    Source
    ------
    SCPI-1999 volume 2, chapter 3 (from memory).
    """

    keys: Mapping[str, Key] = MappingProxyType({})
    card: Mapping[str, object] = MappingProxyType({})

    def __init__(self, play: Play, meter: MeterModel) -> None:
        self.reach_s = meter.integration_s
        self._play = play
        self._meter = meter
        self._ready_s = 0.0
        self._running_s: float | None = None
        self._continuous = False
        self._last: Shown | None = None
        self._server = ScpiServer(meter, play.seed)
        self._server.learn(
            {
                "*RST": lambda _: self._reset(),
                "CONFigure:VOLTage[:DC]": lambda text: self._set_range(Quantity.VOLTAGE, text),
                "CONFigure:CURRent[:DC]": lambda text: self._set_range(Quantity.CURRENT, text),
                "[SENSe:]VOLTage[:DC]:RANGe": lambda text: self._set_range(Quantity.VOLTAGE, text),
                "[SENSe:]CURRent[:DC]:RANGe": lambda text: self._set_range(Quantity.CURRENT, text),
                "INITiate[:IMMediate]": lambda _: self._start(),
                "INITiate:CONTinuous": self._go_on,
                "READ?": self._read,
                "FETCh?": self._fetch,
            },
            self._read,
        )
        self.greet = self._server.greet
        self.hear = self._server.hear
        self.due_s = self._server.due_s
        self.say = self._server.say

    def news(self) -> list[tuple[float, str, str]]:
        """Give nothing: it does nothing by itself."""
        return []

    def _reset(self) -> None:
        self._continuous = False
        self._running_s = None
        self._last = None
        self._meter.restore()

    def _set_range(self, quantity: Quantity, text: str) -> None:
        first = text.split(",", maxsplit=1)[0].strip().upper()
        try:
            top = RANGES[quantity] if first in _WORDS else float(first)
        except ValueError:
            top = math.nan
        if not 0.0 < top < 1e9:
            self._server.status.add(-104, text)
            return
        self._meter.set_range(quantity, top)

    def _start(self) -> None:
        # Never faster than the meter's rate, never before a whole integration is done.
        self._running_s = max(self._server.now_s + self._meter.integration_s, self._ready_s)

    def _go_on(self, text: str) -> None:
        self._continuous = text.strip().upper() in {"ON", "1"}

    def _finish(self) -> None:
        if self._running_s is None:
            return
        self._last = read_window(self._play, self._meter, self._running_s)
        self._ready_s = self._running_s + self._meter.interval_s
        self._running_s = None

    def _read(self, _: str) -> Wait:
        self._start()
        yield from self._fetch("")

    def _fetch(self, _: str) -> Wait:
        if self._continuous and self._running_s is None:
            self._start()
        if self._running_s is not None:
            yield self._running_s
            self._finish()
        if self._last is None:
            self._server.status.add(-230)
        else:
            self._server.answer(_numbers(self._last))


def _numbers(shown: Shown) -> str:
    fields = []
    for raw, overload, negative in zip(
        shown.raw[0], shown.overload[0], shown.negative[0], strict=True
    ):
        value = float(math.copysign(9.9e37, -1.0 if negative else 1.0)) if overload else float(raw)
        fields.append(f"{value:+.6E}")
    return ",".join(fields)
