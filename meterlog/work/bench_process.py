"""BenchProcess: virtual meters in a process of their own, as real ones are in boxes of theirs."""

from __future__ import annotations

import ctypes
import difflib
import functools
import json
import os
import queue
import signal
import subprocess
import sys
import tempfile
import threading
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from types import TracebackType
from typing import Self

from meterlog.model import EventKind
from meterlog.model.errors import LinkNotFound, UsageError

_PR_SET_PDEATHSIG = 1
"""prctl(2)."""
_START_S = 30.0
_END_S = 5.0

Happening = Callable[[EventKind, str, int], None]
"""Called with kind, value and the host's monotonic time in nanoseconds."""


@dataclass(frozen=True, slots=True)
class ScenarioCard:
    """What a scenario says of itself; vehicle and part are invented."""

    name: str
    title: str
    vehicle: str
    part: str
    seconds: float


def scenario_card(name: str) -> ScenarioCard:
    """Give the card of a scenario of the virtual bench.

    Raises
    ------
    UsageError
        If there is none of this name; names the nearest and all.
    """
    command = [sys.executable, "-m", "meterlog", "virtual", "--list", "--json"]
    done = subprocess.run(command, capture_output=True, text=True, check=False, timeout=_START_S)
    if done.returncode:
        raise LinkNotFound(f"the virtual bench did not start: {done.stderr.strip()}")
    cards = {
        said["name"]: ScenarioCard(**{key: said[key] for key in ScenarioCard.__slots__})
        for said in json.loads(done.stdout)["scenarios"]
    }
    if name not in cards:
        near = difflib.get_close_matches(name, cards, 1)
        hint = f"Did you mean {near[0]!r}? " if near else ""
        raise UsageError(
            "there is no such scenario.",
            subject=name,
            remedy=f"{hint}There are: {', '.join(cards)}.",
        )
    return cards[name]


def _parent_bond() -> Callable[[], object] | None:
    """Give what makes a child on Linux end when this process is killed outright; else None."""
    if sys.platform != "linux":
        return None
    prctl = ctypes.CDLL(None).prctl
    return functools.partial(prctl, _PR_SET_PDEATHSIG, int(signal.SIGTERM))


