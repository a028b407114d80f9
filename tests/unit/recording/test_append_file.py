"""AppendFile, the kept text with a checksum, event lines and raw frames."""

import json
import os

import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.model import Event, EventKind, RawBytes
from meterlog.model.errors import DiskFailed
from meterlog.recording.append_file import AppendFile, write_aside
from meterlog.recording.checked_text import crc_holds, with_crc
from meterlog.recording.event_chain import EventChain
from meterlog.recording.event_lines import parse_event_lines
from meterlog.recording.raw_frames import RawFrames, raw_frame


def test_all_parts_arrive_in_order_whatever_their_size(tmp_path):
    file = AppendFile(tmp_path / "f", "f")
    large = os.urandom(70_000)
    file.append([b"a", b"", large, b"b"])
    file.append([b"c"])
    assert (tmp_path / "f").read_bytes() == b"a" + large + b"bc"
    assert file.written == 70_003
    file.close()


def test_a_write_cut_short_by_the_system_is_carried_on(tmp_path, monkeypatch):
    real = os.writev
    monkeypatch.setattr(os, "writev", lambda fd, views: real(fd, [bytes(views[0][:3])]))
    file = AppendFile(tmp_path / "f", "f")
    file.append([b"0123456789", b"abcdefg"])
    assert (tmp_path / "f").read_bytes() == b"0123456789abcdefg"
    file.close()


def test_nothing_is_appended_behind_a_torn_piece(tmp_path, monkeypatch):
    file = AppendFile(tmp_path / "f", "data/f")
    answers = iter([4])

    def full(fd, views):
        taken = next(answers, None)
        if taken is None:
            raise OSError(28, "No space left on device")
        return os.write(fd, bytes(views[0][:taken]))

    monkeypatch.setattr(os, "writev", full)
    with pytest.raises(DiskFailed, match="No space left") as caught:
        file.append([b"0123456789"])
    assert str(tmp_path / "f") in str(caught.value)
    assert caught.value.remedy
    monkeypatch.undo()
    with pytest.raises(DiskFailed):
        file.append([b"good again"])
    assert (tmp_path / "f").read_bytes() == b"0123"
    file.close()


def test_a_file_that_is_removed_while_it_grows_is_noticed(tmp_path):
    file = AppendFile(tmp_path / "f", "f")
    file.append([b"x"])
    (tmp_path / "f").unlink()
    with pytest.raises(DiskFailed, match="removed"):
        file.sync()
    file.close()


def test_an_existing_file_is_never_overwritten(tmp_path):
    (tmp_path / "f").write_bytes(b"old")
    with pytest.raises(DiskFailed):
        AppendFile(tmp_path / "f", "f")
    assert (tmp_path / "f").read_bytes() == b"old"


def test_a_file_written_aside_is_whole_and_leaves_nothing_beside_it(tmp_path):
    (tmp_path / "f").write_bytes(b"old")
    write_aside(tmp_path / "f", b"new")
    assert [path.name for path in tmp_path.iterdir()] == ["f"]
    assert (tmp_path / "f").read_bytes() == b"new"


@pytest.mark.parametrize("indent", [None, 2])
def test_every_flipped_bit_of_a_checked_text_is_noticed(indent):
    content = with_crc(json.dumps({"a": 1, "b": "x,}"}, indent=indent))
    assert json.loads(content)["b"] == "x,}"
    assert crc_holds(content)
    body = content.rindex(b",")
    for place in range(body):
        for bit in range(8):
            wrong = bytearray(content)
            wrong[place] ^= 1 << bit
            assert not crc_holds(bytes(wrong))


ANY_EVENT = st.builds(
    Event,
    st.integers(0, 2**62),
    st.sampled_from([kind for kind in EventKind if kind is not EventKind.SPEED]),
    st.text(st.characters(exclude_categories=())),
    st.text(max_size=5),
)
# A speed is a number: others are damage, see test_odd_events.py.
SPEED = st.builds(
    Event, st.integers(0, 2**62), st.just(EventKind.SPEED), st.integers(0, 999).map(str)
)


@given(ANY_EVENT | SPEED)
def test_any_event_reads_back_as_it_was(event):
    line = EventChain(b"").line(event)
    assert line.count(b"\n") == 1
    events, damage = parse_event_lines(line, "events")
    assert (events, damage) == ((event,), ())
    assert json.loads(line)["elapsed_s"] == event.t_ns / 1e9


def test_a_damaged_line_costs_itself_only_and_a_torn_one_is_left_out():
    chain = EventChain(b"")
    lines = [chain.line(Event(k, EventKind.SPEED, str(k))) for k in range(4)]
    lines[1] = lines[1].replace(b'"1"', b'"3"')
    content = b"".join(lines)[:-5]
    events, damage = parse_event_lines(content, "data/events.jsonl")
    assert [event.value for event in events] == ["0", "2"]
    assert damage == (
        "data/events.jsonl: line 2 is damaged and left out.",
        "data/events.jsonl: line 4 is torn off and left out.",
    )


def test_events_come_in_time_order_though_they_were_written_in_another():
    chain = EventChain(b"")
    content = chain.line(Event(9, EventKind.TAP)) + chain.line(Event(4, EventKind.NOTE, "a"))
    assert [event.t_ns for event in parse_event_lines(content, "e")[0]] == [4, 9]


def test_any_prefix_of_raw_frames_gives_the_whole_frames_and_no_others(tmp_path):
    frames = [RawBytes("m", k * 10, bytes([k]) * k) for k in range(5)]
    packed = [raw_frame(frame) for frame in frames]
    content = b"".join(packed)
    ends = [sum(map(len, packed[: k + 1])) for k in range(5)]
    path = tmp_path / "m.raw"
    for cut in range(len(content) + 1):
        path.write_bytes(content[:cut])
        reader = RawFrames(path, "m", "data/m.raw")
        whole = sum(end <= cut for end in ends)
        assert list(reader.read()) == frames[:whole]
        assert bool(reader.damage) == (cut not in (0, *ends))


def test_a_flipped_bit_in_a_raw_frame_is_told_and_never_given(tmp_path):
    frames = [RawBytes("m", k * 10, b"+1.2345E+01\r\n") for k in range(3)]
    content = b"".join(raw_frame(frame) for frame in frames)
    path = tmp_path / "m.raw"
    for place in range(len(content)):
        wrong = bytearray(content)
        wrong[place] ^= 1 << (place % 8)
        path.write_bytes(wrong)
        reader = RawFrames(path, "m", "data/m.raw")
        got = list(reader.read())
        assert got == frames[: place // (16 + 13)]
        assert "data/m.raw" in reader.damage
