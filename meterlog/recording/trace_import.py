"""TraceImport: a trace from another program, as a CSV file, to a sealed recording."""

from __future__ import annotations

import uuid
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field, replace
from datetime import timedelta
from pathlib import Path
from typing import TYPE_CHECKING

import meterlog
from meterlog.model import (
    UNDATED,
    About,
    Accuracy,
    Block,
    Channel,
    Event,
    Instrument,
    Job,
    Limits,
    Origin,
    Quantity,
    Role,
)
from meterlog.model.errors import DiskFailed
from meterlog.recording import layout as places
from meterlog.recording.about_text import about_bytes
from meterlog.recording.append_file import write_aside
from meterlog.recording.event_chain import chained_anew
from meterlog.recording.events_file import parse_events_csv
from meterlog.recording.imported_folder import (
    REMEDY,
    as_text,
    check_free,
    imported_folder,
    keep_original,
)
from meterlog.recording.recorder import Recorder
from meterlog.recording.sealing import seal
from meterlog.recording.trace_error import suggestion, trace_error
from meterlog.recording.trace_layout import TraceLayout, trace_layout
from meterlog.recording.trace_pace import TracePace

if TYPE_CHECKING:
    from meterlog.recording.trace_rows import Rows, TraceRows

KEY = "imported"


@dataclass(frozen=True, slots=True)
class ImportRequest:
    """What to import.

    Attributes
    ----------
    trace : Path
        The CSV file: comma, semicolon or tab; where it is no comma, a decimal comma is understood.
    time_column : str
        Seconds, or RFC 3339 date and time.
    assign : tuple of (role, column)
        Which column plays which role; a role only once, except ``other``.
    out : Path
        Folder of the recording; absent or empty.
    events : Path or None
        CSV file as :func:`~meterlog.recording.events_file.parse_events_csv` reads it.
    limits : Limits
    job : Job
    accuracy : tuple of (role, Accuracy)
        What is known about the meter; without it the verdicts say that it was not stated.
    """

    trace: Path
    time_column: str
    assign: tuple[tuple[str, str], ...]
    out: Path
    events: Path | None = None
    limits: Limits = field(default_factory=Limits)
    job: Job = field(default_factory=Job)
    accuracy: tuple[tuple[str, Accuracy], ...] = ()


def _no_progress(_: float) -> None:
    """Tell nobody."""


def import_trace(request: ImportRequest, progress: Callable[[float], None] = _no_progress) -> Path:
    """Make a sealed recording of a trace; the file itself is kept in it, untouched.

    Elapsed time: seconds are taken as they stand, the file's 0 is the recording's zero; with
    dates, the first row is. The events file counts on the same scale. The channels'
    interval is told from all rows by :class:`~meterlog.recording.trace_pace.TracePace`.

    Parameters
    ----------
    request : ImportRequest
    progress : callable
        Called with 0 to 1.

    Returns
    -------
    Path
        The recording's folder, ``request.out``.

    Raises
    ------
    TraceError
        If a file, a column, a cell or a role is wrong; names file, line and column.
    RecordingExists
        If the folder holds anything.
    DiskFailed
        If the recording can't be written.
    """
    # Here, not above: it loads Arrow's compute functions, which the window starts without.
    from meterlog.recording.trace_rows import TraceRows

    check_free(request.out)
    roles = _roles(request)
    layout = trace_layout(request.trace, (request.time_column, *(c for _, c in request.assign)))
    events = () if request.events is None else parse_events_csv(request.events)
    rows = TraceRows(layout, request.time_column, tuple(column for _, column in request.assign))
    with imported_folder(request.out) as aside:
        _write(request, aside, _Parts(roles, layout, events), rows, progress)
    progress(1.0)
    return request.out


@dataclass(frozen=True, slots=True)
class _Parts:
    """What was read before the rows."""

    roles: tuple[Role, ...]
    layout: TraceLayout
    events: tuple[Event, ...]


def _roles(request: ImportRequest) -> tuple[Role, ...]:
    roles: list[Role] = []
    for name, column in request.assign:
        if name not in tuple(Role):
            raise trace_error(
                request.trace, f"{name!r} is no role.", suggestion(name, tuple(Role)), column=column
            )
        role = Role(name)
        if role in roles and role is not Role.OTHER:
            raise trace_error(
                request.trace,
                f"the role {name} is given to two columns.",
                "Give it to one of them.",
                column=column,
            )
        roles.append(role)
    columns = [column for _, column in request.assign]
    twice = next((column for column in columns if columns.count(column) > 1), None)
    if twice is not None or request.time_column in columns:
        raise trace_error(
            request.trace,
            "a column can't have two parts to play.",
            "Assign each column once.",
            column=twice or request.time_column,
        )
    if not roles:
        raise trace_error(
            request.trace, "no column is assigned to a role.", suggestion("", tuple(Role))
        )
    return tuple(roles)


def _write(
    request: ImportRequest,
    aside: Path,
    parts: _Parts,
    rows: TraceRows,
    progress: Callable[[float], None],
) -> None:
    lots = rows.read()
    first = next(lots, None)
    if first is None:
        raise trace_error(request.trace, "has no readings.", "Give a file with at least one row.")
    about = _about(request, parts, rows)
    recorder = Recorder.create(aside, about, keep_raw=False)
    pace = TracePace()
    try:
        for event in parts.events:
            recorder.take(event)
        for lot in _chain(first, lots):
            pace.take(lot.t_ns)
            recorder.take(Block(KEY, lot.t_ns, lot.values, lot.flags))
            progress(0.95 * rows.progress)
    finally:
        recorder.close()
    if recorder.failed:
        raise DiskFailed(recorder.failed, subject=str(request.out), remedy=REMEDY)
    # Only the whole trace tells its interval.
    head = about_bytes(_with_interval(about, pace.interval_s))
    write_aside(aside / places.ABOUT, head)
    events = aside / places.EVENTS
    write_aside(events, chained_anew(events.read_bytes(), head))
    keep_original(aside, request.trace)
    if request.events is not None:
        keep_original(aside, request.events)
    seal(aside)


def _chain(first: Rows, others: Iterator[Rows]) -> Iterator[Rows]:
    yield first
    yield from others


def _about(request: ImportRequest, parts: _Parts, rows: TraceRows) -> About:
    form = rows.form
    started = UNDATED + timedelta(microseconds=form.zero_ns // 1000) if form.is_dated else UNDATED
    channels = tuple(
        _channel(request, role, column)
        for role, (_, column) in zip(parts.roles, request.assign, strict=True)
    )
    return About(
        recording_id=str(uuid.uuid4()),
        started_utc=started,
        local_offset_s=form.offset_s,
        zero_ns=0,
        program=f"meterlog {meterlog.__version__}",
        origin=Origin.IMPORTED,
        instruments=(Instrument(KEY, KEY, as_text(request.trace.name), channels),),
        limits=request.limits,
        job=request.job,
    )


def _with_interval(about: About, interval_s: float) -> About:
    (instrument,) = about.instruments
    channels = tuple(replace(channel, interval_s=interval_s) for channel in instrument.channels)
    return replace(about, instruments=(replace(instrument, channels=channels),))


def _channel(request: ImportRequest, role: Role, column: str) -> Channel:
    quantity = role.quantity
    if quantity is None:
        is_current = column.rstrip().endswith(("(A)", "[A]"))
        quantity = Quantity.CURRENT if is_current else Quantity.VOLTAGE
    return Channel(
        name=column if role is Role.OTHER else role.value,
        quantity=quantity,
        role=role,
        accuracy=dict(request.accuracy).get(role.value),
    )
