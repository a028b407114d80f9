"""The height of a ripple, and its figures written to one place."""

import numpy as np
import pytest

from meterlog.analysis.ripple.views import peak_to_peak
from meterlog.analysis.ripple.words import Extras, statement
from meterlog.model import RippleView


@pytest.mark.parametrize("wave", [1, 2, 3])
@pytest.mark.parametrize("turned", [0.0, 0.1, 0.37])
def test_the_means_of_eighths_of_a_sine_give_its_whole_height(wave, turned):
    """The means are its integral, by hand; as they stand those of the first reach but 0.90."""
    edges = np.arange(9) / 8.0
    integral = -np.cos(2.0 * np.pi * (wave * edges + turned)) / (2.0 * np.pi * wave)
    means = 8.0 * np.diff(integral)
    assert peak_to_peak(means) == pytest.approx(2.0, abs=0.005)
    assert np.ptp(means) < 1.96


def test_a_figure_and_its_uncertainty_stand_to_one_place():
    view = RippleView(
        3, 0, 1, 25000.0, "", None, commutation_hz=630.00099, commutation_u_hz=0.282,
        ripples_per_turn=12, turns_rpm=3150.00495, turns_u_rpm=1.41, ripple_percent=7.0,
    )  # fmt: skip
    words = statement(view, Extras(turns=100, why_no_bars="too few"))
    assert words.startswith("Ripple of 630.00 ± 0.28 Hz, 7 % of the mean; 12 ripples a turn,")
    assert "hence 3,150.0 ± 1.4 turns a minute" in words
