"""A Modbus panel meter asked over a real pseudo terminal: answers, silence, off and on again."""

import os
import select
import struct
import threading
import tty
from dataclasses import replace

import numpy as np
import pytest

from meterlog.acquire import Acquisition, Clock, MeterChoice
from meterlog.model import Block, Event, EventKind, Flag, Identity
from meterlog.model.errors import TalkError
from meterlog.profile import load_meter

pytestmark = pytest.mark.pty

NAMED = load_meter("panel-meter")
PROFILE = replace(NAMED, modbus=replace(NAMED.modbus, poll_s=0.02, answer_s=0.2))


def checked(frame):
    """Add the check sum, bit by bit as in Modbus over Serial Line V1.02, 6.2.2."""
    crc = 0xFFFF
    for byte in frame:
        crc ^= byte
        for _ in range(8):
            crc = (crc >> 1) ^ 0xA001 if crc & 1 else crc >> 1
    return frame + struct.pack("<H", crc)


class Panel(threading.Thread):
    """A device at address 1 with two input registers. Invented, no real one."""

    def __init__(self):
        super().__init__(name="test panel meter")
        self._far, self._near = os.openpty()
        tty.setraw(self._near)
        self.url = os.ttyname(self._near)
        self.registers = {0: 1243, 1: 560}
        self.heard, self.mute, self.identified = [], False, True
        self.spoil = b""
        self._wake, self._waker = os.pipe()
        self.start()

    def run(self):
        begun = b""
        while True:
            ready, _, _ = select.select([self._far, self._wake], [], [])
            if self._wake in ready:
                return
            begun += os.read(self._far, 256)
            while frame := self._whole(begun):
                begun = begun[len(frame) :]
                self.heard.append(frame)
                if not self.mute:
                    os.write(self._far, self._answer(frame))

    @staticmethod
    def _whole(begun):
        size = 7 if begun[1:2] == b"\x2b" else 8
        return begun[:size] if len(begun) >= size else b""

    def _answer(self, frame):
        assert checked(frame[:-2]) == frame
        if frame[1] == 0x2B:
            if not self.identified:
                return checked(b"\x01\xab\x01")
            parts = b"\x00\x08INVENTED\x01\x04PM 1\x02\x031.0"
            return checked(b"\x01\x2b\x0e\x01\x01\x00\x00\x03" + parts)
        first, count = struct.unpack(">2H", frame[2:6])
        try:
            numbers = [self.registers[first + place] for place in range(count)]
        except KeyError:
            return checked(bytes((1, frame[1] | 0x80, 2)))
        answer = checked(bytes((1, frame[1], 2 * count)) + struct.pack(f">{count}H", *numbers))
        spoil, self.spoil = self.spoil, b""
        return spoil or answer

    def close(self):
        os.write(self._waker, b"x")
        self.join(60)
        for handle in (self._far, self._near, self._wake, self._waker):
            os.close(handle)


class Basket:
    """Takes what the reader puts, and waits for what should come."""

    def __init__(self):
        self.items, self._come = [], threading.Condition()

    def __call__(self, item):
        with self._come:
            self.items.append(item)
            self._come.notify_all()

    def wait(self, told):
        with self._come:
            assert self._come.wait_for(told, 60), self.events

    @property
    def blocks(self):
        return [item for item in list(self.items) if isinstance(item, Block)]

    @property
    def events(self):
        return [(item.kind, item.value) for item in list(self.items) if isinstance(item, Event)]

    def said(self, words):
        return [value for _, value in self.events if words in value]


@pytest.fixture
def panel():
    far = Panel()
    yield far
    far.close()


@pytest.fixture
def begin(panel):
    begun = []

    def start(profile=PROFILE):
        choice = MeterChoice(profile, panel.url, "panel", profile.channels)
        acquisition = Acquisition([choice], Clock.start())
        begun.append(acquisition)
        basket = Basket()
        (instrument,) = acquisition.connect()
        acquisition.start(basket)
        return instrument, basket, acquisition

    yield start
    for acquisition in begun:
        acquisition.stop()


def last(basket):
    return basket.blocks[-1].values[-1].tolist() if basket.blocks else []


