"""Card and run are held against each other where both say something that can be."""

import pytest

from meterlog.model import Conditions
from meterlog.model.card_contradictions import contradictions
from meterlog.model.job_card import JobCard


def _told(card_filter="", run_filter="", battery="", battery_v=None):
    card = JobCard(filter=card_filter, battery=battery)
    return contradictions(card, Conditions(filter=run_filter, battery_v=battery_v), "before the x")


def test_both_values_are_told_as_they_stand():
    filters, battery = _told("clogged", "used", "12,4 V, 3 years", 12.6)
    assert "'clogged'" in filters
    assert "'used'" in filters
    assert "the run before the x" in filters
    assert "'12,4 V, 3 years'" in battery
    assert "12.6 V" in battery


@pytest.mark.parametrize(
    ("said", "stated"),
    [
        ("", "used"), ("clogged", ""), ("Used, some dust", "used"), ("not new", "used"),
        ("dusty", "used"), ("clogged, now new", "used"), ("clogged", "my own word"),
    ],
)  # fmt: skip
def test_a_filter_that_agrees_or_can_not_be_held_against_it_says_nothing(said, stated):
    assert _told(said, stated) == ()


@pytest.mark.parametrize(
    ("said", "stated_v"),
    [
        ("12.4 V", None), ("", 12.6), ("12 V 70 Ah", 12.6), ("12.5 V", 12.6), ("12.6V", 12.6),
        ("3.5 years", 12.6), ("12.4 V, later 12.9 V", 12.6), ("fitted 1.12.4 V", 12.6),
    ],
)  # fmt: skip
def test_a_battery_that_agrees_or_can_not_be_held_against_it_says_nothing(said, stated_v):
    assert _told(battery=said, battery_v=stated_v) == ()


@pytest.mark.parametrize("said", ["12.4 V", "at rest 12,40 volts", "12.4v new"])
def test_a_battery_that_was_read_otherwise_is_told(said):
    (told,) = _told(battery=said, battery_v=12.6)
    assert repr(said) in told
