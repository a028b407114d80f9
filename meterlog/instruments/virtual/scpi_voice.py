"""ScpiVoice: a bench meter that speaks SCPI."""

from __future__ import annotations

import math
import re
from collections import deque
from collections.abc import Callable, Generator

from meterlog import __version__
from meterlog.instruments.virtual.meter import RANGES, MeterModel, Shown
from meterlog.instruments.virtual.play import Play
from meterlog.instruments.virtual.scpi_header import fits, header_pattern, units
from meterlog.instruments.virtual.scpi_status import ScpiStatus
from meterlog.instruments.virtual.voice import SLACK_S, read_window
from meterlog.model import Quantity

_LONGEST = 4096
_WORDS = {"", "AUTO", "DEF", "DEFAULT", "MAX", "MAXIMUM", "MIN", "MINIMUM"}
_ACCEPTED = (
    "*ESE", "*SRE", "*WAI", "ABORt", "STATus:PRESet", "SYSTem:REMote", "SYSTem:LOCal",
    "SYSTem:RWLock", "FORMat[:DATA]", "[SENSe:]FUNCtion[:ON]", "[SENSe:]ZERO:AUTO",
    "[SENSe:]VOLTage[:DC]:NPLCycles", "[SENSe:]CURRent[:DC]:NPLCycles",
    "[SENSe:]VOLTage[:DC]:RESolution", "[SENSe:]CURRent[:DC]:RESolution",
    "[SENSe:]VOLTage[:DC]:RANGe:AUTO", "[SENSe:]CURRent[:DC]:RANGe:AUTO",
    "TRIGger:SOURce", "TRIGger:COUNt", "TRIGger:DELay", "TRIGger:DELay:AUTO", "SAMPle:COUNt",
)  # fmt: skip

