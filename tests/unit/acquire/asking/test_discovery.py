"""The order of the questions at one port, told on links that only pretend to be serial lines."""

import threading
from dataclasses import replace

import pytest

from meterlog.acquire import Outcome, ask_ports
from meterlog.acquire.asking.listening import LONGEST_S, Listening, listen_s
from meterlog.acquire.asking.polite_scpi import ANSWER_S
from meterlog.acquire.asking.port_answer import live_values
from meterlog.acquire.asking.port_line import PortLine, suited
from meterlog.acquire.asking.port_question import PortQuestion
from meterlog.acquire.talk.virtual_sign import VirtualSign
from meterlog.instruments import AsciiLineDecoder, PortInfo
from meterlog.model.errors import LinkLost
from meterlog.profile import HidBridge, LinkSettings, load_meter

LOGGER = load_meter("line-logger")
SCPI = load_meter("bench-scpi")


class Line:
    """A serial line that talks at one speed; at another it gives what a receiver makes of it."""

    def __init__(self, journal, settings, talks_at, says=b"", answers=None):
        self.url, self.messages = "invented", False
        self.byte_s = settings.byte_s
        self._journal, self._settings = journal, settings
        self._right = settings.short == talks_at
        self._says, self._answers = says, answers or {}
        self._waiting = b""
        journal.append(("open", settings.short, settings.dtr, settings.rts))

    def read(self, wait_s):
        assert wait_s < 1.0
        threading.Event().wait(min(wait_s, 0.002))
        data, self._waiting = self._waiting, b""
        if self._says:
            data += self._says if self._right else bytes(b ^ 0xA5 | 0x80 for b in self._says)
        return data

    def write(self, data):
        self._journal.append(("sent", self._settings.short, data))
        if self._right:
            self._waiting += self._answers.get(data, b"")

    def drop_input(self):
        self._waiting = b""

    def close(self):
        self._journal.append(("close",))


@pytest.fixture
def line(monkeypatch):
    """Ask a line that talks at one speed; gives the answer and the journal of all that was done."""
    # Time is made short: what is told is the order, not the patience.
    monkeypatch.setattr("meterlog.acquire.asking.listening.LONGEST_S", 0.1)
    monkeypatch.setattr("meterlog.acquire.asking.listening._SHORTEST_S", 0.1)
    monkeypatch.setattr("meterlog.acquire.asking.listening._TALKS_S", 0.05)
    monkeypatch.setattr("meterlog.acquire.asking.port_question._OTHER_SPEED_S", 0.1)
    monkeypatch.setattr("meterlog.acquire.asking.polite_scpi.ANSWER_S", 0.1)

    def ask(profiles, talks_at, **more):
        journal = []
        (answer,) = ask_ports(
            [PortInfo("invented")],
            profiles,
            opener=lambda _, settings: Line(journal, settings, talks_at, **more),
        )
        assert journal.count(("close",)) == sum(what[0] == "open" for what in journal)
        return answer, journal

    return ask


def test_every_setting_is_listened_to_before_anything_is_sent(line):
    slow = replace(LOGGER, name="slow", link=replace(LOGGER.link, baud=2400, rts=False))
    answer, journal = line([SCPI, LOGGER, slow], "300 8N1")
    opened = [what[1:] for what in journal if what[0] == "open"]
    assert ("115200 8N1", True, True) in opened
    assert ("2400 8N1", True, False) in opened
    first_sent = next(i for i, what in enumerate(journal) if what[0] == "sent")
    before = {what[1] for what in journal[:first_sent] if what[0] == "open"}
    assert {"115200 8N1", "2400 8N1"} <= before
    assert answer.outcome is Outcome.SILENT
    assert set(answer.tried) == {"115200 8N1", "2400 8N1", "9600 8N1"}
    for tried in answer.tried:
        assert tried in answer.reason


