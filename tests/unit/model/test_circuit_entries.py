"""Entries of a circuit check: written and read back, whatever they are made of."""

import json
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
    text_digest,
)

printable = st.characters(codec="utf-8", exclude_categories=("C", "Z"), include_characters=" ")
names = st.text(printable, min_size=1, max_size=12)
texts = st.text(max_size=12)
finite = st.floats(-1e12, 1e12)
pairs = st.lists(names, min_size=2, max_size=2, unique=True).map(lambda pair: tuple(sorted(pair)))
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
    source=texts,
    basis=texts,
    t_utc=texts,
)
signs = st.sampled_from(list(Sign)).flatmap(
    lambda sign: st.builds(
        CircuitSign,
        id=st.integers(1, 99),
        state=states,
        sign=st.just(sign),
        value=st.sampled_from(SIGN_VALUES[sign]),
        t_utc=texts,
    )
)
entries = st.one_of(
    readings,
    signs,
    st.builds(Chosen, names, st.just("") | names, texts),
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
       max_leaves=12).map(json.dumps)))  # fmt: skip
def test_no_text_is_too_odd_to_be_refused(text):
    entry = parse_entry(text)
    assert entry is None or parse_entry(entry_text(entry)) == entry


def test_a_circuit_chosen_before_its_sum_was_kept_is_understood():
    text = '{"entry": "chosen", "circuit": "mine", "file": "data/circuits/mine.toml"}'
    assert parse_entry(text) == Chosen("mine", "data/circuits/mine.toml", "")


def test_the_sum_of_a_profile_is_that_of_its_words():
    # FIPS 180-4, the published digest of "abc".
    known = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
    assert text_digest("abc") == known
    assert text_digest("a\r\nb\rc\n") == text_digest("a\nb\nc\n")
    assert text_digest("abd") != known


STATE = {"key": "on", "speed": 4, "unplugged": [], "pulled": [], "jumpers": []}
READING = {
    "entry": "reading", "id": 1, "state": STATE, "point": "feed", "value": 12.0,
    "standard_u": 0.1, "shared_u": 0.0, "meter_ohm": 1e7, "complaint": None, "source": "typed",
    "basis": "", "t_utc": "",
}  # fmt: skip


@pytest.mark.parametrize(
    "odd",
    [
        # Whole numbers that no float holds: valid JSON (RFC 8259, section 6 sets no limit).
        {"value": 10**400}, {"value": -(10**400)}, {"standard_u": 10**400},
        {"shared_u": 10**400}, {"meter_ohm": 10**400},
        # Finite, but their squares are not.
        {"value": 1e200}, {"value": -1e200}, {"standard_u": 1e200}, {"id": 10**400},
        # Names that would break a line, or order a terminal about.
        {"point": ""}, {"point": "feed\n"}, {"point": "\x1b[31mfeed"}, {"point": "\x9b1m"},
        {"point": "\u202efeed"}, {"point": "\ud800"},
        {"state": STATE | {"speed": 10**400}}, {"state": STATE | {"pulled": ["\x1b"]}},
        # A word is no list of letters; a jumper has two ends.
        {"state": STATE | {"unplugged": "motor"}}, {"state": STATE | {"pulled": {"fuse": 1}}},
        {"state": STATE | {"jumpers": ["ab"]}}, {"state": STATE | {"jumpers": [["a", "a"]]}},
        {"state": STATE | {"jumpers": [["a", "b", "c"]]}},
        {"entry": "chosen", "circuit": "\x1b[2J", "file": ""},
        {"entry": "chosen", "circuit": "c", "file": "\0"},
        {"entry": "reach", "name": "a\nb", "reached": False}, {"entry": "opened", "place": "\r"},
    ],
)  # fmt: skip
def test_what_no_program_writes_is_not_understood(odd):
    assert parse_entry(json.dumps(READING)) is not None
    assert parse_entry(json.dumps(READING | odd)) is None


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
