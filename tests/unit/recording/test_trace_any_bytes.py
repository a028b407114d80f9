"""Whatever bytes a trace or events file holds: it is read right, or refused with a sentence."""

import csv
import io
import math

import pytest
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

from meterlog.model.errors import TraceError
from meterlog.recording import ImportRequest, Recording, import_trace, parse_events_csv
from meterlog.recording.trace_layout import trace_layout
from meterlog.recording.trace_rows import TraceRows

TRACE = b't,feed,note\n0,1.5,x\n0.1,-2,"a, ""b"""\n0.2,,z\n'
EVENTS = b'elapsed_s,kind,value\n0,speed,1\n1.5,tap,\n2,note,"a, b"\n'
PIECES = (
    *(b'"', b"\0", b"\xff", b"\xff\xfe", b"\xfe\xff", b"\xef\xbb\xbf", b"\x81", b"\xed\xa0\x80"),
    *(b"\n", b"\r", b"\r\n", b",", b";", b"\t", b" ", b"-", b"'", b"\xe2\x80\xa8"),
    *(b"nan", b"inf", b"1e400", b"9e18", b"1_0", b"0x1", "٣".encode(), b"t", b"feed"),
    *(b"2026-05-04T10:20:30Z", b"2026-05-04T10:20:60+99:99", b"0000-00-00T00:00:00Z"),
)  # fmt: skip


@st.composite
def broken(draw, whole):
    """Give a file with pieces put in, taken out and written over; or no file at all."""
    if draw(st.integers(0, 9)) == 0:
        return draw(st.binary(max_size=80))
    content = bytearray(draw(st.sampled_from([whole, whole.decode().encode("utf-16")])))
    for _ in range(draw(st.integers(1, 4))):
        at = draw(st.integers(0, len(content)))
        content[at : at + draw(st.integers(0, 4))] = draw(st.sampled_from(PIECES))
    return bytes(content)


@pytest.fixture(scope="module")
def file(tmp_path_factory):
    return tmp_path_factory.mktemp("bytes") / "any.csv"


def read(file, content):
    file.write_bytes(content)
    layout = trace_layout(file, ("t", "feed"))
    rows = TraceRows(layout, "t", ("feed",))
    return layout, [value for lot in rows.read() for value in lot.values[:, 0].tolist()]


def cells(layout, content):
    """Give the cells of the column by another reader, which refuses odd quotes."""
    text = content.decode(layout.encoding, "replace")
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=layout.delimiter, strict=True)
    rows = [row for row in reader if any(cell.strip() for cell in row)]
    column = [cell.strip() for cell in rows[0]].index("feed")
    return [row[column].strip() for row in rows[1:]]


@settings(max_examples=200, deadline=None, suppress_health_check=list(HealthCheck))
@example(b"\xff\xfe\x00")
@example(b"\xff\xfe" + TRACE.decode().encode("utf-16-le") + b"\x41")
@example(TRACE.replace(b"1.5", b'"1.5'))
@example(TRACE.replace(b"1.5", b'"1"5'))
@example(TRACE + b"1,2," + b"A" * 140_000 + b"\n")
@example(b"t,feed\n")
@given(broken(TRACE))
def test_a_trace_of_any_bytes_is_read_as_another_reader_does_or_refused(file, content):
    try:
        layout, values = read(file, content)
    except TraceError as error:
        check_words(file, error)
        return
    expected = [value_of(cell) for cell in cells(layout, content)]
    assert values == pytest.approx(expected, rel=0, abs=0, nan_ok=True)


def check_words(file, error):
    assert str(error).startswith(str(file))
    assert len(str(error)) < 1000


def value_of(cell):
    """Give a cell's value; none where it is empty, a word for an overload, or as SCPI says."""
    try:
        value = float(cell.replace(",", "."))
    except ValueError:
        return math.nan
    return value if abs(value) < 9.0e37 else math.nan


@settings(max_examples=150, deadline=None, suppress_health_check=list(HealthCheck))
@example(b"\xff\xfe\x00")
@example(EVENTS.replace(b'"a, b"', b'"a, b'))
@given(broken(EVENTS))
def test_events_of_any_bytes_are_read_or_refused(file, content):
    file.write_bytes(content)
    try:
        events = parse_events_csv(file)
    except TraceError as error:
        check_words(file, error)
        return
    assert [event.t_ns for event in events] == sorted(event.t_ns for event in events)


