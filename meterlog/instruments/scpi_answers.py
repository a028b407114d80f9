"""ScpiAnswerDecoder: the answers to READ? or FETC?, as a pure byte machine."""

from __future__ import annotations

import re

import numpy as np

from meterlog.instruments.ieee_block import BlockState, block_header
from meterlog.instruments.readings import EXAMPLE_BYTES, Readings
from meterlog.instruments.scpi_text import parse_number
from meterlog.model import Channel

LONGEST_ANSWER = 65_536
"""A longer answer, or a block that says it is longer, is junk: it is refused, not kept."""
_MARK = re.compile(rb"[\r\n#]")


class ScpiAnswerDecoder:
    """Reads answers of one value a channel, separated by commas, ended by LF, CR or both.

    A block within an answer is skipped by its stated length, so that line ends within it are not
    taken for the end of the answer; the answer is refused, since a block is no single reading.

    Parameters
    ----------
    channels : tuple of Channel
    query : str
        What is asked. Where the instrument, or the line, gives it back, that is no answer.

    Attributes
    ----------
    refused : int
        Answers not understood so far.
    last_refused : bytes
        The last of them, at most 200 bytes.
    """

    def __init__(self, channels: tuple[Channel, ...], query: str = "") -> None:
        self.refused = 0
        self.last_refused = b""
        self._echo = query.encode("latin-1", "replace").strip()
        self._width = len(channels)
        self._rows: list[list[tuple[float, int]]] = []
        self.restart()

    def restart(self) -> None:
        """Forget the answer that has begun: the next byte begins a new one."""
        self._held = b""
        self._text = bytearray()
        self._block_left = 0
        self._spoilt = False
        self._too_long = False

    def feed(self, data: bytes) -> Readings:
        """Give the readings whose answers end within ``data``.

        Parameters
        ----------
        data : bytes
            Anything at all, cut anywhere.

        Returns
        -------
        Readings
            Raw units; never with times.
        """
        data = self._held + data
        self._held = b""
        place = 0
        while place < len(data):
            place = self._advance(data, place)
        return self._collect()

    def _advance(self, data: bytes, place: int) -> int:
        if self._block_left:
            step = min(self._block_left, len(data) - place)
            self._block_left -= step
            return place + step
        mark = _MARK.search(data, place)
        if mark is None:
            self._keep(data[place:])
            return len(data)
        self._keep(data[place : mark.start()])
        if mark.group() == b"#":
            return self._hash(data, mark.start())
        self._end()
        return mark.end()

    def _hash(self, data: bytes, place: int) -> int:
        """Go over a ``#``; where a field begins, it may begin a block."""
        before = self._text.rstrip(b" \t")
        if self._too_long or (before and not before.endswith(b",")):
            self._keep(b"#")
            return place + 1
        header = block_header(data[place : place + 11])
        if header.state is BlockState.INCOMPLETE:
            self._held = data[place:]
            return len(data)
        if header.state is BlockState.INVALID or header.size > LONGEST_ANSWER:
            self._keep(b"#")
            return place + 1
        self._keep(data[place : place + header.used])
        self._spoilt = True
        self._block_left = header.size
        return place + header.used

    def _keep(self, text: bytes) -> None:
        self._text += text
        if len(self._text) > LONGEST_ANSWER:
            self._spoilt = self._too_long = True
            del self._text[EXAMPLE_BYTES:]

    def _end(self) -> None:
        answer = bytes(self._text).strip(b" \t")
        if (answer and answer != self._echo) or self._spoilt:
            row = None if self._spoilt else self._row(answer)
            if row is None:
                self.refuse(answer)
            else:
                self._rows.append(row)
        self.restart()

    def refuse(self, answer: bytes) -> None:
        """Count ``answer`` as one that is not understood, or answers nothing that is asked now."""
        self.refused += 1
        self.last_refused = answer[:EXAMPLE_BYTES]

    def _row(self, answer: bytes) -> list[tuple[float, int]] | None:
        fields = answer.split(b",")
        if len(fields) != self._width:
            return None
        try:
            return [parse_number(field.decode("latin-1")) for field in fields]
        except ValueError:
            return None

    def _collect(self) -> Readings:
        shape = (len(self._rows), self._width)
        values = np.empty(shape, order="F")
        flags = np.empty(shape, np.uint8, order="F")
        for row, fields in enumerate(self._rows):
            values[row] = [field[0] for field in fields]
            flags[row] = [int(field[1]) for field in fields]
        self._rows = []
        return Readings(values, flags)
