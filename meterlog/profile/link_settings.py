"""LinkSettings: how a port is opened."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class HidBridge:
    """How a bridge chip on the USB, seen as a human-interface device, wraps a serial line.

    Attributes
    ----------
    setup : bytes
        A feature report sent once after opening, its report number first; it sets the chip's line
        speed. Empty for none.
    in_count_byte : int or None
        Place of the byte in each input report that says how many bytes of it are data; None when
        all are.
    in_count_mask : int
        Which bits of that byte count.
    in_first : int
        Place of the first data byte in an input report.
    out_report : int or None
        Report number that goes before what is sent; None when nothing can be sent.
    out_size : int
        Data bytes of an output report; a shorter one is filled up with zeros.
    out_count : bool
        Whether the first of them says how many follow.
    """

    setup: bytes = b""
    in_count_byte: int | None = None
    in_count_mask: int = 0xFF
    in_first: int = 0
    out_report: int | None = None
    out_size: int = 8
    out_count: bool = False


@dataclass(frozen=True, slots=True)
class LinkSettings:
    """How a port is opened; what a kind of port does not have is ignored.

    Attributes
    ----------
    baud : int, bits per second
    data_bits : int
    parity : str
        ``none``, ``even`` or ``odd``.
    stop_bits : float
    dtr, rts : bool
        State of the two control lines while open. Some meters draw their power from them.
    on_wire : bool
        Whether the bytes really take the time that ``baud`` says: False for an instrument with a
        USB plug of its own, which ignores ``baud``.
    hid : HidBridge
        For ``hid://`` addresses.
    """

    baud: int = 9600
    data_bits: int = 8
    parity: str = "none"
    stop_bits: float = 1.0
    dtr: bool = True
    rts: bool = True
    on_wire: bool = True
    hid: HidBridge = HidBridge()

    @property
    def byte_s(self) -> float:
        """Seconds that one byte takes on the wire: start bit, data, parity and stop bits."""
        parity = 0 if self.parity == "none" else 1
        return (1 + self.data_bits + parity + self.stop_bits) / self.baud

    @property
    def short(self) -> str:
        """Such as ``9600 8N1``, as the trade writes it."""
        return f"{self.baud} {self.data_bits}{self.parity[0].upper()}{self.stop_bits:g}"