Wait = Generator[float, None, None]


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
    IEEE 488.2-1992 (common commands), SCPI-1999 volume 2, chapters 3, 18, 21, 24 (from memory).
    """

    def __init__(self, play: Play, meter: MeterModel) -> None:
        self.reach_s = meter.integration_s
        self._play = play
        self._meter = meter
        self._status = ScpiStatus()
        self._begun = b""
        self._inbox: deque[str] = deque()
        self._work: Wait | None = None
        self._due_s = 0.0
        self._now_s = 0.0
        self._ready_s = 0.0
        self._running_s: float | None = None
        self._continuous = False
        self._last: Shown | None = None
        self._answers: list[str] = []
        own = [line.split()[0] for line in meter.profile.scpi.setup if line.split()]
        self._own = {header.removeprefix(":").upper() for header in own}
        self._accepted = [header_pattern(command) for command in _ACCEPTED]
        self._query = meter.profile.scpi.query.split()[0].removeprefix(":").upper()
        self._table = [(header_pattern(command), act) for command, act in self._commands().items()]

    def greet(self, now_s: float) -> None:
        """Begin anew: what was asked before is forgotten, errors are kept."""
        self._now_s = now_s
        self._begun = b""
        self._inbox.clear()
        self._work = None
        self._answers = []

    def hear(self, data: bytes, now_s: float) -> None:
        """Take program messages, ended by line feed or carriage return."""
        self._now_s = now_s
        *lines, self._begun = re.split(rb"[\r\n]+", self._begun + data)
        self._inbox.extend(line.decode("latin-1") for line in lines if line.strip())
        if len(self._begun) > _LONGEST or len(self._inbox) > _LONGEST:
            self._status.add(-363)
            self._begun = b""
            self._inbox.clear()

    def due_s(self) -> float | None:
        """Give the time at which the measurement in hand is done."""
        return self._due_s if self._work is not None else None

    def say(self, now_s: float) -> list[bytes]:
        """Give the answers that are ready."""
        self._now_s = now_s
        said: list[bytes] = []
        while self._work is not None or self._inbox:
            if self._work is None:
                self._work = self._obey(self._inbox.popleft())
            elif self._due_s > now_s + SLACK_S:
                break
            due_s = next(self._work, None)
            if due_s is not None:
                self._due_s = due_s
                continue
            self._work = None
            if self._answers:
                said.append((";".join(self._answers) + "\n").encode("latin-1"))
                self._answers = []
        return said

    def _obey(self, message: str) -> Wait:
        branch = ""
        for unit in units(message):
            header, _, parameter = unit.partition(" ")
            # SCPI: a header without leading colon goes on in the branch of the one before it.
            act = self._find(header) or self._find(f"{branch}{header}")
            if not header.startswith("*"):
                branch = header.rpartition(":")[0] + ":" if ":" in header else ""
            if act is None:
                self._status.add(-113, header)
            else:
                yield from act(parameter.strip()) or ()

    def _find(self, header: str) -> Callable[[str], Wait | None] | None:
        bare = header.removeprefix(":")
        for pattern, act in self._table:
            if fits(pattern, bare):
                return act
        if bare.upper() == self._query:
            return self._read
        if bare.upper() in self._own or any(fits(pattern, bare) for pattern in self._accepted):
            return lambda _: None
        return None

    def _commands(self) -> dict[str, Callable[[str], Wait | None]]:
        status, answer = self._status, self._answer
        name = self._meter.profile.name
        identity = f"VIRTUAL,{name},{self._play.seed},{__version__}"
        return {
            "*IDN?": lambda _: answer(identity),
            "*CLS": lambda _: status.clear(),
            "*RST": lambda _: self._reset(),
            "*OPC": lambda _: status.complete(),
            "*OPC?": lambda _: answer("1"),
            "*TST?": lambda _: answer("0"),
            "*ESR?": lambda _: answer(str(status.events())),
            "*STB?": lambda _: answer(str(status.summary())),
            "SYSTem:ERRor[:NEXT]?": lambda _: answer(status.next_error()),
            "SYSTem:VERSion?": lambda _: answer("1999.0"),
            "CONFigure:VOLTage[:DC]": lambda text: self._set_range(Quantity.VOLTAGE, text),
            "CONFigure:CURRent[:DC]": lambda text: self._set_range(Quantity.CURRENT, text),
            "[SENSe:]VOLTage[:DC]:RANGe": lambda text: self._set_range(Quantity.VOLTAGE, text),
            "[SENSe:]CURRent[:DC]:RANGe": lambda text: self._set_range(Quantity.CURRENT, text),
            "INITiate[:IMMediate]": lambda _: self._start(),
            "INITiate:CONTinuous": self._go_on,
            "READ?": self._read,
            "FETCh?": self._fetch,
        }

    def _answer(self, text: str) -> None:
        self._answers.append(text)

    def _reset(self) -> None:
        self._continuous = False
        self._running_s = None
        self._last = None
        for quantity, top in RANGES.items():
            self._meter.set_range(quantity, top)

    def _set_range(self, quantity: Quantity, text: str) -> None:
        first = text.split(",", maxsplit=1)[0].strip().upper()
        try:
            top = RANGES[quantity] if first in _WORDS else float(first)
        except ValueError:
            top = math.nan
        if not 0.0 < top < 1e9:
            self._status.add(-104, text)
            return
        self._meter.set_range(quantity, top)

    def _start(self) -> None:
        # Never faster than the meter's rate, never before a whole integration is done.
        self._running_s = max(self._now_s + self._meter.integration_s, self._ready_s)

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
            self._status.add(-230)
        else:
            self._answer(_numbers(self._last))


def _numbers(shown: Shown) -> str:
    fields = []
    for raw, overload, negative in zip(
        shown.raw[0], shown.overload[0], shown.negative[0], strict=True
    ):
        value = float(math.copysign(9.9e37, -1.0 if negative else 1.0)) if overload else float(raw)
        fields.append(f"{value:+.6E}")
    return ",".join(fields)
