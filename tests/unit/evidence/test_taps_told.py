"""Tap evidence and verdict, as JSON and as lines."""

import json
from dataclasses import fields

import pytest

from meterlog.evidence.taps_json import taps_to_dict
from meterlog.evidence.taps_text import taps_lines
from meterlog.evidence.verdict_json import verdict_to_dict
from meterlog.evidence.verdict_text import verdict_lines
from meterlog.model import (
    Outcome,
    Ranked,
    RunVerdict,
    Sureness,
    Tap,
    TapCheck,
    TapEvidence,
    Verdict,
)

TAPS = (
    Tap(9_500_000_000, 4, 0.02, 13.6, "dead", "running", 0.12, 0.02, True, False, 1),
    Tap(20_000_000_000, 4, None, float("nan"), "dead", "running", 0.0, 0.3, True, False, 2, True),
    Tap(30_000_000_000, 4, 13.6, 0.0, "running", "dead", None, None, False, True, 3),
)
EVIDENCE = TapEvidence(
    TAPS, 2, 2, 0.0004, 9999,
    (TapCheck("base line", Verdict.CANT_TELL, "4.0 s before and 12.0 s after the taps. " * 4),),
    Verdict.CANT_TELL, "On 2 of 2 taps made while the current was gone, it returned. " * 3,
    3, 0.02, 13.6, 12.1, 12.4, 0.12, 0.02,
)  # fmt: skip
RANKED = Ranked(
    "The motor opens inside.", "motor", Sureness.PROVEN, 0.987,
    ("5 times dead between 10.0 s and 36.0 s " * 4,), ("No zero was taken",), "Turn it. " * 20,
)  # fmt: skip
VERDICT = RunVerdict(Outcome.FAULT, "A fault was found. " * 12, (RANKED,), ("Not tried: 2.",))


def test_the_json_of_the_taps_holds_every_field_in_seconds_and_amperes():
    told = json.loads(json.dumps(taps_to_dict(EVIDENCE), allow_nan=False))
    assert set(told) == {one.name for one in fields(TapEvidence)}
    assert told["taps"][0]["t_s"] == 9.5
    assert told["taps"][1]["after_a"] is None
    assert told["taps"][1]["late"] is True
    assert told["checks"][0]["verdict"] == "can't tell"
    assert (told["chance"], told["slowest_s"]) == (0.0004, 0.12)
    assert {"t_s", *(one.name for one in fields(Tap))} - {"t_ns"} == set(told["taps"][0])


def test_the_json_of_the_verdict_holds_every_field():
    told = json.loads(json.dumps(verdict_to_dict(VERDICT), allow_nan=False))
    # The shorter paragraphs say less of the same, for paper that has no room.
    assert set(told) == {one.name for one in fields(RunVerdict)} - {"shorter"}
    assert set(told["ranked"][0]) == {one.name for one in fields(Ranked)}
    assert told["outcome"] == "fault found"
    assert told["ranked"][0]["sureness"] == "proven"


def test_where_there_is_nothing_none_is_told():
    assert taps_to_dict(None) is None
    assert verdict_to_dict(None) is None
    assert taps_lines(None) == verdict_lines(None) == []


@pytest.mark.parametrize("lines", [taps_lines(EVIDENCE), verdict_lines(VERDICT)])
def test_no_line_is_wider_than_a_terminal(lines):
    assert max(map(len, lines)) <= 100


def test_the_lines_of_the_taps_say_what_each_did():
    text = "\n".join(taps_lines(EVIDENCE))
    assert "back after 0.12 s (± 0.02 s)" in text
    assert "back up to 0.30 s before the mark" in text
    assert "running -> dead; the current went" in text
    assert "can't tell base line:" in text
    assert "- A" in text


def test_the_lines_of_the_verdict_hold_what_it_rests_on_and_what_is_next():
    lines = verdict_lines(VERDICT)
    assert lines[0] == "Verdict: fault found"
    text = "\n".join(lines)
    for words in (
        "1. motor (proven; beyond its limit with probability 0.987): The motor opens inside.",
        "rests on:",
        "against:",
        "- No zero was taken",
        "next: Turn it.",
        "- Not tried: 2.",
    ):
        assert words in text


def test_where_the_thresholds_come_from_is_said():
    assert "this program's own" in " ".join(taps_lines(EVIDENCE))
