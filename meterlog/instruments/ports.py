"""The serial ports of this computer."""

from __future__ import annotations

import os
import sys
from dataclasses import dataclass
from pathlib import Path

from serial.tools.list_ports import comports

from meterlog.instruments.port_rights import rights_cure


@dataclass(frozen=True, slots=True)
class PortInfo:
    """One serial port.

    Attributes
    ----------
    device : str
        What to open.
    text : str
        What the system calls it.
    vendor, product : str
        USB vendor and product number, four hexadecimal digits each; empty when it is not USB.
    serial : str
        Serial number of the adapter; empty when it has none.
    location : str
        The USB socket it is in, as the system numbers them; empty when it is not USB.
    usable : bool
        False when this user may not open it.
    reason : str
        Why it is not usable and what to do; empty when it is.
    """

    device: str
    text: str = ""
    vendor: str = ""
    product: str = ""
    serial: str = ""
    location: str = ""
    usable: bool = True
    reason: str = ""


def list_ports() -> tuple[PortInfo, ...]:
    """Give the serial ports that are there now, sorted by device. Opens none of them."""
    found = []
    for port in comports():
        reason = _reason(port.device)
        text = port.description if port.description not in {None, "n/a"} else ""
        found.append(
            PortInfo(
                device=port.device,
                text=text,
                vendor=_hexadecimal(port.vid),
                product=_hexadecimal(port.pid),
                serial=port.serial_number or "",
                location=port.location or "",
                usable=not reason,
                reason=reason,
            )
        )
    return tuple(sorted(found, key=lambda port: port.device))


def _hexadecimal(number: int | None) -> str:
    return "" if number is None else f"{number:04x}"


def _reason(device: str) -> str:
    if sys.platform == "win32" or not Path(device).exists():
        return ""
    if os.access(device, os.R_OK | os.W_OK):
        return ""
    return f"you may not open it. {rights_cure(device)}"
