"""BlockDecoder: answers that are blocks of binary samples, as a pure byte machine."""

from __future__ import annotations

import re

import numpy as np

from meterlog.instruments.block_samples import SampleReader, Samples
from meterlog.instruments.ieee_block import BlockState, block_header
from meterlog.instruments.readings import EXAMPLE_BYTES, Readings, no_readings
from meterlog.model import Channel
from meterlog.profile import BlockLayout
from meterlog.profile.talk import LONGEST_BLOCK

LONGEST_TEXT = 65_536
_LONGEST_HEADER = 11
_MARK = re.compile(rb"[\r\n#]")
_BLANKS = b" \t"
_SEPARATORS = b";,"


class BlockDecoder:
    """Reads IEEE 488.2 arbitrary blocks of definite and of indefinite length.

    A block may begin where a field may: at the beginning of a line, behind a block, ``;`` or
    ``,``. Other text, such as an entry of the error queue, is refused line by line. A block that
    is no whole number of rows is refused whole. Nothing depends on how the bytes were cut.

    A block of indefinite length ends after ``layout.rows`` rows; where these are not known, by
    :meth:`message_end` only.

    Parameters
    ----------
    layout : BlockLayout
    channels : tuple of Channel
        In the order in which a row holds them.

    Attributes
    ----------
    refused : int
        Blocks and lines not understood so far.
    last_refused : bytes
        The last of them, at most 200 bytes.
    """

    def __init__(self, layout: BlockLayout, channels: tuple[Channel, ...]) -> None:
        self.refused = 0
        self.last_refused = b""
        self._samples = SampleReader(layout, len(channels))
        self._width = len(channels)
        self._sample_s = layout.sample_s
        self._known_bytes = layout.rows * self._samples.row_bytes
        self._parts: list[Samples] = []
        self.restart()

    def restart(self) -> None:
        """Forget what has begun; the count of rows, and so the own time, begins at 0 again."""
        self._count = 0
        self._held = b""
        self._text = bytearray()
        self._skipping = False
        self._close()

    def _close(self) -> None:
        """Be outside of any block."""
        self._header = b""
        self._payload = bytearray()
        self._indefinite = False
        self._size = 0

    def feed(self, data: bytes) -> Readings:
        """Give the readings whose blocks end within ``data``.

        Parameters
        ----------
        data : bytes
            Anything at all, cut anywhere.

        Returns
        -------
        Readings
            Raw units; ``own_time_s`` where the layout has a sample clock: the running number of
            the row times its interval.
        """
        data = self._held + data
        self._held = b""
        place = 0
        while place < len(data):
            step = self._fill if self._header else self._pass_text
            place = step(data, place)
        return self._collect()

    def message_end(self) -> Readings:
        """Take it that the instrument's message has ended: it paused, or the link says so.

        Ends a block of indefinite length, without the line end behind it; a line of text too. A
        block of definite length goes on: who pauses in its midst still owes the rest.
        """
        if not self._header:
            self._text += self._held
            self._held = b""
            self._end_text()
        elif self._indefinite:
            if not self._size:
                self._cut_line_end()
                self._finish()
            else:
                self.refuse(self._header + self._payload)
                self._close()
        return self._collect()

    def _cut_line_end(self) -> None:
        """Cut off the line end by which the standard ends a block of indefinite length."""
        row = self._samples.row_bytes
        for end in (b"\n", b"\r\n"):
            bare = len(self._payload) - len(end)
            if self._payload.endswith(end) and bare % row == 0:
                del self._payload[bare:]
                return

    def _fill(self, data: bytes, place: int) -> int:
        """Take what belongs to the block that has begun; give the place behind it."""
        limit = min(self._size or LONGEST_BLOCK, LONGEST_BLOCK)
        stop = min(place + limit - len(self._payload), len(data))
        if not self._payload and stop - place == self._size:
            # The whole block at once: no copy.
            self._finish(memoryview(data)[place:stop])
            return stop
        self._payload += memoryview(data)[place:stop]
        if len(self._payload) == self._size:
            self._finish()
        elif len(self._payload) == LONGEST_BLOCK and stop < len(data):
            self.refuse(self._header + self._payload[:EXAMPLE_BYTES])
            self._close()
            self._skipping = True
        return stop

    def _finish(self, payload: memoryview | None = None) -> None:
        whole = self._payload if payload is None else payload
        if len(whole) % self._samples.row_bytes:
            self.refuse(self._header + whole[:EXAMPLE_BYTES])
        elif len(whole):
            self._parts.append(self._samples.read(whole))
        self._close()

    def _pass_text(self, data: bytes, place: int) -> int:
        """Go over text up to a line end or the front of a block; give the place behind it."""
        mark = _MARK.search(data, place)
        if mark is None:
            self._keep(data[place:])
            return len(data)
        self._keep(data[place : mark.start()])
        if mark.group() == b"#":
            return self._hash(data, mark.start())
        self._end_text()
        return mark.end()

    def _hash(self, data: bytes, place: int) -> int:
        """Go over a ``#``; where a field begins, it may begin a block."""
        if not self._field_begins():
            self._keep(b"#")
            return place + 1
        head = data[place : place + _LONGEST_HEADER]
        if head[:2] == b"#0":
            self._begin(head[:2], self._known_bytes, indefinite=True)
            return place + 2
        header = block_header(head)
        if header.state is BlockState.INCOMPLETE:
            self._held = data[place:]
            return len(data)
        if header.state is BlockState.INVALID or header.size > LONGEST_BLOCK:
            self._keep(b"#")
            return place + 1
        if header.size:
            self._begin(head[: header.used], header.size, indefinite=False)
        return place + header.used

    def _begin(self, header: bytes, size: int, *, indefinite: bool) -> None:
        self._end_text()
        self._header = header
        self._size = size
        self._indefinite = indefinite

    def _field_begins(self) -> bool:
        before = (byte for byte in reversed(self._text) if byte not in _BLANKS)
        return not self._skipping and next(before, _SEPARATORS[0]) in _SEPARATORS

    def _keep(self, text: bytes) -> None:
        if self._skipping:
            return
        self._text += text
        if len(self._text) > LONGEST_TEXT:
            self.refuse(self._text)
            self._text.clear()
            self._skipping = True

    def _end_text(self) -> None:
        text = self._text.strip(_BLANKS + _SEPARATORS)
        if text:
            self.refuse(text)
        self._text.clear()
        self._skipping = False

    def refuse(self, what: bytes | bytearray) -> None:
        """Count ``what`` as not understood, or as an answer to nothing that is asked now."""
        self.refused += 1
        self.last_refused = bytes(what[:EXAMPLE_BYTES])

    def _collect(self) -> Readings:
        parts, self._parts = self._parts, []
        if not parts:
            return no_readings(self._width, timed=self._sample_s > 0.0)
        values, flags = parts[0] if len(parts) == 1 else _joined(parts)
        time = None
        if self._sample_s > 0.0:
            time = np.arange(self._count, self._count + len(values), dtype=float)
            time *= self._sample_s
            self._count += len(values)
        return Readings(values, flags, time)


def _joined(parts: list[Samples]) -> Samples:
    shape = (sum(len(values) for values, _ in parts), parts[0][0].shape[1])
    values = np.empty(shape, order="F")
    flags = np.empty(shape, np.uint8, order="F")
    np.concatenate([part[0] for part in parts], out=values)
    np.concatenate([part[1] for part in parts], out=flags)
    return values, flags
