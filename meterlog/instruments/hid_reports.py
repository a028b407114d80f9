"""Between a serial line's bytes and the reports of the bridge chip that carries them."""

from __future__ import annotations

from meterlog.profile import HidBridge


def unwrap(report: bytes, bridge: HidBridge) -> bytes:
    """Give the line's bytes out of an input report.

    Parameters
    ----------
    report : bytes
        As the system gives it: with the report's number in front if the chip numbers them.
    bridge : HidBridge

    Returns
    -------
    bytes
        Empty for a report without data; never more than the report holds, whatever it says.
    """
    if bridge.in_count_byte is None:
        return report[bridge.in_first :]
    if len(report) <= bridge.in_count_byte:
        return b""
    count = report[bridge.in_count_byte] & bridge.in_count_mask
    return report[bridge.in_first : bridge.in_first + count]


def wrap(data: bytes, bridge: HidBridge) -> list[bytes]:
    """Give the output reports that carry ``data``, each with its number in front.

    Parameters
    ----------
    data : bytes
    bridge : HidBridge
        With an ``out_report``.

    Returns
    -------
    list of bytes
        All of the same length, filled up with zeros.
    """
    number = bytes([bridge.out_report or 0])
    room = max(bridge.out_size - (1 if bridge.out_count else 0), 1)
    reports = []
    for start in range(0, len(data), room):
        part = data[start : start + room]
        count = bytes([len(part)]) if bridge.out_count else b""
        reports.append(number + (count + part).ljust(bridge.out_size, b"\0"))
    return reports
