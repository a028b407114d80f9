"""Played links, for the tests of conversations."""

import time

import pytest

from meterlog.acquire import Clock, MeterChoice
from meterlog.model.errors import LinkLost


class PlayedLink:
    """Answers each write by the next of its answers; gives what waits, else nothing."""

    def __init__(self, *answers, messages=False):
        self.url, self.byte_s, self.messages = "played", 0.0, messages
        self.sent, self.waiting, self.lost, self.closed = [], [], False, False
        self._answers = list(answers)

    def read(self, wait_s):
        if self.waiting:
            return self.waiting.pop(0)
        if self.lost:
            raise LinkLost("the port went away.", subject=self.url)
        time.sleep(min(wait_s, 0.001))
        return b""

    def write(self, data):
        self.sent.append(data)
        if self._answers:
            answer = self._answers.pop(0)
            self.waiting += [answer] if isinstance(answer, bytes) else answer

    def drop_input(self):
        self.waiting.clear()

    def line_counts(self):
        return None

    def close(self):
        self.closed = True


class PlayedPort:
    """Stands in for the port of a conversation."""

    def __init__(self, link):
        self.link, self.opened = link, 0

    def open(self):
        self.opened += 1
        return self.link

    def close(self):
        self.link.close()


def choose_played(profile):
    return MeterChoice(profile, "played", profile.name, profile.channels)


@pytest.fixture
def played():
    """Make a link that is played: its answers in order; option: messages."""
    return PlayedLink


@pytest.fixture
def choose():
    """Choose a meter of a profile at a played port."""
    return choose_played


@pytest.fixture
def on():
    """Put a conversation of a kind, with a profile, on a played link."""

    def put(kind, profile, link):
        talk = kind(choose_played(profile), Clock.start())
        talk.port = PlayedPort(link)
        return talk

    return put
