"""StreamWriter: Blocks to an Arrow IPC stream, a checksum in each record batch."""

from __future__ import annotations

import itertools
from typing import TypeAlias

import numpy as np
import pyarrow as pa

from meterlog.model import Block, Instrument
from meterlog.recording.append_file import AppendFile
from meterlog.recording.arrow_arrays import number_array
from meterlog.recording.batch_crc import batch_crc
from meterlog.recording.flag_runs import Runs, to_runs
from meterlog.recording.stream_schema import RUNS, stream_schema

CRC = "crc32"
FIRST_ROW = "first_row"
Piece: TypeAlias = bytes | memoryview | pa.Buffer

END_MARK = b"\xff\xff\xff\xff\x00\x00\x00\x00"


class _Parts:
    """What the Arrow writer takes for a file: keeps the pieces, so that they go out as one."""

    closed = False

    def __init__(self) -> None:
        self.pieces: list[Piece] = []

    def write(self, piece: Piece) -> int:
        """Keep one piece; no copy is made of a column."""
        self.pieces.append(piece)
        return len(piece)

    def flush(self) -> None:
        """Do nothing: the pieces leave when they are taken."""

    def take(self) -> list[Piece]:
        """Give all pieces and forget them."""
        pieces, self.pieces = self.pieces, []
        return pieces


class StreamWriter:
    """Writes one instrument's readings into one new file.

    Parameters
    ----------
    file : AppendFile
        Empty; receives the schema at once.
    instrument : Instrument

    Attributes
    ----------
    rows : int
        Rows that the system has taken.
    place : tuple of int, bytes
        Where the last batch's message begins, where its body begins, and where it ends.
    crc : int
        Checksum of the last batch.

    Raises
    ------
    DiskFailed
        If the schema could not be written.
    RecordingError
        If the channel names can't be columns.

    Source
    ------
    Apache Arrow columnar format 1.3, "IPC Streaming Format".
    """

    def __init__(self, file: AppendFile, instrument: Instrument) -> None:
        self.file = file
        self.rows = 0
        self.place = (0, 0, 0)
        self.crc = 0
        self._begun = False
        self._width = len(instrument.channels)
        self._parts = _Parts()
        self._schema = stream_schema(instrument)
        self._sink = pa.PythonFile(self._parts, mode="w")
        self._writer = pa.ipc.new_stream(self._sink, self._schema)
        file.append([self._schema.serialize()])

    def append(self, block: Block) -> None:
        """Write a Block as one record batch.

        Parameters
        ----------
        block : Block
            At least one row; as many channels as the instrument.

        Raises
        ------
        DiskFailed
            If the disk did not take all of it; a reader then stops before this batch.
        ValueError
            If the Block has another number of channels.
        """
        if block.values.shape[1] != self._width:
            raise ValueError(f"{block.values.shape[1]} channels given, {self._width} expected")
        t_ns = np.ascontiguousarray(block.t_ns, "<i8")
        values = [np.ascontiguousarray(block.values[:, i], "<f8") for i in range(self._width)]
        flags = [to_runs(block.flags[:, i]) for i in range(self._width)]
        crc = batch_crc(self.rows, t_ns, values, flags)
        columns = [number_array(column) for column in (t_ns, *values)]
        columns += [_encoded(runs) for runs in flags]
        batch = pa.RecordBatch.from_arrays(columns, schema=self._schema)
        self._writer.write_batch(
            batch, custom_metadata={CRC: f"{crc:08x}", FIRST_ROW: str(self.rows)}
        )
        pieces = self._parts.take()
        if not self._begun:
            # Arrow's writer hands out the schema with the first batch; the file has it already.
            del pieces[: len(_up_to(pieces, self._schema.serialize().size))]
            self._begun = True
        start = self.file.written
        self.file.append(pieces)
        self.rows += len(block)
        runs = sum(_padded(ends.nbytes) + _padded(states.nbytes) for ends, states in flags)
        body = sum(column.nbytes for column in (t_ns, *values)) + runs
        self.place = (start, self.file.written - body, self.file.written)
        self.crc = crc

    def finish(self) -> None:
        """Write the end mark; without it a reader knows that the stream was cut off.

        Raises
        ------
        DiskFailed
            If the disk did not take it.
        """
        self._writer.close()
        self._parts.take()
        self.file.append([END_MARK])


def _padded(size: int) -> int:
    return -(-size // 8) * 8


def _up_to(pieces: list[Piece], size: int) -> list[Piece]:
    sizes = itertools.accumulate(len(piece) for piece in pieces)
    return [piece for piece, end in zip(pieces, sizes, strict=True) if end <= size]


def _encoded(runs: Runs) -> pa.Array:
    ends, values = runs
    children = [number_array(ends), number_array(values)]
    return pa.Array.from_buffers(RUNS, int(ends[-1]), [None], children=children)
