"""TableMetadata: how to read a table that this program exported, from the file beside it."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from meterlog.model.errors import TraceError
from meterlog.profile.plain_file import read_plain
from meterlog.recording.trace_error import shown, trace_error
from meterlog.recording.trace_layout import DELIMITERS, TraceLayout
from meterlog.recording.trace_text import check_quotes, text_rows

METADATA_ENDING = "-metadata.json"
HEAD_PROPERTY = "schema:additionalProperty"
HEAD_NAME = "meterlog recording 1"
"""Name of the property value that holds ``about.json`` as text."""

EDITS_NAME = "meterlog edits 1"
"""Name of the property value that holds the edits in what was exported, one a line."""
PART_NAME = "meterlog part 1"
"""Name of the property value that says of what part of a recording this is."""

_MOST_BYTES = 16 << 20
_ENCODING = "utf-8-sig"
_NO_CIRCUITS = (HEAD_NAME, EDITS_NAME, PART_NAME)
_ELSE = "Export it again, or say what the columns are with --time and --assign."


@dataclass(frozen=True, slots=True)
class TableMetadata:
    """What the metadata of one table say.

    Attributes
    ----------
    path : Path
        Of the metadata.
    table : Path
    delimiter : str
    decimal_comma : bool
    titles : tuple of str
        The header line of the table.
    recording_id : str
        Of the recording that was exported; empty where it is not said.
    head : str
        The recording's ``about.json`` without its job; empty but for readings and events.
    circuits : tuple of (name, text)
        Circuit profiles, by their place in the recording.
    edits : tuple of str
        Edits that had been made in what was exported, in words; with the events only.
    part : str
        What was said of it where it is not the whole recording; with the events only.
    """

    path: Path
    table: Path
    delimiter: str
    decimal_comma: bool
    titles: tuple[str, ...]
    recording_id: str
    head: str
    circuits: tuple[tuple[str, str], ...] = ()
    edits: tuple[str, ...] = ()
    part: str = ""

    def layout(self) -> TraceLayout:
        """Look at the table's header.

        Raises
        ------
        TraceError
            If the table can't be read or its columns are others.
        """
        try:
            lines = text_rows(self.table, _ENCODING, self.delimiter)
            line, header = next(lines, (0, []))
            if tuple(header) != self.titles:
                raise trace_error(
                    self.table,
                    f"has not the columns that {self.path.name} says: {_first_odd(header, self)}.",
                    f"Was it saved by another program? {_ELSE}",
                    line=1,
                )
            check_quotes(self.table, _ENCODING, self.delimiter, self.titles)
        except OSError as error:
            raise trace_error(self.table, f"can't be read: {error.strerror}.") from error
        return TraceLayout(self.table, _ENCODING, self.delimiter, self.titles, line)


def _first_odd(header: list[str], told: TableMetadata) -> str:
    for k, title in enumerate(told.titles):
        if k >= len(header):
            return f"column {k + 1}, {shown(title)}, is missing"
        if header[k] != title:
            return f"column {k + 1} is {shown(header[k])}, not {shown(title)}"
    return f"there are {len(header)} columns, not {len(told.titles)}"


def table_metadata(table: Path) -> TableMetadata | None:
    """Read the metadata of a table.

    Parameters
    ----------
    table : Path
        The CSV file; its metadata lie beside it, under :data:`METADATA_ENDING` added to its name.

    Returns
    -------
    TableMetadata or None
        None where there is no such file.

    Raises
    ------
    TraceError
        If it is no metadata of this table.

    Source
    ------
    W3C Recommendation of 17 December 2015, "Model for Tabular Data and Metadata on the Web", 5.3.
    """
    path = table.with_name(table.name + METADATA_ENDING)
    try:
        if not path.is_file():
            return None
        content = json.loads(read_plain(path, _MOST_BYTES).decode("utf-8"))
    except OSError as error:
        raise trace_error(path, f"can't be read: {error.strerror}.") from error
    except (ValueError, RecursionError) as error:
        raise _wrong(path, f"is not valid JSON: {error}") from error
    told = _Told(path)
    top = told.table(content, "the file")
    if top.get("url") != table.name:
        raise _wrong(path, f"is of the table {shown(str(top.get('url')))}, not of {table.name}")
    dialect = told.table(top.get("dialect"), "dialect")
    if dialect.get("delimiter") not in DELIMITERS:
        raise _wrong(path, "has a delimiter that is no comma, semicolon or tab")
    schema = told.table(top.get("tableSchema"), "tableSchema")
    columns = [told.table(one, "a column") for one in told.items(schema.get("columns"), "columns")]
    held = _held(told, top)
    return TableMetadata(
        path,
        table,
        delimiter=told.text(dialect.get("delimiter"), "delimiter"),
        decimal_comma=any(_has_comma(column.get("datatype")) for column in columns),
        titles=tuple(told.text(column.get("titles"), "titles") for column in columns),
        recording_id=told.text(top.get("dc:source", ""), "dc:source"),
        head=next((text for name, text in held if name == HEAD_NAME), ""),
        circuits=tuple((name, text) for name, text in held if name not in _NO_CIRCUITS),
        edits=tuple(one for name, text in held if name == EDITS_NAME for one in text.split("\n")),
        part=next((text for name, text in held if name == PART_NAME), ""),
    )


def _has_comma(datatype: object) -> bool:
    form = datatype.get("format") if isinstance(datatype, Mapping) else None
    return isinstance(form, Mapping) and form.get("decimalChar") == ","


def _held(told: _Told, top: Mapping[str, object]) -> list[tuple[str, str]]:
    if HEAD_PROPERTY not in top:
        return []
    values = told.items(top[HEAD_PROPERTY], HEAD_PROPERTY)
    objects = [told.table(value, HEAD_PROPERTY) for value in values]
    names = [told.text(one.get("schema:name"), "schema:name") for one in objects]
    texts = [told.text(one.get("schema:value"), "schema:value") for one in objects]
    return list(zip(names, texts, strict=True))


@dataclass(frozen=True, slots=True)
class _Told:
    """Takes what it expects out of JSON, or says what is not there."""

    path: Path

    def table(self, value: object, name: str) -> Mapping[str, object]:
        """Give an object."""
        if not isinstance(value, Mapping):
            raise _wrong(self.path, f"has no object as {name}")
        return value

    def items(self, value: object, name: str) -> list[object]:
        """Give a list."""
        if not isinstance(value, list):
            raise _wrong(self.path, f"has no list as {name}")
        return value

    def text(self, value: object, name: str) -> str:
        """Give a text."""
        if not isinstance(value, str):
            raise _wrong(self.path, f"has no text as {name}")
        return value


def _wrong(path: Path, what: str) -> TraceError:
    return trace_error(path, f"{what}.", _ELSE)
