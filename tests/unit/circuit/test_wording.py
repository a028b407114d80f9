"""Wording: what is to be done at a test point, said once and in order."""

import pytest

from meterlog.circuit.wording import test_words as words_of
from meterlog.model import CircuitState, PointKind
from meterlog.profile import load_circuit, names

HIGH = CircuitState("on", 4)


@pytest.mark.parametrize("name", names("circuits"))
def test_each_point_says_how_its_kind_is_measured(name):
    circuit = load_circuit(name)
    ways = {
        PointKind.VOLTAGE: "against the battery negative post",
        PointKind.DROP: "a probe at each end",
        PointKind.CURRENT: "Clamp: ",
    }
    for point in circuit.points:
        words = words_of(circuit, HIGH, point.name, None, None)
        assert words.startswith("Key on, speed 4. ")
        assert words.count("across") <= 1, "across is said once"
        assert [kind for kind, way in ways.items() if way in words] == [point.kind]
        assert words.count(point.label) >= 1
