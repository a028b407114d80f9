"""The system's own counts of a serial line: bytes damaged, and bytes fetched too late."""

from __future__ import annotations

import struct
import sys

from meterlog.instruments.link import LineCounts

_GET_COUNTS = 0x545D
"""TIOCGICOUNT of Linux (asm-generic/ioctls.h)."""
_LAYOUT = struct.Struct("=20i")
"""serial_icounter_struct of Linux (linux/serial.h): cts, dsr, rng, dcd, rx, tx, frame, overrun,
parity, brk, buf_overrun, nine reserved."""
_FRAME, _OVERRUN, _PARITY, _BREAK, _BUFFER = 6, 7, 8, 9, 10


def line_counts_of(handle: int | None) -> LineCounts | None:
    """Give the counts since the system started the line; None where it keeps none.

    Parameters
    ----------
    handle : int or None
        File descriptor of the open port.

    Returns
    -------
    LineCounts or None
        Breaks are counted as framing: a wrong speed makes both.
    """
    if handle is None or not sys.platform.startswith("linux"):
        return None
    import fcntl

    try:
        answer = fcntl.ioctl(handle, _GET_COUNTS, bytes(_LAYOUT.size))
    except OSError:  # a pseudo terminal, a socket, a driver that does not count
        return None
    counts = _LAYOUT.unpack(answer)
    return LineCounts(
        framing=counts[_FRAME] + counts[_BREAK],
        parity=counts[_PARITY],
        lost=counts[_OVERRUN] + counts[_BUFFER],
    )


def since(counts: LineCounts, before: LineCounts) -> LineCounts:
    """Give what has been counted since ``before``."""
    return LineCounts(
        counts.framing - before.framing, counts.parity - before.parity, counts.lost - before.lost
    )
