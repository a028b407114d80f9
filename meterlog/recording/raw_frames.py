"""RawFrames: the bytes as they came, each lot with its time and a checksum."""

from __future__ import annotations

import struct
import zlib
from collections.abc import Callable, Iterator
from pathlib import Path

from meterlog.model import RawBytes
from meterlog.profile.plain_file import open_plain

_HEAD = struct.Struct("<qII")
_LONGEST = 1 << 26
"""No port hands over more at once; a longer frame is a damaged length."""


def raw_frame(raw: RawBytes) -> bytes:
    """Give one frame: time, length, CRC-32, bytes; little endian.

    Returns
    -------
    bytes
        ``<t_ns int64><length uint32><crc32 uint32><bytes>``. The CRC-32 covers time and length as
        written, then the bytes.
    """
    head = struct.pack("<qI", raw.t_ns, len(raw.data))
    return head + struct.pack("<I", zlib.crc32(raw.data, zlib.crc32(head))) + raw.data


class RawFrames:
    """Reads the frames of one ``.raw`` file.

    Parameters
    ----------
    path : Path
    source : str
        Key of the instrument.
    name : str
        The file, for messages.

    Attributes
    ----------
    damage : str
        What was wrong, once :meth:`read` has come to it; empty when nothing.
    """

    def __init__(self, path: Path, source: str, name: str) -> None:
        self._path = path
        self._source = source
        self._name = name
        self.damage = ""

    def read(self) -> Iterator[RawBytes]:
        """Give every whole frame in order, up to the first that is torn or damaged.

        Yields
        ------
        RawBytes

        Raises
        ------
        OSError
            If the file can't be read.
        """
        with open_plain(self._path) as stream:
            start = 0
            while head := stream.read(_HEAD.size):
                found = self._frame(head, start, stream.read)
                if found is None:
                    return
                yield found
                start += _HEAD.size + len(found.data)

    def _frame(self, head: bytes, start: int, read: Callable[[int], bytes]) -> RawBytes | None:
        where = f"{self._name}: the frame at byte {start}"
        if len(head) < _HEAD.size:
            self.damage = f"{where} is torn off."
            return None
        t_ns, length, crc = _HEAD.unpack(head)
        if length > _LONGEST:
            self.damage = f"{where} has an impossible length; it and what follows is left out."
            return None
        data = read(length)
        if len(data) < length:
            self.damage = f"{where} is torn off."
            return None
        if zlib.crc32(data, zlib.crc32(head[:12])) != crc:
            self.damage = f"{where} does not match its checksum; it and what follows is left out."
            return None
        return RawBytes(self._source, t_ns, data)
