"""Arrays of Python's own values are those that Arrow itself makes of them."""

import math

import pyarrow as pa
import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.recording.arrow_arrays import (
    real_array,
    table_of,
    text_array,
    truth_array,
    whole_array,
)

WHOLES = st.integers(-(2**63), 2**63 - 1)
TEXTS = st.text(st.characters(exclude_categories=["Cs"]), max_size=9)
KINDS = [
    (text_array, pa.string(), TEXTS),
    (real_array, pa.float64(), st.floats(allow_nan=False)),
    (whole_array, pa.int64(), WHOLES),
    (truth_array, pa.bool_(), st.booleans()),
]


@pytest.mark.parametrize(("make", "kind", "values"), KINDS)
@given(data=st.data())
def test_they_are_what_arrow_makes_of_the_same(make, kind, values, data):
    said = data.draw(st.lists(st.none() | values, max_size=20))
    made = make(iter(said))
    made.validate(full=True)
    assert made.type == kind
    assert made.equals(pa.array(said, kind))


def test_what_is_no_number_is_not_the_same_as_nothing():
    made = real_array([math.nan, None])
    assert made.null_count == 1
    assert math.isnan(made[0].as_py())


def test_half_a_character_is_refused():
    with pytest.raises(UnicodeEncodeError):
        text_array(["fine", "\ud800"])


@given(
    rows=st.lists(
        st.fixed_dictionaries(
            {},
            optional={
                "text": st.none() | TEXTS,
                "real": st.none() | st.floats(allow_nan=False),
                "texts": st.none() | st.lists(st.none() | TEXTS, max_size=3),
                "reals": st.none() | st.lists(st.floats(allow_nan=False), max_size=3),
            },
        ),
        max_size=9,
    )
)
def test_so_is_a_table_with_lists(rows):
    schema = pa.schema(
        [
            ("text", pa.string()),
            ("real", pa.float64()),
            ("texts", pa.list_(pa.field("element", pa.string()))),
            ("reals", pa.list_(pa.field("element", pa.float64()))),
        ],
        metadata={"of": "the schema stays"},
    )
    made = table_of(rows, schema)
    made.validate(full=True)
    assert made.schema.equals(schema, check_metadata=True)
    assert made.equals(pa.Table.from_pylist(rows, schema))
