"""VirtualBench: runs a play in real time and serves its meter on a port."""

from __future__ import annotations

import queue
import time
from collections.abc import Callable
from datetime import UTC, datetime
from typing import Protocol

from meterlog.instruments.virtual.journal import Journal
from meterlog.instruments.virtual.outbox import Outbox
from meterlog.instruments.virtual.play import Play
from meterlog.instruments.virtual.script import order
from meterlog.instruments.virtual.voice import Voice
from meterlog.model.errors import UsageError

_LONGEST_WAIT_S = 0.01
_KEEP_S = 1.0


class Outlet(Protocol):
    """A port seen from the meter's side."""

    address: str
    outbox: Outbox

    def is_open(self) -> bool:
        """Tell whether a client has the port open."""

    def wait(self, seconds: float) -> None:
        """Wait for input, at most ``seconds``."""

    def read(self) -> bytes:
        """Give what has come in; empty for nothing."""

    def close(self) -> None:
        """Give the port back."""


class VirtualBench:
    """One meter on one fan circuit, until it is told to stop.

    Parameters
    ----------
    play : Play
    voice : Voice
    outlet : Outlet
    journal : Journal
    speedup : float
        Scenario seconds per second of the wall.
    remark : callable
        Takes a sentence for the person, such as an order that was not understood.
    """

    def __init__(
        self,
        play: Play,
        voice: Voice,
        outlet: Outlet,
        journal: Journal,
        speedup: float,
        remark: Callable[[str], None],
    ) -> None:
        self._play = play
        self._voice = voice
        self._outlet = outlet
        self._journal = journal
        self._speedup = speedup
        self._remark = remark
        self._zero_ns = 0
        self._served = False
        self._quit = False

    def run(self, orders: queue.SimpleQueue[str], stopping: Callable[[], bool]) -> None:
        """Serve until ``quit`` is ordered or ``stopping`` says so.

        Parameters
        ----------
        orders : queue of str
            Typed lines.
        stopping : callable
        """
        while not (self._quit or stopping() or self._outlet.is_open()):
            self._obey(orders)
            self._outlet.wait(_LONGEST_WAIT_S)
        self._zero_ns = time.monotonic_ns()
        if not (self._quit or stopping()):
            self._journal.open(self._zero_ns, datetime.now(UTC))
        while not (self._quit or stopping()):
            self._turn(orders)
        self._journal.follow()
        self._journal.keep_truth(complete=True)

    def _now_s(self) -> float:
        return (time.monotonic_ns() - self._zero_ns) * 1e-9 * self._speedup

    def _turn(self, orders: queue.SimpleQueue[str]) -> None:
        is_open = self._outlet.is_open()
        now_s = self._now_s()
        self._play.advance(int(now_s / self._play.step_s))
        self._obey(orders)
        self._journal.follow()
        # By the model's own clock: readings must not ask for steps that are yet to come.
        self._serve(self._play.elapsed_s, is_open=is_open)
        keep_s = 2.0 * self._voice.reach_s + _KEEP_S
        self._play.forget(self._play.steps_at(self._play.elapsed_s - keep_s))
        self._outlet.wait(self._wait_s())

    def _serve(self, now_s: float, *, is_open: bool) -> None:
        if is_open and not self._served:
            self._voice.greet(now_s)
        elif not is_open:
            # What a client left behind when it closed is not meant for the next one.
            self._outlet.read()
            self._outlet.outbox.clear()
        self._served = is_open
        if not is_open:
            return
        data = self._outlet.read()
        if data:
            self._voice.hear(data, now_s)
        for message in self._voice.say(now_s):
            self._outlet.outbox.put(message)
        self._outlet.outbox.flush()

    def _wait_s(self) -> float:
        due = [self._play.next_happening_s]
        if self._served:
            due.append(self._voice.due_s())
        now_s = self._now_s()
        waits = [(at_s - now_s) / self._speedup for at_s in due if at_s is not None]
        return min(max(0.0, min(waits, default=_LONGEST_WAIT_S)), _LONGEST_WAIT_S)

    def _obey(self, orders: queue.SimpleQueue[str]) -> None:
        done = False
        while not self._quit:
            try:
                line = orders.get_nowait()
            except queue.Empty:
                break
            if not line.strip():
                continue
            try:
                happening = order(line, self._play.elapsed_s, self._play.speeds)
            except UsageError as error:
                self._remark(str(error))
                continue
            if happening is None:
                self._quit = True
            else:
                self._play.do(happening)
                done = True
        if done:
            self._journal.keep_events(self._play.planned())
