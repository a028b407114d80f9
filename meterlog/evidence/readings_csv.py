"""ReadingsCsv: the readings of one instrument as a table."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import BinaryIO

import numpy as np
import pyarrow as pa
import pyarrow.csv
from numpy.typing import NDArray

from meterlog.evidence.cell_text import AS_USUAL, csv_lines, defused
from meterlog.evidence.csvw import csvw_metadata
from meterlog.evidence.flag_words import flag_words
from meterlog.evidence.judgement_columns import ORIGIN
from meterlog.evidence.recording_head import recording_head
from meterlog.evidence.table_column import Column, Kind, heads
from meterlog.evidence.table_form import TableForm
from meterlog.evidence.utc_text import nanoseconds_of, utc_texts
from meterlog.model import Block, Event, EventKind, Instrument, Origin, Review, Role
from meterlog.recording import UNDATED, Recording
from meterlog.recording.arrow_arrays import number_array, text_array

_TIMES = (
    Column("time_utc", Kind.INSTANT, "When it was read, in UTC; empty where no date is known."),
    Column("elapsed_s", Kind.NUMBER, "The same from the recording's beginning.", "s"),
)
_FLAGS = Column("flags", Kind.TEXT, "channel:word for what is to be known about a value.")
_SPEED_WORDS = "Commanded fan speed at that time, 0 is off; empty where nobody recorded it."
_SPAN = Column("span", Kind.TEXT, "What the motor was doing, as in spans.csv.")
_QUOTED = ('"', ",", ";", "\t", "\r", "\n")


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
        return self.values.take(number_array(np.searchsorted(self.starts_ns, t_ns, "right")))


def _speeds(events: tuple[Event, ...]) -> _Steps:
    speeds = [event for event in events if event.kind is EventKind.SPEED]
    starts = np.array([event.t_ns for event in speeds], np.int64)
    return _Steps(starts, text_array([None, *(defused(event.value) for event in speeds)]))


def _spans(review: Review) -> _Steps:
    # Spans touch; the end of the last, and a gap should there be one, has no kind.
    starts: list[int] = []
    kinds: list[str | None] = [None]
    for span in review.spans:
        if starts and starts[-1] > span.start_ns:
            starts[-1] = span.start_ns
        starts += [span.start_ns, span.end_ns]
        kinds += [span.kind.value, None]
    return _Steps(np.array(starts, np.int64), text_array(kinds))


class ReadingsCsv:
    """Writes the readings of one instrument of a recording.

    Columns: ``time_utc``, ``elapsed_s``, one a channel with its unit, ``flags``, ``step``,
    ``span``, and ``origin`` where the readings were not measured.

    Parameters
    ----------
    recording : Recording
    review : Review
    instrument : Instrument
    form : TableForm

    Source
    ------
    RFC 4180 for the table, RFC 3339 for the time stamps.
    """

    def __init__(
        self,
        recording: Recording,
        review: Review,
        instrument: Instrument,
        form: TableForm = AS_USUAL,
    ) -> None:
        self._form = form
        self._recording = recording
        self._instrument = instrument
        self._names = column_names(instrument)
        self._steps = _speeds(recording.standing)
        self._spans = _spans(review)
        self._origin = origin_of(recording, instrument)
        started = recording.about.started_utc
        self._dated = recording.about.origin is not Origin.IMPORTED or started != UNDATED
        self._zero_ns = nanoseconds_of(started)

    @property
    def name(self) -> str:
        """The table's file name."""
        return f"readings-{self._instrument.key}.csv"

    @property
    def columns(self) -> tuple[Column, ...]:
        """All columns."""
        channels = [
            Column(
                f"{name} ({channel.unit})",
                Kind.NUMBER,
                f"{channel.quantity.value.capitalize()} of channel {channel.name}, scaled and"
                " zeroed, as read; empty where flags has no-data or overload.",
                channel.unit,
            )
            for name, channel in zip(self._names, self._instrument.channels, strict=True)
        ]
        counted = all(text.isdecimal() for text in self._steps.texts)
        step = Column("step", Kind.WHOLE if counted else Kind.TEXT, _SPEED_WORDS)
        last = () if self._origin is Origin.MEASURED else (ORIGIN,)
        return (*_TIMES, *channels, _FLAGS, step, _SPAN, *last)

    def metadata(self) -> bytes:
        """Give the metadata: they hold all that an import needs to know of the recording."""
        about = (
            f"Readings of {self._instrument.key}",
            "One line a reading of the instrument, every one as it was read.",
        )
        more = recording_head(self._recording.about)
        recording_id = self._recording.about.recording_id
        return csvw_metadata(self.name, about, self.columns, self._form, recording_id, more)

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
        stream.write(csv_lines([heads(self.columns)], self._form))
        # Arrow quotes every text as soon as it may quote any: only where a name asks for it.
        texts = "".join((*self._names, *self._steps.texts, self._origin.value))
        quoting = "needed" if any(mark in texts for mark in _QUOTED) else "none"
        options = pa.csv.WriteOptions(
            include_header=False,
            eol="\r\n",
            quoting_style=quoting,
            batch_size=16_384,
            delimiter=self._form.delimiter,
        )
        for block in self._recording.blocks(self._instrument.key):
            pa.csv.write_csv(self._table(block), stream, options)
            progress(len(block))

    def _table(self, block: Block) -> pa.Table:
        count = len(block)
        columns = [
            utc_texts(block.t_ns + self._zero_ns) if self._dated else pa.nulls(count, pa.string()),
            self._form.column(_floats(block.t_ns / 1e9)),
            *(self._form.column(_floats(block.values[:, k])) for k in range(len(self._names))),
            self._flags(block).dictionary_decode(),
            self._steps.at(block.t_ns),
            self._spans.at(block.t_ns),
        ]
        if self._origin is not Origin.MEASURED:
            columns.append(pa.repeat(text_array([self._origin.value])[0], count))
        return pa.table(columns, [f"c{k}" for k in range(len(columns))])

    def _flags(self, block: Block) -> pa.DictionaryArray:
        words = flag_words(block.flags, self._names)
        safe = (None if text is None else defused(text) for text in words.dictionary.to_pylist())
        return pa.DictionaryArray.from_arrays(words.indices, text_array(safe))


def _floats(values: NDArray[np.float64]) -> pa.Array:
    """Give a column in which NaN is an empty cell."""
    values = np.ascontiguousarray(values)
    there = ~np.isnan(values)
    return number_array(values, None if there.all() else there)
