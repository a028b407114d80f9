"""One circuit whose tables are quick to make, and a technician who measures without noise."""

from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from meterlog.circuit import Isolation
from meterlog.model import CircuitCheck, CircuitReading, CircuitSign, PointKind
from meterlog.model.circuit_check import SIGN_VALUES
from meterlog.profile import load_circuit, shipped_folder

NAME = "resistors-ground-side-12v"


@cache
def _isolation():
    made = Isolation(load_circuit(str(shipped_folder() / "circuits" / f"{NAME}.toml")))
    made.prepare()
    return made


class Technician:
    """Measures what a circuit with one fault gives."""

    def __init__(self, isolation, words, severity=None):
        self.isolation, self.circuit = isolation, isolation.circuit
        predictions = isolation._predictions
        cells = predictions.cells
        at = next(n for n, one in enumerate(cells.hypotheses) if one.words == words)
        self.units = cells.hypotheses[at].units
        own = np.flatnonzero(cells.hypothesis == at)
        chosen = own[0]
        if severity is not None:
            chosen = own[np.argmin(np.abs(np.log(cells.severity[own, 0] / severity)))]
        self.row = cells.row[chosen]
        self.predictions = predictions

    def read(self, number, state, point, value=None):
        column = self.predictions.points.index(point)
        if value is None:
            value = float(self.predictions.at(state).mean[self.row, column])
        current = self.circuit.point(point).kind is PointKind.CURRENT
        u = 0.01 * abs(value) + (0.15 if current else 0.01)
        return CircuitReading(number, state, point, value, u, complaint=True)

    def look(self, number, state, sign):
        chances = self.predictions.at(state).signs[sign][self.row]
        return CircuitSign(number, state, sign, SIGN_VALUES[sign][int(chances.argmax())])

    def follow(self, check, test, number):
        """Do what was proposed."""
        if test.sign is None:
            reading = self.read(number, test.state, test.point)
            return replace(check, readings=(*check.readings, reading))
        sign = self.look(number, test.state, test.sign)
        return replace(check, signs=(*check.signs, sign))

    def isolate(self, check=None, most=16):
        """Follow all proposals; give every check and verdict on the way."""
        check = check or CircuitCheck(self.circuit.name)
        passed = []
        for number in range(100, 100 + most):
            verdict = self.isolation.verdict(check)
            passed.append((check, verdict))
            if verdict.next_test is None:
                break
            check = self.follow(check, verdict.next_test, number)
        return passed


@pytest.fixture(scope="session")
def isolation():
    return _isolation()


@pytest.fixture(scope="session")
def technician(isolation):
    return lambda words, severity=None: Technician(isolation, words, severity)
