"""A SCPI meter asked over a real network port: identity, set-up, errors, silence."""

import socket
import threading
import time
from dataclasses import replace

import numpy as np
import pytest

from meterlog.acquire import Acquisition, Clock, MeterChoice
from meterlog.instruments import ScpiDialogue, open_link
from meterlog.model import Block, Event, EventKind, Flag, Identity
from meterlog.model.errors import TalkError
from meterlog.profile import LinkSettings, load_meter

NAMED = load_meter("bench-scpi")
PROFILE = replace(NAMED, scpi=replace(NAMED.scpi, poll_s=0.02, answer_s=0.3))


class Meter(threading.Thread):
    """A meter that answers as the test says; invented, no real one."""

    def __init__(self) -> None:
        super().__init__(name="test meter")
        self._door = socket.create_server(("127.0.0.1", 0))
        self.url = f"socket://127.0.0.1:{self._door.getsockname()[1]}"
        self.heard: list[str] = []
        self.errors: list[str] = []
        self.unknown: set[str] = set()
        self.identity = "INVENTED,MODEL 1,SN7,1.0"
        self.mute = False
        self.readings = iter(range(1, 10**9))
        self.begun_s = time.monotonic()
        self.answer = "{:.6E}"
        self._line: socket.socket | None = None
        self.start()

    def run(self) -> None:
        try:
            while True:
                self._line, _ = self._door.accept()
                with self._line, self._line.makefile("rwb", buffering=0) as stream:
                    for line in stream:
                        reply = self._reply(line.decode().strip())
                        if reply:
                            stream.write(reply.encode() + b"\r\n")
        except OSError:
            return

    def _reply(self, line: str) -> str:
        self.heard.append(line)
        if self.mute:
            return ""
        if line == "*IDN?":
            return self.identity
        if line == "SYST:ERR?":
            return self.errors.pop(0) if self.errors else '0,"No error"'
        if line == "READ?":
            return self.answer.format(next(self.readings))
        if line == "FETC?":  # a new result every 0.1 s, and the last one in between
            return self.answer.format(int((time.monotonic() - self.begun_s) / 0.1))
        if line in self.unknown:
            self.errors.append('-113,"Undefined header"')
        return ""

    def close(self) -> None:
        self._door.shutdown(socket.SHUT_RDWR)
        self._door.close()
        if self._line is not None and self._line.fileno() >= 0:
            self._line.shutdown(socket.SHUT_RDWR)
        self.join(60)


class Basket:
    """Takes what the reader puts, and waits for what should come."""

    def __init__(self) -> None:
        self.items: list = []
        self._come = threading.Condition()

    def __call__(self, item) -> None:
        with self._come:
            self.items.append(item)
            self._come.notify_all()

    def wait(self, told) -> None:
        with self._come:
            assert self._come.wait_for(told, 60), self.events

    @property
    def blocks(self) -> list[Block]:
        return [item for item in list(self.items) if isinstance(item, Block)]

    @property
    def events(self) -> list[tuple[EventKind, str]]:
        return [(item.kind, item.value) for item in list(self.items) if isinstance(item, Event)]


@pytest.fixture
def meter():
    far = Meter()
    yield far
    far.close()


@pytest.fixture
def begin(meter):
    begun: list[Acquisition] = []

    def start(profile=PROFILE):
        choice = MeterChoice(profile=profile, url=meter.url, key="bench", channels=profile.channels)
        acquisition = Acquisition([choice], Clock.start())
        begun.append(acquisition)
        basket = Basket()
        (instrument,) = acquisition.connect()
        acquisition.start(basket)
        return instrument, basket, acquisition

    yield start
    for acquisition in begun:
        acquisition.stop()


def test_it_is_identified_set_up_and_asked_in_the_order_of_the_profile(meter, begin):
    profile = replace(PROFILE, scpi=replace(PROFILE.scpi, arm="INIT"))
    instrument, basket, _ = begin(profile)
    basket.wait(lambda: len(basket.blocks) >= 3)
    assert instrument.identity == Identity("INVENTED", "MODEL 1", "SN7", "1.0")
    assert not instrument.simulated
    assert meter.heard[:7] == ["*CLS", "*IDN?", *PROFILE.scpi.setup, "SYST:ERR?", "INIT", "READ?"]
    values = [block.values[0, 0] for block in basket.blocks[:3]]
    assert values == [1.0, 2.0, 3.0]
    assert basket.events == []


def test_a_virtual_meter_says_so_by_its_maker(meter, begin):
    meter.identity = "Virtual bench,INVENTED 1,0,0"
    assert begin()[0].simulated


def test_what_the_error_queue_holds_after_the_set_up_is_shown(meter, begin):
    meter.unknown = {PROFILE.scpi.setup[1]}
    _, basket, acquisition = begin()
    basket.wait(lambda: basket.blocks)
    assert (EventKind.DEVICE, "-113 Undefined header") in basket.events
    assert "-113" in acquisition.state()[0].message


