"""Lines of events that have their checksum and yet can't be: damage, never a crash."""

import pytest

from meterlog.model import Event, EventKind
from meterlog.recording.checked_text import with_crc
from meterlog.recording.event_lines import event_text, parse_event_lines


def line(t_ns="5", kind="speed", value='"3"', source='""'):
    text = f'{{"t_ns": {t_ns}, "kind": "{kind}", "value": {value}, "source": {source}}}'
    return with_crc(text)


def test_a_line_as_the_program_writes_it_is_read():
    events, damage = parse_event_lines(line() + with_crc(event_text(Event(7, EventKind.TAP))), "e")
    assert (events, damage) == ((Event(5, EventKind.SPEED, "3"), Event(7, EventKind.TAP)), ())


@pytest.mark.parametrize(
    "odd",
    [
        *(line(t_ns) for t_ns in ("1e999999", "NaN", "1.5", "true", "null", '"5"', "9" * 5000)),
        *(line(t_ns) for t_ns in (str(1 << 63), str(-(1 << 63)))),
        *(line(value=value) for value in ('"a"', '"-1"', '"1000"', "null", '""')),
        line(value='"' + "9" * 5000 + '"'),
        line(value="[" * 100_000 + "]" * 100_000),
        line(kind="nothing"),
    ],
    ids=lambda odd: odd[:40].decode(),
)  # fmt: skip
def test_a_line_that_can_not_be_is_told_and_left_out(odd):
    events, damage = parse_event_lines(line() + odd + line(), "e")
    assert len(events) == 2
    assert damage == ("e: line 2 is damaged and left out.",)
