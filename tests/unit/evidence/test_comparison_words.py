"""A comparison for JSON and for a terminal."""

import json
import math
from dataclasses import replace

from meterlog.analysis.budgets import budget
from meterlog.evidence.comparison_json import comparison_to_dict
from meterlog.evidence.comparison_text import comparison_lines
from meterlog.model import (
    ComparedRun,
    Comparison,
    ConditionCheck,
    FigureDifference,
    Overlay,
    Source,
    StepDifference,
    Verdict,
)

OLD = ComparedRun("old", "id-1", "", "2030-01-01T08:30:00+00:00", "measured")
NEW = ComparedRun("new", "id-2", "part 7 (invented)", "2030-01-02T08:30:00+00:00", "measured")


def _budget(value, u):
    return budget("x", value, "A", (Source("s", u, "A"),) if u else ())


def _comparison(**more):
    step = StepDifference(
        speed=4, old_v=12.0, new_v=13.4, reference_v=13.0, old_a=_budget(10.0, 0.1),
        new_a=_budget(12.0, 0.0), difference_a=_budget(2.0, 0.1), ratio=_budget(1.2, 0.01),
        baseline_mean_a=None, baseline_sd_a=None, tolerance_a=None, count=0,
        verdict=Verdict.FAIL, probability=math.nan, words="Speed 4: " + "words " * 40,
    )  # fmt: skip
    return Comparison(**{
        "old": (OLD,), "new": NEW, "refusal": "",
        "conditions": (
            ConditionCheck("filter", "used", "new", "differs", "it makes a difference"),
            ConditionCheck("windows", "", "", "not stated", "they make some"),
        ),
        "steps": (step,),
        "overlays": (Overlay("time", None, (0.1, 0.1), (math.nan, math.nan), (1.0, 2.0)),),
        "notes": ("A note. " * 30,),
        "summary": "In short. " * 30,
        "figures": (FigureDifference("start-up peak", "A", 4, 40.0, 38.0, "Peaks."),),
        **more,
    })  # fmt: skip


def test_json_is_strict_and_holds_no_number_that_is_none():
    told = comparison_to_dict(_comparison())
    json.loads(json.dumps(told, allow_nan=False))
    assert told["overlays"][0]["old_a"] == [None, None]
    assert told["steps"][0]["probability"] is None


def test_a_value_of_which_no_uncertainty_is_known_has_none():
    (step,) = comparison_to_dict(_comparison())["steps"]
    assert step["new_a"] == 12.0
    assert step["new_expanded_a"] is None
    assert step["old_expanded_a"] > 0.19
    assert step["ratio"] == 1.2
    assert step["ratio_expanded"] > 0.0


def test_lines_fit_and_name_both_sides():
    lines = comparison_lines(_comparison())
    assert max(len(line) for line in lines) <= 100
    text = "\n".join(lines)
    assert "old: old (measured, 2030-01-01 08:30 UTC)" in text
    assert "new: new, part 7 (invented)" in text
    assert "filter: used / new, differs" in text
    assert "not stated on either side: windows" in text
    assert "Peaks." in text


def test_a_refusal_has_no_table():
    refused = _comparison(refusal="Because.", steps=(), overlays=(), figures=(), notes=())
    text = "\n".join(comparison_lines(refused))
    assert "verdict" not in text
    assert "In short." in text


def test_that_two_motors_differ_is_not_called_a_failure_of_the_new_one():
    """A sound new motor differs from the bad old one, as it should."""
    pair = _comparison()
    text = "\n".join(comparison_lines(pair))
    assert "they differ" in text
    assert "fail" not in text
    assert "no fault of the new one" in comparison_to_dict(pair)["verdict_says"]
    held = _comparison(max_difference_percent=5.0)
    assert "fail" in "\n".join(comparison_lines(held))
    assert comparison_to_dict(held)["max_difference_percent"] == 5.0


def test_where_a_known_uncertainty_covers_the_difference_none_is_seen():
    """As the sentence beneath says; the window says the same in its own words."""
    pair = _comparison()
    covered = replace(
        *pair.steps, verdict=Verdict.CANT_TELL, probability=0.4, difference_a=_budget(0.1, 0.1)
    )
    assert "none seen" in "\n".join(comparison_lines(replace(pair, steps=(covered,))))
    for untold in (
        replace(covered, probability=None),
        replace(covered, difference_a=_budget(2.0, 0.1)),
        replace(covered, difference_a=None),
    ):
        text = "\n".join(comparison_lines(replace(pair, steps=(untold,))))
        assert "none seen" not in text
        assert "can't tell" in text
    held = replace(pair, steps=(covered,), max_difference_percent=5.0)
    assert "none seen" not in "\n".join(comparison_lines(held))


def test_a_run_of_unknown_date_is_not_said_to_be_of_1970():
    undated = replace(OLD, started_utc="")
    lines = comparison_lines(_comparison(old=(undated,)))
    assert lines[0] == "old: old (measured, at a time that is not known)"
    assert lines[1] == "new: new, part 7 (invented) (measured, 2030-01-02 08:30 UTC)"
