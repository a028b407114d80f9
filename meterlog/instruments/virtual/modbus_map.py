"""ModbusMap: the registers of a virtual panel meter."""

from __future__ import annotations

import struct

import numpy as np

from meterlog.instruments.virtual.meter import Shown
from meterlog.profile import ModbusTalk, Register

_INTEGERS = {
    "int16": (">h", -(2**15), 2**15 - 1),
    "uint16": (">H", 0, 2**16 - 1),
    "int32": (">i", -(2**31), 2**31 - 1),
    "uint32": (">I", 0, 2**32 - 1),
}


class ModbusMap:
    """Holds one reading in registers.

    Registers between those of the profile's channels read zero, as reserved ones do; those before
    the first and after the last are not there.

    Parameters
    ----------
    talk : ModbusTalk
    """

    def __init__(self, talk: ModbusTalk) -> None:
        self._talk = talk
        self.first = min(register.address for register in talk.registers)
        self.end = max(register.address + register.words for register in talk.registers)
        self._words = [0] * (self.end - self.first)

    def put(self, shown: Shown) -> None:
        """Take a new reading."""
        for index, register in enumerate(self._talk.registers):
            over = bool(shown.overload[0, index])
            negative = bool(shown.negative[0, index])
            data = _number(register, float(shown.raw[0, index]), over=over, negative=negative)
            words = [word for (word,) in struct.iter_unpack(">H", data)]
            if self._talk.word_order == "low-first":
                words.reverse()
            place = register.address - self.first
            self._words[place : place + len(words)] = words

    def get(self, address: int, count: int) -> list[int] | None:
        """Give ``count`` registers; None when one of them is not there."""
        if address < self.first or address + count > self.end:
            return None
        return self._words[address - self.first : address - self.first + count]


def _number(register: Register, raw: float, *, over: bool, negative: bool) -> bytes:
    """Give a number's bytes, most significant first.

    Overload is the profile's own number for it, or else the end of the scale; infinity for a
    ``float32``.
    """
    if over and register.overload:
        raw, over = register.overload[0], False
    if over:
        raw = -np.inf if negative else np.inf
    if register.number == "float32":
        return struct.pack(">f", raw)
    form, least, most = _INTEGERS[register.number]
    whole = least if raw < least else most if raw > most else round(raw)
    return struct.pack(form, whole)
