"""Cells: flags in words, and text that no spreadsheet runs."""

import math

import numpy as np
import pyarrow as pa
import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.evidence.cell_text import csv_lines, defused
from meterlog.evidence.flag_words import flag_words
from meterlog.evidence.table_form import TableForm, table_form
from meterlog.model import Flag
from meterlog.model.errors import UsageError


@pytest.mark.parametrize(
    "text", ["=1+1", "+1", "-1", "@x", "\tx", "\rx", "\nx", "\uff1d1", "\uff20x", "'=1", "''-"]
)
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


FINITE = st.floats(allow_nan=False, allow_infinity=False)


@given(st.lists(FINITE | st.none(), min_size=1))
def test_numbers_with_a_comma_are_exact_and_have_no_exponent(values):
    form = TableForm(";", ",")
    written = form.column(pa.array(values, pa.float64())).to_pylist()
    single = [None if value is None else form.number(value) for value in values]
    for value, *texts in zip(values, written, single, strict=True):
        for text in texts:
            assert (text is None) == (value is None)
            if text is None:
                continue
            assert set(text) <= set("-0123456789,")
            read = float(text.replace(",", "."))
            assert read == value
            assert math.copysign(1, read) == math.copysign(1, value)


def test_with_a_point_arrow_writes_the_numbers_itself():
    column = pa.array([1.5, None])
    assert TableForm().column(column) is column


def test_cells_take_the_form_of_the_table():
    rows = [["a;b", "c,d", 1.5e-9, -2, None]]
    assert csv_lines(rows) == b'a;b,"c,d",1.5e-09,-2,\r\n'
    assert csv_lines(rows, TableForm(";", ",")) == b'"a;b";c,d;0,0000000015;-2;\r\n'
    assert csv_lines([["a\tb", 1e22]], TableForm("\t", ",")) == (
        b'"a\tb"\t10000000000000000000000\r\n'
    )


@pytest.mark.parametrize(("delimiter", "decimal"), [(",", ","), ("|", "."), (";", "'")])
def test_a_form_that_could_not_be_read_back_is_refused(delimiter, decimal):
    with pytest.raises(UsageError):
        TableForm(delimiter, decimal)


def test_a_form_is_named_in_words():
    form = table_form("tab", "comma")
    assert (form.delimiter, form.decimal) == ("\t", ",")
    assert (form.delimiter_name, form.decimal_name) == ("tab", "comma")
