"""The probability by chance of a tap test, against a closed form and another library.

Sources
-------
Sum of independent uniform variables (Irwin-Hall distribution): P. Hall, Biometrika 19 (1927)
240-245; the first piece of its distribution is x^n / n!.
Monte Carlo test, p = (b + 1) / (m + 1): ``scipy.stats.monte_carlo_test``, which cites B. Phipson,
G. K. Smyth, "Permutation P-values Should Never Be Zero", Stat. Appl. Genet. Mol. Biol. 9 (2010)
article 39.
Several taps, one return each, "1 of 5 only" against "3 of 3": common practice, no source.
"""

import math

import numpy as np
import pytest
from scipy import stats

from meterlog.analysis.taps.chance import chance_of, returns_of
from meterlog.analysis.taps.gone_stretches import GoneStretch
from meterlog.model import SpanKind

REACH = 2_000_000_000
LATE_S = 0.5


def stretch(start_s, end_s, edge_s):
    """Give a stretch that begins with a command, so that all of it is open to taps."""
    first, last, edge = (round(one * 1e9) for one in (start_s, end_s, edge_s))
    return GoneStretch(first, last, edge, (SpanKind.DEAD,), False, True, True)


@pytest.mark.parametrize(("count", "delay_s"), [(1, 0.2), (2, 0.15), (2, 0.25)])
def test_one_return_and_few_taps_follow_the_irwin_hall_distribution(count, delay_s):
    open_s = 3.0
    end_s = open_s - LATE_S
    returns = returns_of([stretch(0.0, end_s, 0.008)], REACH)
    taps = [[round((end_s - delay_s) * 1e9)]] * count
    p, arrangements = chance_of(taps, returns)
    # Up to half a second on either side counts: a distance is uniform with density 2 / open_s.
    expected = (2.0 * count * delay_s / open_s) ** count / math.factorial(count)
    assert arrangements == round(open_s / 0.008) ** count
    assert p == pytest.approx(expected, rel=0.08)


def test_three_taps_follow_it_too_where_arrangements_are_drawn():
    open_s, delay_s = 3.0, 0.16
    returns = returns_of([stretch(0.0, open_s - LATE_S, 0.001)], REACH)
    p, arrangements = chance_of([[round((open_s - LATE_S - delay_s) * 1e9)]] * 3, returns)
    expected = (2.0 * 3 * delay_s / open_s) ** 3 / 6.0
    assert arrangements == 9999
    # Four deviations of a binomial count of that chance.
    assert p == pytest.approx(expected, abs=4.0 * math.sqrt(expected / 9999))


def test_dropouts_of_several_lengths_agree_with_a_monte_carlo_test():
    ends = np.array([9.0, 21.5, 34.0, 45.0])
    starts = np.array([4.0, 15.0, 32.0, 40.0])
    edge_s = 0.02
    returns = returns_of([stretch(a, b, edge_s) for a, b in zip(starts, ends, strict=True)], REACH)
    taps = np.array([8.7, 21.2, 44.4])

    def distance(t):
        after = np.where(ends >= t[..., None], ends - t[..., None], np.inf).min(axis=-1)
        before = np.where(ends < t[..., None], t[..., None] - ends, np.inf).min(axis=-1)
        near = np.minimum(
            np.where(after <= 2.0, after, np.inf), np.where(before <= LATE_S, before, np.inf)
        )
        return np.minimum(np.maximum(near, edge_s), 2.0)

    lengths = ends - starts + LATE_S
    dice = np.random.default_rng(3)

    def placed(size):
        which = dice.choice(len(ends), size=size, p=lengths / lengths.sum())
        return starts[which] + dice.uniform(0.0, 1.0, size) * lengths[which]

    referee = stats.monte_carlo_test(
        taps,
        placed,
        lambda t, axis: distance(t).sum(axis=axis),
        vectorized=True,
        n_resamples=9999,
        alternative="less",
    )
    p, _ = chance_of([[round(t * 1e9)] for t in taps], returns)
    spread = math.sqrt(referee.pvalue / 9999) * math.sqrt(2.0)
    assert p == pytest.approx(referee.pvalue, abs=4.0 * spread)
    assert 0.001 < p < 0.02
