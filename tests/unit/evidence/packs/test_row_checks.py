"""Rows that were changed, put in or taken out are named; a table of any form has its checks."""

import hashlib
import io
from unittest import mock

import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.evidence import row_checks
from meterlog.evidence.row_checks import RowChecks


def rows(count, start=0):
    return [f"{k},{k * k}\r\n".encode() for k in range(start, start + count)]


def checks(lines):
    return RowChecks.of("data/t.csv", io.BytesIO(b"".join(lines)))


def compared(before, after):
    return checks(before).compare(io.BytesIO(b"".join(after)))


@pytest.mark.parametrize("count", [0, 1, 255, 256, 257, 5000, 30_000])
def test_the_file_reads_back_and_is_small(count):
    lines = rows(count)
    found = checks(lines)
    content = found.to_bytes()
    assert RowChecks.parse(content) == found
    assert found.block <= 100
    assert (found.block == 1) == (count <= 256)
    assert len(content) < 70 + 17 * max(257, count // 100 + 1)
    same = found.compare(io.BytesIO(b"".join(lines)))
    assert (same.rows, same.more, same.words) == ((), 0, "")


@pytest.mark.parametrize(
    "wrong",
    [b"", b"\xff", b"meterlog row checks 1\nfile: a\nrows: 3\nblock: 1\n", b"a" * 100,
     b"meterlog row checks 1\nfile: a\nrows: 0\nblock: 0\n"],
)  # fmt: skip
def test_what_is_no_row_checks_is_refused(wrong):
    with pytest.raises(ValueError, match=r"row checks|decode"):
        RowChecks.parse(wrong)


def test_single_rows_of_a_small_table_are_named():
    before = rows(40)
    after = [*before]
    after[0] = b"other heading\r\n"
    after[7] = b"7,50\r\n"
    after[8] = b"8,65\r\n"
    found = compared(before, after)
    assert found.rows == ((1, 1), (8, 9))
    assert found.words == "rows 1 and 8 to 9 differ"
    after = [*before]
    after[7] = b"7,50\r\n"
    assert compared(before, after).words == "row 8 differs"


def test_of_a_long_table_at_most_a_hundred_rows_are_named_for_one():
    before = rows(60_000)
    after = [*before]
    after[31_234] = b"31234,0\r\n"
    found = compared(before, after)
    ((first, last),) = found.rows
    assert first <= 31_235 <= last
    assert last - first < 100
    assert found.words == f"it differs within rows {first} to {last}"


def test_rows_taken_out_or_put_in_do_not_make_all_that_follow_differ():
    before = rows(200)
    found = compared(before, before[:50] + before[53:])
    assert (found.rows, found.more) == (((51, 53),), -3)
    assert found.words == "rows 51 to 53 differ; 3 rows were taken out"
    found = compared(before, [*before[:50], b"new\r\n", *before[50:]])
    assert (found.rows, found.more) == (((51, 51),), 1)
    assert found.words == "row 51 differs; 1 row was put in"
    assert compared(before, before[:-2]).rows == ((199, 200),)
    long = rows(3000)
    ((first, last),) = compared(long, long[:1500] + long[1501:]).rows
    assert first <= 1501 <= last


def test_swapped_rows_are_named():
    before = rows(30)
    after = [*before]
    after[4], after[20] = after[20], after[4]
    assert compared(before, after).rows == ((5, 5), (21, 21))


def test_a_line_feed_that_went_is_told():
    before = rows(30)
    after = [*before]
    after[4] = after[4].replace(b"\n", b"\x0b")
    found = compared(before, after)
    assert found.more == -1
    assert found.rows[0][0] in {5, 6}


@given(st.integers(1, 700), st.data())
def test_any_flipped_bit_is_in_a_row_that_is_named(count, data):
    before = rows(count)
    content = bytearray(b"".join(before))
    place = data.draw(st.integers(0, len(content) * 8 - 1))
    row = bytes(content[: place // 8]).count(b"\n") + 1
    content[place // 8] ^= 1 << place % 8
    found = checks(before).compare(io.BytesIO(bytes(content)))
    assert found.words
    if not found.more:
        assert any(first <= row <= last for first, last in found.rows)
    else:  # a line feed was made or lost: the row, or the one it ran into
        assert any(first - 1 <= row <= last + 1 for first, last in found.rows)


def test_a_line_longer_than_is_held_at_once_is_one_row():
    before = [b"head\n", b"x" * 3_000_000 + b"\n", b"end"]
    assert checks(before).rows == 3
    after = [before[0], b"x" * 2_999_999 + b"y\n", before[2]]
    assert compared(before, after).rows == ((2, 2),)


def plain_digests(content, rows, block):
    """Give the digests of each block of the first ``rows`` lines, line by line."""
    lines = content.splitlines(keepends=True)[:rows]
    groups = [lines[at : at + block] for at in range(0, len(lines), block)]
    return [hashlib.sha256(b"".join(group)).hexdigest()[:16] for group in groups]


@given(
    count=st.integers(0, 120),
    more=st.integers(0, 8),
    block=st.integers(1, 9),
    held=st.integers(1, 60),
    ends=st.booleans(),
)
def test_blocks_are_those_of_lines_wherever_the_pieces_end(count, more, block, held, ends):
    content = b"".join(b"%d,%s\n" % (k, b"x" * (k % 7)) for k in range(count + more))
    content = content if ends else content[:-1]
    with mock.patch.object(row_checks, "_LONGEST", held):
        found = list(row_checks._blocks(io.BytesIO(content), 0, count, block))
    assert found == plain_digests(content, count, block)


def test_rows_added_at_the_end_of_a_long_table_are_all_that_is_told():
    rows = b"".join(b"%d,12.345,%d\n" % (k, k % 97) for k in range(120_037))  # more than 1 MiB
    checks = RowChecks.of("data/a.csv", io.BytesIO(rows))
    found = checks.compare(io.BytesIO(rows + b"one,more,row\n"))
    assert found.more == 1
    assert found.words == "row 120038 differs; 1 row was put in"
