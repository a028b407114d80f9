"""Reopening: tries a lost port again and again, without holding up whoever waits for it."""

from __future__ import annotations

import threading

from meterlog.acquire.talk import Conversation
from meterlog.model.errors import LinkError, MeterlogError, TalkError

EVERY_S = 0.2
"""Pause between two tries. A device that is there again is read again within a second: this, the
time the system takes to make its port, and the talk that sets it up."""


class Reopening:
    """Opens the port of one conversation anew, in a thread of its own.

    Opening can take seconds - a network that does not answer, an instrument that starts - and
    meanwhile the reader has silence to report. From :meth:`begin` until :meth:`wait` gives
    something the conversation belongs to this thread.

    Parameters
    ----------
    conversation : Conversation
    name : str
        Of the thread.
    """

    def __init__(self, conversation: Conversation, name: str) -> None:
        self._conversation = conversation
        self._stop = threading.Event()
        self._done = threading.Event()
        self._lock = threading.Lock()
        self._given_up = False
        self._complaints: tuple[str, ...] | None = None
        self._failure: Exception | None = None
        self._trouble: MeterlogError | None = None
        self._thread = threading.Thread(target=self._run, name=name, daemon=True)

    def begin(self) -> None:
        """Start to try, at once."""
        self._thread.start()

    @property
    def trouble(self) -> MeterlogError | None:
        """Why the last try failed; None before the first has."""
        return self._trouble

    def wait(self, wait_s: float) -> tuple[str, ...] | None:
        """Wait at most so long for the port.

        Returns
        -------
        tuple of str or None
            What the instrument complains of, once it is open; None until then.

        Raises
        ------
        Exception
            If the program itself failed in the other thread.
        """
        if not self._done.wait(wait_s):
            return None
        if self._failure is not None:
            raise self._failure
        return self._complaints

    def give_up(self) -> None:
        """Try no more, and close the port. Does not wait for a try that is under way.

        That one closes what it opens by itself.
        """
        self._stop.set()
        with self._lock:
            self._given_up = True
            if self._done.is_set():
                self._conversation.close()

    def _run(self) -> None:
        try:
            complaints = self._try_on()
        # The top of a thread: what went wrong is raised again in the reader.
        except Exception as error:  # noqa: BLE001
            self._failure = error
            complaints = ()
        with self._lock:
            self._complaints = complaints
            self._done.set()
            if self._given_up:
                self._conversation.close()

    def _try_on(self) -> tuple[str, ...]:
        while True:
            try:
                return self._conversation.reopen()
            except (LinkError, TalkError) as error:
                self._trouble = error
            if self._stop.wait(EVERY_S):
                return ()
