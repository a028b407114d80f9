"""Probe: which channel of the running meters a reading at a test point is taken from."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from meterlog.analysis.settled_u import SettledU, settled_u
from meterlog.analysis.settled_value import NewestReadings, Settled, Unsettled, settled_value
from meterlog.analysis.stated_channel import StatedChannel
from meterlog.model import (
    Block,
    Circuit,
    Event,
    Instrument,
    PointKind,
    ProbePoint,
    Quantity,
    Role,
)

_FIXED = {
    Role.BATTERY: "battery",
    Role.MOTOR_FEED: "motor-feed",
    Role.MOTOR_RETURN: "motor-return",
    Role.CONTROLLER_GROUND: "controller-ground",
    Role.COMMAND: "command",
}
"""Channels that stay where they are, and the test points of that name."""


@dataclass(frozen=True, slots=True)
class Taken:
    """A value taken from a channel.

    Attributes
    ----------
    source : str
        Instrument and channel.
    settled : Settled
    u : SettledU
    """

    source: str
    settled: Settled
    u: SettledU


class ProbeChannel:
    """One channel of a run in progress.

    Parameters
    ----------
    instrument : Instrument
    column : int
    """

    def __init__(self, instrument: Instrument, column: int) -> None:
        self.home = StatedChannel(instrument, column)
        self.channel = instrument.channels[column]
        self.name = f"{instrument.key}.{self.channel.name}"
        self.newest = NewestReadings(self.channel.interval_s)

    def settled(self, now_ns: int) -> Settled | Unsettled:
        """Give its settled value."""
        stated = self.channel.accuracy
        resolution = stated.resolution if stated is not None else 0.0
        return settled_value(self.newest, now_ns, self.channel.unit, resolution)


class Probe:
    """All channels of the run in progress from which readings can be taken.

    Parameters
    ----------
    instruments : sequence of Instrument
        Those typed by hand are left out: what is typed is typed at the test point itself.
    """

    def __init__(self, instruments: Sequence[Instrument]) -> None:
        self.channels = tuple(
            ProbeChannel(instrument, column)
            for instrument in instruments
            if not instrument.typed
            for column in range(len(instrument.channels))
        )
        self._known: set[Event] = set()

    def take(self, block: Block) -> None:
        """Take readings."""
        for one in self.channels:
            if one.home.key == block.source:
                column = one.home.column
                one.newest.take(block.t_ns, block.values[:, column], block.flags[:, column])

    def follow(self, events: Sequence[Event]) -> None:
        """Take what the meters and the technician said since the last call, in time order.

        How many there are tells nothing: a mark that was taken back is no longer among them, and
        what comes late may stand before what is known.
        """
        fresh = [event for event in events if event not in self._known]
        self._known.update(fresh)
        for event in fresh:
            for one in self.channels:
                one.home.take(event)

    def names(self, quantity: Quantity) -> tuple[str, ...]:
        """Name the channels of one quantity."""
        return tuple(one.name for one in self.channels if one.channel.quantity is quantity)

    def channel_for(
        self, circuit: Circuit, point: ProbePoint, chosen: str = ""
    ) -> ProbeChannel | None:
        """Give the channel for a test point.

        That of the role that fits, as it stands there; else the one that was chosen as the probe
        that goes about; else the only one, or the first without a fixed role.
        """
        current = point.kind is PointKind.CURRENT
        quantity = Quantity.CURRENT if current else Quantity.VOLTAGE
        fit = [one for one in self.channels if one.channel.quantity is quantity]
        named = [one for one in fit if one.name == chosen]
        if named:
            return named[0]
        if current:
            fit.sort(key=lambda one: one.channel.role is not Role.MOTOR_CURRENT)
            return fit[0] if fit else None
        here = [one for one in fit if self._stands_at(circuit, one, point)]
        drops = [one for one in fit if one.channel.role is Role.DROP]
        if point.kind is PointKind.DROP and drops:
            return drops[0]
        if point.kind is PointKind.VOLTAGE and here:
            return here[0]
        loose = [one for one in fit if one.channel.role is Role.OTHER]
        return next(iter(loose or (fit if len(fit) == 1 else [])), None)

    @staticmethod
    def _stands_at(circuit: Circuit, one: ProbeChannel, point: ProbePoint) -> bool:
        named = _FIXED.get(one.channel.role)
        fixed = next((other for other in circuit.points if other.name == named), None)
        return fixed is not None and fixed.nodes == point.nodes


def take_value(channel: ProbeChannel, now_ns: int) -> Taken | Unsettled:
    """Take the settled value of a channel with its uncertainty, or say why there is none."""
    settled = channel.settled(now_ns)
    if isinstance(settled, Unsettled):
        return settled
    return Taken(channel.name, settled, settled_u(channel.home, settled))
