"""An instrument that hands over blocks of samples, asked over a real network port."""

import contextlib
import socket
import struct
import threading
import time
from dataclasses import replace

import numpy as np
import pytest

from meterlog.acquire import Acquisition, Clock, MeterChoice
from meterlog.model import Block, Event, EventKind
from meterlog.profile import load_meter

NAMED = load_meter("block-daq")
PROFILE = replace(NAMED, scpi=replace(NAMED.scpi, poll_s=0.02, answer_s=0.4))


class Sampler(threading.Thread):
    """Takes a row a millisecond: its number, its negative, 7. Invented, no real instrument."""

    def __init__(self):
        super().__init__(name="test sampler")
        self._door = socket.create_server(("127.0.0.1", 0))
        self.url = f"socket://127.0.0.1:{self._door.getsockname()[1]}"
        self.form, self.heard, self.errors = "definite", [], []
        self.mute, self.cut, self.pause_s = False, None, 0.0
        self.given, self.empty, self.every = 0, 0, 1
        self._line = None
        self._begun_s = time.monotonic()
        self.start()

    def run(self):
        try:
            while True:
                self._line, _ = self._door.accept()
                with contextlib.suppress(OSError):  # unplugged in the midst of an answer
                    self._serve(self._line)
        except OSError:
            return

    def _serve(self, line):
        with line, line.makefile("rwb", buffering=0) as stream:
            for said in stream:
                self.heard.append(said.decode().strip())
                if not self.mute:
                    self._answer(self.heard[-1], stream)

    def _answer(self, line, stream):
        if line == "*IDN?":
            stream.write(b"INVENTED,SAMPLER 1,SN1,1.0\n")
        elif line == "SYST:ERR?":
            said = self.errors.pop(0) if self.errors else '0,"No error"'
            stream.write(said.encode() + b"\n")
        elif line == "FETC?":
            self._send(self._block(self._fresh()), stream)

    def _fresh(self):
        stop = int((time.monotonic() - self._begun_s) * 1000.0) // self.every * self.every
        self.empty += stop == self.given
        numbers = [n % 30_000 for n in range(self.given, stop)]
        self.given = stop
        return b"".join(struct.pack(">3h", n, -n, 7) for n in numbers)

    def _block(self, payload):
        if self.form == "indefinite":
            return b"#0" + payload + b"\n"
        size = str(len(payload)).encode()
        return b"#" + str(len(size)).encode() + size + payload + b"\n"

    def _send(self, data, stream):
        if self.cut is None:
            stream.write(data)
            return
        first, self.cut = self.cut, None
        stream.write(data[:first])
        time.sleep(self.pause_s)
        stream.write(data[first:])

    def unplug(self):
        self._line.shutdown(socket.SHUT_RDWR)

    def close(self):
        self._door.shutdown(socket.SHUT_RDWR)
        self._door.close()
        if self._line is not None and self._line.fileno() >= 0:
            self._line.shutdown(socket.SHUT_RDWR)
        self.join(60)


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
    def events(self):
        return [(item.kind, item.value) for item in list(self.items) if isinstance(item, Event)]

    def said(self, words):
        return [value for _, value in self.events if words in value]

    @property
    def numbers(self):
        """The rows' numbers as they came, without rows that say that nothing came."""
        found = [b.values[:, 0] for b in list(self.items) if isinstance(b, Block)]
        column = np.concatenate([np.empty(0), *found])
        return np.rint(column[np.isfinite(column)] / 0.001).astype(int)

    @property
    def times_s(self):
        blocks = [b for b in list(self.items) if isinstance(b, Block)]
        return np.concatenate([b.t_ns[np.isfinite(b.values[:, 0])] for b in blocks]) / 1e9


@pytest.fixture
def sampler():
    far = Sampler()
    yield far
    far.close()


@pytest.fixture
def begin(sampler):
    begun = []

    def start(profile=PROFILE):
        choice = MeterChoice(profile, sampler.url, "daq", profile.channels)
        acquisition = Acquisition([choice], Clock.start())
        begun.append(acquisition)
        basket = Basket()
        (instrument,) = acquisition.connect()
        acquisition.start(basket)
        return instrument, basket, acquisition

    yield start
    for acquisition in begun:
        acquisition.stop()


