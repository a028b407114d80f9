"""simulate: a whole scenario at once, without any port, for tests of what judges traces."""

from __future__ import annotations

import dataclasses
import functools
from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from meterlog.instruments.virtual.meter import MeterModel
from meterlog.instruments.virtual.play import STEP_S, Play
from meterlog.instruments.virtual.scenario import Scenario
from meterlog.instruments.virtual.scenarios import find_scenario
from meterlog.instruments.virtual.truth import TruthSpan
from meterlog.instruments.virtual.voice import window_means
from meterlog.model import (
    Accuracy,
    Block,
    Channel,
    Event,
    Flag,
    Identity,
    Instrument,
    Quantity,
    Role,
)
from meterlog.profile import LineFormat, MeterProfile

_FINEST_S = 5e-5
_VOLTS = Accuracy(0.5, 2.0, 0.001, basis="invented")
_AMPS = Accuracy(1.5, 2.0, 0.005, floor=0.05, basis="invented")


@dataclass(frozen=True, slots=True)
class Simulation:
    """A scenario from beginning to end.

    Attributes
    ----------
    scenario : Scenario
    seed : int
    instrument : Instrument
        With the role of each channel set, and marked as simulated.
    block : Block
        All readings; times are the middles of their integration, as a reader stamps them.
    events : tuple of Event
        What was done: speed, tap, wiggle, note.
    truth : tuple of TruthSpan
        What the circuit really did; touching, from 0 to the end.
    """

    scenario: Scenario
    seed: int
    instrument: Instrument
    block: Block
    events: tuple[Event, ...]
    truth: tuple[TruthSpan, ...]


def plain_meter(interval_s: float, integration_s: float) -> MeterProfile:
    """Give a meter without a profile file: feed, return and current, all at once."""

    def channel(name: str, quantity: Quantity, accuracy: Accuracy) -> Channel:
        return Channel(
            name,
            quantity,
            interval_s=interval_s,
            integration_s=integration_s,
            accuracy=accuracy,
        )

    return MeterProfile(
        name="virtual",
        title="virtual three-channel meter",
        dialect="ascii-lines",
        interval_s=interval_s,
        integration_s=integration_s,
        channels=(
            channel("feed", Quantity.VOLTAGE, _VOLTS),
            channel("return", Quantity.VOLTAGE, _VOLTS),
            channel("current", Quantity.CURRENT, _AMPS),
        ),
        lines=LineFormat(columns=("feed", "return", "current")),
    )


def model_step_s(*profiles: MeterProfile) -> float:
    """Give the step of the model that suits all meters: never longer than their intervals.

    A sample clock faster than twenty to a millisecond gets each value several times: the motor
    has a time constant of a millisecond, and a finer model would not keep up with the wall.
    """
    step_s = STEP_S
    for profile in profiles:
        step_s = min(step_s, profile.channels[0].interval_s)
        if profile.dialect == "scpi-blocks" and profile.blocks.sample_s > 0.0:
            step_s = min(step_s, max(profile.blocks.sample_s, _FINEST_S))
    return step_s


def _instrument(meter: MeterModel, key: str) -> Instrument:
    channels = tuple(
        dataclasses.replace(channel, role=Role(point) if point in set(Role) else Role.OTHER)
        for channel, point in zip(meter.profile.channels, meter.points, strict=True)
    )
    identity = Identity(maker="VIRTUAL", model=meter.profile.name)
    return Instrument(key, meter.profile.name, "virtual", channels, identity, simulated=True)


@dataclass(frozen=True, slots=True, eq=False)
class _Played:
    points: NDArray[np.float64]
    step_s: float
    events: tuple[Event, ...]
    truth: tuple[TruthSpan, ...]


# The model takes a quarter of a second, reading it next to nothing: a run read at several rates, or
# by several meters, is played once. The most recent ones are kept, 4 MB each.
@functools.lru_cache(maxsize=16)
def _play(case: Scenario, seed: int, step_s: float, seconds: float) -> _Played:
    play = Play(case, seed, step_s=step_s)
    total = play.steps_at(seconds)
    play.advance(total)
    points = play.span(0, total)
    points.setflags(write=False)
    events = tuple(
        Event(round(done.elapsed_s * 1e9), done.kind, done.value) for done in play.happened
    )
    return _Played(points, play.step_s, events, play.spans())


def simulate(
    scenario: str | Scenario,
    seed: int = 1,
    seconds: float | None = None,
    meter: MeterProfile | None = None,
    *,
    interval_s: float = 0.05,
    integration_s: float | None = None,
    probes: Mapping[str, str] | None = None,
) -> Simulation:
    """Give all readings, events and the truth of one run of a scenario.

    Parameters
    ----------
    scenario : str or Scenario
    seed : int
        The same seed gives the same run, to the last digit.
    seconds : float or None, seconds
        How long; None for as long as the scenario takes.
    meter : MeterProfile or None
        None for a plain meter of three channels (feed, return, current).
    interval_s, integration_s : float, seconds
        Of the plain meter; integration None means over the whole interval.
    probes : mapping of channel name to point, or None

    Returns
    -------
    Simulation

    Raises
    ------
    UsageError
        If there is no such scenario, or the probes do not fit the meter.
    """
    case = find_scenario(scenario) if isinstance(scenario, str) else scenario
    if meter is None:
        over_s = interval_s if integration_s is None else integration_s
        meter = plain_meter(interval_s, over_s)
    model = MeterModel(meter, case.name, seed, probes)
    played = _play(case, seed, model_step_s(meter), case.seconds if seconds is None else seconds)
    total, step_s = len(played.points), played.step_s
    count = int(total * step_s / model.interval_s + 1e-9)
    ends_s = np.arange(1, count + 1) * model.interval_s
    stops = np.minimum(np.rint(ends_s / step_s).astype(np.int64), total)
    width = max(1, round(model.integration_s / step_s))
    shown = model.show(window_means(played.points, stops, width))
    instrument = _instrument(model, meter.name)
    middles_ns = np.rint((ends_s - 0.5 * model.integration_s) * 1e9).astype(np.int64)
    block = Block(
        instrument.key,
        middles_ns,
        np.asfortranarray(model.channel_values(shown)),
        np.asfortranarray(np.where(shown.overload, Flag.OVERLOAD, Flag.OK).astype(np.uint8)),
    )
    return Simulation(case, seed, instrument, block, played.events, played.truth)
