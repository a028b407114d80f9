"""Technician: does what the program proposes at a drawn case, and enters what is found.

Of the readings 2 % are slipped probes: near 0, the voltage of something else, or any number. Of
what is seen, heard and felt 2 % is mistaken. Both are drawn here and know nothing of the program's
own density of slips.
"""

from __future__ import annotations

import math
import time
from collections.abc import Callable
from dataclasses import dataclass, field, replace

import numpy as np
from drawn_case import DrawnCase
from truth import Truth

from meterlog.circuit import Isolation
from meterlog.model import CircuitCheck, CircuitReading, CircuitSign, CircuitState, Sign
from meterlog.model.circuit import PointKind
from meterlog.model.circuit_check import METER_OHM, SIGN_VALUES, CircuitVerdict, ProposedTest
from meterlog.model.stated_reading import StatedAccuracy

SLIPPED = 0.02
MISTAKEN = 0.02
MOST_TESTS = 25
DIGIT_V, DIGIT_A = 0.01, 0.1
MAY_STAND = 0.5
"""How often a fan that a tap brought back goes on running while the state stays as it is."""


@dataclass
class Step:
    """One verdict on the way: what was proposed, what was found, how long the program took."""

    verdict: CircuitVerdict
    seconds: float
    propose_s: float
    propose_cpu_s: float
    found: str = ""
    slipped: bool = False


@dataclass
class Course:
    """All of one run."""

    case: DrawnCase
    steps: list[Step] = field(default_factory=list)
    minutes: float = 0.0
    slips: int = 0
    mistakes: int = 0
    ever_there: bool = False
    check: CircuitCheck | None = None

    @property
    def end(self) -> CircuitVerdict:
        """The last verdict."""
        return self.steps[-1].verdict

    @property
    def tests(self) -> int:
        """How many proposals were followed."""
        return len(self.steps) - 1


