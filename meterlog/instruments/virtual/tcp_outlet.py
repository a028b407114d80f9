"""TcpOutlet: a virtual meter on a TCP port of this computer."""

from __future__ import annotations

import contextlib
import socket

from meterlog.instruments.virtual.outbox import Outbox
from meterlog.model.errors import LinkBusy, LinkRefused

_HOST = "127.0.0.1"


class TcpOutlet:
    """A listening port that serves one client at a time; a second one is turned away.

    Parameters
    ----------
    port : int
        0 for any that is free.

    Attributes
    ----------
    address : str
        What to open.
    outbox : Outbox

    Raises
    ------
    LinkBusy
        If another program has the port.
    LinkRefused
        If the system does not give it.
    """

    def __init__(self, port: int = 0) -> None:
        self._client: socket.socket | None = None
        self._listener: socket.socket | None = _listen(port)
        self._port = self._listener.getsockname()[1]
        self.address = f"socket://{_HOST}:{self._port}"
        self.outbox = Outbox(self._send, self._client_end)

    def is_open(self) -> bool:
        """Tell whether a client is connected, taking one that waits."""
        if self._listener is None:
            return False
        waiting = self._peek()
        if waiting == b"":
            # Closed at its end. Say so once, even if the next one is waiting already.
            self._drop_client()
            return False
        if waiting is None:
            self._accept()
        return self._client is not None

    def _peek(self) -> bytes | None:
        """Give what the client has sent, without taking it; empty for its end, None for none."""
        if self._client is None:
            return None
        try:
            return self._client.recv(1, socket.MSG_PEEK)
        except BlockingIOError:
            return None
        except OSError:
            return b""

    def _accept(self) -> None:
        if self._listener is None:
            return
        with contextlib.suppress(BlockingIOError, ConnectionError):
            client, _ = self._listener.accept()
            if self._client is not None:
                client.close()
                return
            client.settimeout(0.0)
            client.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
            self._client = client

    def ends(self) -> tuple[int, ...]:
        """Give the ends to watch: the listening one, and the client's."""
        return tuple(end.fileno() for end in (self._listener, self._client) if end is not None)

    def unplug(self) -> None:
        """Drop the client and refuse every other."""
        if self._listener is not None:
            self._listener.close()
            self._listener = None
        self._drop_client()
        self.outbox.clear()

    def plug(self) -> None:
        """Listen again on the same port; does nothing while it listens.

        Raises
        ------
        LinkBusy
            If another program has the port now.
        """
        if self._listener is None:
            self._listener = _listen(self._port)

    def read(self) -> bytes:
        """Give what has come in; empty for nothing."""
        if self._client is None:
            return b""
        try:
            data = self._client.recv(4096)
        except BlockingIOError:
            return b""
        except OSError:
            data = b""
        if not data:
            self._drop_client()
        return data

    def forget(self) -> None:
        """Do nothing: what was sent ends with its connection."""

    def close(self) -> None:
        """Give the port back."""
        self.unplug()

    def _client_end(self) -> int:
        return -1 if self._client is None else self._client.fileno()

    def _send(self, data: bytes) -> int:
        if self._client is None:
            return 0
        try:
            return self._client.send(data)
        except BlockingIOError:
            raise
        except OSError:
            # Reset or closed by the client: the next look finds nobody there.
            self._drop_client()
            return 0

    def _drop_client(self) -> None:
        if self._client is not None:
            self._client.close()
            self._client = None


def _listen(port: int) -> socket.socket:
    try:
        listener = socket.create_server((_HOST, port), backlog=1)
    except PermissionError as error:
        raise LinkRefused(
            "the system does not give this port.",
            subject=f"TCP port {port}",
            remedy="Choose one above 1023, or 0 for any that is free.",
        ) from error
    except (OSError, OverflowError) as error:
        raise LinkBusy(
            f"can't be used: {getattr(error, 'strerror', None) or error}.",
            subject=f"TCP port {port}",
            remedy="Choose another, or 0 for any that is free.",
        ) from error
    listener.settimeout(0.0)
    return listener
