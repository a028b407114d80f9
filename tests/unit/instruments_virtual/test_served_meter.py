"""A meter at a port that is played by a list: what goes out when, and what does not."""

import numpy as np
import pytest

from meterlog.instruments.virtual.meter import MeterModel
from meterlog.instruments.virtual.outbox import Outbox
from meterlog.instruments.virtual.served_meter import ServedMeter
from meterlog.instruments.virtual.trouble import trouble
from meterlog.model.errors import LinkBusy, UsageError
from meterlog.profile import load_meter


class Socket:
    """An outlet whose client is always there, and takes as much as there is room for."""

    address = "here"

    def __init__(self):
        self.room = 10**6
        self.sent = b""
        self.came = b""
        self.plugged = self.client = True
        self.busy = False
        self.outbox = Outbox(self._send)

    def _send(self, data):
        if not self.room:
            raise BlockingIOError
        part = data[: self.room]
        self.room -= len(part)
        self.sent += part
        return len(part)

    def is_open(self):
        return self.plugged and self.client

    def read(self):
        came, self.came = self.came, b""
        return came

    def forget(self):
        self.sent = b""

    def unplug(self):
        self.plugged = False

    def plug(self):
        if self.busy:
            raise LinkBusy("taken")
        self.plugged = True

    def took(self):
        sent, self.sent = self.sent, b""
        return sent.decode()


class Counter:
    """A voice that says a number every second and remembers what it heard."""

    reach_s = 0.0

    def __init__(self):
        self.card = {}
        self.keys = {"dial": lambda words, at_s: self.heard.append((words, at_s))}
        self.heard = []
        self.next = 0

    def greet(self, now_s):
        self.next = int(now_s) + 1
        self.heard.append(("greet", now_s))

    def hear(self, data, now_s):
        self.heard.append((data, now_s))

    def due_s(self):
        return float(self.next)

    def say(self, now_s):
        said = []
        while self.next <= now_s:
            said.append(f"{self.next} ".encode())
            self.next += 1
        return said

    def news(self):
        return []


class Place:
    """A meter, its socket and its voice."""

    def __init__(self):
        self.socket, self.voice = Socket(), Counter()
        self.model = MeterModel(load_meter("line-logger"), "worn", 1)
        rng = np.random.default_rng(1)
        self.meter = ServedMeter(self.model, self.voice, self.socket, rng)

    def order(self, line, now_s):
        self.meter.suffer(trouble(line, now_s, ["line-logger"]))

    def until(self, now_s):
        self.meter.serve(now_s)
        return self.socket.took()


@pytest.fixture
def place():
    one = Place()
    assert one.until(0.0) == ""
    return one


def test_what_is_due_goes_out_and_what_comes_in_is_heard(place):
    assert place.until(2.5) == "1 2 "
    place.socket.came = b"hello"
    place.until(2.6)
    assert place.voice.heard == [("greet", 0.0), (b"hello", 2.6)]
    assert place.meter.due_s() == 3.0


def test_an_unplugged_meter_comes_back_by_itself_and_greets_anew(place):
    place.order("unplug 2", 1.0)
    assert place.until(1.5) == ""
    assert place.meter.due_s() == 3.0
    assert place.until(2.9) == ""
    assert not place.socket.plugged
    place.until(3.0)
    assert place.socket.plugged
    (news,) = place.meter.news()
    assert (news.elapsed_s, news.kind, news.value) == (3.0, "plugged", "here")
    assert place.until(5.0) == "4 5 "
    assert place.voice.heard[-1] == ("greet", 3.0)


def test_without_a_time_it_stays_away_until_it_is_plugged_in(place):
    place.order("unplug", 1.0)
    assert place.until(100.0) == ""
    assert place.meter.due_s() is None
    place.order("plug", 100.0)
    assert place.until(100.0) == ""
    assert place.until(102.0) == "101 102 "


def test_a_port_that_is_taken_is_tried_again(place):
    place.order("unplug 1", 1.0)
    place.socket.busy = True
    place.until(2.0)
    assert place.meter.news() == []
    assert place.meter.due_s() == pytest.approx(2.25)
    place.socket.busy = False
    place.until(2.25)
    assert [news.kind for news in place.meter.news()] == ["plugged"]


