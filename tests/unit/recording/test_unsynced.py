"""What is not on the disk yet: all of it, in order, and in few pieces however small it came."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.model import Block, RawBytes, join
from meterlog.recording.unsynced import TOGETHER, Unsynced

SOURCES = ("first", "second")


def block(source, first, rows, width=2):
    t_ns = np.arange(first, first + rows, dtype=np.int64)
    values = np.arange(first, first + rows, dtype=float)[:, np.newaxis] * np.ones(width)
    return Block(source, t_ns, values, np.zeros((rows, width), np.uint8))


def kept(unsynced, source):
    """Give times of the rows, and the bytes, of what is kept of one instrument."""
    mine = [item for item in unsynced.items() if item.source == source]
    rows = [int(t) for one in mine if isinstance(one, Block) for t in one.t_ns]
    return rows, [(one.t_ns, one.data) for one in mine if isinstance(one, RawBytes)]


STEPS = st.lists(
    st.one_of(
        st.tuples(
            st.just("rows"),
            st.sampled_from(SOURCES),
            st.sampled_from([0, 1, 1, 1, 1, 7, 63, 64, 65, 200]),
        ),
        st.tuples(
            st.just("bytes"), st.sampled_from(SOURCES), st.sampled_from([0, 9, 9, 9, 4000, 5000])
        ),
        st.tuples(st.just("safe"), st.floats(0.0, 1.0), st.none()),
        st.tuples(st.just("anew"), st.none(), st.none()),
    ),
    max_size=250,
)


@given(steps=STEPS)
def test_what_is_kept_goes_on_where_what_went_ends_and_nothing_unsafe_goes(steps):
    unsynced, taken = Unsynced(), []
    rows = {one: [] for one in SOURCES}
    frames = {one: [] for one in SOURCES}
    gone = {one: [0, 0] for one in SOURCES}
    may_go = {one: [0, 0] for one in SOURCES}
    for what, which, size in steps:
        if what == "rows":
            made = block(which, len(rows[which]), size)
            rows[which] += made.t_ns.tolist()
            unsynced.add(made)
            taken.append((which, 0, len(rows[which])))
        elif what == "bytes":
            made = RawBytes(which, len(frames[which]), bytes([len(frames[which]) % 251]) * size)
            frames[which].append((made.t_ns, made.data))
            unsynced.add(made)
            taken.append((which, 1, len(frames[which])))
        elif what == "safe":
            safe = int(which * len(taken))
            for place, counts in enumerate(unsynced.let_go(safe)):
                for source, count in counts.items():
                    gone[source][place] += count
            for source, place, count in taken[:safe]:
                may_go[source][place] = max(may_go[source][place], count)
            assert all(gone[one][at] <= may_go[one][at] for one in SOURCES for at in (0, 1))
        else:
            anew = list(unsynced.items())  # as whoever counts anew takes them
            unsynced.taken_anew()
            taken, places = [], {one: list(gone[one]) for one in SOURCES}
            for item in anew:
                place = 0 if isinstance(item, Block) else 1
                places[item.source][place] += len(item) if place == 0 else 1
                taken.append((item.source, place, places[item.source][place]))
        for source in SOURCES:
            assert kept(unsynced, source) == (
                rows[source][gone[source][0] :],
                frames[source][gone[source][1] :],
            )
    unsynced.let_go(len(taken))
    assert list(unsynced.items()) == []
    assert unsynced.last_ns() == 0


def test_small_ones_are_put_together():
    unsynced = Unsynced()
    for number in range(10 * TOGETHER):
        unsynced.add(RawBytes("first", number, b"12.5,1.0\n"))
        unsynced.add(block("first", number, 1))
    blocks = [item for item in unsynced.items() if isinstance(item, Block)]
    assert len(blocks) == 10
    assert join(blocks).t_ns.tolist() == list(range(10 * TOGETHER))
    assert unsynced.last_ns() == 10 * TOGETHER - 1


def test_large_ones_are_kept_as_they_are():
    unsynced, large = Unsynced(), block("first", 0, 9_000)
    unsynced.add(large)
    unsynced.add(block("first", 9_000, 1))
    assert next(unsynced.items()) is large
    many = RawBytes("first", 0, bytes(9_000))
    unsynced.add(many)
    unsynced.add(RawBytes("first", 1, b"12.5,1.0\n"))
    assert next(unsynced.items()) is many


@pytest.mark.parametrize("width", [1, 3])
def test_what_does_not_go_together_is_refused_by_who_takes_it_not_here(width):
    unsynced = Unsynced()
    for number in range(TOGETHER):
        unsynced.add(block("first", number, 1))
        unsynced.add(block("first", number, 1, width))
    assert sum(map(len, unsynced.items())) == 2 * TOGETHER
