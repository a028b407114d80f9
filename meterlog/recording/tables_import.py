"""TablesImport: what this program exported becomes a recording again, as it was read."""

from __future__ import annotations

import re
import uuid
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import TYPE_CHECKING

import meterlog
from meterlog.model import (
    About,
    Block,
    Conditions,
    Event,
    EventKind,
    Instrument,
    Job,
    Limits,
    Origin,
    nanoseconds_of,
)
from meterlog.model.errors import RecordingUnreadable
from meterlog.recording import layout as places
from meterlog.recording.about_text import parse_about
from meterlog.recording.circuit_files import keep_circuit
from meterlog.recording.edits_file import keep_edits
from meterlog.recording.imported_folder import (
    as_text,
    check_free,
    imported_folder,
    keep_original,
)
from meterlog.recording.part_file import keep_part
from meterlog.recording.recorder import Recorder
from meterlog.recording.sealing import seal
from meterlog.recording.table_metadata import METADATA_ENDING, TableMetadata, table_metadata
from meterlog.recording.trace_error import shown, trace_error

if TYPE_CHECKING:
    from meterlog.recording.exported_rows import ExportedRows

EVENTS = "events.csv"
_PATTERN = "readings-*.csv"
_CIRCUIT = re.compile(re.escape(places.CIRCUITS) + r"/([A-Za-z0-9._-]+)\.toml")
_YEARS = range(1678, 2262)
"""Whose instants are nanoseconds of 64 bits."""
_SAY = "Say what its columns are with --time COLUMN and --assign ROLE=COLUMN."


@dataclass(frozen=True, slots=True)
class ExportRequest:
    """What to import.

    Attributes
    ----------
    source : Path
        A table of readings as exported, or the folder of an export: all its tables of readings,
        or its events alone where it has none.
    out : Path
        Folder of the recording; absent or empty.
    events : Path or None
        None: ``events.csv`` beside the readings, where it is of the same recording.
    limits : Limits or None
        None: those by which the export was judged.
    job : Job
        Whose vehicle: no table says it. Conditions that it leaves open are those of the export.
    """

    source: Path
    out: Path
    events: Path | None = None
    limits: Limits | None = None
    job: Job = field(default_factory=Job)


def _no_progress(_: float) -> None:
    """Tell nobody."""


def import_export(
    request: ExportRequest, progress: Callable[[float], None] = _no_progress
) -> tuple[Path, tuple[str, ...]]:
    """Make a sealed recording of exported tables; the tables themselves are kept in it, untouched.

    Instruments, accuracies, zeros, events of every kind and limits are those of the recording that
    was exported, so that its review comes to the same. It has an identity of its own, and says
    that it was imported; or simulated, where it was that.

    Parameters
    ----------
    request : ExportRequest
    progress : callable
        Called with 0 to 1.

    Returns
    -------
    tuple of (Path, tuple of str)
        The recording's folder, ``request.out``, and what is lacking in it.

    Raises
    ------
    TraceError
        If a file is missing or is not as it was exported; names file, line and column.
    RecordingExists
        If the folder holds anything.
    DiskFailed
        If the recording can't be written.
    """
    # Here, not above: they load Arrow's compute functions, which the window starts without.
    from meterlog.recording.exported_events import exported_events
    from meterlog.recording.exported_rows import ExportedRows

    check_free(request.out)
    told = _tables(request.source)
    of_events = _events_beside(request, told)
    first = told[0] if told else of_events
    if first is None or not first.head:
        raise trace_error(
            request.source,
            f"holds neither readings ({_PATTERN}) nor events of an export.",
            "Give the folder that an export was written to, or one CSV file.",
        )
    whole = _about(first)
    instruments = [_instrument(whole, one) for one in told]
    lacking = _missing(whole, instruments)
    rows = [
        ExportedRows(one, instrument, whole.started_utc)
        for one, instrument in zip(told, instruments, strict=True)
    ]
    events: tuple[Event, ...] = ()
    if of_events is None:
        lacking.append("no events were found: speeds, taps and notes are missing.")
    else:
        events = exported_events(of_events, nanoseconds_of(whole.started_utc))
    about = _imported(request, whole, instruments)
    files = [*told, *([] if of_events is None else [of_events])]
    with imported_folder(request.out) as aside:
        _write(aside, about, events, (rows, progress))
        if of_events is not None:
            _keep_circuits(aside, of_events)
            keep_edits(aside, of_events.edits)
            keep_part(aside, of_events.part)
        for one in files:
            keep_original(aside, one.table)
            keep_original(aside, one.path)
        seal(aside)
    progress(1.0)
    return request.out, tuple(lacking)


