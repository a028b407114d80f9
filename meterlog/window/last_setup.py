"""LastSetup: what was chosen on the Meters page, kept for the next time the window opens."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import asdict, dataclass, field
from pathlib import Path

from meterlog.instruments import PortInfo
from meterlog.model.json_kinds import as_list, as_table, as_text
from meterlog.profile import settings_folder
from meterlog.window.kept_file import keep, read_kept

_FILE = "last-setup.json"


@dataclass(frozen=True, slots=True)
class ChannelSetup:
    """What was chosen for one channel, as the page says it.

    Attributes
    ----------
    name : str
        Of the channel.
    role : str
    sensor : str
        Such as ``clamp 10 mV/A``; ``direct`` for none.
    turns : int
    inverted : bool
    own_error : str
        The sensor's own accuracy as it was typed; empty for none.
    """

    name: str
    role: str
    sensor: str = "direct"
    turns: int = 1
    inverted: bool = False
    own_error: str = ""


@dataclass(frozen=True, slots=True)
class MeterSetup:
    """One meter.

    Attributes
    ----------
    profile : str
    url : str
        Port or address.
    port_serial : str
        Serial number of the adapter at the port; empty when it has none.
    channels : tuple of ChannelSetup
    """

    profile: str
    url: str
    port_serial: str = ""
    channels: tuple[ChannelSetup, ...] = ()

    def port_now(self, ports: Sequence[PortInfo]) -> str:
        """Give where the adapter is now: by its serial number, whatever its port is called."""
        return moved_port(self.url, self.port_serial, ports)


@dataclass(frozen=True, slots=True)
class Setup:
    """All that is kept.

    Attributes
    ----------
    meters : tuple of MeterSetup
    limits : str
    may_ask : tuple of str
        Ports that were ticked, by :func:`port_identity`.
    addresses : tuple of str
        Of the ticked ones those that were typed.
    circuit : str
        Name of the circuit that was checked last.
    cautions_read : bool
        The cautions were on show before, or folded away: they begin folded.
    """

    meters: tuple[MeterSetup, ...] = ()
    limits: str = ""
    may_ask: tuple[str, ...] = field(default=())
    addresses: tuple[str, ...] = ()
    circuit: str = ""
    cautions_read: bool = False


def port_identity(port: PortInfo) -> str:
    """Give what a port is known by: its adapter's serial number, else its name and socket."""
    if port.serial:
        return f"{port.vendor}:{port.product} {port.serial}"
    return " ".join(word for word in (port.device, port.location) if word)


def moved_port(url: str, serial: str, ports: Sequence[PortInfo]) -> str:
    """Give the port at which the adapter of a serial number is now; ``url`` when it is unclear."""
    same = [port.device for port in ports if serial and port.serial == serial]
    return same[0] if len(same) == 1 and url not in same else url


class LastSetup:
    """The setup of the last time, in one JSON file.

    A file that can't be read or written costs nothing but the convenience.

    Parameters
    ----------
    folder : Path or None
        None: the user's settings folder. It need not exist.
    """

    def __init__(self, folder: Path | None = None) -> None:
        self._path = (settings_folder() if folder is None else folder) / _FILE

    def load(self) -> Setup:
        """Give what is kept; an empty setup where nothing is, or nothing that can be read."""
        try:
            return _setup(read_kept(self._path))
        except (OSError, ValueError, TypeError, KeyError):
            return Setup()

    def keep(self, setup: Setup) -> bool:
        """Keep a setup in the place of the one before; False when the disk does not take it."""
        return keep(self._path, asdict(setup))


def _setup(found: object) -> Setup:
    table = as_table(found)
    return Setup(
        tuple(_meter(one) for one in as_list(table["meters"])),
        as_text(table["limits"]),
        tuple(as_text(one) for one in as_list(table["may_ask"])),
        tuple(as_text(one) for one in as_list(table["addresses"])),
        as_text(table.get("circuit", "")),
        table.get("cautions_read") is True,
    )


def _meter(found: object) -> MeterSetup:
    table = as_table(found)
    return MeterSetup(
        as_text(table["profile"]),
        as_text(table["url"]),
        as_text(table["port_serial"]),
        tuple(_channel(one) for one in as_list(table["channels"])),
    )


def _channel(found: object) -> ChannelSetup:
    table = as_table(found)
    turns, inverted = table["turns"], table["inverted"]
    if not isinstance(turns, int) or not isinstance(inverted, bool):
        raise TypeError
    return ChannelSetup(
        as_text(table["name"]),
        as_text(table["role"]),
        as_text(table["sensor"]),
        turns,
        inverted,
        as_text(table["own_error"]),
    )
