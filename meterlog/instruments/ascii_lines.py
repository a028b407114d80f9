"""AsciiLineDecoder: the lines of a free-running logger, as a pure byte machine."""

from __future__ import annotations

import re

import numpy as np

from meterlog.instruments.ascii_batch import BatchReader
from meterlog.instruments.ascii_fields import BLANKS, Line, LineReader
from meterlog.instruments.readings import EXAMPLE_BYTES, Readings, no_readings
from meterlog.model import Channel
from meterlog.model.sentinels import mark_sentinels
from meterlog.profile import LineFormat

LONGEST_LINE = 65_536
"""A longer line is junk (a wrong baud rate, a binary port): it is refused, not kept."""
_BATCH_FROM = 1_024
"""From so many bytes on, Arrow's start-up costs less than reading line by line."""
_COMMENTS_KEPT = 16
_END = re.compile(rb"[\r\n]")


class AsciiLineDecoder:
    """Reads lines that end with CR, LF or both. Empty lines do not count.

    A line that is wrong costs that line only. The readings do not depend on how the bytes were
    cut.

    Parameters
    ----------
    lines : LineFormat
        Header lines are counted from the first byte fed; comments among them count.
    channels : tuple of Channel
        Every one has a column of its name.

    Attributes
    ----------
    refused : int
        Lines not understood so far.
    last_refused : bytes
        The last of them, at most 200 bytes.
    comments : list of bytes
        The first comment lines, at most 16 of at most 200 bytes each.
    """

    def __init__(self, lines: LineFormat, channels: tuple[Channel, ...]) -> None:
        names = tuple(channel.name for channel in channels)
        self.refused = 0
        self.last_refused = b""
        self.comments: list[bytes] = []
        self._reader = LineReader(lines, names)
        self._batch = BatchReader(lines, names)
        self._comment = lines.comment.encode()
        self._unit = lines.time_unit_s
        self._timed = "time" in lines.columns
        self._width = len(names)
        self._headers = lines.header_lines
        self._begun = bytearray()
        self._skipping = False

    def skip_to_end(self) -> None:
        """Forget the line that has begun, and its rest: it was joined in the middle."""
        self._begun.clear()
        self._skipping = True

    def feed(self, data: bytes) -> Readings:
        """Give the readings whose lines end within ``data``.

        Parameters
        ----------
        data : bytes
            Anything at all, cut anywhere.

        Returns
        -------
        Readings
            Raw units, in the order of the channels; ``own_time_s`` where there is a time column.
        """
        if self._skipping:
            data = self._skip(data)
        cut = max(data.rfind(b"\n"), data.rfind(b"\r")) + 1
        if not cut:
            self._begin(data)
            return no_readings(self._width, timed=self._timed)
        whole = bytes(self._begun) + data[:cut]
        self._begun.clear()
        self._begin(data[cut:])
        return self._read(whole)

    def _skip(self, data: bytes) -> bytes:
        end = _END.search(data)
        if end is None:
            return b""
        self._skipping = False
        return data[end.end() :]

    def _begin(self, data: bytes) -> None:
        self._begun += data
        if len(self._begun) > LONGEST_LINE:
            self._refuse(bytes(self._begun[:EXAMPLE_BYTES]))
            self.skip_to_end()

    def _read(self, whole: bytes) -> Readings:
        if len(whole) >= _BATCH_FROM and not self._headers and not _may_hold_too_long(whole):
            readings = self._batch.read(whole)
            if readings is not None:
                return readings
        read = map(self._line, whole.replace(b"\r", b"\n").split(b"\n"))
        return self._collect([line for line in read if line is not None])

    def _line(self, line: bytes) -> Line | None:
        bare = line.strip(BLANKS)
        too_long = len(line) > LONGEST_LINE
        if not bare and not too_long:
            return None
        if self._headers:
            self._headers -= 1
            return None
        if self._comment and bare.startswith(self._comment) and not too_long:
            self._keep_comment(bare)
            return None
        # Blanks are left on: where a tab delimits, they are empty fields.
        read = None if too_long else self._reader.read(line)
        if read is None:
            self._refuse(line)
        return read

    def _keep_comment(self, line: bytes) -> None:
        if len(self.comments) < _COMMENTS_KEPT:
            self.comments.append(line[:EXAMPLE_BYTES])

    def _refuse(self, line: bytes) -> None:
        if self._headers:
            self._headers -= 1
            return
        self.refused += 1
        self.last_refused = line[:EXAMPLE_BYTES]

    def _collect(self, lines: list[Line]) -> Readings:
        shape = (len(lines), self._width)
        values = np.empty(shape, order="F")
        flags = np.zeros(shape, np.uint8, order="F")
        if lines:
            values[:] = [line.numbers for line in lines]
        for row, line in enumerate(lines):
            if line.flags is not None:
                flags[row] = line.flags
        mark_sentinels(values, flags)
        time = np.array([line.time for line in lines]) * self._unit if self._timed else None
        return Readings(values, flags, time)


def _may_hold_too_long(whole: bytes) -> bool:
    """Tell whether a line may be too long: one that is covers a whole half-length window."""
    step = LONGEST_LINE // 2
    return any(
        _END.search(whole, start, start + step) is None
        for start in range(0, len(whole) - step + 1, step)
    )
