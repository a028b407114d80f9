"""``meterlog ports``: what can be connected to, and with which profiles."""

from __future__ import annotations

import argparse
from typing import TYPE_CHECKING

from meterlog.commands.entry import Subparsers, add_command
from meterlog.commands.terminal import answer, answer_json, table

if TYPE_CHECKING:
    from meterlog.instruments import PortInfo

_WORDS = """\
Network ports and pseudo terminals are not listed; give their address to 'record' as it is:
socket://HOST:PORT, rfc2217://HOST:PORT, /dev/pts/N."""


def add_parser(subparsers: Subparsers[argparse.ArgumentParser]) -> None:
    """Add the command's options."""
    parser = add_command(subparsers, "ports", _WORDS, "meterlog ports")
    parser.add_argument("--json", action="store_true", help="print one JSON object instead")
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """List ports and profiles."""
    from meterlog.instruments import list_ports
    from meterlog.profile import load_limits, load_meter, names

    ports = list_ports()
    meters = [load_meter(name) for name in names("meters")]
    limits = [load_limits(name) for name in names("limits")]
    if options.json:
        answer_json(
            {
                "ports": [_port_json(port) for port in ports],
                "meters": [
                    {
                        "name": meter.name,
                        "title": meter.title,
                        "dialect": meter.dialect,
                        "channels": [channel.name for channel in meter.channels],
                    }
                    for meter in meters
                ],
                "limits": [{"name": limit.name, "basis": limit.basis} for limit in limits],
            }
        )
        return 0
    rows = [(port.device, port.text, "" if port.usable else port.reason) for port in ports]
    answer(table(("port", "what", "note"), rows) if rows else "No serial port is plugged in.")
    channels = [
        (meter.name, ", ".join(channel.name for channel in meter.channels), meter.title)
        for meter in meters
    ]
    answer("\n" + table(("meter profile", "channels", "what"), channels))
    answer("\n" + table(("limits", "speeds"), [(x.name, str(len(x.speeds))) for x in limits]))
    return 0


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