def test_a_meter_that_is_off_says_nothing_and_hears_nothing(place):
    place.until(1.0)
    place.order("off", 1.5)
    place.socket.came = b"hello"
    assert place.until(3.0) == ""
    assert place.socket.plugged
    place.order("on", 4.2)
    assert place.until(5.0) == ""
    assert place.until(6.0) == "6 "
    assert place.voice.heard == [("greet", 0.0), ("greet", 5.0)]


def test_a_stalled_meter_holds_everything_and_then_sends_it_all_in_order(place):
    place.until(1.0)
    place.order("stall 3", 1.5)
    assert place.until(2.0) == ""
    assert place.until(4.0) == ""
    assert place.meter.due_s() == 4.5
    assert place.until(4.5) == "2 3 4 "
    assert place.until(5.0) == "5 "


def test_what_was_held_is_never_dropped_however_slow_the_line_is(place):
    place.order("stall 3", 0.0)
    place.until(2.9)
    place.socket.room = 3
    assert place.until(3.0) == "1 2"
    assert place.until(4.0) == ""
    place.socket.room = 100
    assert place.until(5.0) == " 3 4 5 "
    assert place.socket.outbox.dropped == 0


def test_after_a_stall_a_client_that_does_not_read_makes_no_work(place):
    place.order("stall 2", 0.0)
    place.until(1.5)
    place.socket.room = 0
    assert place.meter.due_s() == 2.0
    place.until(2.5)
    assert place.meter.due_s() == 3.0
    place.socket.room = 100
    assert place.until(2.6) == "1 2 "


def test_what_a_client_left_unread_is_not_for_the_next_one(place):
    place.meter.serve(2.5)
    place.socket.client = False
    place.meter.serve(2.6)
    place.socket.client = True
    assert place.until(2.7) == ""


def test_a_meter_that_is_switched_off_takes_nothing_back_of_what_it_has_sent(place):
    place.meter.serve(2.5)
    place.order("off", 2.6)
    assert place.until(2.7) == "1 2 "


def test_garbage_is_as_long_as_ordered_and_no_text(place):
    place.order("garble 40", 0.5)
    assert len(place.socket.sent) == 40
    assert place.socket.sent != bytes(40)
    place.socket.client = False
    place.socket.sent = b""
    place.order("garble 40", 0.6)
    assert place.socket.sent == b""


def test_hold_and_a_dead_clamp_reach_the_meter(place):
    means = np.array([[12.4, 12.0, 2.5, 9.0, 0.1]])
    place.model.show(means)
    place.order("hold", 1.0)
    held = place.model.show(means * 0.5).raw
    assert held[0, 0] == pytest.approx(12.0, abs=0.1)
    assert np.array_equal(place.model.show(means * 0.1).raw, held)
    place.order("hold off", 2.0)
    assert place.model.show(means * 0.5).raw[0, 0] == pytest.approx(6.0, abs=0.1)
    place.order("clamp-dead", 3.0)
    quiet = place.model.show(np.repeat(means, 50, axis=0)).raw
    assert len(np.unique(quiet[:, 2])) == 1
    assert abs(quiet[0, 2]) < 0.1
    assert len(np.unique(quiet[:, 0])) > 1
    place.order("clamp-dead off", 4.0)
    assert place.model.show(means).raw[0, 2] == pytest.approx(9.0, abs=0.3)


def test_a_voice_adds_orders_of_its_own_and_others_are_refused(place):
    place.order("dial A", 2.0)
    assert place.voice.heard[-1] == ("A", 2.0)
    with pytest.raises(UsageError, match="range is nothing that a meter with dialect ascii-lines"):
        place.order("range", 2.0)


def test_a_meter_without_a_current_has_no_clamp_that_could_die():
    model = MeterModel(load_meter("hand-meter"), "worn", 1)
    with pytest.raises(UsageError, match="has no channel that reads a current"):
        model.kill_clamp(on=True)
