"""Outlet: a port seen from the meter's side, and the wait for any of several."""

from __future__ import annotations

import contextlib
import select
import time
from collections.abc import Sequence
from typing import Protocol

from meterlog.instruments.virtual.outbox import Outbox

_LOOK_S = 0.001


class Outlet(Protocol):
    """A port seen from the meter's side.

    Attributes
    ----------
    address : str
        What to open; after :meth:`plug` it may be another one.
    outbox : Outbox
    """

    address: str
    outbox: Outbox

    def is_open(self) -> bool:
        """Tell whether a client has the port open."""

    def ends(self) -> tuple[int, ...]:
        """Give the file descriptors that become readable when there is something to do."""

    def read(self) -> bytes:
        """Give what has come in; empty for nothing."""

    def forget(self) -> None:
        """Throw away what was sent and not read, where the system keeps it after a close."""

    def unplug(self) -> None:
        """Take the port away; a client that has it open loses it."""

    def plug(self) -> None:
        """Bring the port back.

        Raises
        ------
        LinkError
            If the system does not give one.
        """

    def close(self) -> None:
        """Give the port back for good."""


def wait(outlets: Sequence[Outlet], seconds: float) -> None:
    """Wait until one of the outlets has something to do, at most ``seconds``.

    Parameters
    ----------
    outlets : sequence of Outlet
    seconds : float, seconds

    Notes
    -----
    Of a pseudo terminal that nobody has open the system does not say when somebody comes: such
    an outlet has no ends, and is looked at every millisecond.
    """
    until = time.monotonic() + seconds
    reading = [end for outlet in outlets for end in outlet.ends()]
    writing = [outlet.outbox.end for outlet in outlets if outlet.outbox.waits and outlet.is_open()]
    unseen = [outlet for outlet in outlets if not outlet.ends()]
    while (left := until - time.monotonic()) > 0.0:
        step_s = min(left, _LOOK_S) if unseen else left
        if _ready(reading, writing, step_s) or any(outlet.is_open() for outlet in unseen):
            return


def _ready(reading: Sequence[int], writing: Sequence[int], seconds: float) -> bool:
    if not (reading or writing):
        time.sleep(seconds)
        return False
    # An end that went away just now is found by the next look at its outlet.
    with contextlib.suppress(OSError, ValueError):
        found = select.select(reading, writing, [], seconds)
        return any(found)
    return True
