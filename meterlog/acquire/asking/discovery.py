"""Discovery: asks several ports at once which meters are on them."""

from __future__ import annotations

import threading
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from meterlog.acquire.asking.port_answer import Outcome, PortAnswer
from meterlog.acquire.asking.port_line import Opener
from meterlog.acquire.asking.port_question import PortQuestion
from meterlog.instruments import PortInfo, open_link
from meterlog.profile import MeterProfile

_GLANCE_S = 0.1


@dataclass(frozen=True, slots=True)
class PortProgress:
    """How far the asking of one port is.

    Attributes
    ----------
    port : str
    doing : str
        In a few words; empty when it is done.
    answer : PortAnswer or None
        None until it is done.
    """

    port: str
    doing: str
    answer: PortAnswer | None = None


class Discovery:
    """Asks each of the given ports in a thread of its own. No other port is opened.

    Parameters
    ----------
    ports : sequence of PortInfo
        Those that the user has included, and no others; one given twice is asked once.
    profiles : sequence of MeterProfile
        In the order in which equals are given.
    opener : callable
        As :func:`meterlog.instruments.open_link`.
    """

    def __init__(
        self,
        ports: Sequence[PortInfo],
        profiles: Sequence[MeterProfile],
        opener: Opener = open_link,
    ) -> None:
        self._ports = tuple({port.device: port for port in ports}.values())
        self._profiles = tuple(profiles)
        self._opener = opener
        self._stop = threading.Event()
        self._doing = {port.device: "waiting" for port in self._ports}
        self._answers: dict[str, PortAnswer] = {}
        self._threads: list[threading.Thread] = []

    def start(self) -> None:
        """Begin; returns at once. Without effect the second time."""
        if self._threads:
            return
        # Daemons: a network address that never answers must not keep the program from ending.
        self._threads = [
            threading.Thread(target=self._ask, args=(port,), name=f"ask {port.device}", daemon=True)
            for port in self._ports
        ]
        for thread in self._threads:
            thread.start()

    def _ask(self, port: PortInfo) -> None:
        def tell(doing: str) -> None:
            self._doing[port.device] = doing

        try:
            answer = PortQuestion(port, self._profiles, self._stop, tell, self._opener).ask()
        # The top of a thread: whatever it is must be seen by whoever waits for the answer.
        except Exception as error:  # noqa: BLE001
            reason = f"{type(error).__name__}: {error} This is a fault of the program."
            answer = PortAnswer(port.device, Outcome.CLOSED, reason=reason)
        self._answers[port.device] = answer

    def cancel(self) -> None:
        """Let all threads end within about a second; what is known by then stays."""
        self._stop.set()

    def progress(self) -> tuple[PortProgress, ...]:
        """Give one glance at each port, in the order given."""
        glances = []
        for port in self._ports:
            answer = self._answers.get(port.device)
            doing = "" if answer is not None else self._doing[port.device]
            glances.append(PortProgress(port.device, doing, answer))
        return tuple(glances)

    @property
    def finished(self) -> bool:
        """Whether every port has its answer."""
        return len(self._answers) == len(self._ports)

    def wait(self, seconds: float) -> bool:
        """Wait at most so long for all answers; True once they are there and all ports closed."""
        if not self.finished:
            for thread in self._threads:
                thread.join(seconds / max(len(self._threads), 1))
        return self.finished


def ask_ports(
    ports: Sequence[PortInfo],
    profiles: Sequence[MeterProfile],
    on_progress: Callable[[Sequence[PortProgress]], None] = lambda _: None,
    opener: Opener = open_link,
) -> tuple[PortAnswer, ...]:
    """Ask ports which meters are on them, side by side; ended early by Ctrl-C.

    Parameters
    ----------
    ports : sequence of PortInfo
        No byte goes to any other.
    profiles : sequence of MeterProfile
        In the order in which equals are given.
    on_progress : callable
        Called about ten times a second on this thread.
    opener : callable
        As :func:`meterlog.instruments.open_link`.

    Returns
    -------
    tuple of PortAnswer
        In the order of the ports.
    """
    discovery = Discovery(ports, profiles, opener)
    discovery.start()
    try:
        while not discovery.wait(_GLANCE_S):
            on_progress(discovery.progress())
    except BaseException:
        discovery.cancel()
        discovery.wait(1.0)
        raise
    return tuple(one.answer for one in discovery.progress() if one.answer is not None)
