"""Currents over dates: figures of one speed, and of several stretches at it."""

from dataclasses import replace
from pathlib import Path

import pytest

from meterlog.model import Step
from meterlog.work.library import Hit, Kind, Verdicts, series_of
from meterlog.work.library.hit import SpeedCurrent, currents_of, currents_text
from meterlog.work.library.judging import currents_of_steps

HIT = Hit(
    *(Path("a"), Kind.RUN, "2026-03-04T10:00:00", *[""] * 7, 10.0, "", "sealed", ""),
    *(Verdicts.IN_ORDER, "", ""),
)


def hit(day, *currents):
    started = f"2026-03-{day:02d}T12:00:00" if day else ""
    text = currents_text(tuple(SpeedCurrent(*one) for one in currents))
    return replace(HIT, started=started, currents_json=text)


def test_mean_and_spread_of_each_speed_by_date_undated_last():
    low, high = series_of(
        [hit(9, (1, 4.0, 0.1), (3, 8.0, None)), hit(0, (1, 5.0, None)), hit(2, (1, 3.0, 0.2))]
    )
    assert (low.speed, high.speed) == (1, 3)
    assert [one.mean_a for one in low.points] == [3.0, 4.0, 5.0]
    assert low.points[-1].day is None
    assert low.points[1].day - low.points[0].day == 7.0
    assert (low.mean_a, low.spread_a) == (4.0, 1.0)
    assert (low.low_a, low.high_a) == (2.8, 5.0)
    assert (high.mean_a, high.spread_a) == (8.0, None)
    assert series_of([]) == ()


def test_stretches_at_one_speed_weigh_by_length_and_share_their_uncertainty():
    def step(speed, seconds, amps, u):
        return Step(speed, 0, round(seconds * 1e9), steady_mean_a=amps, steady_expanded_a=u)

    found = currents_of_steps(
        [
            *(step(2, 30, -6.0, 0.2), step(2, 10, -4.0, 0.1), step(0, 9, 0.0, 0.1)),
            *(step(None, 9, 3.0, 0.1), step(1, 5, None, None), step(3, 5, 7.0, None)),
        ]
    )
    assert found == (SpeedCurrent(2, pytest.approx(5.5), 0.2), SpeedCurrent(3, 7.0, None))


@pytest.mark.parametrize("text", ["", "{}", "[1]", '[["a", 1, 2]]', "null"])
def test_figures_that_can_not_be_read_are_none(text):
    assert currents_of(text) == ()
