"""ReadingsCsv: the readings of one instrument as a table."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import BinaryIO

import numpy as np
import pyarrow as pa
import pyarrow.csv
from numpy.typing import NDArray

from meterlog.evidence.cell_text import csv_lines
from meterlog.evidence.flag_words import flag_words
from meterlog.evidence.utc_text import nanoseconds_of, utc_texts
from meterlog.model import Block, Event, EventKind, Instrument, Origin, Review, Role
from meterlog.recording import UNDATED, Recording

TIME_COLUMNS = ("time_utc", "elapsed_s")
_QUOTED = ('"', ",", "\r", "\n")


def column_names(instrument: Instrument) -> tuple[str, ...]:
    """Give the table's name of each channel: its role, or its own name where it has none.

    Parameters
    ----------
    instrument : Instrument

    Returns
    -------
    tuple of str
        In channel order, without unit; no two alike.
    """
    names: list[str] = []
    for channel in instrument.channels:
        name = channel.name if channel.role is Role.OTHER else channel.role.value
        if name in names:
            name = f"{name} {channel.name}"
        while name in names:
            name += "'"
        names.append(name)
    return tuple(names)


def origin_of(recording: Recording, instrument: Instrument | None = None) -> Origin:
    """Tell where the readings come from.

    One simulated instrument makes a recording simulated; only when all are typed by hand it is
    typed. An instrument of its own, given as ``instrument``, is what it is.
    """
    about = recording.about
    some = about.instruments if instrument is None else (instrument,)
    if about.origin is Origin.MEASURED and any(one.simulated for one in some):
        return Origin.SIMULATED
    if about.origin is Origin.MEASURED and some and all(one.typed for one in some):
        return Origin.TYPED
    return about.origin


@dataclass(frozen=True, slots=True, eq=False)
class _Steps:
    """A text that holds from one instant to the next."""

    starts_ns: NDArray[np.int64]
    values: pa.Array

    @property
    def texts(self) -> tuple[str, ...]:
        """All values that are texts."""
        return tuple(value for value in self.values.to_pylist() if value is not None)

    def at(self, t_ns: NDArray[np.int64]) -> pa.Array:
        """Give the value at each time; the first value is that before all starts."""
        return self.values.take(_int32(np.searchsorted(self.starts_ns, t_ns, "right")))


def _int32(values: NDArray[np.int64]) -> pa.Array:
    index = values.astype(np.int32)
    return pa.Array.from_buffers(pa.int32(), len(index), [None, pa.py_buffer(index)])


def _speeds(events: tuple[Event, ...]) -> _Steps:
    speeds = [event for event in events if event.kind is EventKind.SPEED]
    starts = np.array([event.t_ns for event in speeds], np.int64)
    return _Steps(starts, pa.array([None, *(event.value for event in speeds)], pa.string()))


def _spans(review: Review) -> _Steps:
    # Spans touch; the end of the last, and a gap should there be one, has no kind.
    starts: list[int] = []
    kinds: list[str | None] = [None]
    for span in review.spans:
        if starts and starts[-1] > span.start_ns:
            starts[-1] = span.start_ns
        starts += [span.start_ns, span.end_ns]
        kinds += [span.kind.value, None]
    return _Steps(np.array(starts, np.int64), pa.array(kinds, pa.string()))


class ReadingsCsv:
    """Writes the readings of one instrument of a recording.

    Columns: ``time_utc``, ``elapsed_s``, one a channel with its unit, ``flags``, ``step``,
    ``span``, and ``origin`` where the readings were not measured.

    Parameters
    ----------
    recording : Recording
    review : Review
    instrument : Instrument

    Source
    ------
    RFC 4180 for the table, RFC 3339 for the time stamps.
    """

    def __init__(self, recording: Recording, review: Review, instrument: Instrument) -> None:
        self._recording = recording
        self._instrument = instrument
        self._names = column_names(instrument)
        self._steps = _speeds(recording.events)
        self._spans = _spans(review)
        self._origin = origin_of(recording, instrument)
        started = recording.about.started_utc
        self._dated = recording.about.origin is not Origin.IMPORTED or started != UNDATED
        self._zero_ns = nanoseconds_of(started)

    @property
    def header(self) -> tuple[str, ...]:
        """The columns' names."""
        channels = zip(self._names, self._instrument.channels, strict=True)
        units = [f"{name} ({channel.unit})" for name, channel in channels]
        last = () if self._origin is Origin.MEASURED else ("origin",)
        return (*TIME_COLUMNS, *units, "flags", "step", "span", *last)

    def write(self, stream: BinaryIO, progress: Callable[[int], None]) -> None:
        """Write header and rows.

        Parameters
        ----------
        stream : binary file
        progress : callable
            Called with the number of rows written since the last call.

        Raises
        ------
        OSError
            If the file can't be written.
        RecordingUnreadable
            If the recording can't be read any more.
        """
        stream.write(csv_lines([self.header]))
        # Arrow quotes every text as soon as it may quote any: only where a name asks for it.
        texts = "".join((*self._names, *self._steps.texts, self._origin.value))
        quoting = "needed" if any(mark in texts for mark in _QUOTED) else "none"
        options = pa.csv.WriteOptions(
            include_header=False, eol="\r\n", quoting_style=quoting, batch_size=16_384
        )
        for block in self._recording.blocks(self._instrument.key):
            pa.csv.write_csv(self._table(block), stream, options)
            progress(len(block))

    def _table(self, block: Block) -> pa.Table:
        count = len(block)
        columns = [
            utc_texts(block.t_ns + self._zero_ns) if self._dated else pa.nulls(count, pa.string()),
            _floats(block.t_ns / 1e9),
            *(_floats(block.values[:, k]) for k in range(len(self._names))),
            flag_words(block.flags, self._names).dictionary_decode(),
            self._steps.at(block.t_ns),
            self._spans.at(block.t_ns),
        ]
        if self._origin is not Origin.MEASURED:
            columns.append(pa.repeat(self._origin.value, count))
        return pa.table(columns, [f"c{k}" for k in range(len(columns))])


def _floats(values: NDArray[np.float64]) -> pa.Array:
    """Give a column in which NaN is an empty cell."""
    values = np.ascontiguousarray(values)
    missing = np.isnan(values)
    if not missing.any():
        return pa.Array.from_buffers(pa.float64(), len(values), [None, pa.py_buffer(values)])
    there = np.packbits(~missing, bitorder="little")
    return pa.Array.from_buffers(
        pa.float64(), len(values), [pa.py_buffer(there), pa.py_buffer(values)]
    )
