"""Statistics against certified values.

Source: NIST Statistical Reference Datasets (StRD), Univariate Summary Statistics: data and
certified mean, standard deviation (n - 1) and lag-1 autocorrelation.
"""

import numpy as np
import pytest

from meterlog.analysis import Moments, Reviewer
from meterlog.model import Block, Channel, Instrument, Limits, Quantity, Role

MICHELSO = """
    299.85 299.74 299.90 300.07 299.93 299.85 299.95 299.98 299.98 299.88 300.00 299.98
    299.93 299.65 299.76 299.81 300.00 300.00 299.96 299.96 299.96 299.94 299.96 299.94
    299.88 299.80 299.85 299.88 299.90 299.84 299.83 299.79 299.81 299.88 299.88 299.83
    299.80 299.79 299.76 299.80 299.88 299.88 299.88 299.86 299.72 299.72 299.62 299.86
    299.97 299.95 299.88 299.91 299.85 299.87 299.84 299.84 299.85 299.84 299.84 299.84
    299.89 299.81 299.81 299.82 299.80 299.77 299.76 299.74 299.75 299.76 299.91 299.92
    299.89 299.86 299.88 299.72 299.84 299.85 299.85 299.78 299.89 299.84 299.78 299.81
    299.76 299.81 299.79 299.81 299.82 299.85 299.87 299.87 299.81 299.74 299.81 299.94
    299.95 299.80 299.81 299.87
"""
MAVRO = """
    2.00180 2.00170 2.00180 2.00190 2.00180 2.00170 2.00150 2.00140 2.00150 2.00150 2.00170 2.00180
    2.00180 2.00190 2.00190 2.00210 2.00200 2.00160 2.00140 2.00130 2.00130 2.00150 2.00150 2.00160
    2.00150 2.00140 2.00130 2.00140 2.00150 2.00140 2.00150 2.00160 2.00150 2.00160 2.00190 2.00200
    2.00200 2.00210 2.00220 2.00230 2.00240 2.00250 2.00270 2.00260 2.00260 2.00260 2.00270 2.00260
    2.00250 2.00240
"""
LOTTERY = """
    162 671 933 414 788 730 817 33 536 875 670 236
    473 167 877 980 316 950 456 92 517 557 956 954
    104 178 794 278 147 773 437 435 502 610 582 780
    689 562 964 791 28 97 848 281 858 538 660 972
    671 613 867 448 738 966 139 636 847 659 754 243
    122 455 195 968 793 59 730 361 574 522 97 762
    431 158 429 414 22 629 788 999 187 215 810 782
    47 34 108 986 25 644 829 630 315 567 919 331
    207 412 242 607 668 944 749 168 864 442 533 805
    372 63 458 777 416 340 436 140 919 350 510 572
    905 900 85 389 473 758 444 169 625 692 140 897
    672 288 312 860 724 226 884 508 976 741 476 417
    831 15 318 432 241 114 799 955 833 358 935 146
    630 830 440 642 356 373 271 715 367 393 190 669
    8 861 108 795 269 590 326 866 64 523 862 840
    219 382 998 4 628 305 747 247 34 747 729 645
    856 974 24 568 24 694 608 480 410 729 947 293
    53 930 223 203 677 227 62 455 387 318 562 242
    428 968
"""


def acc(base):
    return [base + 0.2, *([base + 0.1, base + 0.3] * 500)]


# name: data, certified mean, sd, lag-1, relative tolerance of the sd.
# NumAcc3 and NumAcc4: the data themselves are rounded in binary64, which bounds the reach.
CERTIFIED = {
    "Lottery": (LOTTERY, 518.958715596330, 291.699727470969, -0.120948622967393, 1e-13),
    "Mavro": (MAVRO, 2.00185600000000, 0.000429123454003053, 0.937989183438248, 1e-11),
    "Michelso": (MICHELSO, 299.852400000000, 0.0790105478190518, 0.535199668621283, 1e-12),
    "NumAcc1": ([10000001.0, 10000003.0, 10000002.0], 10000002.0, 1.0, -0.5, 1e-14),
    "NumAcc2": (acc(1.0), 1.2, 0.1, -0.999, 1e-13),
    "NumAcc3": (acc(1e6), 1000000.2, 0.1, -0.999, 1e-9),
    "NumAcc4": (acc(1e7), 10000000.2, 0.1, -0.999, 1e-7),
}


def values_of(name):
    data = CERTIFIED[name][0]
    return np.array(data.split() if isinstance(data, str) else data, dtype=float)


@pytest.mark.parametrize("name", CERTIFIED)
@pytest.mark.parametrize("cut", [1, 7, 10_000])
def test_mean_spread_and_lag_one_agree_with_the_certified_values(name, cut):
    _, mean, sd, lag1, tolerance = CERTIFIED[name]
    values, moments = values_of(name), Moments()
    for start in range(0, len(values), cut):
        moments.add(values[start : start + cut])
    assert moments.n == len(values)
    assert moments.mean == pytest.approx(mean, rel=1e-14)
    assert moments.sd == pytest.approx(sd, rel=tolerance)
    assert moments.lag1 == pytest.approx(lag1, rel=max(tolerance, 1e-10), abs=1e-6)


def test_the_one_pass_formula_would_have_failed_here():
    values = values_of("NumAcc4")
    naive = (values @ values - len(values) * values.mean() ** 2) / (len(values) - 1)
    assert abs(naive - 0.01) > 1e-3


@pytest.mark.parametrize("name", CERTIFIED)
def test_the_figures_of_a_step_are_these_statistics(name):
    _, mean, sd, _, tolerance = CERTIFIED[name]
    values = values_of(name)
    channel = Channel("amps", Quantity.CURRENT, Role.MOTOR_CURRENT, interval_s=0.1)
    reviewer = Reviewer([Instrument("meter", "test", "-", (channel,))], Limits())
    column = np.asfortranarray(values[:, None])
    t_ns = np.arange(len(values), dtype=np.int64) * 100_000_000
    reviewer.feed(Block("meter", t_ns, column, np.zeros(column.shape, np.uint8)))
    (step,) = reviewer.finish().steps
    assert step.n == len(values)
    assert step.mean_a == pytest.approx(mean, rel=1e-14)
    assert step.sd_a == pytest.approx(sd, rel=tolerance)
    assert (step.min_a, step.max_a) == (values.min(), values.max())
    assert step.median_a == np.median(values)


@pytest.mark.parametrize("name", ["Lottery", "NumAcc4"])
def test_many_pieces_longer_than_the_inner_buffer_agree_too(name):
    values = np.tile(values_of(name), 60)
    moments = Moments()
    moments.add(values[:5])
    moments.add(values[5:])
    assert moments.mean == pytest.approx(values.mean(), rel=1e-14)
    assert moments.sd == pytest.approx(values.std(ddof=1), rel=1e-7)
