"""ExportedEvents: the events of a table that this program exported, of every kind."""

from __future__ import annotations

from meterlog.model import Event, EventKind
from meterlog.model.speed_step import is_speed_step
from meterlog.recording.arrow_arrays import text_array
from meterlog.recording.defused_text import as_written
from meterlog.recording.table_metadata import TableMetadata
from meterlog.recording.trace_error import shown, trace_error
from meterlog.recording.trace_text import text_rows
from meterlog.recording.trace_times import NotATime, TimeForm, parse_times

COLUMNS = ("time_utc", "elapsed_s", "kind", "value", "source")
_REMEDY = "Export it again: the table is not as this program wrote it."


def exported_events(told: TableMetadata, zero_ns: int) -> tuple[Event, ...]:
    """Read events as they were recorded.

    Parameters
    ----------
    told : TableMetadata
    zero_ns : int, nanoseconds since 1970-01-01T00:00:00Z
        The recording's zero.

    Returns
    -------
    tuple of Event
        In the order of the file.

    Raises
    ------
    TraceError
        If it is no table of events, or a cell is wrong; names file, line and column.
    """
    if told.titles[: len(COLUMNS)] != COLUMNS:
        raise trace_error(told.path, "is not of events as an export has them.", _REMEDY)
    layout = told.layout()
    lines: list[int] = []
    rows: list[list[str]] = []
    for line, cells in text_rows(layout.path, layout.encoding, layout.delimiter):
        if line <= layout.header_end or not cells:
            continue
        if len(cells) != len(layout.header):
            message = f"has {len(cells)} fields, the header has {len(layout.header)}."
            raise trace_error(layout.path, message, _REMEDY, line=line)
        lines.append(line)
        rows.append(cells)
    if not rows:
        return ()
    dated = rows[0][0] != ""
    place = 0 if dated else 1
    form = TimeForm(is_dated=dated, zero_ns=zero_ns if dated else 0)
    texts = text_array(cells[place] for cells in rows)
    try:
        times = parse_times(texts, form, decimal_comma=told.decimal_comma).tolist()
    except NotATime as error:
        message = f"the time {shown(error.text)} {error.why}."
        raise trace_error(
            layout.path, message, _REMEDY, line=lines[error.row], column=COLUMNS[place]
        ) from error
    return tuple(
        _event(told, line, t_ns, cells)
        for line, t_ns, cells in zip(lines, times, rows, strict=True)
    )


def _event(told: TableMetadata, line: int, t_ns: int, cells: list[str]) -> Event:
    kind, value, source = cells[2:5]
    if kind not in tuple(EventKind):
        message = f"{shown(kind)} is no kind."
        raise trace_error(told.table, message, _REMEDY, line=line, column="kind")
    event = Event(t_ns, EventKind(kind), as_written(value), as_written(source))
    if t_ns < 0:
        message = "the time lies before the recording's beginning."
        raise trace_error(told.table, message, _REMEDY, line=line, column="time_utc")
    if event.kind is EventKind.SPEED and not is_speed_step(event.value):
        message = f"{shown(value)} is no speed step."
        raise trace_error(told.table, message, _REMEDY, line=line, column="value")
    return event
