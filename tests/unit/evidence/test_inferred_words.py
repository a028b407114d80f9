"""What no single reading shows, as JSON and as lines."""

import json

from meterlog.evidence.inferred_json import inferred_to_list, pulsed_to_list, rhythm_to_dict
from meterlog.evidence.inferred_text import inferred_lines
from meterlog.model import Inferred, InferredKind, PulsedFeed, Rhythm, RhythmKind

S = 1_000_000_000
DIP = Inferred(
    InferredKind.DIP, 2 * S, 3 * S, (0.03, 0.09), 10.0, 8.0, 12.5, 4, None, "A dip. " * 30
)
PULSED = PulsedFeed(S, 9 * S, 2, 100.0, float("inf"), 0.4, 12.0, 4.8, None, "Pulsed.", 0.03)
RHYTHM = Rhythm(RhythmKind.RETRY, 8, 4.0, 0.1, 2.5, 1.5, 0.0004, "Regular.")


def test_json_has_units_in_its_names_and_nothing_that_json_can_not_hold():
    (one,) = inferred_to_list([DIP])
    assert (one["kind"], one["start_s"], one["end_s"]) == ("dip", 2.0, 3.0)
    assert (one["open_least_s"], one["open_most_s"]) == (0.03, 0.09)
    assert (one["base_a"], one["seen_a"], one["sigmas"]) == (10.0, 8.0, 12.5)
    assert one["after_tap_s"] is None
    (pulsed,) = pulsed_to_list([PULSED])
    assert pulsed["frequency_expanded_hz"] is None
    assert (pulsed["frequency_hz"], pulsed["duty"], pulsed["average_v"]) == (100.0, 0.4, 4.8)
    assert pulsed["pulses_within_s"] == 0.03
    told = rhythm_to_dict(RHYTHM)
    assert told is not None
    assert (told["kind"], told["dropouts"], told["chance"]) == ("controller-retry", 8, 0.0004)
    assert rhythm_to_dict(None) is None
    json.dumps([one, pulsed, told], allow_nan=False)


def test_lines_fit_the_terminal_and_none_are_made_of_nothing():
    assert inferred_lines([], [], None) == []
    lines = inferred_lines([DIP] * 15, [PULSED], RHYTHM)
    assert max(len(line) for line in lines) <= 100
    assert sum(line.startswith("  - A dip.") for line in lines) == 12
    assert "  and 3 more" in lines
    assert "  - Pulsed." in lines
    assert "  - Regular." in lines
