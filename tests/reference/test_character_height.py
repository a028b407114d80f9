"""Height of digits against ISO 9241-303:2011 (2 D tan(alpha / 2))."""

import pytest

from meterlog.window.reading_distance import FULL_SCREEN_MM, cap_height_mm, pixels_per_mm


@pytest.mark.parametrize(
    ("distance_mm", "minutes", "height_mm"),
    [
        (500, 16, 2.33), (500, 22, 3.20), (700, 20, 4.07), (1000, 16, 4.65),
        (1500, 22, 9.60), (2000, 16, 9.31), (2000, 20, 11.64), (2000, 22, 12.80),
    ],
)  # fmt: skip
def test_character_heights_are_those_of_the_standard(distance_mm, minutes, height_mm):
    """Values by the formula as the published table of references gives them, mm."""
    assert cap_height_mm(distance_mm, minutes) == pytest.approx(height_mm, abs=0.005)


def test_full_screen_digits_are_more_than_the_standard_asks_for_at_three_metres():
    assert 2 * cap_height_mm(3000, 22) <= FULL_SCREEN_MM


class Screen:
    def __init__(self, physical, logical):
        self.physicalDotsPerInchY = lambda: physical
        self.logicalDotsPerInchY = lambda: logical


@pytest.mark.parametrize(
    ("screen", "dots"),
    [
        (Screen(127.0, 96.0), 127.0),
        (Screen(0.0, 110.0), 110.0),
        (Screen(9e9, 1.0), 96.0),
        (None, 96.0),
    ],
)
def test_a_screen_that_does_not_know_its_size_is_taken_as_usual(screen, dots):
    assert pixels_per_mm(screen) == pytest.approx(dots / 25.4)
