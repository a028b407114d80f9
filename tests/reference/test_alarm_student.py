"""How far a reading must stand out, against scipy's Student distribution."""

import numpy as np
import pytest
from scipy import stats

from meterlog.analysis.alarm import BUDGET, BUDGET_S, alarm_deviations, student_from_normal
from meterlog.analysis.inferred.tails import Tails


@pytest.mark.parametrize("degrees", [7.4, 15.0, 44.0, 200.0, np.inf])
@pytest.mark.parametrize("z", [1.0, 1.645, 3.0, 4.7, 5.4])
def test_the_tail_beyond_is_that_of_the_normal_one(z, degrees):
    wanted = stats.t.isf(stats.norm.sf(z), degrees)
    assert student_from_normal(z, degrees) == pytest.approx(wanted, rel=0.05)


@pytest.mark.parametrize("z", [1.0, 3.0, 4.7])
def test_with_very_few_degrees_it_is_on_the_safe_side(z):
    wanted = stats.t.isf(stats.norm.sf(z), 3.0)
    assert 0.97 * wanted <= student_from_normal(z, 3.0) <= 1.5 * wanted


@pytest.mark.parametrize("interval_s", [0.005, 0.02, 0.4])
def test_ten_hours_of_normal_noise_alarm_as_often_as_allowed(interval_s):
    deviations = alarm_deviations(interval_s, np.inf)
    alarms = 2.0 * stats.norm.sf(deviations) * BUDGET_S / interval_s
    assert alarms == pytest.approx(BUDGET, rel=1e-6)


@pytest.mark.parametrize("degrees", [3.0, 5.0])
def test_tails_heavier_than_normal_are_recognised_by_their_degrees(degrees):
    tails = Tails()
    values = stats.t.rvs(degrees, size=60_000, random_state=1) / stats.t.ppf(0.75, degrees)
    tails.take(values * stats.norm.ppf(0.75))
    assert tails.degrees() == pytest.approx(degrees, rel=0.25)


def test_normal_tails_are_taken_for_normal_whatever_the_count():
    rng = np.random.default_rng(2)
    for count in (1500, 20_000, 200_000):
        for _ in range(10):
            tails = Tails()
            tails.take(rng.normal(size=count))
            assert tails.degrees() >= 30.0
