"""Modbus RTU frames: what is sent, and where in a stream of bytes the answer is."""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

from meterlog.instruments.modbus_reads import Read, reads
from meterlog.profile import ModbusTalk

LONGEST_FRAME = 256
EXCEPTION = 0x80
_EXCEPTION_FRAME = 5
_AROUND_DATA = 5
EXCEPTIONS = {
    1: "illegal function",
    2: "illegal data address",
    3: "illegal data value",
    4: "server device failure",
    5: "acknowledge: it works on it and has no answer yet",
    6: "server device busy",
    8: "memory parity error",
    10: "gateway path unavailable",
    11: "gateway target device failed to respond",
}
"""Exception codes and their words (Modbus Application Protocol V1.1b3, section 7)."""


class ModbusRequests:
    """The requests that fetch every channel once.

    Parameters
    ----------
    talk : ModbusTalk

    Attributes
    ----------
    reads : tuple of Read
        What each request asks for.
    frames : tuple of bytes
        The requests as they are sent, with address and check sum.

    Source
    ------
    Modbus Application Protocol V1.1b3, 6.3 (function 03) and 6.4 (04); Modbus over Serial Line
    V1.02, 2.5.1 and 6.2.2 (clause numbers from memory). Frames and check sum are made by pymodbus.
    """

    def __init__(self, talk: ModbusTalk) -> None:
        from pymodbus.framer import FramerRTU
        from pymodbus.pdu import DecodePDU
        from pymodbus.pdu.register_message import (
            ReadHoldingRegistersRequest,
            ReadInputRegistersRequest,
        )

        kind = ReadHoldingRegistersRequest if talk.function == 3 else ReadInputRegistersRequest
        framer = FramerRTU(DecodePDU(is_server=False))
        self.reads = reads(talk.registers)
        self.frames = tuple(
            framer.buildFrame(kind(dev_id=talk.device, address=one.start, count=one.count))
            for one in self.reads
        )


class Answer(NamedTuple):
    """What stands at one place of a stream.

    Attributes
    ----------
    used : int, bytes
        Length of the frame; 0 when none begins here.
    data : bytes
        The registers' bytes; empty for an exception and for the request's own echo.
    exception : int
        Exception code; -1 for none.
    """

    used: int
    data: bytes = b""
    exception: int = -1


NOTHING = Answer(0)


class AnswerFinder:
    """Tells what stands at a place of the bytes that a device sent.

    Parameters
    ----------
    talk : ModbusTalk
    """

    def __init__(self, talk: ModbusTalk) -> None:
        self._good = bytes((talk.device, talk.function))
        self._bad = bytes((talk.device, talk.function | EXCEPTION))
        self._check_sum = _check_sum()

    def at(self, data: bytes, place: int, read: Read, request: bytes) -> Answer | None:
        """Give what begins at ``place``.

        Parameters
        ----------
        data : bytes
        place : int
        read : Read
            What was asked for.
        request : bytes
            The frame that asked; a line of two wires gives it back, which is no answer.

        Returns
        -------
        Answer or None
            None when more bytes are needed to tell.
        """
        front = data[place : place + 2]
        if not (self._good.startswith(front) or self._bad.startswith(front)):
            return NOTHING
        if len(front) < 2:
            return None
        if front == self._bad:
            return self._exception(data[place : place + _EXCEPTION_FRAME])
        echo = data[place : place + len(request)]
        if echo == request:
            return Answer(len(request))
        registers = self._registers(data[place : place + _AROUND_DATA + 2 * read.count], read)
        if registers is NOTHING and request.startswith(echo):
            return None
        return registers

    def _exception(self, frame: bytes) -> Answer | None:
        if len(frame) < _EXCEPTION_FRAME:
            return None
        return Answer(len(frame), b"", frame[2]) if self._is_whole(frame) else NOTHING

    def _registers(self, frame: bytes, read: Read) -> Answer | None:
        size = 2 * read.count
        if len(frame) > 2 and frame[2] != size:
            return NOTHING
        if len(frame) < _AROUND_DATA + size:
            return None
        return Answer(len(frame), frame[3:-2]) if self._is_whole(frame) else NOTHING

    def _is_whole(self, frame: bytes) -> bool:
        return self._check_sum(frame[:-2]) == int.from_bytes(frame[-2:], "big")


def _check_sum() -> Callable[[bytes], int]:
    from pymodbus.framer import FramerRTU

    return FramerRTU.compute_CRC