@settings(max_examples=25, deadline=None, suppress_health_check=list(HealthCheck))
@given(broken(TRACE))
def test_a_whole_import_of_any_bytes_leaves_a_sound_recording_or_nothing(tmp_path_factory, content):
    folder = tmp_path_factory.mktemp("whole")
    (folder / "any.csv").write_bytes(content)
    out = folder / "out"
    try:
        import_trace(ImportRequest(folder / "any.csv", "t", (("motor-feed", "feed"),), out))
    except TraceError:
        assert [path.name for path in folder.iterdir()] == ["any.csv"]
        return
    assert Recording.open(out).check() == ()


@pytest.mark.parametrize(
    ("content", "words"),
    [
        ('t,feed\n0,1\n1,"2\n2,3\n', ["line 3, column 'feed'", "never closed"]),
        ('t,feed\n0,1\n1,"2', ["line 3, column 'feed'", "never closed"]),
        ('t,feed\n"0",1\n1,"2"5\n', ["line 3, column 'feed'", "after its closing quote"]),
        ('t,note,feed\n0,"a\n\nb",1\n1,"c""d"e,2\n', ["line 5, column 'note'", "after its"]),
        ('t;feed\n0;1\n1;"2,5\n', ["line 3, column 'feed'", "never closed"]),
        ('"t,feed\n0,1\n', ["line 1", "never closed"]),
    ],
)
def test_an_odd_quote_is_named_with_line_and_column(file, content, words):
    with pytest.raises(TraceError) as caught:
        read(file, content.encode())
    assert [word for word in words if word not in str(caught.value)] == []


def test_quotes_that_stand_inside_a_plain_field_are_left_alone(file):
    assert read(file, b't,feed,note\n0,1,hose 5"\n1,2,"6"""\n')[1] == [1.0, 2.0]


def test_a_million_columns_are_read_and_a_wrong_name_among_them_is_told_shortly(file):
    names = ",".join(f"c{k}" for k in range(1_000_000))
    file.write_text(f"t,feed,{names}\n0,1.5{',1' * 1_000_000}\n")
    (lot,) = TraceRows(trace_layout(file, ("t",)), "t", ("feed",)).read()
    assert lot.values.tolist() == [[1.5]]
    with pytest.raises(TraceError, match="Did you mean 'feed'") as caught:
        trace_layout(file, ("t",)).column("fed")
    assert len(str(caught.value)) < 1000
    assert "and 999982 more" in str(caught.value)


def test_a_line_longer_than_can_be_held_is_refused_with_words(file):
    with pytest.raises(TraceError) as caught:
        read(file, b"t,feed" + b",x" * 10 + b"\n0,1" + b",aaaaaaaaaa" * 2_000_000 + b"\n")
    assert "fields, the header has 12" in str(caught.value)
    assert "line 2" in str(caught.value)


def test_bytes_that_are_no_text_far_down_are_named_with_their_line(file):
    with pytest.raises(TraceError, match=r"line 20002: holds bytes that are no text"):
        read(file, b"t,feed\n" + b"0,1\n" * 20_000 + b"0,\xff\n")


@pytest.mark.parametrize("place", ["folder", "pipe"])
def test_what_is_no_file_is_refused_before_anything_waits_for_it(tmp_path, place):
    import os

    if place == "pipe":
        os.mkfifo(tmp_path / "pipe")
    path = tmp_path / "pipe" if place == "pipe" else tmp_path
    with pytest.raises(TraceError, match=r"is a folder|is no regular file"):
        trace_layout(path, ("t",))


@pytest.mark.parametrize("cell", ["1_0", "٣", "0x10", "1e", "++1"])
def test_events_take_no_numbers_that_only_a_programming_language_knows(file, cell):
    file.write_text(f"elapsed_s,kind,value\n{cell},tap,\n", encoding="utf-8")
    with pytest.raises(TraceError, match="line 2, column 'elapsed_s'"):
        parse_events_csv(file)
