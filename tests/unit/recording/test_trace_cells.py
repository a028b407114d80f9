"""Cells of a column: what is a number, and what is said of one that is none."""

import pyarrow as pa
import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.recording.trace_cells import NUMBER, NotANumber, parse_cells

_CELL = st.text("0123456789.eE+-x", max_size=12)


@given(_CELL)
def test_a_number_is_what_python_reads_as_one_in_plain_digits(text):
    try:
        float(text)
    except ValueError:
        reads = False
    else:
        reads = True
    assert (NUMBER.fullmatch(text) is not None) is reads


@pytest.mark.timeout(60)  # tried in every way, it would take many minutes
@pytest.mark.parametrize("text", ["1" * 120_000 + "x", "1" * 60_000 + "." + "1" * 60_000 + "e"])
def test_a_cell_of_a_hundred_thousand_digits_and_a_letter_is_refused_at_once(text):
    with pytest.raises(NotANumber) as caught:
        parse_cells(pa.array(["12.5", text]), decimal_comma=False)
    assert caught.value.row == 1
