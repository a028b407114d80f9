"""The decision rule in words for people who read a review."""

from meterlog.analysis.budgets import rule_words
from meterlog.model import DecisionRule, Limits


def test_guard_bands_are_told_with_their_width():
    words = rule_words(Limits())
    assert "by at least its expanded uncertainty U" in words
    assert "in between: can't tell" in words
    assert "by at least 1.5 times its expanded uncertainty" in rule_words(Limits(guard_factor=1.5))


def test_simple_acceptance_warns_of_verdicts_close_to_a_limit():
    words = rule_words(Limits(decision=DecisionRule.SIMPLE))
    assert "The value alone decides" in words
    assert "one time in two" in words


def test_a_review_says_its_rule(trace):
    legs = [trace.Leg(5.0, *trace.NORMAL[4])]
    events = [trace.speed(0.0, 4)]
    assert trace.review(legs, events).decision_rule == rule_words(Limits())
    simple = trace.limits(decision=DecisionRule.SIMPLE)
    assert "simple acceptance" in trace.review(legs, events, lim=simple).decision_rule
