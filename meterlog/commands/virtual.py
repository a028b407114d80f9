"""Command ``virtual``: a pretended meter on a pretended fan circuit, on a real port."""

from __future__ import annotations

import argparse
import os
import queue
import signal
import sys
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from types import FrameType
from typing import TYPE_CHECKING

from meterlog.commands.entry import Subparsers, add_command
from meterlog.commands.terminal import answer, answer_json, remark, table

if TYPE_CHECKING:
    from meterlog.instruments.virtual.bench import Outlet

_WORDS = """
The first line of output is the address to open; then comes one JSON object a line for everything
that happens. The scenario begins when a program opens the port for the first time. Type

  speed N     set the fan's speed, 0 for off
  tap         hit the motor
  note WORDS  put words into the events
  quit        end (so does Ctrl-C)

All vehicles, parts and figures are invented."""
_EXAMPLES = """meterlog virtual --list
meterlog virtual line-logger --scenario dead-spot
meterlog virtual bench-scpi --scenario healthy-new --tcp 5025 --no-script"""
_QUIET_S = 0.05


def add_parser(subparsers: Subparsers[argparse.ArgumentParser]) -> None:
    """Add the command to the program's parser."""
    parser = add_command(subparsers, "virtual", _WORDS, _EXAMPLES)
    parser.add_argument(
        "meter", metavar="METER", nargs="?", help="meter profile: a name, or a .toml file"
    )
    parser.add_argument("--scenario", metavar="NAME", help="which fault; see --list")
    parser.add_argument("--list", action="store_true", help="list the scenarios and end")
    parser.add_argument("--json", action="store_true", help="with --list: as JSON")
    parser.add_argument(
        "--seed", type=int, default=1, metavar="N", help="same seed, same run (default 1)"
    )
    parser.add_argument(
        "--speedup", type=float, default=1.0, metavar="X", help="run X times faster (default 1)"
    )
    parser.add_argument(
        "--tcp",
        type=int,
        nargs="?",
        const=0,
        metavar="PORT",
        help="serve on a TCP port of this computer instead of a pseudo terminal; without PORT any",
    )
    parser.add_argument(
        "--probe",
        action="append",
        default=[],
        metavar="CHANNEL=POINT",
        help="connect a channel: battery, motor-feed, motor-return, motor-current,"
        " controller-ground, across-motor",
    )
    parser.add_argument(
        "--truth", type=Path, metavar="FILE", help="keep what really happened as JSON"
    )
    parser.add_argument(
        "--events", type=Path, metavar="FILE", help="write the script as EVENTS.csv"
    )
    parser.add_argument(
        "--script",
        action=argparse.BooleanOptionalAction,
        default=True,
        help="run the scenario's script by itself; with --no-script only typed lines count",
    )
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Run the command.

    Parameters
    ----------
    options : argparse.Namespace

    Returns
    -------
    int
        0.

    Raises
    ------
    MeterlogError
        If profile, scenario, option, port or file are not usable.
    """
    if options.list:
        return _list(as_json=options.json)
    return _serve(options)


def _list(*, as_json: bool) -> int:
    from meterlog.instruments.virtual import INVENTED, SCENARIOS

    if as_json:
        answer_json(
            {
                "note": INVENTED,
                "scenarios": [
                    {
                        "name": scenario.name,
                        "title": scenario.title,
                        "description": scenario.description,
                        "vehicle": scenario.vehicle,
                        "part": scenario.part,
                        "seconds": scenario.seconds,
                    }
                    for scenario in SCENARIOS.values()
                ],
            }
        )
        return 0
    rows = [(s.name, f"{s.seconds:g} s", s.title) for s in SCENARIOS.values()]
    answer(table(("scenario", "takes", "what is wrong"), rows))
    answer(INVENTED)
    return 0


def _check(options: argparse.Namespace) -> None:
    from meterlog.model.errors import UsageError

    if options.json:
        raise UsageError("goes only with --list.", subject="--json", remedy="Leave it out.")
    if not options.meter or not options.scenario:
        raise UsageError(
            "a meter profile and a scenario are needed.",
            remedy="Such as: meterlog virtual line-logger --scenario dead-spot. See --list.",
        )
    if not 0.01 <= options.speedup <= 1000.0:
        raise UsageError(
            f"{options.speedup:g} is out of range.",
            subject="--speedup",
            remedy="Expected 0.01 to 1000.",
        )
    if options.seed < 0:
        raise UsageError("is below 0.", subject="--seed", remedy="Expected 0 or more.")
    if options.tcp is not None and not 0 <= options.tcp <= 65_535:
        raise UsageError(
            f"{options.tcp} is no port.", subject="--tcp", remedy="Expected 0 to 65535."
        )


def _probes(texts: list[str]) -> dict[str, str]:
    from meterlog.model.errors import UsageError

    probes = {}
    for text in texts:
        channel, equals, point = text.partition("=")
        if not equals:
            raise UsageError(
                f"{text!r} has no '='.", subject="--probe", remedy="Expected CHANNEL=POINT."
            )
        probes[channel] = point
    return probes


def _serve(options: argparse.Namespace) -> int:
    from meterlog.instruments.virtual.bench import VirtualBench
    from meterlog.instruments.virtual.journal import Journal
    from meterlog.instruments.virtual.line_voice import LineVoice
    from meterlog.instruments.virtual.meter import MeterModel
    from meterlog.instruments.virtual.play import Play
    from meterlog.instruments.virtual.scenarios import find_scenario
    from meterlog.instruments.virtual.scpi_voice import ScpiVoice
    from meterlog.instruments.virtual.simulate import model_step_s
    from meterlog.instruments.virtual.teller import Teller
    from meterlog.profile import load_meter

    _check(options)
    profile = load_meter(options.meter)
    scenario = find_scenario(options.scenario)
    meter = MeterModel(profile, scenario.name, options.seed, _probes(options.probe))
    step_s = model_step_s(profile)
    play = Play(scenario, options.seed, scripted=options.script, step_s=step_s)
    voice: LineVoice | ScpiVoice
    if profile.dialect == "scpi":
        voice = ScpiVoice(play, meter)
    else:
        voice = LineVoice(play, meter, _QUIET_S * options.speedup)
    outlet = _outlet(options.tcp)
    teller = Teller(sys.stdout.fileno())
    journal = Journal(play, teller.tell, options.speedup, options.truth, options.events)
    try:
        journal.begin(play.planned())
        with _stop_signals() as stopped:
            teller.tell(outlet.address)
            bench = VirtualBench(play, voice, outlet, journal, options.speedup, remark)
            bench.run(_typed_lines(), stopped.is_set)
    finally:
        outlet.close()
        teller.close()
        if outlet.outbox.dropped:
            remark(f"{outlet.outbox.dropped} lines were lost because the reader did not read.")
    return 0


def _outlet(port: int | None) -> Outlet:
    from meterlog.instruments.virtual.tcp_outlet import TcpOutlet

    if port is None and hasattr(os, "openpty"):
        from meterlog.instruments.virtual.pty_outlet import PtyOutlet

        return PtyOutlet()
    if port is None:
        remark("This system has no pseudo terminals: serving on a TCP port.")
    return TcpOutlet(port or 0)


@contextmanager
def _stop_signals() -> Iterator[threading.Event]:
    stopped = threading.Event()

    def stop(_number: int, _frame: FrameType | None) -> None:
        stopped.set()

    kept = {number: signal.signal(number, stop) for number in (signal.SIGINT, signal.SIGTERM)}
    if hasattr(signal, "SIGTTIN"):
        # In the background of a shell, reading the keyboard must fail, not stop the program.
        kept[signal.SIGTTIN] = signal.signal(signal.SIGTTIN, signal.SIG_IGN)
    try:
        yield stopped
    finally:
        for number, handler in kept.items():
            signal.signal(number, handler)


def _typed_lines() -> queue.SimpleQueue[str]:
    lines: queue.SimpleQueue[str] = queue.SimpleQueue()
    if sys.stdin is not None:
        threading.Thread(target=_read_lines, args=(lines,), name="typed", daemon=True).start()
    return lines


def _read_lines(lines: queue.SimpleQueue[str]) -> None:
    # os.read and not readline: a buffered reader left waiting aborts the interpreter at its end.
    begun = b""
    try:
        while data := os.read(sys.stdin.fileno(), 4096):
            *whole, begun = (begun + data).split(b"\n")
            for line in whole:
                lines.put(line.decode("utf-8", "replace"))
    except (OSError, ValueError):
        return
