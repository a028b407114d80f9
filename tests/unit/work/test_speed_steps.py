"""A speed that can be marked, limited or amended can be read back; no other can be."""

from hypothesis import given
from hypothesis import strategies as st

from meterlog.commands.typed_keys import mark_of
from meterlog.model import EventKind
from meterlog.model.errors import MeterlogError
from meterlog.model.speed_step import FASTEST_STEP, is_speed_step
from meterlog.profile import limits_profile
from meterlog.recording.about_text import _speeds
from meterlog.recording.checked_text import with_crc
from meterlog.recording.event_lines import event_text, parse_event_lines
from meterlog.recording.json_object import JsonObject
from meterlog.work.marks_made import MarksMade

_NUMBERS = st.integers(0, 20_000).map(str) | st.text("0123456789²٢-", min_size=1, max_size=6)


def _told(ask):
    """Give what was made; None where it was refused."""
    try:
        return ask()
    except MeterlogError:
        return None


@given(_NUMBERS)
def test_what_can_be_marked_is_read_back(text):
    event = _told(lambda: MarksMade().make(0, EventKind.SPEED, text))
    assert (event is not None) is is_speed_step(text)
    assert (mark_of(text) is not None) is is_speed_step(text)
    if event is not None:
        line = with_crc(event_text(event))
        assert parse_event_lines(line, "events") == ((event,), ())


@given(_NUMBERS)
def test_what_can_be_limited_is_read_back(text):
    toml = f'title = "t"\nbasis = "b"\n[speed."{text}"]\nmin_a = 1\n'
    limits = _told(lambda: limits_profile("p", toml, "p.toml"))
    assert (limits is not None) is is_speed_step(text)
    if limits is not None:
        kept = {str(one): {"min_a": 1.0, "max_a": None} for one in limits.speeds}
        assert _speeds(JsonObject(kept, "about.json")) == dict(limits.speeds)


def test_the_fastest_is_one_and_the_next_is_none():
    assert is_speed_step(str(FASTEST_STEP))
    assert not is_speed_step(str(FASTEST_STEP + 1))
