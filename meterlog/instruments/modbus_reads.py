"""Reads: which registers of a Modbus device are asked for together."""

from __future__ import annotations

from dataclasses import dataclass

from meterlog.profile import Register

MOST_REGISTERS = 125
"""So many registers one answer can hold."""


@dataclass(frozen=True, slots=True)
class Read:
    """Registers that are asked for by one request.

    Attributes
    ----------
    start : int
        Address on the wire of the first.
    count : int
        1 to 125.
    """

    start: int
    count: int

    @property
    def stop(self) -> int:
        """Address behind the last."""
        return self.start + self.count

    def holds(self, register: Register) -> bool:
        """Tell whether all words of ``register`` are among them."""
        return self.start <= register.address and register.address + register.words <= self.stop

    def __str__(self) -> str:
        """Such as ``registers 8 to 11``, by their addresses on the wire."""
        if self.count == 1:
            return f"register {self.start}"
        return f"registers {self.start} to {self.stop - 1}"


def reads(registers: tuple[Register, ...]) -> tuple[Read, ...]:
    """Give the fewest reads that hold all registers, in the order of their addresses.

    A read never goes over a gap: a device may refuse a whole request for the sake of one address
    that it has not. It never parts the two words of a number either.

    Source
    ------
    Modbus Application Protocol V1.1b3, 6.3 and 6.4: 1 to 125 registers (numbers from the
    document, clause numbers from memory).
    """
    found: list[Read] = []
    for register in sorted(registers, key=lambda one: (one.address, one.words)):
        last = found[-1] if found else Read(-1, 0)
        stop = max(last.stop, register.address + register.words)
        if register.address > last.stop or stop - last.start > MOST_REGISTERS or not found:
            found.append(Read(register.address, register.words))
        else:
            found[-1] = Read(last.start, stop - last.start)
    return tuple(found)
