"""``meterlog ports``: what can be connected to, with which profiles, and what answers there."""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from typing import TYPE_CHECKING

from meterlog.commands.entry import Subparsers, add_command
from meterlog.commands.terminal import Progress, answer, answer_json, table

if TYPE_CHECKING:
    from meterlog.acquire import PortProgress
    from meterlog.instruments import PortInfo
    from meterlog.model import Limits
    from meterlog.model.errors import ProfileError

_WORDS = """\
Without an option no port is opened. With --ask or --ask-all those ports, and no others, are asked
which meter is on them, side by side: each is first listened to; where nothing comes by itself,
*IDN? is sent, after an answer READ? or FETC? once, else a read of Modbus registers. No setup is
sent; nothing else in an instrument is changed. A port that answers is shown with the profiles that
fit, one reading, and the line that records it. Exit code 1 when nothing answered that a profile
fits.

Not listed, but to be asked by their address: socket://HOST:PORT, rfc2217://HOST:PORT, /dev/pts/N,
hid://VVVV:PPPP (needs hidapi), usbtmc://VVVV:PPPP (needs pyvisa, pyvisa-py, pyusb); where one is
missing, the line that installs it is told."""

_EXAMPLES = """\
meterlog ports
meterlog ports --ask /dev/ttyUSB0 --ask socket://192.0.2.10:5025"""


def add_parser(subparsers: Subparsers[argparse.ArgumentParser]) -> None:
    """Add the command's options."""
    parser = add_command(subparsers, "ports", _WORDS, _EXAMPLES)
    parser.add_argument(
        "--ask",
        metavar="PORT",
        action="append",
        default=[],
        help="ask this port, or address, which meter is on it; repeat for more",
    )
    parser.add_argument(
        "--ask-all", action="store_true", help="ask every listed port that may be opened"
    )
    parser.add_argument("--json", action="store_true", help="print one JSON object instead")
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """List ports and profiles, or ask ports."""
    from meterlog.instruments import list_ports

    ports = list_ports()
    if options.ask or options.ask_all:
        return _ask(_included(ports, options.ask, everything=options.ask_all), options)
    return _list(ports, as_json=options.json)


def _included(
    ports: Sequence[PortInfo], named: Sequence[str], *, everything: bool
) -> list[PortInfo]:
    """Give the ports that the user wants to be asked; an address stands for itself."""
    from meterlog.instruments import PortInfo

    listed = {port.device: port for port in ports}
    wanted = [listed.get(name) or PortInfo(name) for name in dict.fromkeys(named)]
    if everything:
        wanted += [port for port in ports if port.usable and port not in wanted]
    return wanted


def _ask(ports: Sequence[PortInfo], options: argparse.Namespace) -> int:
    from meterlog.acquire import Outcome, ask_ports
    from meterlog.commands.port_report import answer_json_of, report
    from meterlog.profile import load_listed_meters

    profiles, broken = load_listed_meters()
    progress = Progress("asking")

    def show(doing: Sequence[PortProgress]) -> None:
        progress.note("; ".join(f"{one.port}: {one.doing}" for one in doing if one.doing))

    answers = ask_ports(ports, profiles, show)
    progress.done()
    if options.json:
        faults = [_fault_json(error) for error in broken]
        answer_json({"answers": [answer_json_of(one) for one in answers], "faults": faults})
    elif not ports:
        answer("No serial port is plugged in that may be opened. Addresses: see 'ports --help'.")
    else:
        answer("\n\n".join(report(one) for one in answers))
        _tell_broken(broken)
    return 0 if any(one.outcome is Outcome.FITS for one in answers) else 1


def _list(ports: Sequence[PortInfo], *, as_json: bool) -> int:
    from meterlog.profile import listed, load_listed_meters, user_folder

    limits, broken = _limits()
    meters, faults = load_listed_meters()
    broken = [*faults, *broken]
    own = {profile.name: profile for profile in listed("meters")}
    origins = {
        name: ("own, instead of the shipped one" if one.replaces else "own")
        if one.own
        else "shipped"
        for name, one in own.items()
    }
    if as_json:
        answer_json(
            {
                "ports": [_port_json(port) for port in ports],
                "meters": [
                    {
                        "name": meter.name,
                        "title": meter.title,
                        "dialect": meter.dialect,
                        "channels": [channel.name for channel in meter.channels],
                        "own": own[meter.name].own,
                        "file": meter.source,
                    }
                    for meter in meters
                ],
                "limits": [{"name": limit.name, "basis": limit.basis} for limit in limits],
                "faults": [_fault_json(error) for error in broken],
            }
        )
        return 0
    answer(_port_table(ports))
    head = ("meter profile", "from", "dialect", "channels", "what")
    rows = [
        (
            meter.name,
            origins[meter.name],
            meter.dialect,
            ", ".join(channel.name for channel in meter.channels),
            meter.title,
        )
        for meter in meters
    ]
    answer("\n" + table(head, rows))
    answer("\n" + table(("limits", "speeds"), [(x.name, str(len(x.speeds))) for x in limits]))
    answer(
        f"\nProfiles of your own belong into {user_folder() / 'meters'}.\n"
        "To find out which meter is on which port: meterlog ports --ask PORT"
    )
    _tell_broken(broken)
    return 0


def _port_table(ports: Sequence[PortInfo]) -> str:
    if not ports:
        return (
            "No serial port is plugged in. Network, HID and USBTMC addresses are not listed: see "
            "'meterlog ports --help'."
        )
    rows = [
        (
            port.device,
            f"{port.vendor}:{port.product}" if port.vendor else "",
            port.text,
            port.serial,
            "" if port.usable else port.reason,
        )
        for port in ports
    ]
    return table(("port", "USB", "what", "serial number", "note"), rows)


def _limits() -> tuple[list[Limits], list[ProfileError]]:
    from meterlog.model.errors import ProfileError
    from meterlog.profile import listed, load_limits

    good, bad = [], []
    for profile in listed("limits"):
        try:
            good.append(load_limits(str(profile.file)))
        except ProfileError as error:
            bad.append(error)
    return good, bad


def _tell_broken(broken: Sequence[ProfileError]) -> None:
    if broken:
        said = "\n".join(f"  {error}" for error in broken)
        answer(f"\nThese profiles can't be used; see meterlog check-profile FILE:\n{said}")


def _fault_json(error: ProfileError) -> dict[str, object]:
    return {"subject": error.subject, "message": error.message, "remedy": error.remedy}


def _port_json(port: PortInfo) -> dict[str, object]:
    return {
        "device": port.device,
        "text": port.text,
        "vendor": port.vendor,
        "product": port.product,
        "serial": port.serial,
        "usable": port.usable,
        "reason": port.reason,
    }
