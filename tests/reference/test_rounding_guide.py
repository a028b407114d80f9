"""Values written with their uncertainty.

Source: JCGM 100:2008, 7.2.6 (10.05762 ohm with 27 mohm is given as 10.058).
"""

import pytest

from meterlog.analysis import with_uncertainty


@pytest.mark.parametrize(
    ("value", "u", "text"),
    [
        (10.05762, 0.027, "10.058 ± 0.027 ohm"),
        (12345.6, 234.0, "12350 ± 230 ohm"),
        (12345.6, 1960.0, "12300 ± 2000 ohm"),
        (-4.0, 99.6, "0 ± 100 ohm"),
        (28.05, 1.04, "28.1 ± 1.0 ohm"),
        (0.0022, 0.0035186, "0.0022 ± 0.0035 ohm"),
        (13.6, 0.0996, "13.60 ± 0.10 ohm"),
        (127.732, 71.2, "128 ± 71 ohm"),
        (-0.0001, 0.12, "0.00 ± 0.12 ohm"),
        (5.0, 0.0, "5.000 ± 0.000 ohm"),
        (5.0, None, "5.000 ohm"),
    ],
)
def test_the_value_reaches_as_far_as_its_uncertainty(value, u, text):
    assert with_uncertainty(value, u, "ohm") == text


def test_a_mean_half_way_is_shown_alike_whatever_its_last_bit():
    """Half-way values are common where readings have few digits; no source."""
    for bits in (-4, -1, 0, 1, 4):
        value = 12.3375 + bits * 2.0**-49
        assert with_uncertainty(value, 0.083, "V") == with_uncertainty(12.3375, 0.083, "V")
