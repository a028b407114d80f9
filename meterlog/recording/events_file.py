"""EventsFile: commanded speeds, taps, things moved by hand and notes from a CSV file."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from pathlib import Path

from meterlog.model import Event, EventKind, standing
from meterlog.model.speed_step import FASTEST_STEP
from meterlog.recording.defused_text import as_written
from meterlog.recording.trace_cells import NUMBER
from meterlog.recording.trace_error import shown, suggestion, trace_error
from meterlog.recording.trace_layout import TraceLayout, trace_layout
from meterlog.recording.trace_text import text_rows

COLUMNS = ("elapsed_s", "kind", "value")
MARKS = (EventKind.SPEED, EventKind.TAP, EventKind.WIGGLE, EventKind.NOTE)
"""What a person may write; the program's own kinds in an exported file are passed over."""


def parse_events_csv(path: Path) -> tuple[Event, ...]:
    """Read events from a CSV file with the columns ``elapsed_s``, ``kind`` and ``value``.

    Parameters
    ----------
    path : Path
        ``kind`` is ``speed`` (``value`` the step, 0 for off), ``tap``, ``wiggle`` (``value``
        what was moved) or ``note``. Rows of the kinds that this program writes itself (``link``,
        ``end``, ...) are passed over, and so are marks that were withdrawn, so that an exported
        ``events.csv`` can be used as it is.

    Returns
    -------
    tuple of Event
        In time order; rows of the same time in file order.

    Raises
    ------
    TraceError
        If the file can't be read, a column is missing, or a cell is wrong; names file, line and
        column.
    """
    layout = trace_layout(path, COLUMNS)
    for name in COLUMNS:
        layout.column(name)
    events = [_event(layout, line, row) for line, row in _rows(layout)]
    ordered = standing(sorted(events, key=lambda event: event.t_ns))
    return tuple(event for event in ordered if event.kind in MARKS)


def _rows(layout: TraceLayout) -> Iterator[tuple[int, Mapping[str, str]]]:
    header_seen = False
    for line, cells in text_rows(layout.path, layout.encoding, layout.delimiter):
        if not any(cell.strip() for cell in cells):
            continue
        if header_seen:
            yield line, _named(layout, line, cells)
        header_seen = True


def _named(layout: TraceLayout, line: int, cells: list[str]) -> Mapping[str, str]:
    # A row may stop early: a tap needs no value.
    if len(cells) > len(layout.header):
        raise trace_error(
            layout.path,
            f"has {len(cells)} fields, the header has {len(layout.header)}.",
            "Put a note with a comma into double quotes.",
            line=line,
        )
    padded = [*cells, *[""] * (len(layout.header) - len(cells))]
    return dict(zip(layout.header, padded, strict=True))


def _event(layout: TraceLayout, line: int, row: Mapping[str, str]) -> Event:
    kind = _kind(layout, line, row["kind"].strip().lower())
    value = as_written(row["value"].strip())
    if kind is EventKind.SPEED:
        value = _speed(layout, line, value)
    t_ns = _elapsed(layout, line, row["elapsed_s"].strip())
    return Event(t_ns, kind, value, row.get("source", "").strip())


def _kind(layout: TraceLayout, line: int, text: str) -> EventKind:
    try:
        return EventKind(text)
    except ValueError as error:
        raise trace_error(
            layout.path,
            f"{shown(text)} is no kind.",
            suggestion(text, MARKS),
            line=line,
            column="kind",
        ) from error


def _number(layout: TraceLayout, text: str) -> float:
    plain = text.replace(",", ".") if layout.decimal_comma else text
    return float(plain) if NUMBER.fullmatch(plain) else math.nan


def _speed(layout: TraceLayout, line: int, text: str) -> str:
    number = _number(layout, text)
    if not (0 <= number <= FASTEST_STEP and number == int(number)):
        raise trace_error(
            layout.path,
            f"{shown(text)} is no speed step.",
            "Give a whole number, 0 for off.",
            line=line,
            column="value",
        )
    return str(int(number))


def _elapsed(layout: TraceLayout, line: int, text: str) -> int:
    number = _number(layout, text)
    if not 0 <= number < 9.2e9:
        raise trace_error(
            layout.path,
            f"{shown(text)} is no time of 0 s or more.",
            "Give seconds since the recording's zero.",
            line=line,
            column="elapsed_s",
        )
    return round(number * 1e9)
