"""Devices that misbehave by a seeded script, and know what they sent intact."""

from __future__ import annotations

import random
import threading
import time
from dataclasses import dataclass, field

from plugs import PtyPlug, TcpPlug, Unplugged

Plug = PtyPlug | TcpPlug
_JUNK = bytes([0x00, 0x80, 0x81, 0xC3, 0xF8, 0xFF])


@dataclass
class Sent:
    """What a device has done.

    Attributes
    ----------
    intact : list of int
        Numbers of the readings sent whole, to a port that was there until they were fetched.
    unsure : set of int
        Sent whole right before the plug was pulled: they may have been fetched, or not.
    returns_ns : list of int
        When the first whole reading was sent after the plug was put in again, monotonic.
    troubles : dict
        How often what was done.
    """

    intact: list[int] = field(default_factory=list)
    unsure: set[int] = field(default_factory=set)
    plugged_ns: list[int] = field(default_factory=list)
    troubles: dict[str, int] = field(default_factory=dict)

    def count(self, trouble: str) -> None:
        """Note a trouble."""
        self.troubles[trouble] = self.troubles.get(trouble, 0) + 1


def row(number: int) -> tuple[float, float, float]:
    """Give the three values of a reading: its number, and two that follow from it."""
    return float(number), number / 8.0, float(number % 7)


def line_of(number: int) -> bytes:
    """Give a reading as a line. Where it is cut after the first comma nobody can mistake it."""
    a, b, c = row(number)
    return f"{a:.0f},{b:.3f},{c:.0f}\n".encode()


class Device:
    """Runs a script in a thread of its own.

    Parameters
    ----------
    plug : Plug
    seed : int
    turns : int
        Readings, sent or not.
    """

    wild = True

    def __init__(self, plug: Plug, seed: int, turns: int) -> None:
        self.sent = Sent()
        self.failed: BaseException | None = None
        self._plug = plug
        self._dice = random.Random(seed)
        self._turns = turns
        self._recent: list[int] = []
        self._thread = threading.Thread(target=self._run, name=f"device {seed}", daemon=True)
        self.stop = threading.Event()

    def begin(self) -> None:
        """Start."""
        self._thread.start()

    def join(self) -> None:
        """Wait for the end of the script."""
        self._thread.join(90)
        if self._thread.is_alive():
            raise TimeoutError("the device's script does not end")
        if self.failed is not None:
            raise self.failed

    def _run(self) -> None:
        try:
            self.play()
            self._settle()
        except BaseException as error:  # noqa: BLE001
            self.failed = error

    def play(self) -> None:
        """Do the script."""
        raise NotImplementedError

    def _settle(self) -> None:
        """Take what has been fetched for certain."""
        if self._plug.drained():
            self.sent.intact += self._recent
        else:
            self.sent.unsure.update(self._recent)
        self._recent = []

    def _in_pieces(self, data: bytes) -> None:
        while data:
            size = self._dice.randint(1, max(len(data) - 1, 1))
            self._plug.send(data[:size])
            data = data[size:]
            time.sleep(self._dice.uniform(0.0, 0.004))

    def _unplug(self) -> None:
        """Pull the plug, in half of the cases while something is under way, and put it in again."""
        if self._dice.random() < 0.5:
            self.sent.count("unplugged under way")
            self._plug.send(b"77,9.")
            self.sent.unsure.update(self._recent)
            self._recent = []
        else:
            self.sent.count("unplugged")
            self._settle()
        self._plug.pull()
        time.sleep(self._dice.uniform(0.02, 0.5))
        self._plug.plug_in()
        self.sent.plugged_ns.append(time.monotonic_ns())
        self._after_replug()

    def _after_replug(self) -> None:
        junk = bytes(self._dice.choice(_JUNK) for _ in range(self._dice.randint(1, 200)))
        self._plug.send(junk + b"\n")

    def _corrupted(self, line: bytes) -> bytes:
        """Spoil one byte, but neither the line end nor so that it is a number still."""
        place = self._dice.randrange(len(line) - 1)
        return line[:place] + self._dice.choice([b"\xff", b"?", b"\x00"]) + line[place + 1 :]


class SteadyLogger(Device):
    """Sends one line after the other and never misbehaves."""

    def play(self) -> None:
        """Go on until told to stop."""
        number = 0
        while not self.stop.wait(0.01):
            number += 1
            self._plug.send(line_of(number))
            self._recent.append(number)


class WildLogger(Device):
    """Sends lines without being asked."""

    def play(self) -> None:
        """Drop, delay, corrupt, split, cut and unplug by dice."""
        for number in range(1, self._turns + 1):
            self._turn(number, line_of(number), self._dice.random())
            time.sleep(0.004)

    def _turn(self, number: int, line: bytes, dice: float) -> None:
        if dice < 0.05:
            self.sent.count("dropped")
            return
        if dice < 0.10:
            self.sent.count("corrupted")
            self._plug.send(self._corrupted(line))
            return
        if dice < 0.13:
            self.sent.count("cut short")
            self._plug.send(line[: line.index(b",") + 2] + b"\n")
            return
        if dice < 0.145:
            self._unplug()
        elif dice < 0.16:
            self.sent.count("stalled")
            time.sleep(self._dice.uniform(0.05, 0.6))
        if self._dice.random() < 0.3:
            self.sent.count("split")
            self._in_pieces(line)
        else:
            self._plug.send(line)
        self._recent.append(number)


class WildScpi(Device):
    """Answers SCPI questions; a reading carries the number of its question."""

    def __init__(self, plug: Plug, seed: int, turns: int) -> None:
        super().__init__(plug, seed, turns)
        self._begun = b""
        self._number = 0

    def play(self) -> None:
        """Answer until so many readings have been asked for."""
        while self._number < self._turns:
            try:
                self._begun += self._plug.receive(0.05)
                while b"\n" in self._begun and self._number < self._turns:
                    question, _, self._begun = self._begun.partition(b"\n")
                    self._answer(question.strip())
            except Unplugged:  # the program closed its side, to open it anew
                self._begun = b""
                self.sent.unsure.update(self._recent)
                self._recent = []

    def _answer(self, question: bytes) -> None:
        if question == b"*IDN?":
            self._plug.send(b"EXAMPLE,INVENTED METER,A1,1\n")
        elif question == b"SYST:ERR?":
            self._plug.send(b'0,"No error"\n')
        elif question == b"READ?":
            self._number += 1
            self._reading(self._number, self._dice.random())

    def _reading(self, number: int, dice: float) -> None:
        line = line_of(number)
        if dice < 0.01:
            self.sent.count("dropped")
            return
        if dice < 0.06:
            self.sent.count("corrupted")
            self._plug.send(self._corrupted(line))
            return
        if dice < 0.08:
            self._begun = b""
            self._unplug()
            return
        if dice < 0.11:
            self.sent.count("delayed")
            time.sleep(self._dice.uniform(0.02, 0.3))
        if self._dice.random() < 0.3:
            self.sent.count("split")
            self._in_pieces(line)
        else:
            self._plug.send(line)
        self._recent.append(number)

    def _after_replug(self) -> None:
        if self._dice.random() < 0.5:
            super()._after_replug()
