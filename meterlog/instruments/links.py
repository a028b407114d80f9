"""The one table from an address to the kind of link that opens it."""

from __future__ import annotations

from meterlog.instruments.link import Link
from meterlog.instruments.serial_link import SerialLink
from meterlog.profile import LinkSettings


def open_link(url: str, settings: LinkSettings) -> Link:
    """Open a way to an instrument for this program alone.

    Parameters
    ----------
    url : str
        A port's name or path; or ``socket://HOST:PORT``, ``rfc2217://HOST:PORT``.
    settings : LinkSettings
        What a kind of link does not have is ignored.

    Returns
    -------
    Link

    Raises
    ------
    LinkNotFound
        If there is nothing at this address, or it is none.
    LinkBusy
        If another program holds it.
    LinkRefused
        If this user may not open it, the far side refuses, or a library is missing for this kind
        of link; the remedy is the line that installs it.
    """
    return SerialLink.open(url, settings)
