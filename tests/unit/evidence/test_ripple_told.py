"""The ripple in JSON and on the terminal."""

import json

from meterlog.evidence.ripple_json import ripple_to_list
from meterlog.evidence.ripple_text import ripple_lines
from meterlog.model import BarFlaw, RippleView

VIEW = RippleView(
    speed=4,
    start_ns=1_500_000_000,
    end_ns=9_000_000_000,
    rate_hz=10_000.0,
    refusal="",
    commutation_hz=605.5,
    commutation_u_hz=0.6,
    bars=12,
    ripples_per_turn=12,
    bars_confidence=0.98,
    turns_rpm=3027.5,
    turns_u_rpm=3.0,
    track_s=(2.0, 3.0),
    track_rpm=(3020.0, float("nan")),
    profile=(0.5, 1.0),
    flaws=(BarFlaw(1, 0.52, True, 0.9999),),
    ripple_percent=6.1,
    brush_noise=0.2,
    statement="Pattern consistent with " + "one dead bar " * 20,
)
SLOW = RippleView(1, 0, 10, 10.0, "Too slow.", 34_500.0, statement="Too slow.")


def test_json_has_units_in_its_keys_and_none_for_what_is_not_finite():
    (told,) = ripple_to_list([VIEW])
    json.dumps(told, allow_nan=False)
    assert (told["start_s"], told["end_s"], told["commutation_hz"]) == (1.5, 9.0, 605.5)
    assert told["commutation_expanded_hz"] == 0.6
    assert told["track"] == [
        {"t_s": 2.0, "turns_rpm": 3020.0},
        {"t_s": 3.0, "turns_rpm": None},
    ]
    assert told["flaws"] == [{"bar": 1, "depth_percent": 52.0, "dead": True, "confidence": 0.9999}]


def test_lines_fit_the_terminal_and_name_the_speed():
    lines = ripple_lines([VIEW])
    assert max(map(len, lines)) <= 100
    assert len(lines) > 3
    assert lines[1].startswith("  speed 4: Pattern consistent with")


def test_one_reason_for_every_step_is_said_once():
    lines = ripple_lines([SLOW, SLOW, SLOW])
    assert lines == ["Ripple of the commutator:", "  every step: Too slow."]
    assert ripple_lines([]) == []
