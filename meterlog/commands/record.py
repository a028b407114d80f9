"""``meterlog record``: record meters into a folder until the time is up or somebody stops it."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from meterlog.commands.entry import Subparsers, add_command
from meterlog.commands.folders import new_folder
from meterlog.commands.job_options import add_job_options, job_from
from meterlog.commands.meter_options import add_meter_options, say_overdue, stated_meters
from meterlog.commands.sensor_options import add_sensor_options, wiring_from, zeros_to_take

if TYPE_CHECKING:
    from collections.abc import Sequence

    from meterlog.acquire import MeterChoice
    from meterlog.model import Job

_WORDS = """\
Opens the meters, writes what they say to a new folder, and seals it at the end. Ctrl-C ends the
recording early and seals it too. Exit code 1 when a meter was silent or gone at the end; what came
before is kept. While it runs on a terminal, marks can be typed:
  0-9 speed step, t tap, w leads moved (w WHAT: what was moved), z zero of the clamp,
  n WORDS note, u undo the last mark (it is kept and counts for nothing), q stop; each with
  Enter
and, for a meter without a plug (PORT is 'typed:'), what it shows: = 12.43 (= PROFILE 12.43 where
several are typed; a decimal comma is understood). Such readings are marked as typed by hand.

PORT is a port name (/dev/ttyUSB0, COM3), a pseudo terminal, socket://HOST:PORT,
rfc2217://HOST:PORT, or by USB hid://VVVV:PPPP[/SERIAL] or usbtmc://VVVV:PPPP[/SERIAL]. A port that
goes away is waited for, and its gap marked; a USB device is met again by its serial number,
whatever its port is called then. 'meterlog ports' lists ports and profiles. Roles: battery,
relay-coil, relay-out, motor-feed, motor-return, controller-ground, command, motor-current, drop,
other."""

_EXAMPLES = """\
meterlog record --meter line-logger@/dev/ttyUSB0 \\
    --assign motor-feed=line-logger.feed --assign motor-return=line-logger.return \\
    --assign motor-current=line-logger.current \\
    --limits linear-12v --seconds 60 --out recordings/before
meterlog record --meter bench-scpi@/dev/ttyUSB1 --assign motor-current=bench-scpi.volts \\
    --clamp motor-current=10mV/A --sensor-accuracy motor-current=1.5+0.3 \\
    --take-zero motor-current --seconds 60"""


def add_parser(subparsers: Subparsers[argparse.ArgumentParser]) -> None:
    """Add the command's options."""
    parser = add_command(subparsers, "record", _WORDS, _EXAMPLES)
    parser.add_argument(
        "--meter",
        metavar="PROFILE@PORT",
        action="append",
        required=True,
        help="a meter profile and the port it is on; repeat for each meter",
    )
    parser.add_argument(
        "--assign",
        metavar="ROLE=PROFILE.CHANNEL",
        action="append",
        default=[],
        help="which channel is connected where; repeat for each (second meter of the same "
        "profile: PROFILE-2.CHANNEL)",
    )
    parser.add_argument("--limits", metavar="NAME|FILE", help="limits to judge by")
    parser.add_argument("--seconds", metavar="N", type=_seconds, help="stop after this long")
    parser.add_argument(
        "--out", metavar="DIR", type=Path, help="new or empty folder (default: named after now)"
    )
    parser.add_argument(
        "--speed-from",
        metavar="EVENTS.csv",
        type=Path,
        help="put these events (elapsed_s,kind,value) into the recording at their times",
    )
    parser.add_argument(
        "--second-to",
        metavar="DIR",
        type=Path,
        help="the run that this one will be compared with: conditions that differ from those of it"
        " are said before this one starts",
    )
    parser.add_argument(
        "--no-raw", action="store_true", help="do not keep the bytes as they came from the port"
    )
    parser.add_argument("--json", action="store_true", help="print one JSON object instead")
    add_sensor_options(parser)
    add_meter_options(parser)
    add_job_options(parser)
    parser.set_defaults(run=run)


def _seconds(text: str) -> float:
    try:
        seconds = float(text)
    except ValueError:
        seconds = 0.0
    if not 0.0 < seconds < 1e7:  # also refuses nan
        raise argparse.ArgumentTypeError(f"{text} is no time; expected seconds above 0")
    return seconds


def _say_what_differs(first: Path, job: Job, choices: Sequence[MeterChoice]) -> None:
    """Say which conditions are not those of the first run, while they can still be put right."""
    from meterlog.analysis.compare import condition_warnings
    from meterlog.commands.folders import recording_at
    from meterlog.commands.terminal import remark, short
    from meterlog.model import Role
    from meterlog.work.first_run import first_run

    before = first_run(recording_at(first))
    read = any(Role.MOTOR_FEED is one.role for choice in choices for one in choice.channels)
    said = condition_warnings(
        before.conditions, job.measured_under, voltage_known=read and before.voltage_read
    )
    for words in said:
        remark(words)
    if not said:
        remark(f"conditions: none that was stated differs from those of {short(first)}")


def _say_what_is_unassigned(choices: Sequence[MeterChoice]) -> None:
    """Say it if nobody has said of any channel where it is: nothing can be judged then."""
    from meterlog.commands.terminal import remark
    from meterlog.model import Role

    if any(one.role is not Role.OTHER for choice in choices for one in choice.channels):
        return
    remark("No channel is said to be connected anywhere: all is kept, and nothing is judged.")
    remark("Stop, and say it of each: --assign motor-current=PROFILE.CHANNEL")


def run(options: argparse.Namespace) -> int:
    """Record until the time is up or somebody stops it."""
    from meterlog.commands.one_heap import share_one_heap
    from meterlog.commands.small_pages import use_small_pages

    share_one_heap()
    use_small_pages()
    from meterlog.commands.recording_loop import report, silent_meters, watch
    from meterlog.commands.stop_signals import StopSignals
    from meterlog.model import Limits
    from meterlog.profile import load_limits
    from meterlog.recording import parse_events_csv
    from meterlog.work import Run, Schedule, choose_meters, fresh_folder

    wiring = wiring_from(options)
    zeros = zeros_to_take(options, wiring)
    choices = choose_meters(wiring)
    limits = load_limits(options.limits) if options.limits is not None else Limits()
    events = parse_events_csv(options.speed_from) if options.speed_from else ()
    job = job_from(options)
    if options.second_to is not None:
        _say_what_differs(options.second_to, job, choices)
    folder = (
        new_folder(options.out)
        if options.out
        else fresh_folder(options.work_order or options.vehicle)
    )
    recording = Run(
        choices,
        limits,
        folder,
        job,
        keep_raw=not options.no_raw,
        stated=stated_meters(options),
    )
    with StopSignals() as stop:
        with stop.at_once():
            recording.start()
        say_overdue(recording.about)
        _say_what_is_unassigned(choices)
        outcome = "interrupted"
        silent: tuple[str, ...] = ()
        try:
            outcome = watch(recording, Schedule(events), options.seconds, stop, zeros)
            # Now: once stopped, no meter is alive.
            silent = silent_meters(recording)
        finally:
            recording.stop(outcome)
    report(recording, outcome, silent, as_json=options.json)
    return 1 if silent or recording.status().faults else 0
