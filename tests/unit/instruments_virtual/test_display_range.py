import pytest

from meterlog.instruments.virtual.display_range import AutoRange, display_range
from meterlog.model import Accuracy


def in_range(top, resolution, scale=1.0):
    return display_range(top, Accuracy(0.5, 2.0, resolution), scale)


@pytest.mark.parametrize(
    ("top", "resolution", "multiplier", "point", "value", "number"),
    [
        (600.0, 0.1, "", 3, 123.4, 1234),
        (60.0, 0.01, "", 2, -12.47, 1247),
        (6.0, 0.001, "", 1, 5.999, 5999),
        (0.6, 0.0001, "m", 3, 0.1234, 1234),
        (0.06, 0.00001, "m", 2, 0.05, 5000),
        (0.000_6, 1e-7, "u", 3, 0.000_5, 5000),
        (1000.0, 1.0, "", 0, 999.0, 999),
    ],
)
def test_four_digits_show_a_range_with_point_and_multiplier(
    top, resolution, multiplier, point, value, number
):
    found = in_range(top, resolution)
    assert (found.multiplier, found.point) == (multiplier, point)
    assert found.number(value) == number


def test_more_counts_than_four_digits_hold_are_shown_in_larger_steps():
    found = in_range(60.0, 0.001)
    assert found.accuracy.resolution == pytest.approx(0.01)
    assert found.number(59.99) == 5999


def test_a_range_in_amperes_is_shown_in_the_volts_of_its_shunt():
    found = in_range(100.0, 0.1, scale=100.0)
    assert found.accuracy.resolution == pytest.approx(0.1)
    assert (found.multiplier, found.point) == ("", 1)


def auto():
    return AutoRange(tuple(in_range(top, top / 6000) for top in (0.6, 6.0, 60.0)))


def test_the_range_follows_the_value_and_does_not_go_to_and_fro_at_its_edge():
    one = auto()
    assert one.fit(0.3)
    assert one.now.top == 0.6
    assert one.fit(12.0)
    assert one.now.top == 60.0
    assert not one.fit(5.8)
    assert one.fit(5.3)
    assert one.now.top == 6.0
    assert not one.fit(-5.9)
    assert one.fit(-6.1)


def test_the_range_key_keeps_the_range_then_goes_round():
    one = auto()
    one.fit(3.0)
    one.press()
    assert (one.now.top, one.automatic) == (6.0, False)
    assert not one.fit(100.0)
    tops = []
    for _ in range(3):
        one.press()
        tops.append(one.now.top)
    assert tops == [60.0, 0.6, 6.0]