class Technician:
    """Follows the proposals at one case.

    ``look`` is called with every check and verdict, before the next test is made.
    """

    def __init__(self, case: DrawnCase) -> None:
        self.case = case
        self._truth = Truth(case)
        self._dice = np.random.default_rng(case.dice)
        self._state: CircuitState | None = None
        self._there, self._brought_back = True, False
        self._complained: dict[CircuitState, str] = {}
        self._course = Course(case)
        self._check = CircuitCheck(case.circuit.name)

    def work(
        self,
        isolation: Isolation,
        look: Callable[[CircuitCheck, CircuitVerdict], None] | None = None,
    ) -> Course:
        """Begin with the complaint and go on until all is said."""
        for speed in (max(self.case.circuit.speeds), min(s for s in self.case.circuit.speeds if s)):
            state = CircuitState("on", speed)
            self._go_to(state)
            value = self._see(Sign.FAN, state)
            self._complained[state] = value
            self._enter_sign(state, Sign.FAN, value)
        while True:
            step = self._ask(isolation)
            self._course.steps.append(step)
            if look is not None:
                look(self._check, step.verdict)
            test = step.verdict.next_test
            if step.verdict.settled or test is None or self._course.tests >= MOST_TESTS:
                self._course.check = self._check
                return self._course
            self._do(test, step)

    def _ask(self, isolation: Isolation) -> Step:
        begun = time.perf_counter()
        verdict = isolation.verdict(self._check)
        between = time.perf_counter()
        begun_cpu = time.process_time()
        isolation.propose(self._check)
        cpu_s = time.process_time() - begun_cpu
        return Step(verdict, between - begun, time.perf_counter() - between, cpu_s)

    def _do(self, test: ProposedTest, step: Step) -> None:
        self._course.minutes += test.minutes
        self._go_to(test.state)
        if test.sign is not None:
            value = self._see(test.sign, test.state)
            step.found = f"{test.sign.value}: {value}"
            self._enter_sign(test.state, test.sign, value)
            if test.sign is Sign.TAP and self._brought_back:
                self._there = bool(self._dice.random() >= MAY_STAND)
            return
        before = self._course.slips
        value = self._read(test.point, test.state)
        step.found, step.slipped = f"{value:.2f}", self._course.slips > before
        self._enter_reading(test, value)

    # -- what is so --

    def _go_to(self, state: CircuitState) -> None:
        """Set the circuit; at each change a fault that comes and goes is there or not anew."""
        if state != self._state:
            self._state = state
            case = self.case
            self._there = not case.comes_and_goes or bool(self._dice.random() < case.duty)
        self._course.ever_there |= self._there

    def _see(self, sign: Sign, state: CircuitState) -> str:
        value = self._seen(sign, state)
        if self._dice.random() < MISTAKEN:
            self._course.mistakes += 1
            return str(self._dice.choice([v for v in SIGN_VALUES[sign] if v != value]))
        return value

    def _seen(self, sign: Sign, state: CircuitState) -> str:
        truth, case = self._truth, self.case
        if sign is Sign.FAN:
            return truth.fan_called(state, self._dice, there=self._there)
        if sign is Sign.WHEEL:
            return "stiff" if case.stiff and self._there else "free"
        if sign is Sign.CLICK:
            moves = truth.clicks(state, there=self._there)
            return "heard" if moves and self._dice.random() < case.hand.hears else "none"
        self._brought_back = (
            case.answers_tap
            and self._there
            and truth.fan_called(state, self._dice, there=True) == "dead"
            and truth.fan_called(state, self._dice, there=False) != "dead"
        )
        return "starts" if self._brought_back else "nothing"

    def _read(self, name: str, state: CircuitState) -> float:
        point = self.case.circuit.point(name)
        current = point.kind is PointKind.CURRENT
        if self._dice.random() < SLIPPED:
            self._course.slips += 1
            value = self._slip(state, drop=len(point.nodes) > 1, current=current)
        else:
            value = self._truth.at_point(point, state, METER_OHM, there=self._there)
        hand = self.case.hand
        gain, zero = (hand.gain_a, hand.zero_a) if current else (hand.gain_v, hand.zero_v)
        wanders = (hand.clamp if current else hand.accuracy)[1] / 2.0
        value = value * (1.0 + gain) + zero + wanders * self._dice.uniform(-1.0, 1.0)
        digit = DIGIT_A if current else DIGIT_V
        return round(value / digit) * digit

    def _slip(self, state: CircuitState, *, drop: bool, current: bool) -> float:
        how = int(self._dice.integers(3))
        nominal = self.case.circuit.nominal_v
        if how == 0:
            return float(self._dice.normal(0.0, 0.005))
        if current:
            return float(self._dice.uniform(0.0, 40.0))
        if how == 1:
            names = [node.name for node in self.case.circuit.nodes]
            first, second = self._dice.choice(names, 2, replace=False)
            return self._truth.between(
                str(first), str(second) if drop else names[0], state, there=self._there
            )
        return float(self._dice.uniform(-0.1, 1.15) * nominal)

    # -- what is entered --

    def _next(self) -> int:
        return len(self._check.readings) + len(self._check.signs) + 1

    def _enter_sign(self, state: CircuitState, sign: Sign, value: str) -> None:
        entry = CircuitSign(self._next(), state, sign, value)
        self._check = replace(self._check, signs=(*self._check.signs, entry))

    def _enter_reading(self, test: ProposedTest, value: float) -> None:
        point = self.case.circuit.point(test.point)
        clamp = point.kind is PointKind.CURRENT
        stated = self.case.hand.clamp if clamp else self.case.hand.accuracy
        whole, shared = StatedAccuracy(*stated, "stated").standard_u(value)
        entry = CircuitReading(
            id=self._next(),
            state=test.state,
            point=test.point,
            value=value,
            standard_u=whole,
            shared_u=shared,
            meter_ohm=math.inf if clamp else METER_OHM,
            complaint=self._said(test.state),
        )
        self._check = replace(self._check, readings=(*self._check.readings, entry))

    def _said(self, state: CircuitState) -> bool | None:
        """Whether the complaint is there, as far as one who watches the fan can tell."""
        wrong = self._complained.get(state, "runs")
        in_order = {"runs"} | ({"full"} if state.speed == max(self.case.circuit.speeds) else set())
        if not self.case.hand.watches or wrong in in_order:
            return None
        now = self._truth.fan_called(state, self._dice, there=self._there)
        said = now == wrong
        return (not said) if self._dice.random() < MISTAKEN else said
