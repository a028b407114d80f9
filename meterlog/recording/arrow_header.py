"""ArrowHeader: the head of one message of an Arrow IPC stream, read with every bound checked.

Why not Arrow's own reader: it hands out batches one behind the other and stops for good at the
first damaged one. Here the heads alone are read (a recording of hours is indexed in
milliseconds), a damaged batch costs itself only, and a file that vanishes while it is read is an
error, not a crash of the memory map.
"""

from __future__ import annotations

import struct
from dataclasses import dataclass

MARK = b"\xff\xff\xff\xff"
PREFIX = 8
"""Bytes before the head: the mark and the head's length."""
LONGEST_HEAD = 1 << 24
_RECORD_BATCH = 3
"""MessageHeader.RecordBatch in Message.fbs."""


class HeaderDamaged(Exception):
    """The bytes are no head of a record batch."""


@dataclass(frozen=True, slots=True)
class BatchHeader:
    """What the head of a record batch says.

    Attributes
    ----------
    rows : int
    buffers : tuple of (offset, length), bytes
        Within the body.
    body_bytes : int
    metadata : dict of str to str
        The batch's custom metadata.
    """

    rows: int
    buffers: tuple[tuple[int, int], ...]
    body_bytes: int
    metadata: dict[str, str]


class _Table:
    """One FlatBuffers table; any position outside the bytes raises ``struct.error``."""

    def __init__(self, data: bytes, at: int) -> None:
        self._data = data
        self._at = at
        self._fields = at - _whole(data, "<i", at)
        self._fields_end = self._fields + _whole(data, "<H", self._fields)

    def _slot(self, number: int) -> int:
        place = self._fields + 4 + 2 * number
        if place + 2 > self._fields_end:
            return 0
        offset = _whole(self._data, "<H", place)
        return self._at + offset if offset else 0

    def number(self, field: int, form: str) -> int:
        """Give a number; 0, its default, when absent."""
        place = self._slot(field)
        return _whole(self._data, form, place) if place else 0

    def table(self, field: int) -> _Table:
        """Give a sub-table."""
        return _Table(self._data, self._target(field))

    def vector(self, field: int) -> tuple[int, int]:
        """Give a vector's first byte and its count; (0, 0) when absent."""
        if not self._slot(field):
            return 0, 0
        at = self._target(field)
        return at + 4, _whole(self._data, "<I", at)

    def text(self, field: int) -> str:
        """Give a string."""
        at, length = self.vector(field)
        if at + length > len(self._data):
            raise HeaderDamaged("a text reaches beyond the head")
        return self._data[at : at + length].decode("utf-8")

    def _target(self, field: int) -> int:
        place = self._slot(field)
        if not place:
            raise HeaderDamaged("a field is missing")
        return place + _whole(self._data, "<I", place)


def _whole(data: bytes, form: str, at: int) -> int:
    if at < 0:
        raise HeaderDamaged("a position lies before the head")
    value: int = struct.unpack_from(form, data, at)[0]
    return value


def parse_batch_header(head: bytes) -> BatchHeader:
    """Read the head of a record batch.

    Parameters
    ----------
    head : bytes
        The FlatBuffers message, without the mark and length before it.

    Returns
    -------
    BatchHeader

    Raises
    ------
    HeaderDamaged
        If the bytes say anything else than an uncompressed record batch whose buffers lie within
        its body, one behind the other.

    Source
    ------
    Apache Arrow columnar format 1.3, "Encapsulated message format", and its Message.fbs;
    FlatBuffers "Internals" (root offset, vtables, vectors).
    """
    try:
        message = _Table(head, _whole(head, "<I", 0))
        if message.number(1, "<B") != _RECORD_BATCH:
            raise HeaderDamaged("no record batch")
        batch = message.table(2)
        header = BatchHeader(
            rows=batch.number(0, "<q"),
            buffers=_buffers(head, *batch.vector(2)),
            body_bytes=message.number(3, "<q"),
            metadata=_metadata(head, *message.vector(4)),
        )
        compressed = batch.vector(3) != (0, 0)
    except (struct.error, UnicodeDecodeError) as error:
        raise HeaderDamaged(str(error)) from error
    if compressed or header.rows < 1:
        raise HeaderDamaged("compressed or empty")
    return header


def _buffers(head: bytes, at: int, count: int) -> tuple[tuple[int, int], ...]:
    if count * 16 > len(head):
        raise HeaderDamaged("more buffers than the head can hold")
    flat = struct.unpack_from(f"<{2 * count}q", head, at)
    return tuple(zip(flat[::2], flat[1::2], strict=True))


def _metadata(head: bytes, at: int, count: int) -> dict[str, str]:
    if count * 4 > len(head):
        raise HeaderDamaged("more metadata than the head can hold")
    pairs = (_Table(head, at + 4 * i + _whole(head, "<I", at + 4 * i)) for i in range(count))
    return {pair.text(0): pair.text(1) for pair in pairs}
