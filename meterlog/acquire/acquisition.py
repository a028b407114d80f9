"""Acquisition: all instruments of one recording, opened together and read side by side."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

from meterlog.acquire.bus import Item
from meterlog.acquire.choice import MeterChoice
from meterlog.acquire.clock import Clock
from meterlog.acquire.reader import Reader
from meterlog.acquire.reader_state import ReaderState
from meterlog.acquire.talk import Conversation, TypedByHand, conversation_with
from meterlog.acquire.times import sending, time_uncertainty_s
from meterlog.acquire.zeroing import ZeroTaking
from meterlog.model import Instrument
from meterlog.model.errors import UsageError


class Acquisition:
    """Opens the chosen meters and reads each in a thread of its own.

    Parameters
    ----------
    choices : sequence of MeterChoice
    clock : Clock
        Gives every reading's time.
    with_skews : callable or None
        Gives the instruments as they were met, with what is known of the skews between them.

    Raises
    ------
    UsageError
        If two meters have one key, or share a port.
    """

    def __init__(
        self,
        choices: Sequence[MeterChoice],
        clock: Clock,
        with_skews: Callable[[Sequence[Instrument]], tuple[Instrument, ...]] | None = None,
    ) -> None:
        self._choices = tuple(choices)
        self._clock = clock
        self._with_skews = with_skews or tuple
        self._instruments: tuple[Instrument, ...] = ()
        self._conversations: list[Conversation] = []
        self._complaints: list[tuple[str, ...]] = []
        self._readers: list[Reader] = []
        _refuse_twice("key", [choice.key for choice in self._choices])
        ports = [choice.url for choice in self._choices if not choice.profile.typed]
        _refuse_twice("port", ports)

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
            met = [self._connect(choice) for choice in self._choices]
            self._instruments = self._with_skews(met)
        except BaseException:
            self._close()
            raise
        return self._instruments

    def _connect(self, choice: MeterChoice) -> Instrument:
        talk = conversation_with(choice, self._clock)
        self._conversations.append(talk)
        self._complaints.append(talk.open())
        return Instrument(
            key=choice.key,
            profile=choice.profile.name,
            url=choice.url,
            channels=choice.channels,
            identity=talk.identity,
            simulated=talk.simulated,
            typed=choice.profile.typed,
            time_u_s=time_uncertainty_s(sending(choice, talk.byte_s)),
            usb_serial="" if talk.port is None else talk.port.usb_serial,
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
            Reader(choice, talk, self._clock, instrument.skew_s)
            for choice, talk, instrument in zip(
                self._choices, self._conversations, self._instruments, strict=True
            )
        ]
        for reader, complaints in zip(self._readers, self._complaints, strict=True):
            reader.start(put, complaints)

    def type_reading(self, key: str, values: Sequence[float]) -> int:
        """Give a reading to a meter that is typed by hand, as of now.

        Parameters
        ----------
        key : str
        values : sequence of float
            As the meter shows them, one a channel.

        Returns
        -------
        int, nanoseconds since the recording's zero
            The time it is given.

        Raises
        ------
        UsageError
            If there is no such meter, it is not typed by hand, or the values are not one finite
            number a channel.
        """
        typed = {
            choice.key: (choice, talk)
            for choice, talk in zip(self._choices, self._conversations, strict=False)
            if isinstance(talk, TypedByHand)
        }
        if key not in typed:
            raise UsageError(
                "is no meter that is typed by hand.",
                subject=key,
                remedy=f"There are: {', '.join(typed) or 'none'}.",
            )
        choice, talk = typed[key]
        wanted = ", ".join(f"{channel.name}" for channel in choice.channels)
        if len(values) != len(choice.channels):
            raise UsageError(
                f"{len(values)} numbers are not one for each channel.",
                subject=key,
                remedy=f"Expected {len(choice.channels)}: {wanted}.",
            )
        if not all(math.isfinite(value) for value in values):
            raise UsageError(
                "a reading must be a finite number.", subject=key, remedy=f"Expected: {wanted}."
            )
        return talk.type_in(values)

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

    def take_zero(self, taking: ZeroTaking) -> None:
        """Let the reader of ``taking.key`` take a zero from the readings to come.

        Raises
        ------
        UsageError
            If no such instrument is being read, or it is taking one already.
        """
        for reader in self._readers:
            if reader.key == taking.key:
                if reader.take_zero(taking):
                    return
                raise UsageError("a zero is being taken already.", subject=taking.key)
        raise UsageError("is not being read.", subject=taking.key)

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
