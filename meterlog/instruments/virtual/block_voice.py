"""BlockVoice: a data acquisition box that samples by its own clock and hands over blocks."""

from __future__ import annotations

import math
from collections.abc import Mapping
from types import MappingProxyType

import numpy as np

from meterlog.instruments.virtual.block_payload import asked_format, block, numbers, row_bytes
from meterlog.instruments.virtual.meter import MeterModel
from meterlog.instruments.virtual.play import Play
from meterlog.instruments.virtual.sample_memory import SampleMemory
from meterlog.instruments.virtual.scenario import dice
from meterlog.instruments.virtual.scpi_server import ScpiServer, Wait
from meterlog.instruments.virtual.voice import SLACK_S, Key, window_means

MEMORY_BYTES = 65_536
MOST_PPM = 50.0
"""A plain crystal is off by up to so much. Common practice, no source."""
_LOOK_S = 0.02


class BlockVoice:
    """Samples from ``INIT`` on, and answers each query with the rows since the last one.

    Where the profile names the rows of a block, each answer has that many and is of indefinite
    length; else of definite length, with all that there are. Rows that nobody fetches fill its
    memory; what comes after that is lost, which is error -363, and told in the truth. A client
    that closes the port ends the sampling.

    Parameters
    ----------
    play : Play
    meter : MeterModel

    Source
    ------
    SCPI-1999 volume 2, chapters 3 and 9 (from memory).
    """

    keys: Mapping[str, Key] = MappingProxyType({})

    def __init__(self, play: Play, meter: MeterModel) -> None:
        self._play = play
        self._meter = meter
        self._layout = meter.profile.blocks
        channels = len(meter.profile.channels)
        self._memory = SampleMemory(
            max(1, MEMORY_BYTES // row_bytes(self._layout.number, channels))
        )
        stated_s = self._layout.sample_s or meter.interval_s
        ppm = round(dice(f"{play.scenario.name}/{meter.key}", play.seed, 4).uniform(-1, 1), 3)
        ppm *= MOST_PPM
        self._sample_s = stated_s * (1.0 + ppm * 1e-6)
        self.card: Mapping[str, object] = MappingProxyType(
            {"stated_sample_s": stated_s, "sample_clock_ppm": round(ppm, 3)}
        )
        self.reach_s = meter.integration_s + 10.0 * _LOOK_S
        self._start_s: float | None = None
        self._sampled = 0
        self._overrun_s = 0.0
        self._news: list[tuple[float, str, str]] = []
        self._number, self._order = self._layout.number, self._layout.byte_order
        self._server = ScpiServer(meter, play.seed)
        self._server.learn(
            {
                "*RST": lambda _: self._reset(),
                "ABORt": lambda _: self._stop(),
                "INITiate[:IMMediate]": lambda _: self._start(),
                "INITiate:CONTinuous": lambda _: self._start(),
                "FORMat[:DATA]": self._set_format,
                "FORMat[:DATA]?": lambda _: self._server.answer(self._format()),
                "FORMat:BORDer": self._set_order,
                "FORMat:BORDer?": lambda _: self._server.answer(self._border()),
                "READ?": self._read,
                "FETCh?": self._fetch,
            },
            self._read,
        )
        self.hear = self._server.hear

    def greet(self, now_s: float) -> None:
        """Begin anew: nothing is sampled until somebody asks for it."""
        self._stop()
        self._server.greet(now_s)

    def due_s(self) -> float | None:
        """Give the time of the next look at the circuit, or of the answer in hand."""
        answer_s = self._server.due_s()
        if self._start_s is None:
            return answer_s
        look_s = self._server.now_s + max(_LOOK_S, self._sample_s)
        return look_s if answer_s is None else min(look_s, answer_s)

    def say(self, now_s: float) -> list[bytes]:
        """Sample up to now, and give the answers that are ready."""
        self._sample(now_s)
        return self._server.say(now_s)

    def news(self) -> list[tuple[float, str, str]]:
        """Give the overruns that have ended since the last call."""
        news, self._news = self._news, []
        return news

    def _sample(self, now_s: float) -> None:
        if self._start_s is None:
            return
        # A little more than the slack with which answers are waited for: both must agree.
        done = math.floor((now_s - self._start_s + 2.0 * SLACK_S) / self._sample_s)
        if done <= self._sampled:
            return
        ends_s = self._start_s + np.arange(self._sampled + 1, done + 1) * self._sample_s
        play = self._play
        stops = np.clip(np.rint(ends_s / play.step_s).astype(np.int64), 1, play.steps)
        width = max(1, play.steps_at(self._meter.integration_s))
        first = max(0, int(stops[0]) - width)
        means = window_means(play.span(first, int(stops[-1])), stops - first, width)
        self._sampled = done
        first_lost = self._memory.add(self._meter.show(means))
        if first_lost is not None:
            self._overrun_s = float(ends_s[first_lost])
            self._server.status.add(-363)

    def _start(self) -> None:
        if self._start_s is None:
            self._start_s = self._server.now_s
            self._sampled = 0

    def _stop(self) -> None:
        self._tell_lost()
        self._start_s = None
        self._memory.clear()

    def _tell_lost(self) -> None:
        if self._memory.lost:
            self._news.append((self._overrun_s, "overrun", f"{self._memory.lost} rows lost"))

    def _reset(self) -> None:
        self._stop()
        self._meter.restore()
        self._number, self._order = self._layout.number, self._layout.byte_order

    def _read(self, _: str) -> Wait:
        self._start()
        yield from self._fetch("")

    def _fetch(self, _: str) -> Wait:
        if self._start_s is None:
            self._server.status.add(-230)
            return
        wanted = min(max(1, self._layout.rows), self._memory.capacity)
        while len(self._memory) < wanted:
            lacking = wanted - len(self._memory)
            yield self._start_s + (self._sampled + lacking) * self._sample_s
        self._tell_lost()
        count = wanted if self._layout.rows else len(self._memory)
        rows = self._memory.take(count)
        if self._number == "text":
            values = numbers(rows, "real64", ())
            self._server.answer(",".join(f"{value:+.6E}" for value in values.ravel()))
            return
        values = numbers(rows, self._number, self._layout.overload)
        endless = self._layout.rows > 0
        self._server.answer(block(values, self._number, self._order, endless=endless))

    def _set_format(self, text: str) -> None:
        number = asked_format(text, self._layout)
        if number is None:
            self._server.status.add(-224, text)
        else:
            self._number = number

    def _format(self) -> str:
        if self._number == "text":
            return "ASC,7"
        return "INT,16" if self._number == "int16" else f"REAL,{self._number[4:]}"

    def _set_order(self, text: str) -> None:
        order = {"NORM": "normal", "NORMAL": "normal", "SWAP": "swapped", "SWAPPED": "swapped"}
        found = order.get(text.strip().upper())
        if found is None:
            self._server.status.add(-224, text)
        else:
            self._order = found

    def _border(self) -> str:
        return "NORM" if self._order == "normal" else "SWAP"
