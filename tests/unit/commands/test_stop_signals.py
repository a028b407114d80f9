"""Ctrl-C while recording is a wish, not an exception."""

import os
import signal

import pytest

from meterlog.commands.stop_signals import StopSignals


@pytest.mark.parametrize("number", [signal.SIGINT, signal.SIGTERM])
def test_a_signal_only_sets_the_wish_and_handlers_are_given_back(number):
    before = signal.getsignal(number)
    with StopSignals() as stop:
        assert not stop.wanted
        os.kill(os.getpid(), number)
        assert stop.wait(60.0)
        os.kill(os.getpid(), number)  # a second one must not break the sealing either
        assert stop.wanted
    assert signal.getsignal(number) is before


def test_while_ports_are_opened_the_first_signal_interrupts_at_once():
    with StopSignals() as stop:
        with pytest.raises(KeyboardInterrupt), stop.at_once():
            signal.raise_signal(signal.SIGINT)
        assert stop.wanted
        with stop.at_once():
            pass
        os.kill(os.getpid(), signal.SIGINT)  # and afterwards it is a wish again
