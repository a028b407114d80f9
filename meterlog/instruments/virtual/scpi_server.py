"""ScpiServer: takes program messages apart, finds the commands, and gives answers in order."""

from __future__ import annotations

import re
from collections import deque
from collections.abc import Callable, Generator, Iterable, Mapping

from meterlog import __version__
from meterlog.instruments.virtual.meter import MeterModel
from meterlog.instruments.virtual.scpi_header import fits, header_pattern, units
from meterlog.instruments.virtual.scpi_status import ScpiStatus
from meterlog.instruments.virtual.voice import SLACK_S

_LONGEST = 4096
_ACCEPTED = (
    "*ESE", "*SRE", "*WAI", "STATus:PRESet", "SYSTem:REMote", "SYSTem:LOCal", "SYSTem:RWLock",
    "FORMat[:DATA]", "[SENSe:]FUNCtion[:ON]", "[SENSe:]ZERO:AUTO", "ABORt",
    "[SENSe:]VOLTage[:DC]:NPLCycles", "[SENSe:]CURRent[:DC]:NPLCycles",
    "[SENSe:]VOLTage[:DC]:RESolution", "[SENSe:]CURRent[:DC]:RESolution",
    "[SENSe:]VOLTage[:DC]:RANGe:AUTO", "[SENSe:]CURRent[:DC]:RANGe:AUTO",
    "TRIGger:SOURce", "TRIGger:COUNt", "TRIGger:DELay", "TRIGger:DELay:AUTO", "SAMPle:COUNt",
)  # fmt: skip

Wait = Generator[float, None, None]
"""Yields the time, seconds, until which a command has to wait."""
Act = Callable[[str], Wait | None]
"""What a command does; takes its parameters."""


class ScpiServer:
    """The part of a SCPI instrument that knows nothing of measuring.

    Parameters
    ----------
    meter : MeterModel
    seed : int
        Stands as the serial number.

    Attributes
    ----------
    status : ScpiStatus
    now_s : float, seconds
        The time up to which it has been asked.

    Source
    ------
    IEEE 488.2-1992 (common commands), SCPI-1999 volume 2, chapters 3, 18, 21, 24 (from memory).
    """

    def __init__(self, meter: MeterModel, seed: int) -> None:
        self.status = ScpiStatus()
        self.now_s = 0.0
        self._begun = b""
        self._inbox: deque[str] = deque()
        self._work: Wait | None = None
        self._due_s = 0.0
        self._answers: list[bytes] = []
        own = [line.split()[0] for line in meter.profile.scpi.setup if line.split()]
        self._own = {header.removeprefix(":").upper() for header in own}
        self._accepted = [header_pattern(command) for command in _ACCEPTED]
        self._query = meter.profile.scpi.query.split()[0].removeprefix(":").upper()
        self._table: list[tuple[re.Pattern[str], Act]] = []
        self._read: Act = lambda _: None
        name = meter.profile.name
        # The second of a kind has another serial number.
        identity = f"VIRTUAL,{name},{seed}{meter.key.removeprefix(name)},{__version__}"
        status = self.status
        self._add(
            {
                "*IDN?": lambda _: self.answer(identity),
                "*CLS": lambda _: status.clear(),
                "*OPC": lambda _: status.complete(),
                "*OPC?": lambda _: self.answer("1"),
                "*TST?": lambda _: self.answer("0"),
                "*ESR?": lambda _: self.answer(str(status.events())),
                "*STB?": lambda _: self.answer(str(status.summary())),
                "SYSTem:ERRor[:NEXT]?": lambda _: self.answer(status.next_error()),
                "SYSTem:VERSion?": lambda _: self.answer("1999.0"),
            }
        )

    def learn(self, commands: Mapping[str, Act], read: Act) -> None:
        """Take the commands of a voice.

        Parameters
        ----------
        commands : mapping of str to Act
            Spelt as :func:`meterlog.instruments.virtual.scpi_header.header_pattern` takes them.
        read : Act
            For the profile's own query.
        """
        self._add(commands)
        self._read = read

    def _add(self, commands: Mapping[str, Act]) -> None:
        self._table.extend((header_pattern(command), act) for command, act in commands.items())

    def answer(self, answer: str | bytes) -> None:
        """Give one answer; those of one message go out together, separated by semicolons."""
        self._answers.append(answer.encode("latin-1") if isinstance(answer, str) else answer)

    def greet(self, now_s: float) -> None:
        """Begin anew: what was asked before is forgotten, errors are kept."""
        self.now_s = now_s
        self._begun = b""
        self._inbox.clear()
        self._work = None
        self._answers = []

    def hear(self, data: bytes, now_s: float) -> None:
        """Take program messages, ended by line feed or carriage return."""
        self.now_s = now_s
        *lines, self._begun = re.split(rb"[\r\n]+", self._begun + data)
        self._inbox.extend(line.decode("latin-1") for line in lines if line.strip())
        if len(self._begun) > _LONGEST or len(self._inbox) > _LONGEST:
            self.status.add(-363)
            self._begun = b""
            self._inbox.clear()

    def due_s(self) -> float | None:
        """Give the time until which the command in hand waits."""
        return self._due_s if self._work is not None else None

    def say(self, now_s: float) -> list[bytes]:
        """Give the answers that are ready."""
        self.now_s = now_s
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
                said.append(b";".join(self._answers) + b"\n")
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
                self.status.add(-113, header)
            else:
                waits: Iterable[float] = act(parameter.strip()) or ()
                yield from waits

    def _find(self, header: str) -> Act | None:
        bare = header.removeprefix(":")
        for pattern, act in self._table:
            if fits(pattern, bare):
                return act
        if bare.upper() == self._query:
            return self._read
        if bare.upper() in self._own or any(fits(pattern, bare) for pattern in self._accepted):
            return lambda _: None
        return None
