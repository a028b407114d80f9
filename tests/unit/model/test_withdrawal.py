"""A mark that was taken back counts for nothing; all else stands, in the same order."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.model import (
    WITHDRAWABLE,
    Event,
    EventKind,
    standing,
    withdrawal,
    withdrawn_marks,
    withdrawn_words,
)

S = 1_000_000_000
SPEED = Event(2 * S + 1, EventKind.SPEED, "3")
TAP = Event(4 * S, EventKind.TAP)
END = Event(9 * S, EventKind.END, "complete")

marks = st.builds(
    Event,
    st.integers(0, 10**15).map(lambda n: n * 10),
    st.sampled_from(WITHDRAWABLE),
    st.text(max_size=5),
)


def test_the_entry_names_the_mark_in_full_but_not_its_words():
    entry = withdrawal(Event(2 * S + 1, EventKind.NOTE, "a name"), 5 * S)
    assert entry == Event(5 * S, EventKind.WITHDRAWN, "note@2.000000001")
    assert withdrawn_words(entry) == (
        "The mark 'note' at 2.000 s was withdrawn by hand at 5.000 s and counts for nothing; it is"
        " kept."
    )


@given(st.lists(marks, max_size=12, unique_by=lambda one: (one.kind, one.t_ns // 4000)), st.data())
def test_just_the_marks_taken_back_are_missing(events, data):
    events = sorted(events, key=lambda one: one.t_ns)
    gone = data.draw(st.lists(st.sampled_from(events), unique=True)) if events else []
    entries = [withdrawal(one, 10**17) for one in gone]
    left = standing([*events, *entries])
    assert left == (*(one for one in events if one not in gone), *entries)
    assert {mark for mark, _ in withdrawn_marks([*events, *entries])} == set(gone)


def test_one_entry_takes_back_one_of_two_marks_of_the_same_instant():
    entry = withdrawal(TAP, 5 * S)
    assert standing((TAP, TAP, entry, END)) == (TAP, entry, END)
    assert standing((TAP, TAP, entry, entry, END)) == (entry, entry, END)


@pytest.mark.parametrize(
    "value", ["tap", "tap@x", "zero@4", "tap@4.1", "end@9", "", "tap@1e999999"]
)
def test_an_entry_that_names_no_mark_takes_nothing_back(value):
    entry = Event(5 * S, EventKind.WITHDRAWN, value)
    events = (SPEED, TAP, entry, END)
    assert standing(events) == events
    assert withdrawn_words(entry).endswith("it is kept.")


def test_times_read_again_from_a_table_to_the_microsecond_still_name_their_mark():
    entry = withdrawal(SPEED, 5 * S)
    assert standing((Event(2 * S, EventKind.SPEED, "3"), entry)) == (entry,)
