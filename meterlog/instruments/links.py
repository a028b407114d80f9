"""The one table from an address to the kind of link that opens it."""

from __future__ import annotations

from meterlog.instruments.addresses import scheme_of
from meterlog.instruments.link import Link
from meterlog.instruments.serial_link import SerialLink
from meterlog.profile import LinkSettings


def open_link(url: str, settings: LinkSettings) -> Link:
    """Open a way to an instrument for this program alone.

    Parameters
    ----------
    url : str
        A port's name or path; or ``socket://HOST:PORT``, ``rfc2217://HOST:PORT``,
        ``hid://VVVV:PPPP[/SERIAL]``, ``usbtmc://VVVV:PPPP[/SERIAL]``, ``visa://RESOURCE``; USB
        numbers hexadecimal.
    settings : LinkSettings
        What a kind of link does not have is ignored.

    Returns
    -------
    Link

    Raises
    ------
    UsageError
        If the address is of no known kind, or not written as its kind needs.
    LinkNotFound
        If there is nothing at this address.
    LinkBusy
        If another program holds it.
    LinkRefused
        If this user may not open it, the far side refuses, or a library is missing for this kind
        of link; the remedy is the line that installs it.
    """
    scheme = scheme_of(url)
    # Each of these has a library of its own, which nobody else has to wait for.
    if scheme == "hid":
        from meterlog.instruments.hid_link import HidLink

        return HidLink.open(url, settings)
    if scheme in {"usbtmc", "visa"}:
        from meterlog.instruments.visa_link import VisaLink

        return VisaLink.open(url)
    return SerialLink.open(url, settings)
