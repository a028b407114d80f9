"""CircuitReading: the live value at a test point, ready to be entered, or why there is none."""

from __future__ import annotations

from dataclasses import dataclass

from meterlog.analysis.settled_value import Settled, Unsettled
from meterlog.model import Circuit, Instrument, PointKind, ProbePoint, Quantity
from meterlog.model.circuit_check import METER_OHM
from meterlog.model.circuit_words import unit_of
from meterlog.model.stated_reading import usual_accuracy
from meterlog.window.circuit_typed import parse_value
from meterlog.window.numbers import number
from meterlog.window.probe import Probe, take_value
from meterlog.window.words import say


@dataclass(frozen=True, slots=True)
class Ready:
    """A reading that can be entered.

    Attributes
    ----------
    value, standard_u, shared_u : float, volts or amperes
    meter_ohm : float, ohms
    source, basis : str
    """

    value: float
    standard_u: float
    shared_u: float
    meter_ohm: float
    source: str
    basis: str


class LiveReading:
    """Readings of the running meters, if there are any."""

    def __init__(self) -> None:
        self.probe = Probe(())
        self.running = False

    def follow(self, instruments: tuple[Instrument, ...] | None) -> None:
        """Read these meters from now on; None: nothing is being recorded."""
        self.probe = Probe(instruments or ())
        self.running = instruments is not None

    def channels(self) -> tuple[str, ...]:
        """Name the voltage channels to choose the probe from."""
        return self.probe.names(Quantity.VOLTAGE)

    def words(self, circuit: Circuit, point: ProbePoint, chosen: str, now_ns: int) -> str:
        """Say what the meter shows at a test point; empty without a running meter."""
        channel = self.probe.channel_for(circuit, point, chosen)
        if channel is None:
            return "—" if self.running else ""
        found = channel.settled(now_ns)
        if isinstance(found, Settled):
            return say(
                "{found} {unit}  stands",
                found=number(found.value, ".2f"),
                unit=channel.channel.unit,
            )
        return found.words

    def take(self, circuit: Circuit, point: ProbePoint, chosen: str, now_ns: int) -> Ready | str:
        """Take the settled value at a test point; words where there is none."""
        channel = self.probe.channel_for(circuit, point, chosen)
        if channel is None:
            return self._no_channel(point)
        taken = take_value(channel, now_ns)
        if isinstance(taken, Unsettled):
            return say("Not taken, {taken}.", taken=taken.words)
        return Ready(
            taken.settled.value, taken.u.standard_u, taken.u.shared_u, _meter_ohm(point),
            taken.source, taken.u.basis,
        )  # fmt: skip

    def _no_channel(self, point: ProbePoint) -> str:
        what = say("current") if point.kind is PointKind.CURRENT else say("voltage")
        if not self.running:
            return say(
                "No meter is running: press R and type the {what}, or start one (Enter).", what=what
            )
        if self.channels() and what == "voltage":
            return say(
                "More than one voltage channel: choose the probe (V), or type the value (R)."
            )
        return say("No running meter reads a {what}: press R and type it.", what=what)


def typed_reading(circuit: Circuit, point: ProbePoint, words: str) -> Ready:
    """Give a typed reading with the uncertainty of a usual meter, which its basis says.

    Raises
    ------
    UsageError
        If it is no number, or has the wrong unit.
    """
    value = parse_value(words, unit_of(circuit, point.name))
    usual = usual_accuracy(clamp=point.kind is PointKind.CURRENT)
    return Ready(value, *usual.standard_u(value), _meter_ohm(point), "typed", usual.basis)


def _meter_ohm(point: ProbePoint) -> float:
    return float("inf") if point.kind is PointKind.CURRENT else METER_OHM
