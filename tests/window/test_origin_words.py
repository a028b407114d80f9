"""Marks of readings that no meter sent, in the window's language."""

import pytest

from meterlog.window.language import speak, speak_english
from meterlog.window.origin_words import mark_words


@pytest.mark.parametrize(
    ("mark", "german"),
    [
        ("", ""),
        ("SIMULATED", "SIMULIERT"),
        ("SIMULATED · TYPED BY HAND", "SIMULIERT · VON HAND EINGETIPPT"),
    ],
)
def test_each_mark_of_several_is_said(qapp, mark, german):
    assert mark_words(mark) == mark
    assert speak("de") == "de"
    try:
        assert mark_words(mark) == german
    finally:
        speak_english()
