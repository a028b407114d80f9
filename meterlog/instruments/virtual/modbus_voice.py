"""ModbusVoice: a panel meter that answers Modbus requests on a serial line."""

from __future__ import annotations

import math
import struct
from collections.abc import Mapping
from types import MappingProxyType

from pymodbus.framer.rtu import FramerRTU
from pymodbus.pdu import DecodePDU, ExceptionResponse, ModbusPDU
from pymodbus.pdu.mei_message import ReadDeviceInformationResponse
from pymodbus.pdu.register_message import (
    ReadHoldingRegistersResponse,
    ReadInputRegistersResponse,
)

from meterlog import __version__
from meterlog.instruments.virtual.meter import MeterModel
from meterlog.instruments.virtual.modbus_map import ModbusMap
from meterlog.instruments.virtual.play import Play
from meterlog.instruments.virtual.voice import SLACK_S, Key, read_window

VENDOR = b"VIRTUAL BENCH"
_LONGEST = 256
_ILLEGAL_FUNCTION, _ILLEGAL_ADDRESS, _ILLEGAL_VALUE = 1, 2, 3
_MOST_REGISTERS = 125
_IDENTIFY, _IDENTIFY_MEI = 0x2B, 0x0E
_BASIC, _REGULAR, _EXTENDED, _ONE = 1, 2, 3, 4
_READS: Mapping[int, type[ModbusPDU]] = MappingProxyType(
    {3: ReadHoldingRegistersResponse, 4: ReadInputRegistersResponse}
)
_CHARACTER_BITS = 11.0
_FAST_BAUD = 19_200
_FAST_GAP_S = 0.00175


def frame_gap_s(baud: int) -> float:
    """Give the silence that ends a frame, seconds: 3.5 characters, but 1.75 ms on fast lines.

    Source
    ------
    Modbus over Serial Line V1.02, 2.5.1.1 (clause from memory).
    """
    return _FAST_GAP_S if baud > _FAST_BAUD else 3.5 * _CHARACTER_BITS / baud


class ModbusVoice:
    """Answers function 03 or 04, as the profile has it, and device identification (43/14).

    Another function is exception 01, a register that is not there 02, a count of 0 or above 125
    is 03. A frame with a wrong check sum, or for another device, gets no answer.

    Parameters
    ----------
    play : Play
    meter : MeterModel
    speedup : float
        The silence between frames is one of the wall, not of the scenario.

    Source
    ------
    Modbus Application Protocol V1.1b3, 6.3, 6.4, 6.21, 7; Modbus over Serial Line V1.02, 2.5.1
    (clauses from memory).
    """

    keys: Mapping[str, Key] = MappingProxyType({})
    card: Mapping[str, object] = MappingProxyType({})

    def __init__(self, play: Play, meter: MeterModel, speedup: float = 1.0) -> None:
        self.reach_s = meter.integration_s + meter.interval_s
        self._play = play
        self._meter = meter
        self._talk = meter.profile.modbus
        self._map = ModbusMap(self._talk)
        self._gap_s = frame_gap_s(meter.profile.link.baud) * speedup
        self._framer = FramerRTU(DecodePDU(is_server=True))
        self._begun = b""
        self._heard_s = 0.0
        self._read = -1
        name = meter.profile.name.encode("ascii", "replace")[:60]
        self._objects = {0: VENDOR, 1: name, 2: __version__.encode(), 4: b"virtual panel meter"}

    def greet(self, now_s: float) -> None:
        """Begin anew: what was begun is forgotten."""
        self._begun = b""
        self._heard_s = now_s

    def hear(self, data: bytes, now_s: float) -> None:
        """Take bytes of a request; a pause before them begins a new one."""
        if now_s - self._heard_s > self._gap_s:
            self._begun = b""
        self._begun = (self._begun + data)[: _LONGEST + 1]
        self._heard_s = now_s

    def due_s(self) -> float | None:
        """Give the time at which the silence after a request has been long enough."""
        return self._heard_s + self._gap_s if self._begun else None

    def say(self, now_s: float) -> list[bytes]:
        """Give the answer to a request that has ended."""
        due_s = self.due_s()
        if due_s is None or due_s > now_s + SLACK_S:
            return []
        frame, self._begun = self._begun, b""
        answer = self._answer(frame, now_s)
        if answer is None:
            return []
        answer.dev_id = self._talk.device
        return [self._framer.buildFrame(answer)]

    def news(self) -> list[tuple[float, str, str]]:
        """Give nothing: it does nothing by itself."""
        return []

    def _answer(self, frame: bytes, now_s: float) -> ModbusPDU | None:
        if not 4 <= len(frame) <= _LONGEST or frame[0] != self._talk.device:
            return None
        if not FramerRTU.check_CRC(frame[:-2], int.from_bytes(frame[-2:], "big")):
            return None
        function, asked = frame[1], frame[2:-2]
        if function == self._talk.function:
            return self._registers(function, asked, now_s)
        if function == _IDENTIFY and asked[:1] == bytes([_IDENTIFY_MEI]):
            return self._identify(asked[1:])
        return ExceptionResponse(function & 0x7F, _ILLEGAL_FUNCTION)

    def _registers(self, function: int, asked: bytes, now_s: float) -> ModbusPDU:
        address, count = struct.unpack(">HH", asked) if len(asked) == 4 else (0, 0)
        if not 1 <= count <= _MOST_REGISTERS:
            return ExceptionResponse(function, _ILLEGAL_VALUE)
        self._measure(now_s)
        words = self._map.get(address, count)
        if words is None:
            return ExceptionResponse(function, _ILLEGAL_ADDRESS)
        return _READS[function](registers=words)

    def _measure(self, now_s: float) -> None:
        """Put the newest whole reading into the registers."""
        latest = math.floor((now_s + SLACK_S) / self._meter.interval_s)
        if latest != self._read:
            self._read = latest
            end_s = latest * self._meter.interval_s
            self._map.put(read_window(self._play, self._meter, end_s))

    def _identify(self, asked: bytes) -> ModbusPDU:
        if len(asked) != 2 or not _BASIC <= asked[0] <= _ONE:
            return ExceptionResponse(_IDENTIFY, _ILLEGAL_VALUE)
        code, first = asked
        if code == _ONE:
            if first not in self._objects:
                return ExceptionResponse(_IDENTIFY, _ILLEGAL_ADDRESS)
            found = {first: self._objects[first]}
        else:
            last = 2 if code == _BASIC else 255
            there = {number: text for number, text in self._objects.items() if number <= last}
            # An object that is not there begins anew, as the standard has it.
            first = first if first in there else 0
            found = {number: text for number, text in there.items() if number >= first}
        return ReadDeviceInformationResponse(read_code=code, information=dict(found))
