"""Windows that were cut anywhere within a ripple are cut alike before they are laid over."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.analysis.ripple.cuts import later_by
from meterlog.analysis.ripple.tracking import PLACES
from meterlog.analysis.ripple.turn import differs_by_halves, lay_over

RIPPLES = 18


def window(begins, repeats=30, seed=1):
    """A turn of 18 ripples with a sharp notch, cut ``begins`` ripples after its beginning."""
    count = repeats * RIPPLES * PLACES
    place = (begins + (np.arange(count) + 0.5) / PLACES) % RIPPLES
    wave = 0.01 * np.sin(np.pi * place) ** 2 - 0.6 * np.exp(-(((place - 5.3) / 0.4) ** 2))
    wave += np.random.default_rng(seed).normal(0.0, 0.004, count)
    return wave.reshape(-1, PLACES)


@settings(max_examples=25)
@given(
    begins=st.lists(st.integers(0, 4 * RIPPLES), min_size=2, max_size=4),
    parts=st.sampled_from([2, 3, 4, 5]),
)
def test_every_window_is_told_what_brings_it_to_the_cut_of_the_first(begins, parts):
    windows = [window(begin / parts, seed=k) for k, begin in enumerate(begins)]
    later = later_by(windows, RIPPLES, 4 + 1 / parts)
    assert all(0.0 <= late < 1.0 for late in later)
    for begin, late in zip(begins, later, strict=True):
        apart = begin / parts + late - begins[0] / parts
        assert apart == pytest.approx(round(apart), abs=1e-9)


@pytest.mark.parametrize("ratio", [1.0, 2.0, 10.000000000000002])
def test_a_line_that_leaves_nothing_open_moves_no_cut(ratio):
    assert later_by([window(0.0), window(0.5)], RIPPLES, ratio) == [0.0, 0.0]


def test_windows_cut_unalike_seem_to_differ_turn_by_turn_and_cut_alike_do_not():
    begins = (0.0, 9.5, 18.5)
    repeats = (30, 31, 31)
    unalike = [window(b, n, k) for k, (b, n) in enumerate(zip(begins, repeats, strict=True))]
    later = later_by(unalike, RIPPLES, 4.5)
    alike = [
        window(b + late, n, k)
        for k, (b, n, late) in enumerate(zip(begins, repeats, later, strict=True))
    ]
    smeared, sharp = (lay_over(windows, RIPPLES) for windows in (unalike, alike))
    assert sharp.heights.min() < smeared.heights.min() - 0.05
    assert not differs_by_halves(alike, RIPPLES)
