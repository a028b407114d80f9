"""What is seen, heard and felt under each fault."""

import numpy as np
import pytest

from meterlog.circuit.fan_signs import SLIP
from meterlog.model.circuit_check import SIGN_VALUES, CircuitState, Sign

LOW, HIGH, OFF = CircuitState("on", 1), CircuitState("on", 2), CircuitState("off", 0)
STANDS = CircuitState("on", 0)


@pytest.fixture
def likeliest(predictions):
    def tell(row, state, sign):
        return SIGN_VALUES[sign][int(np.argmax(predictions.at(state).signs[sign][row]))]

    return tell


@pytest.mark.parametrize("state", [LOW, HIGH, OFF, STANDS], ids=str)
def test_every_sign_is_a_distribution_with_a_human_slip(predictions, state):
    for sign, table in predictions.at(state).signs.items():
        assert table.shape == (predictions.cells.rows, len(SIGN_VALUES[sign]))
        np.testing.assert_allclose(table.sum(axis=1), 1.0, rtol=1e-12)
        assert table.min() >= SLIP - 1e-12


def test_a_fan_in_order_runs_where_it_is_asked_to(likeliest):
    assert [likeliest(0, state, Sign.FAN) for state in (LOW, HIGH, OFF, STANDS)] == [
        "runs",
        "runs",
        "dead",
        "dead",
    ]


@pytest.mark.parametrize(
    ("element", "mode"),
    [("motor", "open"), ("motor", "seized"), ("fuse", "open"), ("coil", "open"), ("stage", "open")],
)
def test_a_fan_without_current_or_turn_is_dead(likeliest, row_of, element, mode):
    assert likeliest(row_of(element, mode), HIGH, Sign.FAN) == "dead"


def test_a_stage_burnt_through_runs_full_whatever_is_chosen(likeliest, row_of, predictions):
    row = row_of("stage", "shorted")
    assert likeliest(row, LOW, Sign.FAN) == likeliest(row, STANDS, Sign.FAN) == "full"
    # At the highest speed nobody can tell the two apart.
    fan = predictions.at(HIGH).signs[Sign.FAN]
    assert np.abs(fan[row] - fan[0]).max() < 0.1


def test_too_much_resistance_slows_and_more_of_it_stops(likeliest, row_of):
    assert likeliest(row_of("feed-pin", "resistive", 1.5), HIGH, Sign.FAN) == "slow"
    assert likeliest(row_of("feed-pin", "resistive", 45.0), HIGH, Sign.FAN) == "dead"


def test_the_relay_clicks_unless_its_coil_gets_nothing_or_it_is_welded(likeliest, row_of):
    assert likeliest(0, HIGH, Sign.CLICK) == "heard"
    assert likeliest(row_of("contact", "open"), HIGH, Sign.CLICK) == "heard"
    for element, mode in (("coil", "open"), ("key", "open"), ("contact", "shorted")):
        assert likeliest(row_of(element, mode), HIGH, Sign.CLICK) == "none"
    assert likeliest(0, OFF, Sign.CLICK) == "none"


def test_a_tap_starts_a_worn_motor_that_stands_and_is_asked_for(likeliest, row_of, predictions):
    worn = row_of("motor", "open")
    assert likeliest(worn, HIGH, Sign.TAP) == "starts"
    assert likeliest(row_of("fuse", "open"), HIGH, Sign.TAP) == "nothing"
    starts = SIGN_VALUES[Sign.TAP].index("starts")
    for state, row in ((HIGH, 0), (STANDS, worn), (OFF, worn)):
        assert predictions.at(state).signs[Sign.TAP][row, starts] == pytest.approx(SLIP, abs=0.01)


def test_the_wheel_is_stiff_where_the_profile_says_so(likeliest, row_of):
    assert likeliest(row_of("motor", "seized"), OFF, Sign.WHEEL) == "stiff"
    assert likeliest(row_of("motor", "open"), OFF, Sign.WHEEL) == "free"
    assert likeliest(0, OFF, Sign.WHEEL) == "free"
