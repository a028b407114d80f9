"""StreamIndex: where each record batch of a readings file begins, without reading its body."""

from __future__ import annotations

import struct
from dataclasses import dataclass
from typing import BinaryIO

from meterlog.recording.arrow_header import (
    LONGEST_HEAD,
    MARK,
    PREFIX,
    BatchHeader,
    HeaderDamaged,
    parse_batch_header,
)
from meterlog.recording.stream_writer import CRC, END_MARK, FIRST_ROW

_WINDOW = 1 << 20


class Torn(Exception):
    """The file ends before the message does."""


@dataclass(frozen=True, slots=True)
class BatchPlace:
    """One record batch in a file.

    Attributes
    ----------
    offset, size : int, bytes
        The whole message, mark and length included.
    body : int, bytes
        From ``offset`` to the first byte of the body.
    first_row, rows : int
    crc : int
    buffers : tuple of (offset, length), bytes
        Of the body's buffers that hold something, in column order.
    """

    offset: int
    size: int
    body: int
    first_row: int
    rows: int
    crc: int
    buffers: tuple[tuple[int, int], ...]

    @property
    def end(self) -> int:
        """The byte behind the message."""
        return self.offset + self.size


def place_at(stream: BinaryIO, offset: int, file_bytes: int, width: int) -> BatchPlace | None:
    """Read the head of the message at ``offset``.

    Parameters
    ----------
    stream : binary file
    offset, file_bytes : int, bytes
    width : int
        Channels of the instrument.

    Returns
    -------
    BatchPlace or None
        None at the end mark.

    Raises
    ------
    Torn
        If the file ends within the message.
    HeaderDamaged
        If the head is none that a recorder writes.
    """
    stream.seek(offset)
    prefix = stream.read(PREFIX)
    if prefix == END_MARK:
        return None
    if len(prefix) < PREFIX:
        raise Torn
    (head_bytes,) = struct.unpack_from("<i", prefix, 4)
    if prefix[:4] != MARK or not 0 < head_bytes <= LONGEST_HEAD or head_bytes % 8:
        raise HeaderDamaged("no message begins here")
    head = stream.read(head_bytes)
    if len(head) < head_bytes:
        raise Torn
    header = parse_batch_header(head)
    place = _place(header, offset, PREFIX + head_bytes, width)
    if place.end > file_bytes:
        raise Torn
    return place


def _place(header: BatchHeader, offset: int, body: int, width: int) -> BatchPlace:
    # Every column has a buffer for "is null", empty here; a flag column has two pairs.
    if len(header.buffers) != 2 + 6 * width or any(size for _, size in header.buffers[::2]):
        raise HeaderDamaged("not the columns of this instrument")
    buffers = header.buffers[1::2]
    place = 0
    for start, size in buffers:
        if start != place or size < 0:
            raise HeaderDamaged("the buffers do not lie one behind the other")
        place += -(-size // 8) * 8
    plain = [size for _, size in buffers[: 1 + width]]
    if place != header.body_bytes or plain != [8 * header.rows] * (1 + width):
        raise HeaderDamaged("the buffers are not as long as the rows need")
    try:
        crc, first_row = int(header.metadata[CRC], 16), int(header.metadata[FIRST_ROW])
    except (KeyError, ValueError) as error:
        raise HeaderDamaged("no checksum") from error
    if not (0 <= crc < 1 << 32 and 0 <= first_row < 1 << 62):
        raise HeaderDamaged("no checksum or row number that a recorder writes")
    return BatchPlace(offset, body + header.body_bytes, body, first_row, header.rows, crc, buffers)


def find_mark(stream: BinaryIO, offset: int, file_bytes: int) -> int | None:
    """Find the next place, at a multiple of 8 from ``offset`` on, where a message may begin.

    Returns
    -------
    int or None
        None when there is none before the end of the file.
    """
    offset = -(-offset // 8) * 8
    while offset < file_bytes:
        stream.seek(offset)
        window = stream.read(_WINDOW)
        found = window.find(MARK)
        while found >= 0:
            if found % 8 == 0:
                return offset + found
            found = window.find(MARK, found + 1)
        offset += _WINDOW
    return None
