"""TcpOutlet: a virtual meter on a TCP port of this computer."""

from __future__ import annotations

import contextlib
import select
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
        try:
            self._listener = socket.create_server((_HOST, port), backlog=1)
        except PermissionError as error:
            raise LinkRefused(
                "the system does not give this port.",
                subject=f"TCP port {port}",
                remedy="Choose one above 1023, or 0 for any that is free.",
            ) from error
        except OSError as error:
            raise LinkBusy(
                f"can't be used: {error.strerror}.",
                subject=f"TCP port {port}",
                remedy="Choose another, or 0 for any that is free.",
            ) from error
        self._listener.settimeout(0.0)
        self.address = f"socket://{_HOST}:{self._listener.getsockname()[1]}"
        self.outbox = Outbox(self._send)

    def is_open(self) -> bool:
        """Tell whether a client is connected, taking one that waits."""
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
        with contextlib.suppress(BlockingIOError, ConnectionError):
            client, _ = self._listener.accept()
            if self._client is not None:
                client.close()
                return
            client.settimeout(0.0)
            client.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
            self._client = client

    def wait(self, seconds: float) -> None:
        """Wait until there is something to read or to accept, or ``seconds`` have passed."""
        ends = [self._listener] if self._client is None else [self._listener, self._client]
        select.select(ends, [], [], max(seconds, 0.0))

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

    def close(self) -> None:
        """Give the port back."""
        self._drop_client()
        self._listener.close()

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
