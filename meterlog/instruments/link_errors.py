"""What a port's failure means for a person: pyserial and system errors, translated."""

from __future__ import annotations

import errno
import re
import socket
from collections.abc import Iterator

from meterlog.instruments.port_holder import holders
from meterlog.instruments.port_rights import rights_cure
from meterlog.model.errors import LinkBusy, LinkError, LinkLost, LinkNotFound, LinkRefused

_LOOK = "See `meterlog ports` for those that are there."
_ADDRESS = "Write a port's name, or socket://HOST:PORT, or rfc2217://HOST:PORT."
_SERVER = "Check that the far side runs, its address and its port number."
_CLOSE = "Close the other program, or the other window of this one."
_NUMBERED = re.compile(r"\[(?:Errno|WinError) -?\d+\] ")
# On Windows pyserial gives no number, only the words of the system's error; and there "access
# denied" means that the port is in use.
_OPENING: tuple[tuple[frozenset[int], str, type[LinkError], str, str], ...] = (
    (
        frozenset({errno.ENOENT, errno.ENXIO, errno.ENODEV, errno.ENOTDIR}),
        "FileNotFoundError",
        LinkNotFound,
        "there is no such port.",
        _LOOK,
    ),
    (
        frozenset({errno.EBUSY, errno.EAGAIN, errno.EWOULDBLOCK}),
        "PermissionError(13",
        LinkBusy,
        "another program holds this port.",
        _CLOSE,
    ),
    (
        frozenset({errno.EACCES, errno.EPERM}),
        "",
        LinkRefused,
        "you may not open this port.",
        "",
    ),
    (
        frozenset({errno.ENOTTY, errno.EISDIR, errno.EINVAL}),
        "",
        LinkNotFound,
        "is there, but is no serial port.",
        _LOOK,
    ),
)
_NETWORK = ("socket://", "rfc2217://")


def _chain(error: BaseException) -> Iterator[BaseException]:
    """Go from an error to what caused it: pyserial wraps without keeping the number."""
    seen: BaseException | None = error
    while seen is not None:
        yield seen
        seen = seen.__cause__ or seen.__context__


def _number(error: BaseException) -> int | None:
    for link in _chain(error):
        if isinstance(link, OSError) and link.errno is not None:
            return link.errno
        if isinstance(link, OSError) or not link.args:
            continue
        if type(link).__module__ == "termios" and isinstance(link.args[0], int):
            return link.args[0]
    return None


def open_failed(url: str, error: BaseException) -> LinkError:
    """Give the error to raise when ``url`` could not be opened.

    Parameters
    ----------
    url : str
    error : BaseException
        As pyserial or the system raised it.

    Returns
    -------
    LinkError
        LinkNotFound, LinkBusy or LinkRefused.
    """
    if url.lower().startswith(_NETWORK):
        return _network_failed(url, error)
    for numbers, words, kind, message, remedy in _OPENING:
        if _number(error) in numbers or (words and words in str(error)):
            return _refused(kind(message, subject=url, remedy=remedy))
    if isinstance(error, ValueError) and "://" in url:
        return LinkNotFound("is no address of a port.", subject=url, remedy=_ADDRESS)
    return LinkRefused(f"can't be opened: {_short(error)}.", subject=url, remedy=_LOOK)


def _refused(error: LinkError) -> LinkError:
    """Add what can be found out about this one port."""
    if isinstance(error, LinkRefused):
        return LinkRefused(error.message, subject=error.subject, remedy=rights_cure(error.subject))
    names = holders(error.subject) if isinstance(error, LinkBusy) else ()
    if not names:
        return error
    message = f"another program holds this port: {', '.join(names)}."
    return LinkBusy(message, subject=error.subject, remedy=error.remedy)


def _network_failed(url: str, error: BaseException) -> LinkError:
    for link in _chain(error):
        if isinstance(link, ConnectionRefusedError):
            return LinkRefused("nobody listens there.", subject=url, remedy=_SERVER)
        if isinstance(link, socket.gaierror):
            return LinkNotFound("no machine of this name is known.", subject=url, remedy=_SERVER)
        if isinstance(link, TimeoutError):
            return LinkNotFound("does not answer.", subject=url, remedy=_SERVER)
    number = _number(error)
    if number is None:
        return LinkNotFound("is no address of a port.", subject=url, remedy=_ADDRESS)
    return LinkNotFound(f"can't be reached: {_short(error)}.", subject=url, remedy=_SERVER)


def lost(url: str, error: BaseException) -> LinkLost:
    """Give the error to raise when an open port stopped working."""
    return LinkLost(
        f"the port went away ({_short(error)}).",
        subject=url,
        remedy="Check the plug, the cable and the meter's power.",
    )


def _short(error: BaseException) -> str:
    """Give the system's reason in its words; its number says nothing to whoever measures."""
    numbered = len(error.args) > 1 and isinstance(error.args[0], int)
    said = str(error.args[1] if numbered else error)
    return _NUMBERED.sub("", said).rstrip(".")[:200] or type(error).__name__
