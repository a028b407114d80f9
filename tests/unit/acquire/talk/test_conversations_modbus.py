"""Modbus devices asked over links that are played by the test."""

import struct
import time
from dataclasses import replace

import pytest
from pymodbus.framer import FramerRTU

from meterlog.acquire.talk.asker import Progress
from meterlog.acquire.talk.modbus_asker import ModbusAsker
from meterlog.acquire.talk.polled import Polled
from meterlog.model import Flag, Identity
from meterlog.model.errors import TalkError
from meterlog.profile import load_meter


def _crc(frame):
    return frame + FramerRTU.compute_CRC(frame).to_bytes(2, "big")


def _registers(*numbers):
    data = struct.pack(f">{len(numbers)}H", *numbers)
    return _crc(bytes((1, 4, len(data))) + data)


def _apart():
    """A panel meter whose registers lie so far apart that each needs a request of its own."""
    profile = load_meter("panel-meter")
    first, second = profile.modbus.registers
    modbus = replace(profile.modbus, registers=(first, replace(second, address=1000)))
    return replace(profile, modbus=modbus, link=replace(profile.link, baud=2400))


def test_a_row_that_needs_two_requests_is_asked_for_in_turn_with_a_rest_between(played, choose):
    profile = _apart()
    asker, link = ModbusAsker(choose(profile)), played()
    asker.ask(link)
    assert link.sent == [_crc(bytes.fromhex("010400000001"))]
    begun = time.monotonic()
    first = asker.take(link, _registers(1243), 1)
    # 3.5 characters of 11 bits at 2400 Bd: Modbus over Serial Line V1.02, 2.5.1.1.
    assert time.monotonic() - begun >= 3.5 * 11 / 2400
    assert first.progress is Progress.MOVING
    assert link.sent[1] == _crc(bytes.fromhex("010403E80001"))
    second = asker.take(link, _registers(560), 2)
    assert second.progress is Progress.WHOLE
    assert second.readings.values.tolist() == [[1243.0, 560.0]]
    asker.ask(link)
    assert link.sent[2] == link.sent[0]


def test_an_exception_is_an_answer_and_is_told(played, choose):
    asker, link = ModbusAsker(choose(load_meter("panel-meter"))), played()
    asker.ask(link)
    answer = asker.take(link, _crc(bytes((1, 0x84, 2))), 1)
    assert answer.progress is Progress.WHOLE
    assert (answer.readings.flags == int(Flag.NO_DATA)).all()
    assert "illegal data address" in answer.readings.remarks[0].text


def _identity(*objects, more=0, following=0):
    parts = b"".join(bytes((key, len(text))) + text for key, text in objects)
    return _crc(bytes((1, 0x2B, 0x0E, 1, 1, more, following, len(objects))) + parts)


def test_a_device_is_identified_in_as_many_parts_as_it_likes(played, choose):
    link = played(
        [b"\x00\x01\x2b", _identity((0, b"INVENTED"), more=0xFF, following=1)],
        [_identity((1, b"PM 1"), (2, b"1.2"))[:6], _identity((1, b"PM 1"), (2, b"1.2"))[6:]],
    )
    identity, complaints = ModbusAsker(choose(load_meter("panel-meter"))).introduce(link, 0.5)
    assert identity == Identity("INVENTED", "PM 1", "", "1.2")
    assert complaints == ()
    assert link.sent[0] == bytes.fromhex("012b0e01007077")
    assert link.sent[1][4] == 1


def test_a_device_that_knows_no_identification_is_taken_without(played, choose):
    link = played(_crc(bytes((1, 0xAB, 1))))
    asker = ModbusAsker(choose(load_meter("panel-meter")))
    assert asker.introduce(link, 0.5) == (Identity(), ())
    silent = played(b"", _registers(1, 2))
    assert asker.introduce(silent, 0.03) == (Identity(), ())
    with pytest.raises(TalkError, match=r"no answer from device 1, function 4 within 0\.03 s"):
        asker.introduce(played(), 0.03)


