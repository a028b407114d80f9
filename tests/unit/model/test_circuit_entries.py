"""Entries of a circuit check: written and read back, whatever they are made of."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.model import CircuitReading, CircuitSign, CircuitState, Sign
from meterlog.model.circuit_check import KEYS, SIGN_VALUES
from meterlog.model.circuit_entries import (
    Chosen,
    Opened,
    Reach,
    Undone,
    check_of,
    entry_text,
    parse_entry,
)

names = st.text(max_size=12)
finite = st.floats(allow_nan=False, allow_infinity=False)
pairs = st.tuples(names, names).map(lambda pair: (min(pair), max(pair)))
states = st.builds(
    CircuitState,
    key=st.sampled_from(KEYS),
    speed=st.integers(0, 9),
    unplugged=st.frozensets(names, max_size=3),
    pulled=st.frozensets(names, max_size=3),
    jumpers=st.frozensets(pairs, max_size=2),
)
readings = st.builds(
    CircuitReading,
    id=st.integers(1, 99),
    state=states,
    point=names,
    value=finite,
    standard_u=st.floats(0.0, 1e6),
    shared_u=st.floats(0.0, 1e6),
    meter_ohm=st.one_of(st.just(math.inf), st.floats(1.0, 1e12)),
    complaint=st.sampled_from([None, True, False]),
    source=names,
    basis=names,
    t_utc=names,
)
signs = st.sampled_from(list(Sign)).flatmap(
    lambda sign: st.builds(
        CircuitSign,
        id=st.integers(1, 99),
        state=states,
        sign=st.just(sign),
        value=st.sampled_from(SIGN_VALUES[sign]),
        t_utc=names,
    )
)
entries = st.one_of(
    readings,
    signs,
    st.builds(Chosen, names, names),
    st.builds(Reach, names, st.booleans()),
    st.builds(Opened, names),
    st.builds(Undone, st.integers(1, 99), st.booleans()),
)


@given(entries)
def test_an_entry_reads_back_as_it_was(entry):
    text = entry_text(entry)
    assert "\n" not in text
    assert parse_entry(text) == entry


@given(st.one_of(st.text(), st.recursive(st.none() | finite | st.text(max_size=5) | st.booleans(),
       lambda inner: st.lists(inner, max_size=3) | st.dictionaries(
           st.sampled_from(["entry", "id", "state", "value", "key", "speed"]), inner, max_size=6),
       max_leaves=12).map(lambda value: __import__("json").dumps(value))))  # fmt: skip
def test_no_text_is_too_odd_to_be_refused(text):
    entry = parse_entry(text)
    assert entry is None or parse_entry(entry_text(entry)) == entry


@pytest.mark.parametrize("value", [math.nan, math.inf])
def test_what_is_no_number_is_never_written(value):
    with pytest.raises(ValueError, match="not JSON compliant"):
        entry_text(CircuitReading(1, CircuitState(), "feed", value, 0.01))


def _reading(at, value):
    return CircuitReading(at, CircuitState(), "feed", value, 0.01)


def test_undo_and_redo_are_entries_of_their_own():
    first, second = _reading(1, 12.0), _reading(2, 0.0)
    made = [first, second, Undone(2)]
    assert check_of("c", made).readings == (first,)
    assert check_of("c", [*made, Undone(2, undone=False)]).readings == (first, second)


def test_reach_is_what_was_said_last():
    made = [Reach("motor", reached=False), Reach("head", reached=False)]
    assert check_of("c", made).no_reach == {"motor", "head"}
    assert check_of("c", [*made, Reach("motor", reached=True)]).no_reach == {"head"}


@given(st.lists(readings, max_size=6, unique_by=lambda reading: reading.id), st.randoms())
def test_the_order_of_readings_does_not_matter(made, random):
    mixed = list(made)
    random.shuffle(mixed)
    assert check_of("c", made) == check_of("c", mixed)
