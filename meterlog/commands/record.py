"""``meterlog record``: record meters into a folder until the time is up or somebody stops it."""

from __future__ import annotations

import argparse
import math
from pathlib import Path
from typing import TYPE_CHECKING

from meterlog.commands.entry import Subparsers, add_command
from meterlog.commands.folders import new_folder
from meterlog.commands.job_options import add_job_options, job_from

if TYPE_CHECKING:
    from meterlog.model import Role
    from meterlog.work import Wiring

_WORDS = """\
Opens the meters, writes what they say to a new folder, and seals it at the end. Ctrl-C ends the
recording early and seals it too. Exit code 1 when a meter was silent or gone at the end; what came
before is kept. While it runs on a terminal, marks can be typed:
  0-9 speed step, t tap, n WORDS note, q stop; each with Enter

PORT is a port name (/dev/ttyUSB0, COM3), a pseudo terminal, socket://HOST:PORT or
rfc2217://HOST:PORT. 'meterlog ports' lists ports and profiles. Roles: battery, relay-coil,
relay-out, motor-feed, motor-return, controller-ground, command, motor-current, drop, other."""

_EXAMPLES = """\
meterlog record --meter line-logger@/dev/ttyUSB0 \\
    --assign motor-feed=line-logger.feed --assign motor-return=line-logger.return \\
    --assign motor-current=line-logger.current \\
    --limits linear-12v --seconds 60 --out recordings/before"""


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
        "--scale",
        metavar="ROLE=FACTOR",
        action="append",
        default=[],
        help="A or V per unit the meter reads: 100 for a clamp of 10 mV/A",
    )
    parser.add_argument(
        "--zero",
        metavar="ROLE=VALUE",
        action="append",
        default=[],
        help="reading with nothing connected, in A or V; subtracted",
    )
    parser.add_argument(
        "--no-raw", action="store_true", help="do not keep the bytes as they came from the port"
    )
    parser.add_argument("--json", action="store_true", help="print one JSON object instead")
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


def _by_role(words: list[str], option: str) -> dict[Role, float]:
    from meterlog.model.errors import UsageError
    from meterlog.work import role_named

    numbers: dict[Role, float] = {}
    for text in words:
        role, _, number = text.partition("=")
        try:
            value = float(number)
        except ValueError:
            value = math.nan
        if not math.isfinite(value):
            raise UsageError(f"is no {option}.", subject=text, remedy="Expected ROLE=NUMBER.")
        if role_named(role) in numbers:
            raise UsageError(f"gives a second {option}.", subject=text, remedy="One for each role.")
        numbers[role_named(role)] = value
    return numbers


def _wiring(options: argparse.Namespace) -> Wiring:
    from meterlog.work import Wiring

    return Wiring(
        meters=options.meter,
        roles=options.assign,
        scales=_by_role(options.scale, "scale"),
        zeros=_by_role(options.zero, "zero"),
    )


def run(options: argparse.Namespace) -> int:
    """Record until the time is up or somebody stops it."""
    from meterlog.commands.recording_loop import report, silent_meters, watch
    from meterlog.commands.stop_signals import StopSignals
    from meterlog.model import Limits
    from meterlog.profile import load_limits
    from meterlog.recording import parse_events_csv
    from meterlog.work import Run, Schedule, choose_meters, fresh_folder

    choices = choose_meters(_wiring(options))
    limits = load_limits(options.limits) if options.limits is not None else Limits()
    events = parse_events_csv(options.speed_from) if options.speed_from else ()
    folder = (
        new_folder(options.out)
        if options.out
        else fresh_folder(options.work_order or options.vehicle)
    )
    recording = Run(choices, limits, folder, job_from(options), keep_raw=not options.no_raw)
    with StopSignals() as stop:
        recording.start()
        outcome = "interrupted"
        silent: tuple[str, ...] = ()
        try:
            outcome = watch(recording, Schedule(events), options.seconds, stop)
            # Now: once stopped, no meter is alive.
            silent = silent_meters(recording)
        finally:
            recording.stop(outcome)
    report(recording, outcome, silent, as_json=options.json)
    return 1 if silent or recording.status().faults else 0
