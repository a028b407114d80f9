"""Which conversation each dialect has, and those that are not asked: listened to, or typed."""

import time
from dataclasses import replace

import numpy as np
import pytest

from meterlog.acquire import Clock, MeterChoice
from meterlog.acquire.talk.conversations import CONVERSATIONS, conversation_with
from meterlog.acquire.talk.free_running import FreeRunning
from meterlog.acquire.talk.polled import Polled
from meterlog.acquire.talk.typed_by_hand import TypedByHand
from meterlog.acquire.talk.virtual_sign import VirtualSign
from meterlog.model import EventKind, Flag, Identity
from meterlog.model.errors import LinkLost, UsageError
from meterlog.profile import DIALECTS, load_meter


def test_each_dialect_has_a_conversation_of_its_kind():
    kinds = {name: CONVERSATIONS[name] for name in DIALECTS}
    assert kinds["ascii-lines"] is kinds["lcd-frames"] is FreeRunning
    assert kinds["scpi"] is kinds["scpi-blocks"] is kinds["modbus-rtu"] is Polled
    assert kinds["typed"] is TypedByHand


@pytest.mark.parametrize("name", ["hand-meter", "panel-meter", "block-daq", "bench-scpi"])
def test_every_shipped_kind_of_profile_makes_its_conversation(name, choose):
    talk = conversation_with(choose(load_meter(name)), Clock.start())
    assert talk.watched
    assert (talk.refused, talk.repeated, talk.simulated) == (0, 0, False)


# -- the sign of a virtual meter ------------------------------------------------------------------


def test_the_sign_is_found_however_it_is_cut_and_not_after_the_beginning():
    sign = VirtualSign()
    for byte in b"# virtual bench, invented\r\n":
        assert not sign.seen or byte
        sign.hear(bytes((byte,)))
    assert sign.seen
    late = VirtualSign()
    late.hear(b"x" * 5000)
    late.hear(b"VIRTUAL BENCH")
    assert not late.seen


@pytest.mark.parametrize(("maker", "seen"), [("Virtual bench", True), ("NOT VIRTUAL", False)])
def test_a_maker_that_begins_with_the_word_is_a_virtual_one(maker, seen):
    sign = VirtualSign()
    sign.meet(Identity(maker=maker))
    assert sign.seen is seen


@pytest.mark.parametrize("name", ["line-logger", "hand-meter"])
def test_a_free_running_meter_says_on_opening_that_it_is_virtual(name, played, on):
    link = played()
    link.waiting = [b"# VIRT", b"UAL BENCH (invented)\r\n"]
    talk = on(FreeRunning, load_meter(name), link)
    assert talk.open() == ()
    assert talk.simulated
    assert not on(FreeRunning, load_meter(name), played()).simulated


# -- free running ---------------------------------------------------------------------------------


def test_what_was_remarked_before_the_beginning_is_told_with_the_first_reading(
    monkeypatch, played, on
):
    monkeypatch.setattr("meterlog.acquire.talk.free_running.BANNER_S", 0.02)
    link = played()
    talk = on(FreeRunning, load_meter("hand-meter"), link)
    low, good = _lcd_frame(5.0, low_battery=True), _lcd_frame(5.0, low_battery=True)
    link.waiting = [low, low]
    talk.open()
    talk.begin()
    heard = talk.hear(0.01)
    assert len(heard.readings) == 0
    # The frame after the beginning is taken for one that was joined in the middle.
    link.waiting = [good, good]
    readings = [talk.hear(0.01).readings for _ in range(2)]
    told = [remark for one in readings for remark in one.remarks if remark.kind == EventKind.DEVICE]
    assert ["low battery" in remark.text for remark in told] == [True]
    assert sum(len(one) for one in readings) >= 1


def test_what_came_before_a_port_was_lost_while_gathering_is_kept(played, on):
    link = played()
    profile = load_meter("line-logger")
    talk = on(FreeRunning, profile, link)
    talk._skip_first_partial = False
    talk.begin()
    link.waiting = [b"1,2,3\n"]
    talk.hear(0.0)
    time.sleep(2.0 * profile.interval_s)
    link.waiting, link.lost = [b"4,5,6\n"], True
    heard = talk.hear(0.0)
    assert heard.data == b"4,5,6\n"
    assert heard.readings.values.tolist() == [[4.0, 5.0, 6.0]]
    with pytest.raises(LinkLost):
        talk.hear(0.0)


# -- typed by hand --------------------------------------------------------------------------------


def test_what_is_typed_has_the_time_at_which_it_was_typed_and_its_flag(choose):
    profile = load_meter("typed-volts")
    clock = Clock.start()
    talk = TypedByHand(replace(choose(profile), url="typed:"), clock)
    talk.type_in([99.0])
    talk.begin()
    assert len(talk.hear(0.0).readings) == 0
    before = clock.now_ns()
    at_ns = talk.type_in([12.43])
    assert before <= at_ns <= clock.now_ns()
    time.sleep(0.02)
    heard = talk.hear(0.0)
    assert heard.arrived_ns == at_ns
    assert heard.data == b"12.43\n"
    assert heard.readings.values.tolist() == [[12.43]]
    assert heard.readings.flags.tolist() == [[int(Flag.TYPED)]]
    assert np.isfortran(heard.readings.values) or heard.readings.values.flags.f_contiguous
    assert not talk.watched


@pytest.mark.parametrize(
    ("name", "url", "words"),
    [
        ("typed-volts", "/dev/ttyUSB0", "is typed by hand and has no port"),
        ("line-logger", "typed:", "is not typed by hand"),
    ],
)
def test_a_port_for_a_typed_meter_and_none_for_another_are_refused(name, url, words):
    profile = load_meter(name)
    with pytest.raises(UsageError, match=words):
        conversation_with(MeterChoice(profile, url, name, profile.channels), Clock.start())


def _lcd_frame(value, *, low_battery=False):
    """Give a frame that shows volts of direct current; the table of the decoder's own tests."""
    segments = {
        "0": 0x7D, "1": 0x05, "2": 0x5B, "3": 0x1F, "4": 0x27, "5": 0x3E, "6": 0x7E, "7": 0x15,
        "8": 0x7F, "9": 0x3F,
    }  # fmt: skip
    digits = f"{value:.3f}".replace(".", "")
    nibbles = [0b0101, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0]
    for place, digit in enumerate(digits):
        code = segments[digit]
        nibbles[1 + 2 * place] |= code >> 4
        nibbles[2 + 2 * place] |= code & 15
    nibbles[3] |= 8  # the point after the first digit
    nibbles[12] |= 0b0100  # V
    if low_battery:
        nibbles[12] |= 0b0001
    return bytes((place << 4) | nibble for place, nibble in enumerate(nibbles, 1))