def test_a_logger_at_its_own_speed_is_found_without_a_note(line):
    answer, journal = line([SCPI, LOGGER], "115200 8N1", says=b"1,2,3\n")
    assert [fit.profile for fit in answer.fits] == ["line-logger"]
    assert answer.fits[0].note == ""
    assert not [what for what in journal if what[0] == "sent"]


def test_a_logger_at_another_speed_is_found_and_the_cure_is_told(line):
    answer, journal = line([SCPI, LOGGER], "19200 8N1", says=b"1,2,3\n")
    assert [fit.profile for fit in answer.fits] == ["line-logger"]
    assert "talks at 19200 8N1, the profile says 115200 8N1" in answer.fits[0].note
    assert "baud = 19200" in answer.fits[0].note
    assert not [what for what in journal if what[0] == "sent"]


def test_a_talker_at_no_usual_speed_is_said_to_have_another_one_and_is_sent_nothing(line):
    answer, journal = line([SCPI, LOGGER], "31250 8N1", says=b"1,2,3\n")
    assert answer.outcome is Outcome.GARBLED
    assert "line speed is probably another one" in answer.reason
    assert "115200 8N1" in answer.reason
    assert not [what for what in journal if what[0] == "sent"]


def test_a_query_goes_out_only_after_an_identity_and_at_that_speed(line):
    fast = replace(SCPI, name="fast", link=replace(SCPI.link, baud=115200))
    answers = {b"*IDN?\n": b"INVENTED,M,1,1\n", b"READ?\n": b"1.25\n"}
    answer, journal = line([SCPI, fast], "115200 8N1", answers=answers)
    assert [fit.profile for fit in answer.fits] == ["fast"]
    sent = [what[1:] for what in journal if what[0] == "sent"]
    assert sent == [
        ("9600 8N1", b"*IDN?\n"),
        ("115200 8N1", b"*IDN?\n"),
        ("115200 8N1", b"READ?\n"),
    ]


def test_a_profile_that_names_the_adapter_is_tried_first(line):
    named = replace(SCPI, name="named", link=replace(SCPI.link, baud=300))
    named = replace(named, recognition=replace(named.recognition, usb=("1a2b:3c4d",)))
    journal = []
    ask_ports(
        [PortInfo("invented", vendor="1a2b", product="3c4d")],
        [SCPI, named],
        opener=lambda _, settings: Line(journal, settings, "300 8N1"),
    )
    assert journal[0] == ("open", "300 8N1", True, True)


def test_a_port_that_goes_away_meanwhile_is_told_and_closed():
    class Going(Line):
        def read(self, wait_s):
            raise LinkLost("the port went away.", subject="invented", remedy="Check the plug.")

    journal = []
    (answer,) = ask_ports(
        [PortInfo("invented")], [LOGGER], opener=lambda _, s: Going(journal, s, "300 8N1")
    )
    assert answer.outcome is Outcome.CLOSED
    assert answer.reason == "the port went away. Check the plug."
    assert journal[-1] == ("close",)


def test_a_fault_of_the_program_at_one_port_leaves_the_others_theirs():
    def opener(url, settings):
        if url == "bad":
            raise RuntimeError("boom")
        return Line([], settings, "115200 8N1", says=b"1,2,3\n")

    bad, good = ask_ports([PortInfo("bad"), PortInfo("good")], [LOGGER], opener=opener)
    assert "RuntimeError: boom" in bad.reason
    assert good.outcome is Outcome.FITS


def test_a_port_given_twice_is_asked_once():
    opened = []

    def opener(url, settings):
        opened.append(url)
        return Line([], settings, "115200 8N1", says=b"1,2,3\n")

    assert len(ask_ports([PortInfo("a"), PortInfo("a")], [LOGGER], opener=opener)) == 1
    assert opened == ["a"]


