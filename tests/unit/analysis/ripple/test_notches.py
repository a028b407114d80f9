"""The turn followed by a dead bar's notches, where its ripple is no guide."""

import numpy as np
import pytest

from meterlog.analysis.ripple.notches import ripples_between
from meterlog.analysis.ripple.turn import PLACES, differs_by_halves


def pattern(ripples, *, high=0.004, deep=0.5, noise=0.0004, seed=1):
    """Two notches half a turn apart, each followed by a slow way back, and ripples."""
    place = np.arange(320) / 320.0
    wave = high * np.abs(np.sin(np.pi * ripples * place))
    for middle in (0.13, 0.63):
        since = (place - middle) % 1.0
        wave -= deep * np.where(since < 0.4, np.exp(-since / 0.012), 0.0)
        wave += 0.03 * since * (1.0 - since)
    return wave + np.random.default_rng(seed).normal(0.0, noise, len(wave))


@pytest.mark.parametrize("ripples", [8, 12, 18, 22, 26, 38, 46])
def test_ripples_a_hundredth_as_high_as_the_notches_are_counted_between_them(ripples):
    assert ripples_between(pattern(ripples)) == ripples


def test_notches_without_a_ripple_between_them_give_no_count():
    assert [ripples_between(pattern(20, high=0.0, seed=k)) for k in range(10)] == [None] * 10


def rivalled(ripples, rival, *, high=0.004, seed=1):
    """Ripples beside a wave of a low number, as bars of unlike heights make one."""
    place = np.arange(320) / 320.0
    wave = 0.003 * np.cos(2.0 * np.pi * rival * place + 1.0)
    return pattern(ripples, high=high, seed=seed) + wave


def test_a_count_that_is_rivalled_is_told_where_the_ripples_own_line_told_the_same():
    assert ripples_between(rivalled(38, 10)) is None
    assert ripples_between(rivalled(38, 10), 38) == 38


def test_a_count_that_was_thought_is_not_told_where_no_such_ripple_is():
    for seed in range(2):
        for thought in (8, 20, 38, 60):
            assert ripples_between(rivalled(20, 10, high=0.0, seed=seed), thought) in (None, 10)
    assert ripples_between(rivalled(38, 10), 36) is None


# 301044: windows cut unalike; 300065: a rival to the count; 700192: two counts, one clearer.
@pytest.mark.parametrize("seed", [200016, 200093, 200114, 200323, 200530, 300065, 301044, 700192])
def test_a_dead_bar_whose_notches_drown_the_ripple_is_found_and_numbered(bars, seed):
    result = bars.score(range(seed, seed + 1), dead=True)
    assert (result.found, result.turn_wrong, result.wrong_count) == (1, 0, 0)


def test_a_faint_ripple_no_longer_makes_a_count_of_its_notches(bars):
    view, _ = bars.watched(bars.drawn_motor(100002, dead=True), 100002)
    assert view.ripples_per_turn == 22
    assert [(flaw.bar, flaw.dead) for flaw in view.flaws] == [(1, True)]


def test_brushes_that_differ_at_the_notch_alone_make_it_a_whole_turn(bars):
    view, _ = bars.watched(bars.drawn_motor(200216, dead=True), 200216)
    assert view.ripples_per_turn == 20


def test_halves_that_differ_at_one_ripple_are_told_and_equal_ones_are_not():
    def windows(second):
        dice = np.random.default_rng(4)
        turn = np.zeros((20, PLACES))
        turn[3], turn[13] = -0.26, second
        return [np.tile(turn, (40, 1)) + dice.normal(0.0, 0.02, (800, PLACES)) for _ in range(3)]

    assert differs_by_halves(windows(-0.245), 10)
    assert not differs_by_halves(windows(-0.26), 10)
