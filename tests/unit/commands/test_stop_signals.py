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
        assert stop.wait(5.0)
        os.kill(os.getpid(), number)  # a second one must not break the sealing either
        assert stop.wanted
    assert signal.getsignal(number) is before
