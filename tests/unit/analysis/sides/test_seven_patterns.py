"""The seven trace patterns, each with every set of channels: what is told, and what is left open.

A fan with its controller on the ground side, scripted channel by channel from the pattern table
(common practice): all figures invented, of the size of a medium fan.
"""

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.model import FindingKind, SpanKind, Verdict

START, STOP, END = 10.0, 14.0, 20.0


def coasting(t):
    """What a turning motor generates: 9.3 V, then 5.4 after half a second, 3.4 after one."""
    return 9.3 * np.exp(-t)


PATTERNS = {
    "motor open": {"current": 0.0, "feed": 12.4, "return": 0.02},
    "feed open": {"current": 0.0, "feed": coasting, "return": 0.0},
    "ground open": {
        "current": 0.0,
        "feed": 12.4,
        "return": lambda t: 12.4 - coasting(t),
        "ground": lambda t: 12.3 - coasting(t),
    },
    "resistive feed": {"current": 10.7, "feed": 10.5},
    "resistive ground": {"current": 10.7, "return": 1.74, "ground": 1.68},
    "drag": {"current": 19.0, "feed": 11.85, "return": 0.22},
    "command lost": {
        "current": 0.0,
        "feed": 12.4,
        "return": lambda t: 12.4 - coasting(t),
        "command": 0.2,
    },
}
SETS = {
    "all": ("feed", "return", "battery", "ground", "command", "current"),
    "feed+current": ("feed", "current"),
    "return+current": ("return", "current"),
    "current only": ("current",),
    "+ battery": ("feed", "battery", "current"),
    "+ command": ("return", "command", "current"),
}


def legs_of(panel, pattern):
    return legs_with(panel, PATTERNS[pattern])


def legs_with(panel, changed):
    off = panel.HIGH | changed
    return [(2.0, panel.OFF), (START, panel.HIGH), (STOP, off), (END, panel.HIGH)]


def answer(panel, pattern, channels):
    legs = legs_of(panel, pattern) if pattern else [(2.0, panel.OFF), (END, panel.HIGH)]
    return answer_to(panel, legs, channels)


def answer_to(panel, legs, channels):
    events = [panel.trace.speed(0.0, 0), panel.trace.speed(2.0, 4)]
    spans, findings, drops, _ = panel.told(channels, legs, events)
    kinds = {s.kind.value for s in spans} - {"off", "running"}
    sure = {f.kind.value: f.verdict is Verdict.FAIL for f in (*findings, *drops)}
    return kinds | {f.kind.value for f in drops}, sure, (*findings, *drops)


OPEN = "no-current"
EXPECTED = {
    "motor open": ("dead", OPEN, OPEN, OPEN, OPEN, OPEN),
    "feed open": ("feed-lost", "feed-lost", OPEN, OPEN, "feed-lost", OPEN),
    "ground open": ("ground-lost", OPEN, "ground-lost", OPEN, OPEN, "ground-lost"),
    "resistive feed": (
        "resistive-feed",
        "resistive-feed?",
        "under?",
        "under?",
        "resistive-feed",
        "under?",
    ),
    "resistive ground": (
        "resistive-ground",
        "under?",
        "resistive-ground?",
        "under?",
        "under?",
        "resistive-ground?",
    ),
    "drag": ("drag+over", "drag?+over", "drag?+over", "drag?+over", "drag?+over", "drag?+over"),
    "command lost": ("command-lost", OPEN, "ground-lost", OPEN, OPEN, "command-lost"),
}
"""By pattern, one answer for each of SETS; ? is can't tell."""


@pytest.mark.parametrize(
    ("pattern", "channels", "expected"),
    [
        pytest.param(pattern, SETS[name], answers[place], id=f"{pattern}, {name}")
        for pattern, answers in EXPECTED.items()
        for place, name in enumerate(SETS)
    ],
)
def test_each_pattern_is_told_as_far_as_the_channels_allow(panel, pattern, channels, expected):
    kinds, sure, _ = answer(panel, pattern, channels)
    wanted = {word.rstrip("?"): not word.endswith("?") for word in expected.split("+")}
    assert kinds == set(wanted)
    assert {kind: sure[kind] for kind in wanted} == wanted


