"""What strangers wrote on a card is shown for what it is."""

from dataclasses import replace
from pathlib import Path

from meterlog.window.recordings_page.hit_words import cells_of, detail_words
from meterlog.work.library import Hit, Kind, Verdicts

TURNED = "47\u202e11\x1b[31m"
HIT = Hit(
    *(Path("/shelf/run"), Kind.RUN, "2026-11-29T10:20:30", "WO", "van", "fan", "me", "1", "dead"),
    *("", 9.9, "line-logger", "sealed", "", Verdicts.NOT_JUDGED, "", ""),
)


def test_marks_that_turn_or_steer_text_are_written_out():
    fields = ("work_order", "vehicle", "part", "technician", "odometer", "complaint")
    for name in fields:
        odd = replace(HIT, **{name: TURNED})
        told = "\n".join((*cells_of(odd), detail_words(odd)))
        assert "\u202e" not in told
        assert "\x1b" not in told
        assert r"47\u202e11\x1b[31m" in told
    odd = replace(HIT, found_by=(TURNED,))
    assert r"found by: 47\u202e11\x1b[31m" in detail_words(odd)


def test_what_is_plain_stays_as_it_is():
    assert "found by" not in detail_words(HIT)
    assert "complaint: dead" in detail_words(HIT)


def test_a_verdict_of_what_is_not_whole_does_not_look_like_any_other():
    assert cells_of(HIT)[1] == "recording"
    assert cells_of(replace(HIT, trouble="It goes on from …"))[1] == "⚠ · recording"
