"""Acquisition: all instruments of one recording, opened together and read side by side."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from meterlog.acquire.bus import Item
from meterlog.acquire.choice import MeterChoice
from meterlog.acquire.clock import Clock
from meterlog.acquire.conversation import Conversation
from meterlog.acquire.conversations import conversation
from meterlog.acquire.reader import Reader
from meterlog.acquire.reader_state import ReaderState
from meterlog.model import Instrument
from meterlog.model.errors import UsageError


class Acquisition:
    """Opens the chosen meters and reads each in a thread of its own.

    Parameters
    ----------
    choices : sequence of MeterChoice
    clock : Clock
        Gives every reading's time.

    Raises
    ------
    UsageError
        If two meters have one key, or share a port.
    """

    def __init__(self, choices: Sequence[MeterChoice], clock: Clock) -> None:
        self._choices = tuple(choices)
        self._clock = clock
        self._conversations: list[Conversation] = []
        self._complaints: list[tuple[str, ...]] = []
        self._readers: list[Reader] = []
        _refuse_twice("key", [choice.key for choice in self._choices])
        _refuse_twice("port", [choice.url for choice in self._choices])

    def connect(self) -> tuple[Instrument, ...]:
        """Open all ports, learn who is there, set the instruments up.

        Returns
        -------
        tuple of Instrument
            In the order of the choices.

        Raises
        ------
        LinkError
            If a port can't be opened; those that are open are closed again.
        TalkError
            If an instrument does not answer as its profile says; likewise.
        """
        try:
            return tuple(self._connect(choice) for choice in self._choices)
        except BaseException:
            self._close()
            raise

    def _connect(self, choice: MeterChoice) -> Instrument:
        talk = conversation(choice, self._clock)
        self._conversations.append(talk)
        self._complaints.append(talk.open())
        return Instrument(
            key=choice.key,
            profile=choice.profile.name,
            url=choice.url,
            channels=choice.channels,
            identity=talk.identity,
            simulated=talk.simulated,
        )

    def start(self, put: Callable[[Item], None]) -> None:
        """Begin to read: one thread an instrument. What came in before is dropped.

        Parameters
        ----------
        put : callable
            Takes Blocks, Events and RawBytes from any of the threads.

        Raises
        ------
        UsageError
            If the instruments are not connected, or already being read.
        LinkLost
            If a port has gone since; all are closed.
        """
        if self._readers or len(self._conversations) != len(self._choices):
            raise UsageError("the meters are not connected, or are being read already.")
        try:
            for talk in self._conversations:
                talk.begin()
        except BaseException:
            self._close()
            raise
        self._readers = [
            Reader(choice, talk, self._clock)
            for choice, talk in zip(self._choices, self._conversations, strict=True)
        ]
        for reader, complaints in zip(self._readers, self._complaints, strict=True):
            reader.start(put, complaints)

    def stop(self) -> None:
        """End all threads and close all ports. Never raises; may be called again."""
        for reader in self._readers:
            reader.ask_to_stop()
        for reader in self._readers:
            reader.join()
        self._close()

    def _close(self) -> None:
        for talk in self._conversations:
            talk.close()
        self._conversations = []
        self._complaints = []

    def state(self) -> tuple[ReaderState, ...]:
        """Give one glance at each instrument, in the order of the choices."""
        if self._readers:
            return tuple(reader.state() for reader in self._readers)
        return tuple(ReaderState(choice.key) for choice in self._choices)


def _refuse_twice(what: str, names: list[str]) -> None:
    for name in names:
        if names.count(name) > 1:
            raise UsageError(
                f"this {what} is given to more than one meter.",
                subject=name,
                remedy=f"Each meter needs a {what} of its own.",
            )
