"""VirtualBench: runs a play in real time and serves all meters on it, in one loop."""

from __future__ import annotations

import queue
import time
from collections import deque
from collections.abc import Callable, Iterable, Sequence
from datetime import UTC, datetime

from meterlog.instruments.virtual.journal import Journal
from meterlog.instruments.virtual.outlet import wait
from meterlog.instruments.virtual.play import Play
from meterlog.instruments.virtual.script import order
from meterlog.instruments.virtual.served_meter import ServedMeter
from meterlog.instruments.virtual.trouble import Trouble, trouble
from meterlog.model.errors import UsageError

_LONGEST_WAIT_S = 0.01
_KEEP_S = 1.0


class VirtualBench:
    """Some meters on one fan circuit, until it is told to stop.

    The scenario begins when the first of the ports is opened. No client can hold up the others:
    nothing in the loop waits for one.

    Parameters
    ----------
    play : Play
    meters : sequence of ServedMeter
    journal : Journal
    speedup : float
        Scenario seconds per second of the wall.
    remark : callable
        Takes a sentence for the person, such as an order that was not understood.
    planned : iterable of Trouble
        What is to happen to the meters, and when.
    """

    def __init__(
        self,
        play: Play,
        meters: Sequence[ServedMeter],
        journal: Journal,
        speedup: float,
        remark: Callable[[str], None],
        planned: Iterable[Trouble] = (),
    ) -> None:
        self._play = play
        self._meters = {meter.key: meter for meter in meters}
        self._outlets = [meter.outlet for meter in meters]
        self._journal = journal
        self._speedup = speedup
        self._remark = remark
        self._planned = deque(sorted(planned, key=lambda one: one.elapsed_s))
        self._keep_s = 2.0 * max(meter.reach_s for meter in meters) + _KEEP_S
        self._zero_ns = 0
        self._quit = False

    def run(self, orders: queue.SimpleQueue[str], stopping: Callable[[], bool]) -> None:
        """Serve until ``quit`` is ordered or ``stopping`` says so.

        Parameters
        ----------
        orders : queue of str
            Typed lines.
        stopping : callable
        """
        while not (self._quit or stopping() or any(o.is_open() for o in self._outlets)):
            self._obey(orders)
            wait(self._outlets, _LONGEST_WAIT_S)
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
        self._play.advance(int(self._now_s() / self._play.step_s))
        # By the model's own clock: readings must not ask for steps that are yet to come.
        now_s = self._play.elapsed_s
        while self._planned and self._planned[0].elapsed_s <= now_s:
            due = self._planned.popleft()
            # What was due before it happened is not touched by it.
            self._serve(due.elapsed_s)
            self._do(due)
        self._obey(orders)
        self._serve(now_s)
        self._journal.follow()
        self._play.forget(self._play.steps_at(now_s - self._keep_s))
        wait(self._outlets, self._wait_s())

    def _serve(self, now_s: float) -> None:
        for meter in self._meters.values():
            meter.serve(now_s)
            for news in meter.news():
                self._journal.tell(news)

    def _do(self, trouble: Trouble) -> bool:
        try:
            self._meters[trouble.meter].suffer(trouble)
        except UsageError as error:
            self._remark(str(error))
            return False
        self._journal.tell(trouble)
        return True

    def _wait_s(self) -> float:
        due = [self._play.next_happening_s, *(meter.due_s() for meter in self._meters.values())]
        if self._planned:
            due.append(self._planned[0].elapsed_s)
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
                done = self._obey_line(line) or done
            except UsageError as error:
                self._remark(str(error))
        if done:
            self._journal.keep_events(self._play.planned())

    def _obey_line(self, line: str) -> bool:
        """Do what a typed line says; True when it was done to the fan."""
        asked = trouble(line, self._play.elapsed_s, tuple(self._meters))
        if asked is not None:
            self._do(asked)
            return False
        happening = order(line, self._play.elapsed_s, self._play.speeds)
        if happening is None:
            self._quit = True
            return False
        self._play.do(happening)
        return True
