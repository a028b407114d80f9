"""Play: a scenario going on, with its script, its trace and its truth."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from meterlog.instruments.virtual.fan_circuit import FanCircuit, Points
from meterlog.instruments.virtual.scenario import Scenario, dice, specimen
from meterlog.instruments.virtual.script import Happening, speed
from meterlog.instruments.virtual.truth import TruthLog, TruthSpan
from meterlog.model import EventKind

STEP_S = 2.5e-4
"""Longest step of the model, seconds; a quarter of the motor's electrical time constant."""
_POINTS = 5


class Play:
    """One run of a scenario. The same seed and happenings give the same run.

    Parameters
    ----------
    scenario : Scenario
    seed : int
    scripted : bool
        Whether the scenario's script runs by itself; if not, the fan is off to begin with.
    step_s : float, seconds
        Length of one step of the model.
    more : sequence of Happening
        Joined to the script; of two at the same time the script's comes first.
    """

    def __init__(
        self,
        scenario: Scenario,
        seed: int,
        *,
        scripted: bool = True,
        step_s: float = STEP_S,
        more: Sequence[Happening] = (),
    ) -> None:
        self.scenario = scenario
        self.seed = seed
        self.step_s = step_s
        self.figures = specimen(scenario, seed)
        self.truth = TruthLog()
        self.happened: list[Happening] = []
        self._circuit = FanCircuit(self.figures, dice(scenario.name, seed, 2), step_s)
        script: Sequence[Happening] = scenario.script if scripted else (speed(0.0, 0),)
        self._script = sorted((*script, *more), key=lambda one: one.elapsed_s)
        self._at = 0
        self._steps = 0
        self._trace: list[Points] = []
        self._first = 0

    @property
    def steps(self) -> int:
        """Steps done."""
        return self._steps

    @property
    def elapsed_s(self) -> float:
        """Scenario time, seconds."""
        return self._steps * self.step_s

    @property
    def speeds(self) -> int:
        """The highest speed."""
        return self._circuit.controller.speeds

    @property
    def next_happening_s(self) -> float | None:
        """When the script does something next, seconds; None when it is over."""
        if self._at >= len(self._script):
            return None
        return self._script[self._at].elapsed_s

    def steps_at(self, elapsed_s: float) -> int:
        """Give the number of steps nearest to ``elapsed_s``."""
        return round(elapsed_s / self.step_s)

    def advance(self, steps: int) -> None:
        """Go on until ``steps`` steps are done in all, doing what the script says on the way."""
        while self._steps < steps:
            self._obey_script()
            due_s = self.next_happening_s
            until = steps if due_s is None else min(steps, self.steps_at(due_s))
            self._run(until)
        self._obey_script()

    def planned(self) -> tuple[Happening, ...]:
        """Give what the script has yet to do."""
        return tuple(self._script[self._at :])

    def do(self, happening: Happening) -> None:
        """Let something happen now, whatever time it carries."""
        if happening.kind is EventKind.SPEED:
            self._circuit.command(int(happening.value))
        elif happening.kind is EventKind.TAP:
            self._circuit.tap()
        self.happened.append(happening)

    def span(self, start: int, stop: int) -> NDArray[np.float64]:
        """Give the points of steps ``start`` to ``stop`` (exclusive).

        Returns
        -------
        ndarray, shape (stop - start, 5), volts and amperes
            Columns as in :class:`Points`. Row k is the state at ``(start + k + 1) * step_s``.

        Raises
        ------
        ValueError
            If some of them have been forgotten or are yet to come.
        """
        if start < self._first or stop > self._steps:
            raise ValueError(f"steps {start} to {stop} are not at hand")
        rows = self._trace[start - self._first : stop - self._first]
        return np.array(rows, dtype=np.float64).reshape(-1, _POINTS)

    def forget(self, before: int) -> None:
        """Drop the points of steps before ``before``."""
        if before > self._first:
            del self._trace[: before - self._first]
            self._first = min(before, self._steps)

    def spans(self) -> tuple[TruthSpan, ...]:
        """Give the truth so far."""
        return self.truth.spans(self.elapsed_s)

    def _obey_script(self) -> None:
        while (due_s := self.next_happening_s) is not None and self.steps_at(due_s) <= self._steps:
            self._at += 1
            self.do(self._script[self._at - 1])

    def _run(self, until: int) -> None:
        circuit, truth, step_s = self._circuit, self.truth, self.step_s
        keep = self._trace.append
        for index in range(self._steps, until):
            keep(circuit.step())
            truth.see(circuit.condition, index * step_s, (index + 1) * step_s)
        self._steps = max(self._steps, until)
