"""TraceImport: a trace from another program, as a CSV file, to a sealed recording."""

from __future__ import annotations

import shutil
import uuid
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from datetime import timedelta
from pathlib import Path
from typing import TYPE_CHECKING

import meterlog
from meterlog.model import (
    IMPORTED,
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
from meterlog.recording import layout as places
from meterlog.recording.about_text import about_bytes
from meterlog.recording.append_file import write_aside
from meterlog.recording.event_chain import chained_anew
from meterlog.recording.events_file import parse_events_csv
from meterlog.recording.imported_folder import (
    as_text,
    check_free,
    imported_folder,
    keep_original,
)
from meterlog.recording.recorder import Recorder
from meterlog.recording.sealing import seal
from meterlog.recording.trace_error import suggestion, trace_error
from meterlog.recording.trace_layout import trace_layout
from meterlog.recording.trace_pace import TracePace
from meterlog.recording.trace_rates import Together, TraceRates

if TYPE_CHECKING:
    from meterlog.recording.trace_rows import Rows, TraceRows

KEY = IMPORTED


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
    interval is told from all rows by :class:`~meterlog.recording.trace_pace.TracePace`. Columns
    with a rate of their own (:class:`~meterlog.recording.trace_rates.TraceRates`) become an
    instrument of their own, with the rows in which they were read.

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
    columns = tuple(column for _, column in request.assign)
    layout = trace_layout(request.trace, (request.time_column, *columns))
    events = () if request.events is None else parse_events_csv(request.events)
    rates = TraceRates(len(columns))
    parts = _Parts(roles, events, (Together(tuple(range(len(columns)))),))

    def rows() -> TraceRows:
        return TraceRows(layout, request.time_column, columns)

    with imported_folder(request.out) as aside:
        _write(request, aside, parts, rows(), _halved(progress, rates), rates)
        # Only the whole trace tells which columns have a rate of their own; few traces have any.
        together = rates.together()
        if together != parts.together:
            shutil.rmtree(aside)
            parts = replace(parts, together=together)
            _write(request, aside, parts, rows(), lambda part: progress(0.5 + 0.5 * part))
        _finish(request, aside)
    progress(1.0)
    return request.out


def _halved(progress: Callable[[float], None], rates: TraceRates) -> Callable[[float], None]:
    """Tell half of the progress while it looks as if all had to be read a second time."""

    def told(part: float) -> None:
        twice = any(one.own for one in rates.together())
        progress(0.5 * part if twice else part)

    return told


@dataclass(frozen=True, slots=True)
class _Parts:
    """What was read before the rows, and what is made of their columns."""

    roles: tuple[Role, ...]
    events: tuple[Event, ...]
    together: tuple[Together, ...]
    """An instrument for each."""

    @property
    def keyed(self) -> tuple[tuple[str, Together], ...]:
        """The instruments' keys, and what each reads."""
        keys = (KEY if not k else f"{KEY}-{k + 1}" for k in range(len(self.together)))
        return tuple(zip(keys, self.together, strict=True))


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
    rates: TraceRates | None = None,
) -> None:
    """Write the readings and the events; let ``rates`` learn from the rows."""
    lots = rows.read()
    first = next(lots, None)
    if first is None:
        raise trace_error(request.trace, "has no readings.", "Give a file with at least one row.")
    about = _about(request, parts, rows)
    recorder = Recorder.create(aside, about, keep_raw=False)
    paces = {key: TracePace() for key, _ in parts.keyed}
    try:
        for event in parts.events:
            recorder.take(event)
        for lot in _chain(first, lots):
            if rates is not None:
                rates.take(lot)
            for key, together in parts.keyed:
                read = together.rows_of(lot)
                paces[key].take(read.t_ns)
                if len(read.t_ns):
                    recorder.take(Block(key, read.t_ns, read.values, read.flags))
            progress(0.95 * rows.progress)
    finally:
        recorder.close()
    if recorder.failure is not None:
        raise recorder.failure
    # Only the whole trace tells its interval.
    head = about_bytes(_with_intervals(about, paces))
    write_aside(aside / places.ABOUT, head)
    events = aside / places.EVENTS
    write_aside(events, chained_anew(events.read_bytes(), head))


def _finish(request: ImportRequest, aside: Path) -> None:
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
        instruments=tuple(
            Instrument(
                key,
                IMPORTED,
                as_text(request.trace.name),
                tuple(channels[k] for k in together.columns),
            )
            for key, together in parts.keyed
        ),
        limits=request.limits,
        job=request.job,
    )


def _with_intervals(about: About, paces: Mapping[str, TracePace]) -> About:
    return replace(
        about,
        instruments=tuple(
            replace(
                one,
                channels=tuple(
                    replace(channel, interval_s=paces[one.key].interval_s)
                    for channel in one.channels
                ),
            )
            for one in about.instruments
        ),
    )


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
