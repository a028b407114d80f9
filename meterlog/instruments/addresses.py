"""The form of a port's address, before anything is opened."""

from __future__ import annotations

import re
from collections.abc import Mapping
from types import MappingProxyType

from meterlog.model.errors import UsageError

_REMEDY = (
    "Write a port's name, socket://HOST:PORT, rfc2217://HOST:PORT, hid://VVVV:PPPP[/SERIAL], "
    "usbtmc://VVVV:PPPP[/SERIAL] or visa://RESOURCE."
)
_HOST_PORT = re.compile(r"(?:[^/:@?#\s]+|\[[0-9A-Fa-f:.]+\]):(?P<port>[0-9]{1,5})(?:[/?].*)?")
_USB = re.compile(r"(?P<vendor>[0-9A-Fa-f]{4}):(?P<product>[0-9A-Fa-f]{4})(?:/(?P<serial>.+))?")
_ANY = re.compile(r".+")
_FORMS: Mapping[str, re.Pattern[str]] = MappingProxyType(
    {
        "socket": _HOST_PORT,
        "rfc2217": _HOST_PORT,
        "hid": _USB,
        "usbtmc": _USB,
        "visa": _ANY,
        "loop": re.compile(r".*"),
    }
)
_HIGHEST_PORT = 65_535


def scheme_of(url: str) -> str:
    """Give the kind of address, such as ``socket``; empty for a port's name or path.

    Raises
    ------
    UsageError
        If the address is empty, of an unknown kind, or not written as its kind needs.
    """
    if not url:
        raise UsageError("the port has no name.", subject="''", remedy=_REMEDY)
    scheme, mark, rest = url.partition("://")
    if not mark:
        return ""
    scheme = scheme.lower()
    form = _FORMS.get(scheme)
    if form is None:
        raise UsageError(f"no kind of port is called {scheme!r}.", subject=url, remedy=_REMEDY)
    match = form.fullmatch(rest)
    if match is None or (form is _HOST_PORT and not 0 < int(match["port"]) <= _HIGHEST_PORT):
        raise UsageError("is no address of a port.", subject=url, remedy=_REMEDY)
    return scheme


def usb_parts(url: str) -> tuple[int, int, str]:
    """Give vendor number, product number and serial number of a USB address.

    The serial number is empty when the address has none.

    Raises
    ------
    UsageError
        If it is not written as such an address is.
    """
    match = _USB.fullmatch(url.partition("://")[2])
    if match is None:
        raise UsageError("is no address of a USB device.", subject=url, remedy=_REMEDY)
    return int(match["vendor"], 16), int(match["product"], 16), match["serial"] or ""
