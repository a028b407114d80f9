"""The readings file: what goes in comes out, cut at any byte and with any bit flipped."""

import random

import numpy as np
import pyarrow as pa
import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra import numpy as npst

from meterlog.model import Block, join
from meterlog.recording.append_file import AppendFile
from meterlog.recording.arrow_header import HeaderDamaged, parse_batch_header
from meterlog.recording.flag_runs import from_runs, to_runs
from meterlog.recording.stream_reader import StreamReader
from meterlog.recording.stream_writer import StreamWriter


def write(path, one, blocks, *, end=True):
    """Write blocks as batches; give the file's length after each."""
    path.unlink(missing_ok=True)
    file = AppendFile(path, "data/x.arrows")
    writer = StreamWriter(file, one)
    ends = []
    for block in blocks:
        writer.append(block)
        ends.append(file.written)
    if end:
        writer.finish()
    file.close()
    return ends


def read(path, one, rows=65_536):
    reader = StreamReader(path, "data/x.arrows", one)
    return list(reader.blocks(rows)), reader


@pytest.fixture
def small(maker, tmp_path):
    one = maker.instrument(channels=2)
    blocks = [maker.block(one.key, first, rows) for first, rows in ((0, 3), (3, 1), (4, 6))]
    path = tmp_path / "x.arrows"
    return path, one, blocks, write(path, one, blocks)


@pytest.mark.parametrize("rows", [1, 2, 3, 100])
def test_blocks_come_back_bit_by_bit_in_pieces_of_the_size_asked_for(small, same, rows):
    path, one, blocks, _ = small
    found, reader = read(path, one, rows)
    same(join(found), join(blocks))
    assert max(map(len, found)) <= rows
    assert (reader.rows, reader.damage, reader.is_ended) == (10, (), True)
    assert reader.last_ns == blocks[-1].t_ns[-1]


def test_arrows_own_reader_sees_the_same_columns(small):
    path, _, blocks, _ = small
    table = pa.ipc.open_stream(path.read_bytes()).read_all()
    table.validate(full=True)
    whole = join(blocks)
    assert table.schema.names == ["t_ns", "ch0", "ch1", "ch0.flags", "ch1.flags"]
    assert table.column("t_ns").to_pylist() == whole.t_ns.tolist()
    np.testing.assert_array_equal(np.array(table.column("ch0").to_pylist()), whole.values[:, 0])
    flags = [run.as_py() for run in table.column("ch1.flags")]
    assert flags == whole.flags[:, 1].tolist()


def test_any_prefix_of_the_file_gives_a_prefix_of_the_rows(small, same):
    path, one, blocks, ends = small
    content = path.read_bytes()
    whole = join(blocks)
    starts = [ends[0] - (ends[1] - ends[0]), *ends]
    for cut in range(len(content) + 1):
        path.write_bytes(content[:cut])
        found, reader = read(path, one)
        kept = sum(len(block) for block, end in zip(blocks, ends, strict=True) if end <= cut)
        assert sum(map(len, found)) == kept == reader.rows
        if kept:
            same(join(found), whole.rows(0, kept))
        # between two batches nothing is torn; anywhere else the tear is told
        if cut in ends or cut == len(content):
            assert reader.damage == ()
        elif cut > starts[1]:
            assert "data/x.arrows" in reader.damage[0]
            assert f"rows from {kept} on" in reader.damage[0]
        assert reader.is_ended == (cut == len(content))


