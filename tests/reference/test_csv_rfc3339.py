"""Time stamps against RFC 3339.

Source: RFC 3339 (July 2002), section 5.8 "Examples", and the grammar of section 5.6.
"""

from datetime import UTC, datetime, timedelta, timezone

import numpy as np
import pyarrow as pa
import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.evidence.utc_text import nanoseconds_of, utc_text, utc_texts
from meterlog.recording.trace_times import NotATime, parse_times, time_form


def _instant_ns(text):
    form = time_form(text)
    assert parse_times(pa.array([text]), form, decimal_comma=False).tolist() == [0]
    return form.zero_ns


@pytest.mark.parametrize(
    ("example", "in_utc"),
    [
        ("1985-04-12T23:20:50.52Z", "1985-04-12T23:20:50.520000000Z"),
        ("1996-12-19T16:39:57-08:00", "1996-12-20T00:39:57.000000000Z"),
        # the RFC: these two are the same instant, the leap second of 1990; as in POSIX time it
        # is taken as the second that follows
        ("1990-12-31T23:59:60Z", "1991-01-01T00:00:00.000000000Z"),
        ("1990-12-31T15:59:60-08:00", "1991-01-01T00:00:00.000000000Z"),
        ("1937-01-01T12:00:27.87+00:20", "1937-01-01T11:40:27.870000000Z"),
    ],
)
def test_the_examples_of_section_5_8_are_read_and_written_in_utc(example, in_utc):
    assert utc_text(_instant_ns(example)) == in_utc


@pytest.mark.parametrize(
    ("text", "in_utc"),
    [
        ("2026-05-04t10:20:30z", "2026-05-04T10:20:30.000000000Z"),  # 5.6: case does not matter
        ("2026-05-04 10:20:30Z", "2026-05-04T10:20:30.000000000Z"),  # 5.6 note: a space will do
        ("2026-05-04T10:20:30.1234567899Z", "2026-05-04T10:20:30.123456789Z"),
        ("2024-02-29T00:00:00-00:00", "2024-02-29T00:00:00.000000000Z"),
    ],
)
def test_what_section_5_6_allows_is_read(text, in_utc):
    assert utc_text(_instant_ns(text)) == in_utc


@pytest.mark.parametrize(
    "text",
    [
        "2026-05-04T10:20:30",
        "2026-05-04T10:20Z",
        "2026-05-04",
        "2026-05-04T10:20:30+0100",
        "2026-05-04T10:20:30+01",
        "2026-05-04T24:00:01Z",
        "2026-05-04T10:61:30Z",
        "2026-13-04T10:20:30Z",
        "2025-02-29T10:20:30Z",
        "2026-05-04T10:20:30,5Z",
        "2026-05-04T10:20:30.Z",
    ],
)
def test_what_section_5_6_does_not_allow_is_refused_with_a_reason(text):
    with pytest.raises(NotATime) as caught:
        time_form(text)
    assert caught.value.why


@given(st.lists(st.integers(-(2**62), 2**62), min_size=1, max_size=30))
def test_texts_equal_those_of_python(instants):
    for text, ns in zip(utc_texts(np.array(instants)).to_pylist(), instants, strict=True):
        assert text.endswith(f"{ns % 1_000_000_000:09d}Z")
        python = datetime(1970, 1, 1, tzinfo=UTC) + timedelta(seconds=ns // 1_000_000_000)
        assert text[:19] == python.isoformat()[:19]
        assert _instant_ns(text) == ns


@given(
    st.integers(-8 * 10**15, 7 * 10**15),
    st.integers(-14 * 60, 14 * 60),
)
def test_any_offset_is_read_as_python_reads_it(since_1970_us, minutes):
    place = timezone(timedelta(minutes=minutes))
    stamp = (datetime(1970, 1, 1, tzinfo=UTC) + timedelta(microseconds=since_1970_us)).astimezone(
        place
    )
    text = stamp.isoformat()
    assert _instant_ns(text) == nanoseconds_of(stamp)
    assert time_form(text).offset_s == minutes * 60
