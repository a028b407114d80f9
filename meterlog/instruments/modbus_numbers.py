"""RegisterNumbers: from the registers of a Modbus device to numbers."""

from __future__ import annotations

import math
import struct
from collections.abc import Sequence

from meterlog.model import Flag
from meterlog.model.sentinels import tell_number
from meterlog.profile import Register


class RegisterNumbers:
    """Reads the number of one channel.

    Parameters
    ----------
    register : Register
    word_order : str
        ``high-first`` or ``low-first``.

    Source
    ------
    Modbus Application Protocol V1.1b3, 4.2: the high byte of a register comes first; the order of
    the registers of a 32-bit number is not in the standard. Numbers are converted by pymodbus.
    """

    def __init__(self, register: Register, word_order: str) -> None:
        from pymodbus.client.mixin import ModbusClientMixin

        self._convert = ModbusClientMixin.convert_from_registers
        self._form = ModbusClientMixin.DATATYPE[register.number.upper()]
        self._big = word_order == "high-first"
        self._overload = frozenset(_as_sent(one, register.number) for one in register.overload)

    def read(self, words: Sequence[int]) -> tuple[float, Flag]:
        """Give the number, with what is to be known about it.

        Parameters
        ----------
        words : sequence of int
            The register's words, 0 to 65535, in the order of their addresses.

        Returns
        -------
        tuple of float and Flag
            Raw units; NaN with ``OVERLOAD`` or ``NO_DATA``.
        """
        number = self._convert(list(words), self._form, "big" if self._big else "little")
        if not isinstance(number, int | float):
            raise TypeError(f"{self._form} gave {number!r}")
        if number in self._overload:
            return math.nan, Flag.OVERLOAD
        return tell_number(float(number))


def _as_sent(number: float, form: str) -> float:
    """Give the number as the device sends it, rounded to 32 bits where it is one of these."""
    if form != "float32":
        return number
    try:
        (sent,) = struct.unpack(">f", struct.pack(">f", number))
    except OverflowError:
        return math.copysign(math.inf, number)
    return float(sent)