def test_who_does_not_say_again_who_he_is_has_not_become_another(played, on):
    talk = on(Polled, load_meter("panel-meter"), played())
    talk.identity = Identity("INVENTED", "PM 1")
    talk.port.link = played(_crc(bytes((1, 0xAB, 1))))
    assert talk.reopen() == ()
    other = _identity((0, b"OTHER"), (1, b"PM 2"))
    talk.port.link = played([other], [other])  # asked twice: the first might have been garbage
    assert talk.reopen() == ("another instrument answers now: OTHER PM 2",)


def test_a_stray_byte_before_the_answer_does_not_make_it_ask_into_the_answer(played, choose):
    """Where two wires are turned round from sending to receiving, a byte of noise is usual."""
    asker, link = ModbusAsker(choose(load_meter("panel-meter"))), played()
    asker.ask(link)
    stray = asker.take(link, b"\x00" * 300, 1)
    assert stray.progress is Progress.WAITING
    assert asker.refused > 0
    answer = asker.take(link, _registers(1243, 560), 2)
    assert answer.progress is Progress.WHOLE
    assert answer.readings.values.tolist() == [[1243.0, 560.0]]


def test_a_spoilt_answer_is_given_up_once_the_line_is_quiet(played, choose):
    asker, link = ModbusAsker(choose(load_meter("panel-meter"))), played()
    asker.ask(link)
    spoilt = bytearray(_registers(1243, 560) * 40)
    spoilt[3::9] = bytes(byte ^ 0x55 for byte in spoilt[3::9])
    assert asker.take(link, bytes(spoilt), 1).progress is Progress.WAITING
    assert asker.take(link, b"", 2).progress is Progress.GIVEN_UP
    asker.ask(link)
    assert asker.take(link, b"", 3).progress is Progress.WAITING


# -- answers that come twice, or late: they do not say to which request they belong ---------------


def test_an_answer_that_comes_twice_is_not_taken_for_that_to_the_next_request(played, choose):
    asker, link = ModbusAsker(choose(_apart())), played()
    asker.ask(link)
    assert asker.take(link, _registers(1243) * 2, 1).progress is Progress.MOVING
    answer = asker.take(link, _registers(560) * 2, 2)
    assert answer.readings.values.tolist() == [[1243.0, 560.0]]
    assert asker.refused == 2
    assert asker.last_refused == _registers(560)


def test_what_comes_before_the_next_request_is_sent_is_no_answer_to_it(played, choose):
    asker, link = ModbusAsker(choose(_apart())), played()
    asker.ask(link)
    link.waiting = [_registers(1243)]  # again, while the line rests
    assert asker.take(link, _registers(1243), 1).progress is Progress.MOVING
    answer = asker.take(link, _registers(560), 2)
    assert answer.readings.values.tolist() == [[1243.0, 560.0]]
    assert asker.refused == 1


@pytest.mark.parametrize("says_who", [True, False])
def test_a_late_answer_gets_neither_the_place_nor_the_time_of_the_next(says_who, played, on):
    """Taken for the next one's it would put the second channel's value into the first."""
    profile = _apart()
    profile = replace(profile, modbus=replace(profile.modbus, answer_s=0.05, poll_s=0.0))
    who, late = _identity((0, b"INVENTED"), (1, b"PM 1")), _registers(560)
    opening = [who] if says_who else [b"", _registers(1243)]
    link = played(*opening)
    talk = on(Polled, profile, link)
    talk.open()
    talk.begin()
    settled = [late, who] if says_who else []
    link._answers = [
        _registers(1243),
        b"",
        *([settled] if says_who else []),
        _registers(7),
        _registers(8),
    ]
    rows, aside, until = [], b"", time.monotonic() + 60.0
    told = []
    while not rows:
        assert time.monotonic() < until
        if talk._unsettled and not says_who and not link.waiting:
            link.waiting = [late]
        heard = talk.hear(0.01)
        rows += heard.readings.values.tolist()
        aside += heard.aside
        told += heard.complaints
    assert rows == [[7.0, 8.0]]
    assert told == ["no answer to device 1, function 4 within 0.05 s"]
    assert talk.refused == 1
    assert talk.last_refused == late
    assert late in aside
