"""Words as lines: nothing is wider than its room, and nothing is lost."""

import time

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtGui import QFontMetricsF

from meterlog.evidence.claim_pdf import wrapped_words
from meterlog.evidence.claim_pdf.page_look import BODY, TABLE_FIXED
from meterlog.evidence.claim_pdf.wrapped_words import clean_words, shortened, wrapped

LONG = "0b99eb864103dce57876460101b20ab1bdc5664d960b5f00f8ed13684e813e05" * 3


def _bare(text):
    return "".join(text.split())


@pytest.mark.parametrize("look", [BODY, TABLE_FIXED])
@pytest.mark.parametrize(
    "text",
    ["The fan stops, and runs again when hit. " * 9, LONG, f"one {LONG} two", "\U0001f600 a"],
)
def test_lines_fit_and_hold_all_words(sheets, look, text):
    lines = wrapped(text, look.font(), 200.0, sheets.device)
    metrics = QFontMetricsF(look.font(), sheets.device)
    assert max(metrics.horizontalAdvance(line) for line in lines) <= 201.0
    assert _bare("".join(lines)) == _bare(text)


def _seconds(sheets, letters):
    begun = time.process_time()
    lines = wrapped("x" * letters, BODY.font(), 600.0, sheets.device)
    assert sum(map(len, lines)) == letters
    return time.process_time() - begun


def test_a_word_without_end_takes_time_by_its_length(sheets):
    short = min(_seconds(sheets, 40_000) for _ in range(3))
    # Laid out as a whole it would take 64 times as long.
    assert _seconds(sheets, 320_000) < 24.0 * short


@pytest.mark.parametrize("text", ["a word " * 3000, "x" * 20_000, "\U0001f600 " * 5000])
def test_laid_out_in_pieces_the_lines_are_the_same(sheets, text, monkeypatch):
    lines = wrapped(text, BODY.font(), 200.0, sheets.device)
    assert wrapped(text, BODY.font(), 200.0, sheets.device, 7) == lines[:8]
    monkeypatch.setattr(wrapped_words, "_PIECE", len(text))
    assert wrapped(text, BODY.font(), 200.0, sheets.device) == lines


def test_what_steers_the_reading_direction_is_shown():
    assert clean_words("CL-\u202e4711\u200f") == "CL-\\u202e4711\\u200f"


@given(st.text(max_size=60))
def test_any_text_can_be_written(text):
    clean = clean_words(text)
    assert all(sign.isprintable() or sign in "\n\u00ad" for sign in clean)
    clean.encode()


def test_line_feeds_stay_and_what_can_not_be_written_becomes_a_space(sheets):
    assert clean_words("a\r\nb\x00c\td\ud800") == "a\nb c d\ufffd"
    assert wrapped("a\n\nb", BODY.font(), 100.0, sheets.device) == ["a", "", "b"]
    assert wrapped("", BODY.font(), 100.0, sheets.device) == [""]


def test_what_is_left_out_is_told():
    assert shortened(["a b", "c d", "e"], 2) == ["a b", "c …"]
    assert shortened(["abcdef", "g"], 1) == ["abcd …"]
    assert shortened(["a", "b"], 2) == ["a", "b"]
    assert shortened(["a", "b"], None) == ["a", "b"]