def test_a_result_that_is_fetched_again_before_there_is_a_new_one_is_kept_once(meter, begin):
    scpi = replace(PROFILE.scpi, query="FETC?", poll_s=0.01)
    _, basket, acquisition = begin(replace(PROFILE, interval_s=0.1, scpi=scpi))
    basket.wait(lambda: len(basket.blocks) >= 8)
    values = np.concatenate([block.values[:, 0] for block in basket.blocks])
    # A result fetched late in its 0.1 s is there once more 0.1 s later only on a busy computer.
    assert (np.diff(values) >= 0.0).all()
    assert np.count_nonzero(np.diff(values) == 0.0) <= 1
    state = acquisition.state()[0]
    assert state.repeated > 2 * len(values)
    assert state.refused == 0


def test_an_answer_is_stamped_between_query_and_arrival_less_half_the_integration(begin):
    _, basket, _ = begin()
    basket.wait(lambda: len(basket.blocks) >= 5)
    raw = [item for item in basket.items if not isinstance(item, (Event, Block))]
    for block, sent in zip(basket.blocks[:5], raw[:5], strict=True):
        lag_ns = sent.t_ns - int(block.t_ns[0])
        assert 0 <= lag_ns <= 50_000_000
    # 0.1 s of integration reach back before the reading at the start, but never before the zero.
    assert all(block.t_ns[0] >= 0 for block in basket.blocks)


def test_overload_is_flagged_and_a_wrong_answer_costs_itself(meter, begin):
    meter.answer = "9.9E37"
    _, basket, acquisition = begin()
    basket.wait(lambda: len(basket.blocks) >= 2)
    assert basket.blocks[0].flags.tolist() == [[int(Flag.OVERLOAD)]]
    assert np.isnan(basket.blocks[0].values[0, 0])
    meter.answer = "garbage,{}"
    basket.wait(lambda: any(kind is EventKind.REFUSED for kind, _ in basket.events))
    meter.answer = "5.0"
    basket.wait(lambda: basket.blocks[-1].values[0, 0] == 5.0)
    assert acquisition.state()[0].refused >= 1


def test_a_meter_that_stops_answering_is_silent_and_is_set_up_anew_when_it_is_back(meter, begin):
    _, basket, acquisition = begin()
    basket.wait(lambda: len(basket.blocks) >= 2)
    meter.mute = True
    basket.wait(lambda: any("silent since" in value for _, value in basket.events))
    basket.wait(lambda: any("no answer to READ?" in value for _, value in basket.events))
    basket.wait(lambda: basket.blocks[-1].flags[0, 0] == int(Flag.NO_DATA))
    heard = len(meter.heard)
    basket.wait(lambda: meter.heard[heard:].count("*IDN?") >= 1)
    assert not acquisition.state()[0].alive
    meter.mute = False
    basket.wait(lambda: any("back after" in value for _, value in basket.events))
    basket.wait(lambda: np.isfinite(basket.blocks[-1].values[0, 0]))
    assert meter.heard[heard:].count(PROFILE.scpi.setup[0]) >= 1
    no_answer = [value for _, value in basket.events if "no answer to READ?" in value]
    assert len(no_answer) == 1


def test_another_meter_at_the_same_port_is_noticed(meter, begin):
    _, basket, _ = begin()
    basket.wait(lambda: basket.blocks)
    meter.identity = "INVENTED,MODEL 2,SN8,1.0"
    meter._line.shutdown(socket.SHUT_RDWR)
    basket.wait(lambda: any("another instrument answers now" in v for _, v in basket.events))
    assert any(kind is EventKind.LINK and "lost" in value for kind, value in basket.events)


def test_a_meter_that_does_not_answer_is_an_error_that_names_what_to_check(meter):
    meter.mute = True
    choice = MeterChoice(PROFILE, meter.url, "bench", PROFILE.channels)
    with pytest.raises(TalkError, match=r"no answer to \*IDN\? within 0.3 s") as caught:
        Acquisition([choice], Clock.start()).connect()
    assert caught.value.subject == meter.url
    assert "parity" in caught.value.remedy


def test_an_error_queue_that_never_empties_is_left_after_32_entries(meter):
    meter.errors = ['-350,"Queue overflow"'] * 100
    with open_link(meter.url, LinkSettings()) as link:
        assert len(ScpiDialogue(link, PROFILE.scpi).errors()) == 32
    assert len(meter.errors) == 68


def test_an_answer_that_is_no_error_entry_says_how_to_do_without(meter):
    meter.errors = ["what?"]
    with open_link(meter.url, LinkSettings()) as link:
        dialogue = ScpiDialogue(link, PROFILE.scpi)
        with pytest.raises(TalkError, match="ask_errors"):
            dialogue.errors()
