"""``meterlog import``: a CSV trace from elsewhere becomes a recording."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from meterlog.commands.entry import Subparsers, add_command
from meterlog.commands.folders import new_folder
from meterlog.commands.job_options import add_job_options, job_from
from meterlog.commands.stated_accuracy import accuracies
from meterlog.commands.terminal import Progress, answer, answer_json, remark, short

if TYPE_CHECKING:
    from meterlog.model.errors import UsageError

_WORDS = """\
Reads a CSV file with one column of time (seconds, or RFC 3339 date and time) and one column for
each measured place, in volts and amperes, and makes a sealed recording of it, marked 'imported'.
The file itself is kept inside, untouched.

What "meterlog export" wrote needs no hints: give the folder, or one readings-*.csv, and the
metadata beside it say the rest, in whichever form it was exported; events.csv beside it is taken
too. Its review comes to the same findings as that of the recording that was exported.

EVENTS.csv has the columns elapsed_s,kind,value with kind one of speed, tap, wiggle (value: what was
moved by hand, leads for the probes alone), note. elapsed_s counts in seconds from the zero of the
time column; where that has dates, from its first row."""

_EXAMPLES = """\
meterlog import trace.csv --time seconds --assign motor-feed=feed_v \\
    --assign motor-return=return_v --assign motor-current=amps \\
    --accuracy motor-current=1.5+0.05 \\
    --events events.csv --limits linear-12v --out recordings/imported
meterlog import claim/before --out recordings/again"""


def add_parser(subparsers: Subparsers[argparse.ArgumentParser]) -> None:
    """Add the command's options."""
    parser = add_command(subparsers, "import", _WORDS, _EXAMPLES)
    parser.add_argument(
        "trace", metavar="TRACE.csv|DIR", type=Path, help="the trace, or the folder of an export"
    )
    parser.add_argument(
        "--time", metavar="COLUMN", help="the column of time; not for what was exported"
    )
    parser.add_argument(
        "--assign",
        metavar="ROLE=COLUMN",
        action="append",
        default=[],
        help="which column was measured where; repeat for each column",
    )
    parser.add_argument(
        "--accuracy",
        metavar="ROLE=PERCENT+ABSOLUTE",
        action="append",
        default=[],
        help="how good the meter was: 1.5+0.05 is 1.5 %% of the reading plus 0.05 V or A; without "
        "it each ± holds the scatter of the readings alone; repeat for each role",
    )
    parser.add_argument("--events", metavar="EVENTS.csv", type=Path, help="what happened when")
    parser.add_argument(
        "--limits", metavar="NAME|FILE", help="limits to judge it by; an export has its own"
    )
    parser.add_argument(
        "--out", metavar="DIR", type=Path, required=True, help="new or empty folder to write to"
    )
    parser.add_argument("--json", action="store_true", help="print one JSON object instead")
    add_job_options(parser)
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Import a trace or what was exported."""
    from meterlog.model import share_times
    from meterlog.recording import MARKS, Recording, events_outside

    progress = Progress("importing")
    try:
        if _is_export(options):
            folder, lacking = _import_export(options, progress)
        else:
            folder, lacking = _import_trace(options, progress), ()
    finally:
        progress.done()
    recording = Recording.open(folder)
    warnings = (*lacking, *events_outside(recording))
    for warning in warnings:
        remark(f"warning: {warning}")
    marks = sum(event.kind in MARKS for event in recording.events)
    rows = {one.key: recording.rows(one.key) for one in recording.about.instruments}
    if options.json:
        answer_json(
            {
                "out": str(folder),
                "rows": rows,
                "events": marks,
                "end_s": recording.end_ns / 1e9,
                "warnings": list(warnings),
            }
        )
        return 0
    answer(
        f"Imported {sum(rows.values()):,} rows and {marks} event{'' if marks == 1 else 's'} "
        f"({recording.length_ns / 1e9:.1f} s) to {short(folder)}"
    )
    instruments = recording.about.instruments
    if len(instruments) > 1 and all(share_times(instruments[0], one) for one in instruments):
        for one in instruments:
            names = ", ".join(channel.name for channel in one.channels)
            every_s = one.channels[0].interval_s
            answer(f"  {names}: {rows[one.key]:,} readings, one every {every_s:.3g} s")
    return 0


def _is_export(options: argparse.Namespace) -> bool:
    """Tell whether the metadata say what the columns are; refuse half of the hints."""
    from meterlog.model.errors import UsageError

    if options.time is None and not options.assign:
        if options.accuracy:
            raise UsageError(
                "an export says itself how good the meters were.",
                subject="--accuracy",
                remedy="Leave it out, or say what the columns are with --time and --assign.",
            )
        return True
    if options.time is None or not options.assign:
        raise _half_said(options)
    return False


def _half_said(options: argparse.Namespace) -> UsageError:
    """Give the error of hints of which one is missing; also where the other names no column."""
    from meterlog.model.errors import UsageError
    from meterlog.recording.trace_error import shown, suggestion
    from meterlog.recording.trace_layout import trace_layout

    assigned = [column for _, column in _assigned(options.assign)]
    given = assigned if options.time is None else [options.time]
    lacks, what = (
        ("--time COLUMN", "which column is the time")
        if options.time is None
        else ("--assign ROLE=COLUMN", "which column was measured where")
    )
    header = trace_layout(options.trace, given).header
    unknown = [shown(one) for one in dict.fromkeys(given) if one not in header]
    also = f"; and it has no column {', '.join(unknown)}" if unknown else ""
    return UsageError(
        f"{lacks} is missing{also}.",
        subject=str(options.trace),
        remedy=f"Say with {lacks} {what}. {suggestion('', header)}",
    )


def _import_export(options: argparse.Namespace, progress: Progress) -> tuple[Path, tuple[str, ...]]:
    from meterlog.profile import load_limits
    from meterlog.recording import ExportRequest, import_export

    request = ExportRequest(
        source=options.trace,
        out=new_folder(options.out),
        events=options.events,
        limits=None if options.limits is None else load_limits(options.limits),
        job=job_from(options),
    )
    return import_export(request, progress)


def _import_trace(options: argparse.Namespace, progress: Progress) -> Path:
    from meterlog.model import Limits
    from meterlog.profile import load_limits
    from meterlog.recording import ImportRequest, import_trace

    assign = _assigned(options.assign)
    request = ImportRequest(
        trace=options.trace,
        time_column=options.time,
        assign=assign,
        events=options.events,
        out=new_folder(options.out),
        limits=load_limits(options.limits) if options.limits is not None else Limits(),
        job=job_from(options),
        accuracy=accuracies(options.accuracy, [role for role, _ in assign]),
    )
    return import_trace(request, progress)


def _assigned(words: list[str]) -> tuple[tuple[str, str], ...]:
    from meterlog.model.errors import UsageError

    pairs = []
    for text in words:
        role, equals, column = text.partition("=")
        if not (role and equals and column):
            raise UsageError(
                "does not say which column was measured where.",
                subject=text,
                remedy="Expected ROLE=COLUMN, such as motor-feed=feed_v.",
            )
        pairs.append((role, column))
    return tuple(pairs)
