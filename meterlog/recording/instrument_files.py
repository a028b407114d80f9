"""InstrumentFiles: the two growing files of one instrument, and what waits to go into them."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from meterlog.model import Block, Instrument, RawBytes, join
from meterlog.model.errors import DiskFailed
from meterlog.recording import layout
from meterlog.recording.append_file import AppendFile
from meterlog.recording.pyramid_writer import PyramidWriter
from meterlog.recording.raw_frames import raw_frame
from meterlog.recording.stream_writer import StreamWriter

LARGEST_BATCH = 65_536
"""Rows a record batch at most."""
_WORTH_A_BATCH = 8_192
"""A Block of this many rows goes out as it is: joining it to others would copy it."""


class InstrumentFiles:
    """Collects one instrument's Blocks and bytes, and appends them as batches and frames.

    Parameters
    ----------
    folder : Path
        The recording's folder, with ``data/`` in it.
    instrument : Instrument
    keep_raw : bool
        Whether the bytes as they came are kept.
    pyramid : PyramidWriter or None
        Takes every batch that was written.

    Attributes
    ----------
    waiting_rows : int
        Taken, not yet handed to the system.
    lost_rows : int
        Taken and not kept, because the disk failed.

    Raises
    ------
    DiskFailed
        If the files can't be made.
    """

    def __init__(
        self,
        folder: Path,
        instrument: Instrument,
        *,
        keep_raw: bool,
        pyramid: PyramidWriter | None = None,
    ) -> None:
        key = instrument.key
        name = layout.arrows(key)
        self._pyramid = pyramid
        self._stream = StreamWriter(AppendFile(folder / name, name), instrument)
        self._raw: AppendFile | None = None
        if keep_raw:
            name = layout.raw(key)
            self._raw = AppendFile(folder / name, name)
        self._blocks: list[Block] = []
        self._frames: list[bytes] = []
        self._width = len(instrument.channels)
        self.waiting_rows = 0
        self.lost_rows = 0

    @property
    def rows(self) -> int:
        """Rows that the system has taken."""
        return self._stream.rows

    @property
    def has_waiting(self) -> bool:
        """True when something waits to be flushed."""
        return bool(self._blocks or self._frames)

    def take_raw(self, raw: RawBytes) -> None:
        """Keep bytes for the next flush; does nothing when raw bytes are not kept."""
        if self._raw is not None and not self._raw.failed:
            self._frames.append(raw_frame(raw))

    def take(self, block: Block) -> None:
        """Keep a Block for the next flush; flush at once when a whole batch is there.

        Raises
        ------
        DiskFailed
            If the disk did not take it, for the first time; later Blocks are counted as lost.
        ValueError
            If the Block has another number of channels.
        """
        if block.values.shape[1] != self._width:
            raise ValueError(f"{block.values.shape[1]} channels given, {self._width} expected")
        if len(block) == 0:
            return
        if self._stream.file.failed:
            self.lost_rows += len(block)
            return
        if self._blocks and self.waiting_rows + len(block) > LARGEST_BATCH:
            self.flush()
        self._blocks.append(block)
        self.waiting_rows += len(block)
        if self.waiting_rows >= (LARGEST_BATCH if len(self._blocks) > 1 else _WORTH_A_BATCH):
            self.flush()

    def flush(self) -> None:
        """Hand everything to the system; bytes before the readings made of them.

        Raises
        ------
        DiskFailed
            If it did not take it; what was not taken is counted as lost. Raised once a file.
        """
        frames, self._frames = self._frames, []
        blocks, self._blocks = self._blocks, []
        self.waiting_rows = 0
        failure: DiskFailed | None = None
        if frames and self._raw is not None and not self._raw.failed:
            try:
                self._raw.append(frames)
            except DiskFailed as error:
                failure = error
        if blocks:
            failure = self._append(join(blocks)) or failure
        if failure is not None:
            raise failure

    def _append(self, block: Block) -> DiskFailed | None:
        if self._stream.file.failed:
            self.lost_rows += len(block)
            return None
        for start in range(0, len(block), LARGEST_BATCH):
            part = block.rows(start, min(start + LARGEST_BATCH, len(block)))
            try:
                self._stream.append(part)
            except DiskFailed as error:
                self.lost_rows += len(block) - start
                return error
            if self._pyramid is not None:
                self._pyramid.take(part.t_ns, part.values, self._stream.place, self._stream.crc)
        return None

    def files(self) -> Iterator[AppendFile]:
        """Give the files that grow."""
        yield self._stream.file
        if self._raw is not None:
            yield self._raw

    def finish(self) -> None:
        """Flush and write the end mark of the readings.

        Raises
        ------
        DiskFailed
            If the disk did not take it.
        """
        self.flush()
        if not self._stream.file.failed:
            self._stream.finish()

    def finish_pyramid(self) -> None:
        """Finish the pyramid once the files are closed, or give it up; never raises."""
        if self._pyramid is None:
            return
        if self.lost_rows:
            self._pyramid.drop("the readings could not all be written")
        else:
            self._pyramid.finish(self._stream.file.path)