@pytest.mark.parametrize("channels", SETS.values(), ids=SETS)
def test_a_sound_fan_shows_none_of_the_patterns(panel, channels):
    kinds, _, findings = answer(panel, None, channels)
    assert kinds == set()
    assert {f.kind for f in findings} == {FindingKind.STEP_CURRENT}


@pytest.mark.parametrize(
    ("pattern", "channels", "settles"),
    [
        ("motor open", "feed+current", "motor return voltage would settle it"),
        ("motor open", "current only", "motor feed voltage and motor return voltage"),
        ("resistive feed", "feed+current", "battery voltage would settle it"),
        ("resistive feed", "return+current", "motor feed voltage would settle it"),
        ("resistive ground", "feed+current", "motor return voltage would settle it"),
        ("resistive ground", "+ command", "controller ground would settle it"),
        ("drag", "feed+current", "motor return voltage would settle it"),
    ],
)
def test_what_would_settle_it_is_named(panel, pattern, channels, settles):
    _, _, findings = answer(panel, pattern, SETS[channels])
    assert any(settles in f.statement for f in findings)


def test_the_ground_wire_is_told_from_the_controller_by_the_controllers_ground(panel):
    _, _, findings = answer(panel, "ground open", SETS["all"])
    (lost,) = [f for f in findings if f.kind is FindingKind.GROUND_LOST]
    assert "the ground wire is open, not the controller" in lost.statement
    assert "the command stayed at 8.0" in lost.statement
    controller = legs_with(panel, PATTERNS["ground open"] | {"ground": 0.0})
    _, _, findings = answer_to(panel, controller, SETS["all"])
    (lost,) = [f for f in findings if f.kind is FindingKind.GROUND_LOST]
    assert "consistent with an open controller" in lost.statement


def test_the_decay_of_the_turning_motors_voltage_is_told(panel):
    for pattern in ("feed open", "ground open", "command lost"):
        _, _, findings = answer(panel, pattern, SETS["all"])
        (told,) = [f for f in findings if "turning motor's own voltage fell" in f.statement]
        words = told.statement.partition("own voltage fell from ")[2].split()
        assert float(words[0]) == pytest.approx(9.0, abs=0.6)
        assert float(words[3]) < 1.0
        assert float(words[6]) == pytest.approx(2.3, abs=0.4)  # ln 10 seconds


@pytest.mark.parametrize(
    ("channels", "changed"),
    [
        ("+ battery", {"current": 10.7, "feed": 10.5, "battery": 10.8}),
        ("all", {"current": 17.2, "feed": 13.9, "return": 0.2, "battery": 14.3}),
        ("all", {"current": 10.7, "return": 1.74, "command": 5.0}),
    ],
    ids=["a supply that falls", "a supply that rises", "a controller asked for less"],
)
def test_what_the_circuit_is_not_to_blame_for_is_no_finding(panel, channels, changed):
    kinds, _, _ = answer_to(panel, legs_with(panel, changed), SETS[channels])
    assert kinds == set()


@settings(max_examples=12, deadline=None)
@given(
    pattern=st.sampled_from(sorted(PATTERNS)),
    cuts=st.lists(st.integers(0, 400), max_size=12),
)
def test_the_patterns_are_told_the_same_however_the_data_is_cut(panel, pattern, cuts):
    meter = panel.instrument(SETS["all"])
    block = panel.block(SETS["all"], legs_of(panel, pattern))
    events = [panel.trace.speed(0.0, 0), panel.trace.speed(2.0, 4)]
    parts = [block.rows(a, b) for a, b in pairwise(sorted({0, len(block), *cuts}))]
    whole = panel.judge([meter], [*events, block])
    cut = panel.judge([meter], [*events, *parts])
    assert whole[0] == cut[0]
    for one, other in zip((*whole[1], *whole[2]), (*cut[1], *cut[2]), strict=True):
        assert (one.kind, one.verdict, one.statement) == (
            other.kind,
            other.verdict,
            other.statement,
        )
    assert SpanKind.OFF in {span.kind for span in cut[0]}
