"""Which dropouts, too short to be seen, may still leave a dip."""

from dataclasses import replace

import pytest

from meterlog.analysis.visibility import dip_note, shortest_dip_s, shortest_visible_s
from meterlog.model import Channel, Quantity, Role, Step

METER = Channel(
    "amps", Quantity.CURRENT, Role.MOTOR_CURRENT, interval_s=0.4, integration_s=0.3
)  # fmt: skip
STEP = Step(4, 0, 1, steady_mean_a=-10.0, steady_sd_a=0.1)


def test_a_dip_is_as_deep_as_the_part_of_the_window_that_is_open():
    # A dip must be 4.73 deviations of 1 % each, of 300 ms.
    assert shortest_dip_s(0.3, 0.4, 10.0, 0.1) == pytest.approx(0.3 * 0.0473, rel=0.01)
    # Without noise three per cent must be gone.
    assert shortest_dip_s(0.3, 0.4, 10.0, 0.0) == pytest.approx(0.3 * 0.03)
    assert shortest_dip_s(0.3, 0.4, 10.0, 3.0) is None
    assert shortest_dip_s(0.3, 0.4, 0.0, 0.1) is None


def test_it_is_shorter_than_what_is_sure_to_be_seen():
    least = shortest_dip_s(0.3, 0.4, 10.0, 0.1)
    assert least is not None
    assert least < shortest_visible_s(METER, 0.05)


def test_the_note_names_the_best_step_and_only_meters_that_average():
    (note,) = dip_note(METER, [STEP, replace(STEP, steady_mean_a=1.0)])
    assert "from about 14 ms on" in note
    assert "never measured" in note
    assert not dip_note(METER, [])
    assert not dip_note(replace(METER, integration_s=0.0), [STEP])
    assert not dip_note(replace(METER, interval_s=0.001, integration_s=0.001), [STEP])