def test_it_is_identified_and_its_registers_become_volts_and_amperes(panel, begin):
    instrument, basket, acquisition = begin()
    basket.wait(lambda: len(basket.blocks) >= 5)
    assert instrument.identity == Identity("INVENTED", "PM 1", "", "1.0")
    assert not instrument.simulated
    assert last(basket) == pytest.approx([12.43, 5.6])
    panel.registers[1] = 65_536 - 560
    basket.wait(lambda: last(basket) == pytest.approx([12.43, -5.6]))
    assert acquisition.state()[0].refused == 0
    # Modbus Application Protocol V1.1b3, 6.4: function, first address, count.
    assert panel.heard[-1][:6] == bytes.fromhex("010400000002")


def test_a_row_made_of_two_requests_is_whole_or_not_there(panel, begin):
    panel.registers = {0: 100, 500: 200}
    first, second = PROFILE.modbus.registers
    apart = (first, replace(second, address=500))
    profile = replace(PROFILE, modbus=replace(PROFILE.modbus, registers=apart))
    _, basket, _ = begin(profile)
    basket.wait(lambda: len(basket.blocks) >= 5)
    rows = np.concatenate([block.values for block in basket.blocks])
    assert rows == pytest.approx(np.tile([1.0, 2.0], (len(rows), 1)))


def test_a_device_without_identification_is_read_all_the_same(panel, begin):
    panel.identified = False
    instrument, basket, _ = begin()
    assert instrument.identity == Identity()
    basket.wait(lambda: last(basket) == pytest.approx([12.43, 5.6]))


def test_a_spoilt_answer_costs_itself(panel, begin):
    _, basket, acquisition = begin()
    basket.wait(lambda: len(basket.blocks) >= 3)
    panel.spoil = b"\x01\x04\x04\xff\xff\xff\xff\x00\x00"
    basket.wait(lambda: acquisition.state()[0].refused == 1)
    before = len(basket.blocks)
    basket.wait(lambda: len(basket.blocks) >= before + 3)
    finite = np.concatenate([block.values for block in basket.blocks])
    finite = finite[np.isfinite(finite).all(axis=1)]
    assert finite == pytest.approx(np.tile([12.43, 5.6], (len(finite), 1)))


def test_an_exception_is_told_in_words_and_its_values_are_missing(panel, begin):
    panel.registers = {0: 1243}
    _, basket, _ = begin()
    basket.wait(lambda: any(kind is EventKind.DEVICE for kind, _ in basket.events))
    assert basket.said("exception 02, illegal data address")
    assert (basket.blocks[0].flags == int(Flag.NO_DATA)).all()
    panel.registers[1] = 560
    basket.wait(lambda: last(basket) == pytest.approx([12.43, 5.6]))


def test_a_device_that_is_off_is_silent_and_read_again_when_it_is_on(panel, begin):
    _, basket, acquisition = begin()
    basket.wait(lambda: len(basket.blocks) >= 3)
    panel.mute = True
    basket.wait(lambda: basket.said("no answer to device 1, function 4 within 0.2 s"))
    basket.wait(lambda: basket.said("silent since"))
    assert not acquisition.state()[0].alive
    basket.wait(lambda: set(basket.blocks[-1].flags.ravel()) == {int(Flag.NO_DATA)})
    heard = len(panel.heard)
    basket.wait(lambda: any(frame[1] == 0x2B for frame in panel.heard[heard:]))
    panel.mute = False
    basket.wait(lambda: basket.said("back after"))
    basket.wait(lambda: last(basket) == pytest.approx([12.43, 5.6]))
    assert len(basket.said("no answer")) == 1
    assert not basket.said("another instrument")


def test_nobody_at_the_address_is_an_error_that_names_what_to_check(panel):
    panel.mute = True
    choice = MeterChoice(PROFILE, panel.url, "panel", PROFILE.channels)
    with pytest.raises(TalkError, match=r"no answer from device 1, function 4") as caught:
        Acquisition([choice], Clock.start()).connect()
    assert caught.value.subject == panel.url
    assert "address" in caught.value.remedy
