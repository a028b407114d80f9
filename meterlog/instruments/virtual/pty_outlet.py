"""PtyOutlet: a virtual meter on a pseudo terminal (POSIX)."""

from __future__ import annotations

import contextlib
import errno
import os
import select
from pathlib import Path

from meterlog.instruments.virtual.outbox import Outbox
from meterlog.model.errors import LinkRefused, UsageError

_GONE = -1


class PtyOutlet:
    """The far end of a pseudo terminal whose near end a client opens like a serial port.

    Parameters
    ----------
    link : Path or None
        Where to keep a symbolic link to the pseudo terminal, so that there is one name to open
        although each new plugging in gives a new terminal.

    Attributes
    ----------
    address : str
        What to open: the link where there is one.
    outbox : Outbox

    Raises
    ------
    LinkRefused
        If the system has no pseudo terminal to give.
    UsageError
        If the link can't be made; nothing but a link is ever replaced.
    """

    def __init__(self, link: Path | None = None) -> None:
        self._link = link
        self._master = _GONE
        self._name = ""
        self.address = ""
        self.outbox = Outbox(self._send, lambda: self._master)
        self.plug()

    def plug(self) -> None:
        """Take a new pseudo terminal; does nothing while there is one."""
        if self._master != _GONE:
            return
        import tty

        try:
            self._master, near = os.openpty()
        except OSError as error:
            raise LinkRefused(
                f"the system has no pseudo terminal to give: {error.strerror}.",
                remedy="End other programs, or serve on a TCP port.",
            ) from error
        name = os.ttyname(near)
        # Raw before anybody opens it, else the terminal echoes what we say back to us.
        tty.setraw(near)
        # Only after an end has been open and closed does the system say that nobody is there.
        os.close(near)
        os.set_blocking(self._master, False)
        self._poll = select.poll()
        self._poll.register(self._master, select.POLLIN)
        self._name = self.address = name
        if self._link is not None:
            try:
                _point(self._link, name)
            except UsageError:
                self._drop()
                raise
            self.address = str(self._link)

    def unplug(self) -> None:
        """Take the pseudo terminal and its link away."""
        # Another bench may have taken the link over meanwhile.
        if self._link is not None and self._name and _points_to(self._link) == self._name:
            self._link.unlink(missing_ok=True)
        self._name = ""
        self._drop()
        self.outbox.clear()

    def is_open(self) -> bool:
        """Tell whether a client has the port open."""
        if self._master == _GONE:
            return False
        return not any(state & select.POLLHUP for _, state in self._poll.poll(0))

    def ends(self) -> tuple[int, ...]:
        """Give the end to watch; none while nobody has the port open."""
        return (self._master,) if self.is_open() else ()

    def read(self) -> bytes:
        """Give what has come in; empty for nothing."""
        if self._master == _GONE:
            return b""
        try:
            return os.read(self._master, 4096)
        except BlockingIOError:
            return b""
        except OSError as error:
            if error.errno == errno.EIO:  # the client has closed
                return b""
            raise

    def forget(self) -> None:
        """Throw away what was sent and not read: the system keeps it for the next client.

        A serial port that is closed loses what its driver held; a pseudo terminal does not.
        """
        if self._master == _GONE:
            return
        import termios

        # What still travels is the far end's output; what has arrived, the near end's input.
        with contextlib.suppress(OSError, termios.error):
            termios.tcflush(self._master, termios.TCOFLUSH)
            near = os.open(self._name, os.O_RDWR | os.O_NOCTTY | os.O_NONBLOCK)
            try:
                termios.tcflush(near, termios.TCIFLUSH)
            finally:
                os.close(near)

    def close(self) -> None:
        """Give the pseudo terminal back."""
        self.unplug()

    def _send(self, data: bytes) -> int:
        try:
            return os.write(self._master, data)
        except BlockingIOError:
            raise
        except OSError:
            # Closed or taken away just now: the next look finds nobody there.
            return 0

    def _drop(self) -> None:
        if self._master != _GONE:
            os.close(self._master)
            self._master = _GONE


def _points_to(link: Path) -> str:
    try:
        return str(link.readlink())
    except OSError:
        return ""


def _point(link: Path, name: str) -> None:
    """Make ``link`` point to ``name``, in one step for whoever looks."""
    if link.exists() and not link.is_symlink():
        raise UsageError(
            "is there already and is no symbolic link.",
            subject=str(link),
            remedy="Choose another name for the link.",
        )
    part = link.with_name(f".{link.name}.part")
    try:
        part.unlink(missing_ok=True)
        part.symlink_to(name)
        part.replace(link)
    except OSError as error:
        raise UsageError(
            f"can't be made: {error.strerror}.",
            subject=str(link),
            remedy="Choose a folder that exists and can be written to.",
        ) from error
