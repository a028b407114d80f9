"""The findings as a table of text and the review as JSON."""

import json

from meterlog.evidence import findings_table, review_to_dict
from meterlog.model import Review


def test_the_table_has_a_line_and_a_sentence_for_each_finding(desk):
    lines = findings_table(desk.review(), width=80).splitlines()
    assert lines[0].split() == [
        "verdict", "finding", "from", "s", "to", "s", "±", "s", "speed", "value", "limit",
    ]  # fmt: skip
    assert lines[2].split() == [
        "fail", "dead", "1.000", "3.000", "0.000", "2", "0.010", "±", "0.020", "A", "0.3", "A",
    ]  # fmt: skip
    assert lines[3] == "    No current for 2.0 s although 12.5 V stood across the motor."
    assert lines[4].startswith("can't tell")
    assert max(map(len, lines)) <= 100
    # columns stand beneath each other
    assert lines[0].index("limit") + len("limit") == lines[2].index("0.3 A") + len("0.3 A")


def test_no_findings_say_so():
    assert findings_table(Review()) == "No findings.\n"


def test_the_json_object_is_strict_and_in_seconds(desk):
    found = json.loads(json.dumps(review_to_dict(desk.review()), allow_nan=False))
    assert found["spans"][1] == {
        "kind": "dead",
        "start_s": 1.0,
        "end_s": 3.0,
        "edge_s": 2e-6,
        "start_edge_s": 1e-6,
        "end_edge_s": 2e-6,
        "speed": 2,
        "detail": "full voltage, no current",
        "settled_by": [],
    }
    (step,) = found["steps"]
    assert (step["speed"], step["n"], step["mean_a"], step["min_a"]) == (2, 20, 5.0, 4.0)
    assert step["steady_mean_a"] is None
    dead, step_current = found["findings"]
    assert (dead["value"], dead["unit"], dead["expanded_uncertainty"]) == (0.01, "A", 0.02)
    assert (dead["coverage_factor"], dead["limit"], dead["verdict"]) == (2, 0.3, "fail")
    assert step_current["value"] is None
    assert found["shortest_visible_dropout_s"] == 0.2
    assert found["catch_chances"] == [{"duration_s": 0.1, "chance": 0.5}]
    assert found["notes"] == ["Accuracy not stated."]


def test_an_empty_review_has_all_keys():
    assert review_to_dict(Review()) == {
        "one_part": "",
        "verdict": None,
        "decision_rule": "",
        "spans": [],
        "steps": [],
        "budgets": [],
        "findings": [],
        "taps": None,
        "inferred": [],
        "pulsed": [],
        "rhythm": None,
        "startups": [],
        "fuse": None,
        "motor": None,
        "heat": [],
        "ripple": [],
        "shortest_visible_dropout_s": None,
        "brief_dropouts": {"count": 0, "together_s": 0.0},
        "catch_chances": [],
        "doubts": [],
        "notes": [],
    }