def test_every_sample_comes_once_in_order_and_a_sample_interval_apart(sampler, begin):
    instrument, basket, acquisition = begin()
    basket.wait(lambda: len(basket.numbers) >= 1000)
    assert instrument.identity.model == "SAMPLER 1"
    assert sampler.heard[:6] == ["*CLS", "*IDN?", *PROFILE.scpi.setup, "SYST:ERR?", "INIT"]
    numbers = basket.numbers
    assert (np.diff(numbers) == 1).all()
    steps = np.diff(basket.times_s)
    # Its own clock says 1 ms; the tie to this computer's may move it a little, never by arrivals,
    # which are 20 ms apart.
    assert np.median(steps) == pytest.approx(0.001, rel=0.01)
    assert (steps >= 0).all()
    assert np.quantile(steps, 0.98) < 0.003
    assert basket.said("no answer") == []
    assert acquisition.state()[0].refused == 0
    assert acquisition.state()[0].alive


def test_a_block_of_unknown_length_is_ended_by_the_pause_behind_it(sampler, begin):
    sampler.form = "indefinite"
    _, basket, acquisition = begin(replace(PROFILE, scpi=replace(PROFILE.scpi, poll_s=0.2)))
    basket.wait(lambda: len(basket.numbers) >= 600)
    assert (np.diff(basket.numbers) == 1).all()
    assert acquisition.state()[0].refused == 0
    assert basket.said("no answer") == []


def test_an_answer_without_new_samples_is_no_missing_answer(sampler, begin):
    sampler.every = 50  # asked again at once, it mostly has nothing yet
    _, basket, acquisition = begin(replace(PROFILE, scpi=replace(PROFILE.scpi, poll_s=0.0)))
    basket.wait(lambda: len(basket.numbers) >= 200 and sampler.empty > 10)
    assert (np.diff(basket.numbers) == 1).all()
    assert basket.said("no answer") == []
    assert acquisition.state()[0].refused == 0


def test_a_block_that_breaks_off_is_told_and_the_next_is_read(sampler, begin):
    _, basket, _ = begin()
    basket.wait(lambda: len(basket.numbers) >= 50)
    sampler.pause_s = 3.0 * PROFILE.scpi.answer_s
    sampler.cut = 11
    basket.wait(lambda: basket.said("no answer to FETC? within 0.4 s"))
    # The samples of the block that broke off are lost; those after it are whole and in order.
    basket.wait(lambda: set(np.diff(basket.numbers)) > {1})
    before = len(basket.numbers)
    basket.wait(lambda: len(basket.numbers) >= before + 100)
    assert (np.diff(basket.numbers) > 0).all()
    assert (np.diff(basket.numbers)[before:] == 1).all()


def test_samples_lost_in_the_instrument_are_told(sampler, begin):
    _, basket, acquisition = begin()
    basket.wait(lambda: len(basket.numbers) >= 50)
    sampler.errors.append('-363,"Input buffer overrun"')
    basket.wait(lambda: (EventKind.DEVICE, "-363 Input buffer overrun") in basket.events)
    assert "-363" in acquisition.state()[0].message


def test_an_instrument_that_was_off_is_set_up_anew_and_goes_on(sampler, begin):
    _, basket, acquisition = begin()
    basket.wait(lambda: len(basket.numbers) >= 50)
    sampler.mute = True
    basket.wait(lambda: basket.said("silent since"))
    heard = len(sampler.heard)
    basket.wait(lambda: "*IDN?" in sampler.heard[heard:])
    assert not acquisition.state()[0].alive
    sampler.mute = False
    before = len(basket.numbers)
    basket.wait(lambda: len(basket.numbers) >= before + 50)
    assert "INIT" in sampler.heard[heard:]
    assert basket.said("back after")


def test_a_link_that_went_away_is_opened_again(sampler, begin):
    _, basket, _ = begin()
    basket.wait(lambda: len(basket.numbers) >= 50)
    sampler.unplug()
    basket.wait(lambda: basket.said("lost"))
    before = len(basket.numbers)
    basket.wait(lambda: len(basket.numbers) >= before + 50)
    assert sampler.heard.count("INIT") == 2
