"""ModbusDecoder: the answers of a Modbus RTU device, as a pure byte machine."""

from __future__ import annotations

import math
import struct

import numpy as np

from meterlog.instruments.modbus_frames import (
    EXCEPTIONS,
    LONGEST_FRAME,
    Answer,
    AnswerFinder,
    ModbusRequests,
)
from meterlog.instruments.modbus_numbers import RegisterNumbers
from meterlog.instruments.readings import Readings, Remark
from meterlog.instruments.stray_bytes import StrayBytes
from meterlog.model import Channel, EventKind, Flag
from meterlog.profile import ModbusTalk

_NO_VALUE = (math.nan, Flag.NO_DATA)


class ModbusDecoder:
    """Reads the answers to the frames of :class:`ModbusRequests`, in their order.

    A row is given when every frame has been answered. An exception is an answer too: its channels
    are ``NO_DATA``, and a remark says it in the standard's words, once until that frame is answered
    otherwise. A request that comes back on a line of two wires is passed over. Bytes that are no
    answer cost themselves only; nothing depends on how the bytes were cut.

    An answer does not say to which frame it belongs: one that comes twice, or late, would be taken
    for that to the next frame, and its values for other channels'.

    Parameters
    ----------
    talk : ModbusTalk
    channels : tuple of Channel
        As many as ``talk.registers``.
    one_each : bool
        Take one answer for each call of :meth:`expect`, and refuse what comes beyond it; False for
        bytes of which it is not known when was asked.

    Attributes
    ----------
    refused : int
        Stretches of bytes that were no answer to what was asked.
    last_refused : bytes
        The last of them, at most 200 bytes.
    complete_answers : int
        Whole answers so far, exceptions included. When it has grown, the next frame may be sent.
    """

    def __init__(
        self, talk: ModbusTalk, channels: tuple[Channel, ...], *, one_each: bool = False
    ) -> None:
        if len(channels) != len(talk.registers):
            raise ValueError(f"{len(channels)} channels, but {len(talk.registers)} registers")
        requests = ModbusRequests(talk)
        self.refused = 0
        self.last_refused = b""
        self.complete_answers = 0
        self._reads, self._frames = requests.reads, requests.frames
        self._finder = AnswerFinder(talk)
        self._stray = StrayBytes(LONGEST_FRAME)
        self._numbers = [RegisterNumbers(one, talk.word_order) for one in talk.registers]
        self._places = [
            next(
                (index, register.address - read.start, register.words)
                for index, read in enumerate(self._reads)
                if read.holds(register)
            )
            for register in talk.registers
        ]
        self._told = [-1] * len(self._reads)
        self._rows: list[list[tuple[float, Flag]]] = []
        self._remarks: list[Remark] = []
        self._untold: list[str] = []
        self._begun = b""
        self._one_each, self._answered = one_each, False
        self.restart()

    def restart(self) -> None:
        """Forget what has begun: the next answer is that to the first frame."""
        self._begun = b""
        self._stray.end()
        self._answers: dict[int, tuple[int, ...]] = {}
        self._index = 0

    def expect(self, index: int) -> None:
        """Take it that frame ``index`` is sent now: what has begun will not go on.

        Parameters
        ----------
        index : int
            0 begins a new row.

        Raises
        ------
        IndexError
            If there is no such frame.
        """
        if not 0 <= index < len(self._reads):
            raise IndexError(f"there is no frame {index}, only {len(self._reads)}")
        self.refuse(b"")
        if not index:
            self._answers = {}
        self._index = index
        self._answered = False

    def refuse(self, data: bytes) -> None:
        """Count what has begun, with ``data`` behind it, as no answer to anything."""
        self._stray.add(self._begun + data)
        self._stray.end()
        self._begun = b""
        self._count_refused()

    def feed(self, data: bytes) -> Readings:
        """Give the readings that ``data`` completes.

        Parameters
        ----------
        data : bytes
            Anything at all, cut anywhere.

        Returns
        -------
        Readings
            Raw units; never with times. A remark on an exception stands at the row that holds it.
        """
        data = self._begun + data
        place = stray = 0
        while place < len(data):
            if self._answered:
                place = len(data)
                break
            answer = self._finder.at(data, place, self._reads[self._index], self._request)
            if answer is None:
                break
            if answer.used:
                self._stray.add(data[stray:place])
                self._stray.end()
                self._take(answer)
                stray = place + answer.used
            place += max(answer.used, 1)
        self._stray.add(data[stray:place])
        self._begun = data[place:]
        self._count_refused()
        return self._collect()

    def _count_refused(self) -> None:
        self.refused, self.last_refused = self._stray.count, self._stray.last

    @property
    def _request(self) -> bytes:
        return self._frames[self._index]

    def _take(self, answer: Answer) -> None:
        if answer.exception < 0 and not answer.data:
            return
        self.complete_answers += 1
        self._answered = self._one_each
        self._note(answer.exception)
        count = len(answer.data) // 2
        self._answers[self._index] = struct.unpack(f">{count}H", answer.data)
        self._index = (self._index + 1) % len(self._reads)
        if len(self._answers) == len(self._reads):
            row = len(self._rows)
            self._remarks += [Remark(row, EventKind.DEVICE, text) for text in self._untold]
            self._untold = []
            self._rows.append([self._value(channel) for channel in range(len(self._numbers))])
            self._answers = {}

    def _note(self, exception: int) -> None:
        if exception >= 0 and exception != self._told[self._index]:
            words = EXCEPTIONS.get(exception, "not in the standard")
            self._untold.append(f"{self._reads[self._index]}: exception {exception:02X}, {words}")
        self._told[self._index] = exception

    def _value(self, channel: int) -> tuple[float, Flag]:
        index, start, count = self._places[channel]
        words = self._answers[index][start : start + count]
        return self._numbers[channel].read(words) if words else _NO_VALUE

    def _collect(self) -> Readings:
        shape = (len(self._rows), len(self._numbers))
        values = np.empty(shape, order="F")
        flags = np.empty(shape, np.uint8, order="F")
        for row, fields in enumerate(self._rows):
            values[row] = [value for value, _ in fields]
            flags[row] = [int(flag) for _, flag in fields]
        remarks = tuple(self._remarks)
        self._rows = []
        self._remarks = []
        return Readings(values, flags, None, remarks)
