import math

import pytest

from meterlog.instruments.virtual.commutator import Commutator, CommutatorFigures
from meterlog.instruments.virtual.scenario import dice


def commutator(**figures):
    return Commutator(CommutatorFigures(**figures), dice("test", 1, 1))


def test_a_sound_commutator_is_closed_at_every_angle():
    sound = commutator()
    assert not any(sound.is_open(angle / 100.0) for angle in range(1000))


def test_a_dead_bar_opens_under_either_brush_and_nowhere_else():
    dead = commutator(bars=12, dead_bars=(3,), open_part=0.5)
    turn = [dead.is_open(2.0 * math.pi * k / 36_000) for k in range(36_000)]
    assert sum(turn) / len(turn) == pytest.approx(2 * 0.5 / 12, abs=1e-3)
    middle = 3 * 2.0 * math.pi / 12
    assert dead.is_open(middle)
    assert dead.is_open(middle + math.pi)
    assert not dead.is_open(middle + math.pi / 2)


def test_bar_zero_is_open_on_both_sides_of_the_zero_angle():
    dead = commutator(dead_bars=(0,), open_part=0.5)
    assert dead.is_open(0.1)
    assert dead.is_open(-0.1)
    assert dead.is_open(math.pi - 0.1)
    assert not dead.is_open(0.2)


def test_a_tap_moves_the_shaft_off_the_dead_bar_and_onwards():
    for seed in range(50):
        dead = Commutator(CommutatorFigures(dead_bars=(0, 1)), dice("test", seed, 1))
        angle = dead.tap(0.0)
        assert angle > 0.0
        assert not dead.is_open(angle)
