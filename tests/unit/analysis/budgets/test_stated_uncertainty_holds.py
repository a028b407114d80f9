"""What is stated against meters drawn at random within their own statements.

Independent of the budgets: each run draws a gain, a digits error for each channel, a clamp and the
scatter of each reading, and reads known true values. All figures are invented.
"""

import numpy as np
import pytest

RUNS = 20_000
READINGS = 25


@pytest.fixture
def drawn(bench):
    """Give errors of current and motor voltage of many meters, and the step with its budgets."""
    rng = np.random.default_rng(11)

    def within(half):
        return rng.uniform(-half, half, RUNS)

    gain_v, gain_a, clamp = within(0.005), within(0.01), within(0.02)
    amps = 8.0 * (gain_a + clamp) + within(0.03) + within(0.1)
    volts = 9.0 * gain_v + within(0.02) - within(0.02)
    amps += rng.normal(0.0, 0.09, (READINGS, RUNS)).mean(axis=0)
    volts += rng.normal(0.0, 0.04, (READINGS, RUNS)).mean(axis=0)
    maker = bench.one_meter(**bench.behind_clamp())
    plain = bench.step.__class__(
        2, 0, 20_000_000_000, steady_n=READINGS, steady_mean_v=9.0, steady_mean_a=8.0,
        steady_sd_a=0.09, steady_volts_n=READINGS, steady_sd_v=0.04, steady_feed_v=12.0,
        steady_back_v=3.0,
    )  # fmt: skip
    (step,) = maker.with_budgets([plain])
    return amps, volts, step


@pytest.mark.parametrize("figure", ["current", "voltage", "power", "ratio"])
def test_the_truth_lies_within_the_stated_uncertainty_19_times_in_20(drawn, figure):
    amps, volts, step = drawn
    read_a, read_v = 8.0 + amps, 9.0 + volts
    off = {
        "current": amps,
        "voltage": volts,
        "power": read_a * read_v - 72.0,
        "ratio": read_v / read_a - 9.0 / 8.0,
    }[figure]
    made = getattr(step, figure)
    covered = float(np.mean(np.abs(off) <= made.expanded))
    assert covered >= 0.95
    # Not so wide that it says nothing: percent and digits of one statement count as one sum.
    assert made.combined_u <= 1.6 * float(off.std())
