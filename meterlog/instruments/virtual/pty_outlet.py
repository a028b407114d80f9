"""PtyOutlet: a virtual meter on a pseudo terminal (POSIX)."""

from __future__ import annotations

import errno
import os
import select
import time

from meterlog.instruments.virtual.outbox import Outbox

_LOOK_S = 0.001


class PtyOutlet:
    """The far end of a pseudo terminal whose near end a client opens like a serial port.

    Attributes
    ----------
    address : str
        What to open.
    outbox : Outbox

    Raises
    ------
    OSError
        If the system has no pseudo terminal to give.
    """

    def __init__(self) -> None:
        import tty

        self._master, near = os.openpty()
        self.address = os.ttyname(near)
        # Raw before anybody opens it, else the terminal echoes what we say back to us.
        tty.setraw(near)
        # Only after an end has been open and closed does the system say that nobody is there.
        os.close(near)
        os.set_blocking(self._master, False)
        self._poll = select.poll()
        self._poll.register(self._master, select.POLLIN)
        self.outbox = Outbox(lambda data: os.write(self._master, data))

    def is_open(self) -> bool:
        """Tell whether a client has the port open."""
        return not any(state & select.POLLHUP for _, state in self._poll.poll(0))

    def wait(self, seconds: float) -> None:
        """Wait until there is something to read, or ``seconds`` have passed."""
        until = time.monotonic() + seconds
        if self.is_open():
            self._poll.poll(seconds * 1000.0)
        while not self.is_open() and (left := until - time.monotonic()) > 0.0:
            # With nobody there, poll returns at once: look every millisecond.
            time.sleep(min(_LOOK_S, left))

    def read(self) -> bytes:
        """Give what has come in; empty for nothing."""
        try:
            return os.read(self._master, 4096)
        except BlockingIOError:
            return b""
        except OSError as error:
            if error.errno == errno.EIO:  # the client has closed
                return b""
            raise

    def close(self) -> None:
        """Give the pseudo terminal back."""
        os.close(self._master)
