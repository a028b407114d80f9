"""Cells: flags in words, and text that no spreadsheet runs."""

import math

import numpy as np
import pytest

from meterlog.evidence.cell_text import csv_lines, defused
from meterlog.evidence.flag_words import flag_words
from meterlog.model import Flag


@pytest.mark.parametrize("text", ["=1+1", "+1", "-1", "@x", "\tx", "\rx"])
def test_text_that_starts_a_formula_gets_an_apostrophe(text):
    assert defused(text) == "'" + text


@pytest.mark.parametrize("text", ["", "1-1", "a=b", " =x", "'x"])
def test_other_text_stays_as_it_is(text):
    assert defused(text) == text


def test_numbers_are_no_text_and_stay_negative():
    assert csv_lines([[-1.5, -2, None, 0.1, math.nan]]) == b"-1.5,-2,,0.1,\r\n"


def test_flags_are_named_with_their_channel_and_runs_keep_their_place():
    flags = np.zeros((6, 2), np.uint8)
    flags[1:3, 0] = Flag.OVERLOAD
    flags[2, 1] = Flag.NO_DATA | Flag.RANGE_CHANGED
    flags[5, 1] = Flag.TYPED
    assert flag_words(flags, ("u", "i")).to_pylist() == [
        None,
        "u:overload",
        "u:overload i:no-data i:range-changed",
        None,
        None,
        "i:typed",
    ]
