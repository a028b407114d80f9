"""What Python keeps for the next time is given back, but not at each turn."""

import gc
import sys

import pytest

from meterlog.commands import sweeper as module
from meterlog.commands.sweeper import Sweeper

MANY = 1_500


@pytest.fixture
def clock(monkeypatch):
    """A clock that the test sets; and what is swept is not frozen for the tests to come."""

    class Hand:
        now_s = 0.0

        def monotonic(self):
            return self.now_s

    hand = Hand()
    monkeypatch.setattr(module, "time", hand)
    monkeypatch.setattr(gc, "freeze", lambda: None)
    return hand


def kept_for_the_next_time():
    """Let Python keep some tuples of seven, as a tuple made of a generator leaves them."""
    gc.collect()
    before = sys.getallocatedblocks()
    made = [tuple(n for n in range(7)) for _ in range(MANY)]
    del made
    return sys.getallocatedblocks() - before


def test_it_is_given_back_once_a_minute(clock):
    sweeper = Sweeper()
    assert kept_for_the_next_time() > MANY - 100
    before = sys.getallocatedblocks()
    clock.now_s = 59.0
    sweeper.sweep_when_due()
    assert sys.getallocatedblocks() > before - 100
    clock.now_s = 60.0
    sweeper.sweep_when_due()
    assert sys.getallocatedblocks() < before - MANY + 100
    # The next time is a minute later.
    assert kept_for_the_next_time() > MANY - 100
    before = sys.getallocatedblocks()
    clock.now_s = 119.0
    sweeper.sweep_when_due()
    assert sys.getallocatedblocks() > before - 100


def test_what_there_is_at_the_start_is_left_out(monkeypatch):
    done = []
    monkeypatch.setattr(gc, "collect", lambda: done.append("collect"))
    monkeypatch.setattr(gc, "freeze", lambda: done.append("freeze"))
    Sweeper()
    assert done == ["collect", "freeze"]