class BenchProcess:
    """Starts ``meterlog virtual`` and listens to what it says it does.

    Parameters
    ----------
    meters : str or sequence of str
        Names of meter profiles; all are on the same fan.
    scenario : str
    seed : int
    happened : callable or None
        Called for each change of speed and each tap, on a thread of this object: the stand-in for
        the technician's hands.
    options : sequence of str
        Further ones of the command, such as ``--at 5 "unplug line-logger 2"`` as three words.
    """

    def __init__(
        self,
        meters: str | Sequence[str],
        scenario: str,
        seed: int = 0,
        happened: Happening | None = None,
        options: Sequence[str] = (),
    ) -> None:
        self._meters = (meters,) if isinstance(meters, str) else tuple(meters)
        self._happened = happened
        self._first: queue.SimpleQueue[str] = queue.SimpleQueue()
        self._complaints = tempfile.TemporaryFile()  # noqa: SIM115 - closed by stop
        self._command = [sys.executable, "-m", "meterlog", "virtual", *self._meters]
        self._command += ["--scenario", scenario, "--seed", str(seed), *options]
        if os.name != "posix":
            self._command.append("--tcp")
        self._name = " ".join(self._meters)
        self._addresses: dict[str, str] = {}
        # The thread that starts the child listens to it to its end. Linux bonds a child to the
        # thread that started it, not to the process: a shorter-lived one would take it along.
        started: queue.SimpleQueue[subprocess.Popen[str] | OSError] = queue.SimpleQueue()
        self._listener = threading.Thread(
            target=self._start_and_listen, args=(started,), name=f"bench {self._name}", daemon=True
        )
        self._listener.start()
        child = started.get()
        if isinstance(child, OSError):
            self._complaints.close()
            raise LinkNotFound(f"the virtual meter did not start: {child}", subject=self._name)
        self._child = child

    def _start_and_listen(
        self, started: queue.SimpleQueue[subprocess.Popen[str] | OSError]
    ) -> None:
        try:
            child = subprocess.Popen(
                self._command,
                stdin=subprocess.PIPE,
                stdout=subprocess.PIPE,
                stderr=self._complaints,
                text=True,
                # Ctrl-C is for the recorder; the bench goes on until the recording is sealed.
                start_new_session=True,
                preexec_fn=_parent_bond(),  # noqa: PLW1509 - one system call, no lock
            )
        except OSError as error:
            started.put(error)
            return
        started.put(child)
        self._listen(child)

    def address(self) -> str:
        """Wait until the meter can be opened, and give the address to open: the first meter's.

        Raises
        ------
        LinkNotFound
            If the process does not give one; carries what it said instead, and has ended.
        """
        return next(iter(self.addresses().values()))

    def addresses(self) -> dict[str, str]:
        """Wait until the meters can be opened, and give the address of each by its name.

        A second one of the same profile is called ``NAME-2``.

        Raises
        ------
        LinkNotFound
            If the process does not give them; carries what it said instead, and has ended.
        """
        while len(self._addresses) < len(self._meters):
            line = self._next_line()
            name, _, address = line.rpartition(" ") if len(self._meters) > 1 else ("", "", line)
            self._addresses[name or self._meters[0]] = address
        return dict(self._addresses)

    def _next_line(self) -> str:
        try:
            line = self._first.get(timeout=_START_S).strip()
        except queue.Empty:
            line = ""
        if line:
            return line
        self._end_child()
        self._complaints.seek(0)
        said = self._complaints.read().decode(errors="replace").strip()
        self.stop()
        raise LinkNotFound(
            f"the virtual meter did not start: {said or 'it said nothing'}", subject=self._name
        )

    def _listen(self, child: subprocess.Popen[str]) -> None:
        assert child.stdout is not None  # noqa: S101 - opened as a pipe above
        for _ in self._meters:
            self._first.put(child.stdout.readline())
        for line in child.stdout:
            self._hear(line)

    def _hear(self, line: str) -> None:
        if self._happened is None:
            return
        try:
            said = json.loads(line)
            kind = EventKind(said["kind"])
            value, when_ns = str(said.get("value", "")), int(said["monotonic_ns"])
        except (ValueError, KeyError, TypeError):
            return  # news about the truth and the like, meant for others
        if kind in {EventKind.SPEED, EventKind.TAP, EventKind.WIGGLE}:
            self._happened(kind, value, when_ns)

    def obey(self, kind: EventKind, value: str) -> None:
        """Do to the virtual fan what the technician just did: a speed step or a tap."""
        words = {EventKind.SPEED: f"speed {value}", EventKind.TAP: "tap"}
        if kind in words:
            self.order(words[kind])

    def order(self, line: str) -> None:
        """Type a line, such as ``stall line-logger 2``; one not understood is not reported."""
        if self._child.stdin is None:
            return
        try:
            self._child.stdin.write(line + "\n")
            self._child.stdin.flush()
        except (OSError, ValueError):
            pass  # it has ended: the recording shows that as a silent instrument

    def _end_child(self) -> None:
        if self._child.poll() is None:
            self._child.terminate()
        try:
            self._child.wait(_END_S)
        except subprocess.TimeoutExpired:
            self._child.kill()
            self._child.wait()

    def stop(self) -> None:
        """End the process; does nothing the second time."""
        self._end_child()
        self._listener.join(_END_S)
        for stream in (self._child.stdin, self._child.stdout, self._complaints):
            if stream is not None:
                stream.close()

    def __enter__(self) -> Self:
        """Give the running process."""
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        """End the process."""
        self.stop()
