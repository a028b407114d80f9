"""StreamReader: Blocks out of an Arrow IPC stream, nothing that fails its checksum among them."""

from __future__ import annotations

import hashlib
from collections.abc import Iterator
from pathlib import Path
from typing import BinaryIO

import numpy as np
import pyarrow as pa

from meterlog.model import Block, Instrument, join
from meterlog.model.errors import RecordingUnreadable
from meterlog.profile.plain_file import open_plain
from meterlog.recording.arrow_header import LONGEST_HEAD, PREFIX, HeaderDamaged
from meterlog.recording.batch_body import checked_batch
from meterlog.recording.place_list import PlaceList
from meterlog.recording.stream_index import BatchPlace, Torn, find_mark, place_at
from meterlog.recording.stream_schema import stream_schema


class StreamReader:
    """Reads one instrument's readings, however the file was cut or damaged.

    Parameters
    ----------
    path : Path
    name : str
        The file, for messages.
    instrument : Instrument
        As ``about.json`` has it.

    Attributes
    ----------
    rows : int
        Rows in whole batches; those that fail their checksum leave the count when they are read.
    is_ended : bool
        True if the end mark stands where it should.

    Raises
    ------
    RecordingUnreadable
        If the file can't be read at all.
    """

    def __init__(self, path: Path, name: str, instrument: Instrument) -> None:
        self._path = path
        self._name = name
        self._instrument = instrument
        self._width = len(instrument.channels)
        self._places = PlaceList(self._width)
        self._bad: dict[int, str] = {}
        self._found: list[str] = []
        self._next_row = 0
        self.is_ended = False
        try:
            with open_plain(path) as stream:
                self._index(stream, path.stat().st_size)
        except OSError as error:
            raise self._unreadable(error) from error

    @property
    def rows(self) -> int:
        """Rows that can be had."""
        return self._places.rows - sum(self._places[k].rows for k in self._bad)

    @property
    def damage(self) -> tuple[str, ...]:
        """What is torn or damaged as far as it has been read, one text each."""
        return (*self._found, *(self._bad[k] for k in sorted(self._bad)))

    @property
    def last_ns(self) -> int | None:
        """Time of the last row that can be had; None when there is none."""
        try:
            with open_plain(self._path) as stream:
                for number in range(len(self._places) - 1, -1, -1):
                    block = self._checked(stream, number)
                    if block is not None:
                        return int(block.t_ns[-1])
        except OSError as error:
            raise self._unreadable(error) from error
        return None

    def blocks(self, rows: int) -> Iterator[Block]:
        """Give the readings in order.

        Parameters
        ----------
        rows : int
            At most this many a Block; batches smaller than that are joined.

        Yields
        ------
        Block

        Raises
        ------
        RecordingUnreadable
            If the file can't be read any more.
        """
        waiting: list[Block] = []
        count = 0
        for block in self._batches():
            if waiting and count + len(block) > rows:
                yield join(waiting)
                waiting, count = [], 0
            whole = len(block) // rows * rows
            for start in range(0, whole, rows):
                yield block.rows(start, start + rows)
            if whole < len(block):
                waiting.append(block.rows(whole, len(block)))
                count += len(block) - whole
        if waiting:
            yield join(waiting)

    def between(self, start_ns: int, end_ns: int) -> Iterator[Block]:
        """Give the rows from ``start_ns`` to ``end_ns``, both included, without reading the rest.

        Raises
        ------
        RecordingUnreadable
            If the file can't be read any more.
        """
        for block in self._batches(start_ns):
            if block.t_ns[0] > end_ns:
                return
            first, last = np.searchsorted(block.t_ns, [start_ns, end_ns + 1])
            if last > first:
                yield block.rows(int(first), int(last))

    def numbered(self) -> Iterator[tuple[int, Block]]:
        """Give each batch with the number of its first row, as it was counted when written.

        Raises
        ------
        RecordingUnreadable
            If the file can't be read any more.
        """
        for place, block in self.placed():
            yield place.first_row, block

    def placed(self) -> Iterator[tuple[BatchPlace, Block]]:
        """Give each sound batch with its place in the file.

        Raises
        ------
        RecordingUnreadable
            If the file can't be read any more.
        """
        try:
            with open_plain(self._path) as stream:
                for number, place in enumerate(self._places):
                    block = self._checked(stream, number)
                    if block is not None:
                        yield place, block
        except OSError as error:
            raise self._unreadable(error) from error

    def crcs_digest(self) -> str:
        """Give the SHA-256 over the checksums that the batches' heads state, in order."""
        digest = hashlib.sha256()
        for place in self._places:
            digest.update(place.crc.to_bytes(4, "little"))
        return digest.hexdigest()

    def _first_from(self, stream: BinaryIO, start_ns: int) -> int:
        """Give the number of a batch from which on all rows at or after ``start_ns`` are found.

        Only batches that match their checksum tell where to go on.
        """
        low, high = 0, len(self._places)
        while low < high:
            middle = (low + high) // 2
            probe, block = middle, self._checked(stream, middle)
            while block is None and probe + 1 < high:
                probe += 1
                block = self._checked(stream, probe)
            if block is None or block.t_ns[-1] >= start_ns:
                high = middle
            else:
                low = probe + 1
        return low

    def _batches(self, start_ns: int | None = None) -> Iterator[Block]:
        try:
            with open_plain(self._path) as stream:
                first = 0 if start_ns is None else self._first_from(stream, start_ns)
                for number in range(first, len(self._places)):
                    block = self._checked(stream, number)
                    if block is not None:
                        yield block
        except OSError as error:
            raise self._unreadable(error) from error

    def _unreadable(self, error: OSError) -> RecordingUnreadable:
        return RecordingUnreadable(
            f"can't be read: {error.strerror}.",
            subject=str(self._path),
            remedy="Check that the disk is there and that you may read it.",
        )

    def _index(self, stream: BinaryIO, file_bytes: int) -> None:
        schema = stream_schema(self._instrument).serialize().to_pybytes()
        offset = self._after_schema(stream, schema, file_bytes)
        while offset is not None and offset < file_bytes:
            offset = self._index_one(stream, offset, file_bytes)

    def _index_one(self, stream: BinaryIO, offset: int, file_bytes: int) -> int | None:
        try:
            place = place_at(stream, offset, file_bytes, self._width)
        except (Torn, HeaderDamaged) as error:
            return self._recover(stream, offset, file_bytes, torn=isinstance(error, Torn))
        if place is None:
            self.is_ended = offset + PREFIX == file_bytes
            if self.is_ended:
                return None
            return self._recover(stream, offset, file_bytes, torn=False)
        return self._keep(stream, place)

    def _keep(self, stream: BinaryIO, place: BatchPlace) -> int:
        expected = self._next_row
        if place.first_row != expected and self._decode(stream, place) is None:
            self._found.append(
                f"{self._name}: batch {len(self._places)} at byte {place.offset}, rows from "
                f"{expected} on, does not match its checksum; those rows are left out."
            )
            return place.end
        if place.first_row < expected:
            self._found.append(
                f"{self._name}: the batch at byte {place.offset} repeats rows before {expected} "
                "and is left out."
            )
            return place.end
        if place.first_row > expected:
            self._found.append(
                f"{self._name}: batch {len(self._places)}, rows {expected} to "
                f"{place.first_row - 1} are damaged or missing and are left out."
            )
        self._places.append(place)
        self._next_row = place.first_row + place.rows
        return place.end

    def _after_schema(self, stream: BinaryIO, schema: bytes, file_bytes: int) -> int | None:
        start = stream.read(len(schema))
        if start == schema:
            return len(schema)
        if schema.startswith(start):
            self._found.append(f"{self._name}: is torn off before the first reading.")
            return None
        # Another version of Arrow may pack the same schema into other bytes.
        length = _schema_bytes(stream, self._instrument)
        if length is None:
            self._found.append(
                f"{self._name}: the column names do not match the channels in about.json."
            )
        sound = self._next_sound(stream, PREFIX, file_bytes)
        return length if sound is None else sound

    def _recover(self, stream: BinaryIO, offset: int, file_bytes: int, *, torn: bool) -> int | None:
        """Go on at the next sound batch after a place where none begins."""
        start = offset
        # A flipped bit in the length of the message before leads to a wrong place: look there too.
        if self._places and self._checked(stream, len(self._places) - 1) is None:
            self._bad.pop(len(self._places) - 1)
            last = self._places.pop()
            start, self._next_row = last.offset, last.first_row
        found = self._next_sound(stream, start + PREFIX, file_bytes)
        if found is None:
            self._found.append(self._tail(start, torn=torn))
        return found

    def _tail(self, offset: int, *, torn: bool) -> str:
        what = "is torn off" if torn else "is damaged"
        return (
            f"{self._name}: batch {len(self._places)} at byte {offset}, rows from {self._next_row} "
            f"on, {what}; what follows is left out."
        )

    def _next_sound(self, stream: BinaryIO, offset: int, file_bytes: int) -> int | None:
        at = find_mark(stream, offset, file_bytes)
        while at is not None:
            try:
                place = place_at(stream, at, file_bytes, self._width)
                if place is not None and self._decode(stream, place) is not None:
                    return at
            except (Torn, HeaderDamaged):
                pass
            at = find_mark(stream, at + PREFIX, file_bytes)
        return None

    def _checked(self, stream: BinaryIO, number: int) -> Block | None:
        place = self._places[number]
        block = self._decode(stream, place)
        if block is None and number not in self._bad:
            last = place.first_row + place.rows - 1
            self._bad[number] = (
                f"{self._name}: batch {number}, rows {place.first_row} to {last}, does not match "
                "its checksum; those rows are left out."
            )
        return block

    def _decode(self, stream: BinaryIO, place: BatchPlace) -> Block | None:
        """Read one batch; None if it does not match its checksum."""
        return checked_batch(stream, place, self._instrument.key, self._width)


def _schema_bytes(stream: BinaryIO, instrument: Instrument) -> int | None:
    """Give the length of the schema message if it says what it should."""
    stream.seek(0)
    length = PREFIX + int.from_bytes(stream.read(PREFIX)[4:], "little")
    stream.seek(0)
    try:
        found = pa.ipc.read_schema(pa.py_buffer(stream.read(min(length, LONGEST_HEAD))))
    except (pa.ArrowException, OSError, ValueError):
        return None
    return length if found.equals(stream_schema(instrument)) else None
