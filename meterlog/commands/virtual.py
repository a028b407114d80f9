"""Command ``virtual``: pretended meters on a pretended fan circuit, on real ports."""

from __future__ import annotations

import argparse
import os
import queue
import signal
import sys
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from types import FrameType
from typing import TYPE_CHECKING

from meterlog.commands.entry import Subparsers, add_command
from meterlog.commands.terminal import answer, answer_json, remark, table

if TYPE_CHECKING:
    from meterlog.instruments.virtual.outlet import Outlet

_WORDS = """
The first line of output is the address to open; with several meters there is one line each, METER
ADDRESS, in the order given. Then comes one JSON object a line for everything that happens. All
meters are on one fan; the scenario begins when a program opens the first of their ports. Type

  speed N                          set the fan's speed, 0 for off
  tap                              hit the motor
  note WORDS                       put words into the events
  quit                             end (so does Ctrl-C)

and to a meter (its name may be left out when there is but one)

  unplug METER [SECONDS]           take its port away; it comes back after SECONDS, or with
  plug METER                       as a new port: use --link to have one name for it
  off METER, on METER              switch it off: the port stays, but nothing comes
  stall METER SECONDS              hold back what it says, then send it all
  garble METER BYTES               send so many bytes of garbage
  hold METER [on|off]              its display stays as it is
  clamp-dead METER [on|off]        its clamp's battery dies: a quiet zero
  dial METER V|A|OHM               turn its dial          (dialect lcd-frames)
  range METER [next|auto]          press its range key    (dialect lcd-frames)
  battery-low METER [on|off]       its own battery is low (dialect lcd-frames)

All vehicles, parts and figures are invented."""
_EXAMPLES = """meterlog virtual --list
meterlog virtual line-logger --scenario dead-spot
meterlog virtual bench-scpi line-logger --scenario dead-spot --at 6 "unplug line-logger 2"
meterlog virtual bench-scpi --scenario healthy-new --tcp 5025 --no-script"""


def add_parser(subparsers: Subparsers[argparse.ArgumentParser]) -> None:
    """Add the command to the program's parser."""
    parser = add_command(subparsers, "virtual", _WORDS, _EXAMPLES)
    parser.add_argument(
        "meters", metavar="METER", nargs="*", help="meter profile: a name, or a .toml file"
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
        help="serve on a TCP port of this computer instead of a pseudo terminal; without PORT any;"
        " several meters on PORT, PORT+1 and so on",
    )
    parser.add_argument(
        "--link",
        action="append",
        default=[],
        metavar="[METER=]PATH",
        help="keep a symbolic link to the pseudo terminal, also when it is plugged in anew",
    )
    parser.add_argument(
        "--probe",
        action="append",
        default=[],
        metavar="[METER.]CHANNEL=POINT",
        help="connect a channel: battery, motor-feed, motor-return, motor-current,"
        " controller-ground, across-motor; a clamp on a channel that reads volts:"
        " clamp-1mv-per-a, clamp-10mv-per-a, clamp-100mv-per-a",
    )
    parser.add_argument(
        "--at",
        action="append",
        nargs=2,
        default=[],
        metavar=("SECONDS", "ORDER"),
        help="do at this time of the scenario what could be typed",
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


def known_scenario(name: str) -> None:
    """See that there is a scenario of this name, before anything is begun with it.

    Parameters
    ----------
    name : str

    Raises
    ------
    UsageError
        If there is none; suggests the nearest, and names all.
    """
    from meterlog.instruments.virtual.scenarios import find_scenario

    find_scenario(name)


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
    if not options.meters or not options.scenario:
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
    if options.tcp is not None:
        last = options.tcp + len(options.meters) - 1 if options.tcp else 0
        if not 0 <= options.tcp <= last <= 65_535:
            raise UsageError(
                f"{options.tcp if options.tcp < 0 else last} is no port.",
                subject="--tcp",
                remedy="Expected 0 to 65535.",
            )
        if options.link:
            raise UsageError(
                "is for pseudo terminals; a TCP port keeps its address.",
                subject="--link",
                remedy="Leave out either --link or --tcp.",
            )


def _serve(options: argparse.Namespace) -> int:
    from meterlog.instruments.virtual.assembly import at_ports, bench_keys, specimens, voices
    from meterlog.instruments.virtual.bench import VirtualBench
    from meterlog.instruments.virtual.bench_options import read_links, read_plan, read_probes
    from meterlog.instruments.virtual.journal import Journal
    from meterlog.instruments.virtual.play import Play
    from meterlog.instruments.virtual.scenarios import find_scenario
    from meterlog.instruments.virtual.simulate import model_step_s
    from meterlog.instruments.virtual.teller import Teller
    from meterlog.profile import load_meter

    _check(options)
    profiles = [load_meter(name) for name in options.meters]
    keys = bench_keys(profiles)
    scenario = find_scenario(options.scenario)
    links = read_links(options.link, keys)
    more, troubles = read_plan(options.at, len(scenario.circuit.controller.steps), keys)
    step_s = model_step_s(*profiles)
    play = Play(scenario, options.seed, scripted=options.script, step_s=step_s, more=more)
    models = specimens(profiles, keys, play, read_probes(options.probe, keys, profiles))
    spoken = voices(models, play, options.speedup)
    meters = at_ports(
        models,
        spoken,
        play,
        lambda at, key: _outlet(options.tcp, at, links.get(key)),
        troubles,
    )
    teller = Teller(sys.stdout.fileno())
    try:
        cards = [meter.card() for meter in meters]
        journal = Journal(play, teller.tell, options.speedup, options.truth, options.events, cards)
        bench = VirtualBench(play, meters, journal, options.speedup, remark, troubles)
        journal.begin(play.planned())
        with _stop_signals() as stopped:
            for meter in meters:
                lead = f"{meter.key} " if len(meters) > 1 else ""
                teller.tell(lead + meter.outlet.address)
            bench.run(_typed_lines(), stopped)
    finally:
        for meter in meters:
            meter.outlet.close()
        teller.close()
        for meter in meters:
            if dropped := meter.outlet.outbox.dropped:
                lead = f"{meter.key}: " if len(meters) > 1 else ""
                remark(f"{lead}{dropped} lines were lost because the reader did not read.")
    return 0


def _outlet(port: int | None, place: int, link: Path | None) -> Outlet:
    from meterlog.instruments.virtual.tcp_outlet import TcpOutlet

    if port is None and hasattr(os, "openpty"):
        from meterlog.instruments.virtual.pty_outlet import PtyOutlet

        return PtyOutlet(link)
    if port is None:
        remark("This system has no pseudo terminals: serving on a TCP port.")
    return TcpOutlet(port + place if port else 0)


@contextmanager
def _stop_signals() -> Iterator[Callable[[], bool]]:
    """Give what tells whether a signal has come."""
    # No Event: a signal upon a signal would wait for the lock that the first one holds.
    stopped: queue.SimpleQueue[int] = queue.SimpleQueue()

    def stop(number: int, _frame: FrameType | None) -> None:
        stopped.put(number)

    kept = {number: signal.signal(number, stop) for number in (signal.SIGINT, signal.SIGTERM)}
    if hasattr(signal, "SIGTTIN"):
        # In the background of a shell, reading the keyboard must fail, not stop the program.
        kept[signal.SIGTTIN] = signal.signal(signal.SIGTTIN, signal.SIG_IGN)
    try:
        yield lambda: not stopped.empty()
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