def _tables(source: Path) -> list[TableMetadata]:
    """Give all tables of readings, of one recording; none where no meter was recorded."""
    if not source.exists():
        raise trace_error(source, "is not there.", "Check the name.")
    paths = sorted(source.glob(_PATTERN)) if source.is_dir() else [source]
    told = [_readings(path) for path in paths]
    for one in told[1:]:
        if one.head != told[0].head:
            raise trace_error(
                source,
                f"{told[0].table.name} and {one.table.name} are of two recordings or exports.",
                "Give the table that is meant, or take the other out of the folder.",
            )
    return told


def _readings(path: Path) -> TableMetadata:
    told = table_metadata(path)
    if told is None:
        raise trace_error(path, f"has no metadata beside it ({path.name}{METADATA_ENDING}).", _SAY)
    if not told.head:
        raise trace_error(told.path, "is not of readings that were exported.", _SAY)
    return told


def _about(told: TableMetadata) -> About:
    try:
        about, damage = parse_about(told.head.encode("utf-8", "surrogatepass"), str(told.path))
    except RecordingUnreadable as error:
        raise trace_error(told.path, error.message, _SAY) from error
    if damage:
        raise trace_error(
            told.path, "what it says of instruments and limits does not match its checksum.", _SAY
        )
    if about.started_utc.year not in _YEARS:
        raise trace_error(
            told.path, f"the recording began in the year {about.started_utc.year}.", _SAY
        )
    return about


def _instrument(about: About, told: TableMetadata) -> Instrument:
    for one in about.instruments:
        if told.table.name == f"readings-{one.key}.csv":
            if not places.is_file_key(one.key):
                break
            return replace(one, url=as_text(told.table.name))
    raise trace_error(
        told.path, f"says nothing of the instrument of {shown(told.table.name)}.", _SAY
    )


def _missing(about: About, there: Sequence[Instrument]) -> list[str]:
    keys = {one.key for one in there}
    return [
        f"the readings of {one.key} are not there: findings that rest on them are missing."
        for one in about.instruments
        if one.key not in keys
    ]


def _events_beside(
    request: ExportRequest, readings: Sequence[TableMetadata]
) -> TableMetadata | None:
    ids = {one.recording_id for one in readings}
    if request.events is not None:
        told = table_metadata(request.events)
        if told is None:
            raise trace_error(
                request.events,
                f"has no metadata beside it ({request.events.name}{METADATA_ENDING}).",
                "Give the events.csv of the same export.",
            )
        if ids and ids != {told.recording_id}:
            raise trace_error(
                request.events,
                "is of another recording than the readings.",
                "Give the events.csv of the same export.",
            )
        return told
    folder = request.source if request.source.is_dir() else request.source.parent
    path = folder / EVENTS
    told = table_metadata(path) if path.is_file() else None
    if told is None or (ids and ids != {told.recording_id}):
        return None
    return told


def _keep_circuits(aside: Path, events: TableMetadata) -> None:
    """Put the circuit profiles where the entries have them."""
    for name, text in events.circuits:
        match = _CIRCUIT.fullmatch(name)
        if match is None or keep_circuit(aside, match[1], text) != name:
            raise trace_error(
                events.path, f"{shown(name)} is no place for a circuit profile.", _SAY
            )


def _imported(request: ExportRequest, whole: About, instruments: Sequence[Instrument]) -> About:
    job = request.job
    if job.measured_under == Conditions():
        job = replace(job, measured_under=whole.job.measured_under)
    return replace(
        whole,
        recording_id=str(uuid.uuid4()),
        zero_ns=0,
        program=f"meterlog {meterlog.__version__}, of an export; first by {whole.program}",
        origin=_origin(whole),
        instruments=tuple(_in_order(whole, instruments)),
        limits=whole.limits if request.limits is None else request.limits,
        job=job,
    )


def _origin(whole: About) -> Origin:
    """Say that it was imported, or, which weighs more, that no vehicle was ever measured."""
    if whole.origin is Origin.MEASURED and any(one.simulated for one in whole.instruments):
        return Origin.SIMULATED
    return whole.origin if whole.origin is Origin.SIMULATED else Origin.IMPORTED


def _in_order(whole: About, instruments: Sequence[Instrument]) -> list[Instrument]:
    order = [one.key for one in whole.instruments]
    return sorted(instruments, key=lambda one: order.index(one.key))


def _write(
    aside: Path,
    about: About,
    events: Sequence[Event],
    rows_and_progress: tuple[Sequence[ExportedRows], Callable[[float], None]],
) -> None:
    tables, progress = rows_and_progress
    ends = [event for event in events if event.kind is EventKind.END]
    recorder = Recorder.create(aside, about, keep_raw=False)
    try:
        for event in events:
            if event.kind is not EventKind.END:
                recorder.take(event)
        for done, table in enumerate(tables):
            for lot in table.read():
                recorder.take(Block(table.key, lot.t_ns, lot.values, lot.flags))
                progress(0.95 * (done + table.progress) / len(tables))
        if ends:
            recorder.tick(ends[-1].t_ns)
    finally:
        recorder.close(ends[-1].value if ends else "interrupted")
    if recorder.failure is not None:
        raise recorder.failure
