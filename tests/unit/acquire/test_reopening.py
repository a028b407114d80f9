"""A lost port is tried again and again, and never holds up who waits for it."""

import threading
import time

import pytest

from meterlog.acquire.reopening import EVERY_S, Reopening
from meterlog.model.errors import LinkNotFound, LinkRefused


class Talk:
    """A conversation whose port opens when the test lets it."""

    def __init__(self, *outcomes) -> None:
        self.outcomes = list(outcomes)
        self.tried_s: list[float] = []
        self.open = False
        self.may = threading.Event()
        self.may.set()
        self.begun = threading.Event()

    def reopen(self) -> tuple[str, ...]:
        self.tried_s.append(time.monotonic())
        self.begun.set()
        self.may.wait(20)
        outcome = self.outcomes.pop(0) if len(self.outcomes) > 1 else self.outcomes[0]
        if isinstance(outcome, Exception):
            raise outcome
        self.open = True
        return outcome

    def close(self) -> None:
        self.open = False


def begun(talk: Talk) -> Reopening:
    reopening = Reopening(talk, "test reopening")
    reopening.begin()
    return reopening


def test_it_tries_at_once_and_then_often_enough_for_a_second():
    talk = Talk(LinkNotFound("gone"), LinkRefused("not yet"), LinkNotFound("gone"), ("hello",))
    reopening = begun(talk)
    assert reopening.wait(60) == ("hello",)
    assert talk.open
    gaps = [later - earlier for earlier, later in zip(talk.tried_s, talk.tried_s[1:], strict=False)]
    assert len(gaps) == 3
    assert min(gaps) >= EVERY_S * 0.9
    assert EVERY_S <= 0.25


def test_who_waits_is_not_held_up_by_a_try_and_learns_why_the_last_one_failed():
    talk = Talk(LinkNotFound("does not answer"), ())
    reopening = begun(talk)
    until = time.monotonic() + 60.0
    while reopening.trouble is None and time.monotonic() < until:
        assert reopening.wait(0.001) is None
    assert reopening.trouble.message == "does not answer"
    talk.may.clear()
    talk.begun.clear()
    assert talk.begun.wait(60)
    began = time.monotonic()
    assert reopening.wait(0.05) is None
    assert time.monotonic() - began < 1.0
    talk.may.set()
    assert reopening.wait(60) == ()


def test_giving_up_does_not_wait_and_what_opens_afterwards_is_closed():
    talk = Talk(())
    talk.may.clear()
    reopening = begun(talk)
    assert talk.begun.wait(60)
    began = time.monotonic()
    reopening.give_up()
    assert time.monotonic() - began < 1.0
    talk.may.set()
    reopening._thread.join(60)
    assert talk.tried_s
    assert not talk.open


def test_giving_up_a_port_that_is_open_already_closes_it():
    talk = Talk(())
    reopening = begun(talk)
    assert reopening.wait(60) == ()
    reopening.give_up()
    assert not talk.open


def test_an_error_of_the_program_is_raised_where_it_is_waited_for():
    reopening = begun(Talk(ZeroDivisionError("a mistake")))
    with pytest.raises(ZeroDivisionError, match="a mistake"):
        reopening.wait(10)
