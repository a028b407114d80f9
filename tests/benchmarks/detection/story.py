"""Story: what happens in one run - commands, dropouts, taps, supply - and its truth."""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np
from circuit import State
from true_trace import Switch

LENGTHS_S = (0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0)
"""Lengths for which a review states a chance; half of the dropouts have one of them."""
LAG_S = 1.0
"""The limits of every run let a hand be so late."""
CLEAR_S = 0.4
"""No dropout begins or ends nearer than the lag and this to a change of the command: there it
could not be told from the command by anybody."""


@dataclass(frozen=True)
class Dropout:
    """One loss of current, seconds."""

    start: float
    end: float
    state: State

    @property
    def length(self) -> float:
        """Length in seconds."""
        return self.end - self.start


@dataclass(frozen=True)
class Command:
    """The knob was turned at ``at``; the key that marks it was pressed at ``marked``."""

    at: float
    marked: float
    speed: int


@dataclass
class Story:
    """One run's script."""

    length: float
    commands: list[Command]
    dropouts: list[Dropout] = field(default_factory=list)
    taps: list[float] = field(default_factory=list)
    supply: list[tuple[float, float]] = field(default_factory=list)
    warm_s: float = 60.0
    warmth: float = 0.0

    def switches(self) -> list[Switch]:
        """Give everything that is switched, in time order."""
        times = {0.0} | {one.at for one in self.commands} | {at for at, _ in self.supply}
        times |= {edge for one in self.dropouts for edge in (one.start, one.end)}
        # The winding warms in steps too small to matter.
        times |= set(np.arange(0.0, self.length, max(self.warm_s / 20.0, 1.0)).tolist())
        return [self._switch(at) for at in sorted(times) if at < self.length]

    def _switch(self, at: float) -> Switch:
        state = State.DRIVEN
        for one in self.dropouts:
            if one.start <= at < one.end:
                state = one.state
        battery = [volts for since, volts in self.supply if since <= at][-1]
        warm = 1.0 + self.warmth * (1.0 - float(np.exp(-at / self.warm_s)))
        return Switch(at, self.speed_at(at), state, battery, warm)

    def speed_at(self, at: float) -> int:
        """Give the speed that the knob really stood on."""
        return [one.speed for one in self.commands if one.at <= at][-1]


def _commands(rng: np.random.Generator, length: float) -> list[Command]:
    speeds = [int(rng.integers(0, 5))]
    at, result = 0.0, [Command(0.0, 0.0, speeds[0])]
    while True:
        # The slower half of the technicians wait longer than the shortest run lasts.
        at += float(np.exp(rng.uniform(np.log(4.0), np.log(40.0))))
        if at > length - 3.0:
            break
        choice = [one for one in range(5) if one != result[-1].speed]
        speed = int(rng.choice(choice, p=_weights(choice)))
        lag = float(rng.uniform(-0.25, 0.75))
        result.append(Command(at, max(at + lag, result[-1].marked + 0.01), speed))
    return result


def _weights(choice: list[int]) -> list[float]:
    raw = [0.5 if one == 0 else 1.0 for one in choice]
    return [one / sum(raw) for one in raw]


def _supply(rng: np.random.Generator, length: float) -> list[tuple[float, float]]:
    """Give battery volts: engine off or charging, loads that come and go, and slow drift."""
    charging = rng.random() < 0.4
    level = rng.uniform(13.6, 14.5) if charging else rng.uniform(12.1, 12.9)
    steps: list[tuple[float, float]] = []
    at, load = 0.0, 0.0
    loads = np.sort(rng.uniform(0.0, length, rng.poisson(length / 40.0)))
    drift = rng.uniform(-0.003, 0.001) if not charging else 0.0
    while at < length:
        while len(loads) and loads[0] <= at:
            load, loads = (0.0 if load else float(rng.uniform(-0.8, 0.3))), loads[1:]
        steps.append((at, float(level + load + drift * at)))
        at += float(rng.uniform(0.7, 2.5))
    return steps


def any_lengths(rng: np.random.Generator, count: int) -> list[float]:
    """Draw lengths of 1 ms to 5 s."""
    grid = rng.random(count) < 0.5
    free = np.exp(rng.uniform(np.log(0.001), np.log(5.0), count))
    return np.where(grid, rng.choice(LENGTHS_S, count), free).tolist()


def _dropouts(
    rng: np.random.Generator, story: Story, lengths: list[float], apart_s: float
) -> list[Dropout]:
    """Place dropouts where a fan runs, clear of commands and of each other."""
    kinds = (State.MOTOR_OPEN, State.FEED_OPEN, State.GROUND_OPEN)
    one_cause = rng.random() < 0.7
    cause = kinds[int(rng.integers(0, 3))]
    changes = [edge for one in story.commands for edge in (one.at, one.marked)]
    found: list[Dropout] = []
    for length in lengths:
        for _ in range(30):
            start = float(rng.uniform(0.5, max(story.length - length - 0.5, 0.6)))
            end = start + length
            near = min((_away(start, end, at) for at in changes if at > 0.0), default=9.0)
            taken = any(
                _away(start, end, edge) < apart_s for o in found for edge in (o.start, o.end)
            )
            over = any(o.start < end and start < o.end for o in found)
            if near > LAG_S + CLEAR_S and not taken and not over and story.speed_at(start) > 0:
                kind = cause if one_cause else kinds[int(rng.integers(0, 3))]
                if end < story.length - 0.5:
                    found.append(Dropout(start, end, kind))
                break
    return sorted(found, key=lambda one: one.start)


def _away(start: float, end: float, at: float) -> float:
    return 0.0 if start <= at <= end else min(abs(start - at), abs(end - at))


def _taps(rng: np.random.Generator, story: Story) -> list[float]:
    """Half of the dropouts that last end upon a tap; other taps do nothing."""
    taps = [
        one.end - float(rng.uniform(0.01, 0.15)) + float(rng.uniform(-0.05, 0.3))
        for one in story.dropouts
        if one.length > 0.3 and rng.random() < 0.5
    ]
    idle = rng.uniform(0.0, story.length, rng.poisson(2.0)).tolist() if rng.random() < 0.5 else []
    return sorted(at for at in taps + idle if 0.0 < at < story.length)


def draw_story(
    rng: np.random.Generator,
    length: float,
    dropouts: list[float],
    apart_s: float,
    *,
    calm: bool = False,
) -> Story:
    """Draw a run of ``length`` seconds with dropouts of these lengths, ``apart_s`` apart.

    One that finds no room is left out.

    ``calm``: with a steady supply and a warm motor, so that each speed has one true current.
    """
    story = Story(length, _commands(rng, length), supply=_supply(rng, length))
    story.warmth = float(rng.uniform(0.0, 0.1))
    if calm:
        story.supply, story.warmth = story.supply[:1], 0.0
    story.warm_s = float(rng.uniform(20.0, 200.0))
    if all(one.speed == 0 for one in story.commands):
        story.commands = [Command(0.0, 0.0, int(rng.integers(1, 5)))]
    story.dropouts = _dropouts(rng, story, dropouts, apart_s)
    story.taps = _taps(rng, story)
    return story