def test_a_flipped_bit_is_never_given_as_data(maker, tmp_path):
    one = maker.instrument(channels=3)
    blocks = [maker.block(one.key, k * 20, 20, 3) for k in range(6)]
    path = tmp_path / "x.arrows"
    write(path, one, blocks)
    content = path.read_bytes()
    rng = random.Random(20260504)
    places = rng.sample(range(len(content) * 8), 600)
    untouched = 0
    for place in places:
        wrong = bytearray(content)
        wrong[place // 8] ^= 1 << place % 8
        path.write_bytes(wrong)
        found, reader = read(path, one)
        times = [t for block in found for t in block.t_ns.tolist()]
        assert times == sorted(set(times))
        for block in found:
            _rows_are_right(block, maker, one)
        lost = 120 - sum(map(len, found))
        assert lost in (0, 20)  # one batch is the most that one bit may cost
        assert lost == 0 or reader.damage
        untouched += not reader.damage
    # bits that no reading depends on: padding between buffers, counts that stand twice
    assert untouched < 0.4 * len(places)


def _rows_are_right(block, maker, one):
    number = ((block.t_ns - 7) // 1_000_003).tolist()
    every = maker.block(one.key, 0, 120, 3)
    np.testing.assert_array_equal(block.t_ns, every.t_ns[number])
    np.testing.assert_array_equal(block.values, every.values[number])
    np.testing.assert_array_equal(block.flags, every.flags[number])


def test_a_flipped_bit_in_a_value_is_named_with_batch_and_rows(small):
    path, one, _, ends = small
    content = bytearray(path.read_bytes())
    at = content.index(np.float64(np.sin(3 * 2.3) * 14).tobytes())
    assert ends[0] < at < ends[1]
    content[at] ^= 1
    path.write_bytes(content)
    found, reader = read(path, one)
    assert sum(map(len, found)) == 9
    assert reader.damage == (
        "data/x.arrows: batch 1, rows 3 to 3, does not match its checksum; those rows are left "
        "out.",
    )
    assert reader.rows == 9


def test_a_batch_that_stands_twice_is_given_once(small, same):
    path, one, blocks, ends = small
    content = path.read_bytes()
    path.write_bytes(content[: ends[1]] + content[ends[0] :])
    found, reader = read(path, one)
    same(join(found), join(blocks))
    assert "repeats rows" in reader.damage[0]


def test_a_batch_that_was_taken_out_is_missed(small):
    path, one, _, ends = small
    content = path.read_bytes()
    path.write_bytes(content[: ends[0]] + content[ends[1] :])
    found, reader = read(path, one)
    assert sum(map(len, found)) == 9
    assert "rows 3 to 3 are damaged or missing" in reader.damage[0]


def test_zeros_in_the_middle_as_after_a_power_cut_cost_only_what_they_cover(small, same):
    path, one, blocks, ends = small
    content = bytearray(path.read_bytes())
    content[ends[0] : ends[1]] = bytes(ends[1] - ends[0])
    path.write_bytes(content)
    found, reader = read(path, one)
    same(join(found), join([blocks[0], blocks[2]]))
    assert "rows 3 to 3" in reader.damage[0]


def test_columns_of_another_instrument_are_told(small, maker):
    path, _, _, _ = small
    other = maker.instrument(channels=3)
    found, reader = read(path, other)
    assert found == []
    assert "column names" in reader.damage[0]


@given(
    npst.arrays(np.uint8, st.integers(1, 40), elements=st.sampled_from([0, 0, 0, 1, 8])),
)
def test_flags_come_back_out_of_their_runs(flags):
    out = np.empty_like(flags)
    assert from_runs(to_runs(flags), out)
    np.testing.assert_array_equal(out, flags)


@pytest.mark.parametrize("ends", [[], [3], [5, 4], [2, 2, 4], [0, 4]])
def test_runs_that_do_not_cover_the_rows_are_refused(ends):
    ends = np.array(ends, np.int32)
    assert not from_runs((ends, np.zeros(len(ends), np.uint8)), np.empty(4, np.uint8))


@given(
    npst.arrays(
        np.float64,
        st.tuples(st.integers(1, 20), st.just(2)),
        elements=st.floats(allow_nan=True, allow_infinity=True),
    )
)
def test_any_value_comes_back_whatever_the_order_in_memory(maker, tmp_path, values):
    one = maker.instrument(channels=2)
    for order in ("C", "F"):
        block = Block(
            one.key,
            np.arange(len(values), dtype=np.int64) * 2 - 2,
            np.array(values, order=order),
            np.zeros(values.shape, np.uint8),
        )
        write(tmp_path / "x.arrows", one, [block])
        found, _ = read(tmp_path / "x.arrows", one)
        assert found[0].values.tobytes("C") == values.tobytes("C")


@given(st.binary(max_size=400))
def test_no_bytes_upset_the_header_reader(head):
    with pytest.raises(HeaderDamaged):
        parse_batch_header(head)


def test_no_flipped_bits_of_a_true_header_upset_its_reader(small):
    path, _, _, _ = small
    content = path.read_bytes()
    start = content.index(b"\xff\xff\xff\xff", 8)
    head = content[start + 8 : start + 8 + int.from_bytes(content[start + 4 : start + 8], "little")]
    rng = random.Random(7)
    refused = 0
    for _ in range(3000):
        wrong = bytearray(head)
        for _ in range(rng.randint(1, 4)):
            wrong[rng.randrange(len(wrong))] ^= 1 << rng.randrange(8)
        try:
            parse_batch_header(bytes(wrong))
        except HeaderDamaged:
            refused += 1
    assert refused > 300


def test_a_file_that_is_not_there_is_an_error_for_people(maker, tmp_path):
    from meterlog.model.errors import RecordingUnreadable

    with pytest.raises(RecordingUnreadable, match="can't be read"):
        StreamReader(tmp_path / "none", "data/none", maker.instrument())
