"""Which instruments of one kind are on the USB, by their serial numbers."""

from __future__ import annotations

from typing import Any

from meterlog.instruments.extras import VISA, install_line
from meterlog.instruments.port_rights import rights_cure
from meterlog.model.errors import LinkRefused

INSTALL = install_line(VISA)


def library_missing(url: str) -> LinkRefused:
    """Give the error for an installation without the libraries for such instruments."""
    return LinkRefused(
        "the library for such instruments is not installed.",
        subject=url,
        remedy=f"Run: {INSTALL}",
    )


def usb_serials(vendor: int, product: int, url: str) -> tuple[str, ...]:
    """Give the serial numbers of the devices of one kind that are plugged in, sorted.

    Parameters
    ----------
    vendor, product : int
    url : str
        For messages.

    Raises
    ------
    LinkRefused
        If PyUSB or the system's libusb is missing, or this user may not look at a device.
    """
    try:
        import usb.core  # type: ignore[import-untyped]
    except ImportError as error:
        raise library_missing(url) from error
    try:
        found = list(usb.core.find(find_all=True, idVendor=vendor, idProduct=product))
    except usb.core.NoBackendError as error:
        raise LinkRefused(
            "the system's libusb is missing.",
            subject=url,
            remedy="Install it, on Debian and the like by `sudo apt install libusb-1.0-0`.",
        ) from error
    return tuple(sorted(_serial(device, url) for device in found))


# PyUSB has no type stubs.
def _serial(device: Any, url: str) -> str:  # noqa: ANN401
    try:
        return str(device.serial_number or "")
    # PyUSB raises this when it may not ask the device (it has no language it knows of).
    except ValueError as error:
        node = f"/dev/bus/usb/{device.bus:03d}/{device.address:03d}"
        raise LinkRefused(
            "you may not open this instrument.", subject=url, remedy=rights_cure(node)
        ) from error