def test_what_is_set_to_stop_before_it_begins_opens_nothing():
    stop = threading.Event()
    stop.set()

    def opener(_url, _settings):
        raise AssertionError("must not be opened")

    answer = PortQuestion(PortInfo("a"), [LOGGER], stop, opener=opener).ask()
    assert answer.outcome is Outcome.STOPPED


def test_no_wait_is_a_second_long():
    slow = replace(LOGGER, interval_s=3600.0)
    assert listen_s([slow]) == LONGEST_S < 1.0
    assert ANSWER_S < 1.0
    assert listen_s([LOGGER]) < listen_s([replace(LOGGER, interval_s=0.3)])


def test_what_is_typed_has_no_port_and_a_bridge_only_at_its_own_address():
    bridged = replace(LOGGER, name="b", link=replace(LOGGER.link, hid=HidBridge(in_count_byte=0)))
    typed = replace(LOGGER, name="t", dialect="typed")
    every = [LOGGER, bridged, typed, SCPI]
    assert [p.name for p in suited(every, "/dev/ttyUSB0")] == ["line-logger", "bench-scpi"]
    assert [p.name for p in suited(every, "hid://1a2b:3c4d")] == ["b"]
    assert [p.name for p in suited(every, "usbtmc://1a2b:3c4d")] == ["bench-scpi"]


def test_a_way_without_a_wire_is_opened_once_for_all_settings():
    class Network(Line):
        def __init__(self, *words):
            super().__init__(*words)
            self.byte_s = 0.0

    journal = []
    line = PortLine("socket://192.0.2.1:1", lambda _, s: Network(journal, s, "300 8N1"))
    first = line.at(LinkSettings(baud=300))
    assert line.at(LinkSettings(baud=600)) is first
    assert [len(profiles) for _, profiles in line.groups([LOGGER, SCPI])] == [2]
    assert line.tried == []


def heard(profiles, data):
    listening = Listening(profiles, VirtualSign())

    class Once:
        def __init__(self):
            self.left = [data]

        def read(self, _wait_s):
            return self.left.pop() if self.left else b""

    listening.listen(Once(), 0.05, threading.Event())
    return [profile.name for profile, _ in listening.fits()]


def test_more_must_be_understood_than_not():
    assert heard([LOGGER], b"x\n1,2,3\n1,2,3\n") == ["line-logger"]
    assert heard([LOGGER], b"x\nx y\n1,2,3\nnot\nnor this\n") == []


def test_head_lines_are_not_held_against_a_profile():
    headed = replace(LOGGER, lines=replace(LOGGER.lines, header_lines=2))
    assert heard([headed], b"\nvolts and amps\nV,V,A then\n1,2,3\n") == ["line-logger"]


def test_a_reading_is_shown_as_the_meter_shows_it_after_scale_and_offset():
    feed, back, current = LOGGER.channels
    channels = (replace(feed, scale=2.0, offset=0.5), replace(back, accuracy=None), current)
    readings = AsciiLineDecoder(LOGGER.lines, LOGGER.channels).feed(b"1,2,3\n6.25,123.456,OL\n")
    values = live_values(channels, readings)
    assert [value.words for value in values] == ["12.000 V", "123.5 V", "overload"]
    assert [value.value for value in values] == [12.0, 123.456, None]
    assert live_values(channels, AsciiLineDecoder(LOGGER.lines, LOGGER.channels).feed(b"")) == ()


def test_no_such_port_is_told():
    (answer,) = ask_ports([PortInfo("/dev/no-such-port")], [LOGGER])
    assert answer.outcome is Outcome.CLOSED
    assert "no such port" in answer.reason


def test_a_port_that_may_not_be_opened_is_not_opened_and_the_cure_is_given():
    def opener(_url, _settings):
        raise AssertionError("must not be opened")

    port = PortInfo("/dev/ttyUSB7", usable=False, reason="you may not open it; run this")
    (answer,) = ask_ports([port], [LOGGER], opener=opener)
    assert (answer.outcome, answer.reason) == (Outcome.CLOSED, "you may not open it; run this")
