"""ExportedRows: the readings of a table that this program exported, flags and all."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from datetime import datetime

import numpy as np
import pyarrow as pa
import pyarrow.compute as pc
from numpy.typing import NDArray

from meterlog.instruments.arrow_numbers import reals_of, wholes_of
from meterlog.model import FLAG_WORDS, UNUSABLE, Flag, Instrument, nanoseconds_of
from meterlog.recording.arrow_arrays import text_array
from meterlog.recording.defused_text import as_written
from meterlog.recording.table_metadata import TableMetadata
from meterlog.recording.trace_error import shown, trace_error
from meterlog.recording.trace_lots import TraceLots
from meterlog.recording.trace_rows import Rows
from meterlog.recording.trace_times import NotATime, TimeForm, parse_times

_EMPTY, _NONE = text_array(["", None])

TIMES = ("time_utc", "elapsed_s")
FLAGS = "flags"
_REMEDY = "Export it again: the table is not as this program wrote it."


class ExportedRows:
    """Reads the readings of one instrument back, each as it was read.

    Parameters
    ----------
    told : TableMetadata
    instrument : Instrument
    started_utc : datetime
        The recording's zero.

    Attributes
    ----------
    key : str
        Of the instrument.

    Raises
    ------
    TraceError
        If the table is not one of this instrument.
    """

    def __init__(self, told: TableMetadata, instrument: Instrument, started_utc: datetime) -> None:
        count = len(instrument.channels)
        titles = told.titles
        self.key = instrument.key
        if titles[:2] != TIMES or titles[2 + count : 3 + count] != (FLAGS,):
            raise trace_error(
                told.path, f"has not the columns of the {count} channels of {instrument.key}."
            )
        self._channels = titles[2 : 2 + count]
        self._comma = told.decimal_comma
        self._lots = TraceLots(told.layout(), (*TIMES, *self._channels, FLAGS))
        units = (channel.unit for channel in instrument.channels)
        self._flags = _FlagTexts(
            [
                as_written(title).removesuffix(f" ({unit})")
                for title, unit in zip(self._channels, units, strict=True)
            ]
        )
        self._dated = TimeForm(is_dated=True, zero_ns=nanoseconds_of(started_utc))

    @property
    def progress(self) -> float:
        """What has been read, 0 to 1."""
        return self._lots.progress

    def read(self) -> Iterator[Rows]:
        """Give the rows in lots.

        Raises
        ------
        TraceError
            For the first cell or row that is wrong; names line and column.
        """
        for batch in self._lots.read():
            yield self._rows(batch)

    def _rows(self, batch: pa.RecordBatch) -> Rows:
        t_ns = self._times(batch)
        count = len(self._channels)
        values = np.empty((len(t_ns), count), order="F")
        for k in range(count):
            values[:, k] = self._values(batch.column(2 + k), 2 + k)
        flags = self._flag_bits(batch.column(2 + count))
        gone = (flags & np.uint8(UNUSABLE)) != 0
        self._agree(values, gone)
        # An empty cell says that there is no value; the flags say why, where they do.
        flags[np.isnan(values) & ~gone] |= np.uint8(Flag.NO_DATA)
        return Rows(t_ns, values, flags)

    def _times(self, batch: pa.RecordBatch) -> NDArray[np.int64]:
        # Seconds as floating numbers lose nanoseconds after some weeks; instants never do.
        dated = batch.column(0)[0].as_py() != ""
        place = 0 if dated else 1
        texts = batch.column(place)
        form = self._dated if dated else TimeForm(is_dated=False)
        try:
            t_ns = parse_times(texts, form, decimal_comma=self._comma)
        except NotATime as error:
            message = f"the time {shown(error.text)} {error.why}."
            raise self._lots.wrong(error.row, place, message, _REMEDY) from error
        self._lots.check_times(t_ns, texts)
        return t_ns

    def _values(self, texts: pa.StringArray, place: int) -> NDArray[np.float64]:
        plain = pc.if_else(pc.equal(texts, _EMPTY), _NONE, texts)
        if self._comma:
            plain = pc.replace_substring(plain, ",", ".")
        try:
            found = pc.cast(plain, pa.float64())
        except pa.ArrowInvalid as error:
            raise self._no_number(texts, place) from error
        values = reals_of(found)
        if np.isfinite(values).sum() != len(values) - found.null_count:
            raise self._no_number(texts, place)
        return values

    def _no_number(self, texts: pa.StringArray, place: int) -> Exception:
        for row, text in enumerate(texts.to_pylist()):
            plain = text.replace(",", ".") if self._comma else text
            if text and not re.fullmatch(r"-?\d+(\.\d+)?(e[+-]?\d+)?", plain, re.ASCII):
                return self._lots.wrong(row, place, f"{shown(text)} is no number.", _REMEDY)
        return self._lots.wrong(0, place, "holds what is no number.", _REMEDY)

    def _flag_bits(self, texts: pa.StringArray) -> NDArray[np.uint8]:
        coded = texts.dictionary_encode()
        known = []
        for text in coded.dictionary.to_pylist():
            bits = self._flags.bits(as_written(text))
            if bits is None:
                row = pc.index(texts, text).as_py()
                message = f"{shown(text)} are no flags of these channels."
                raise self._lots.wrong(row, 2 + len(self._channels), message, _REMEDY)
            known.append(bits)
        places = wholes_of(coded.indices.cast(pa.int64()))
        found: NDArray[np.uint8] = np.array(known, np.uint8)[places]
        return np.asfortranarray(found)

    def _agree(self, values: NDArray[np.float64], gone: NDArray[np.bool_]) -> None:
        odd = np.argwhere(~np.isnan(values) & gone)
        if len(odd):
            row, channel = (int(at) for at in odd[0])
            message = "there is a value, and the flags say that there is none."
            raise self._lots.wrong(row, 2 + channel, message, _REMEDY)


class _FlagTexts:
    """Reads ``channel:word channel:word``; a channel's name may hold blanks and colons."""

    def __init__(self, names: Sequence[str]) -> None:
        self._places = {name: k for k, name in enumerate(names)}
        self._flags = {word: flag for flag, word in FLAG_WORDS.items()}
        longest_first = sorted(names, key=len, reverse=True)
        name = "|".join(re.escape(one) for one in longest_first)
        word = "|".join(re.escape(one) for one in self._flags)
        self._one = re.compile(f"({name}):({word})(?: |$)", re.DOTALL)

    def bits(self, text: str) -> list[int] | None:
        """Give the flags of each channel; None if the text is none of theirs."""
        found = [0] * len(self._places)
        at = 0
        while at < len(text):
            match = self._one.match(text, at)
            if match is None:
                return None
            found[self._places[match[1]]] |= int(self._flags[match[2]])
            at = match.end()
        return found
