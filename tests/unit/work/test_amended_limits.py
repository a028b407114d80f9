"""One limit changed is the limits file with that one line changed, held to the same rules."""

from dataclasses import replace

import pytest

from meterlog.model import DecisionRule, Limits
from meterlog.model.errors import ProfileError, UsageError
from meterlog.profile import limits_profile, load_limits, names
from meterlog.work.amended_limits import limit_values, with_limit


def bare(limits):
    return replace(limits, name="", text="")


@pytest.mark.parametrize("name", names("limits"))
def test_all_other_limits_stay_as_they_were(name):
    limits = load_limits(name)
    for key, value in limit_values(limits).items():
        same = with_limit(limits, key, value)
        assert bare(same) == bare(limits)
        assert same.name == f"{name}, amended"
        assert bare(limits_profile("x", same.text, "x")) == bare(limits)


def test_a_limit_is_set_and_taken_away_and_the_name_says_it_once():
    limits = load_limits("linear-12v")
    once = with_limit(limits, "speed.2.max_a", "5,5")
    assert once.at(2).max_a == 5.5
    assert once.at(2).min_a == limits.at(2).min_a
    twice = with_limit(with_limit(once, "speed.2.max_a", ""), "decision", "simple")
    assert twice.at(2).max_a is None
    assert twice.decision is DecisionRule.SIMPLE
    assert twice.name == "linear-12v, amended"
    assert limit_values(twice)["speed.2.max_a"] == ""


def test_limits_without_a_file_can_be_amended_too():
    with_fuse = with_limit(Limits(basis='a "quoted" \\ basis\x7f\nand more'), "fuse.rating_a", "15")
    assert with_fuse.fuse.rating_a == 15
    assert with_fuse.basis == 'a "quoted" \\ basis\x7f\nand more'
    assert with_limit(Limits(), "at_reference", "true").at_reference
    assert with_limit(Limits(), "speed.7.max_a", "9", (7,)).at(7).max_a == 9


@pytest.mark.parametrize(
    ("key", "value", "words"),
    [
        ("foo", "1", "no such limit"),
        ("name", "x", "no such limit"),
        ("speed.9.max_a", "1", "no such limit"),
        ("open_current_a", "", "can't be without"),
        ("open_current_a", "nan", "is no number"),
        ("open_current_a", "3 A", "is no number"),
        ("at_reference", "yes", "true or false"),
        ("open_current_a", "99", "not below locked_current_a"),
        ("speed.1.min_a", "50", "above max_a"),
        ("decision", "maybe", "Expected one of"),
        ("fuse.kind", "glass\n", "fuse.kind"),
        ("hysteresis", "0.9", "Expected 0 to 0.5"),
    ],
)
def test_what_is_no_limit_or_no_value_for_it_is_refused(key, value, words):
    with pytest.raises((UsageError, ProfileError), match=words):
        with_limit(load_limits("linear-12v"), key, value)
