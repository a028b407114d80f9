"""Polled: the conversation with an instrument that answers when it is asked."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType

from meterlog.acquire.choice import MeterChoice
from meterlog.acquire.clock import Clock
from meterlog.acquire.talk.asker import Answer, Asker, Progress
from meterlog.acquire.talk.block_asker import BlockAsker
from meterlog.acquire.talk.conversation import Heard
from meterlog.acquire.talk.modbus_asker import ModbusAsker
from meterlog.acquire.talk.open_port import OpenPort
from meterlog.acquire.talk.overhearing import Overhearing
from meterlog.acquire.talk.scpi_asker import ScpiAsker
from meterlog.acquire.talk.virtual_sign import VirtualSign
from meterlog.instruments.readings import no_readings
from meterlog.model import Identity
from meterlog.model.errors import TalkError

_SHORT_ANSWER_S = 0.5
_SET_UP_EVERY_NS = 1_000_000_000

ASKERS: Mapping[str, Callable[[MeterChoice], Asker]] = MappingProxyType(
    {"scpi": ScpiAsker, "scpi-blocks": BlockAsker, "modbus-rtu": ModbusAsker}
)
"""One entry for each dialect in which an instrument is asked."""


class Polled:
    """Asks for one reading, or one block of them, after the other.

    Parameters
    ----------
    choice : MeterChoice
    clock : Clock
    """

    watched = True

    def __init__(self, choice: MeterChoice, clock: Clock) -> None:
        self.identity = Identity()
        self.simulated = False
        self._clock = clock
        self.port = OpenPort(choice)
        self._asker = ASKERS[choice.profile.dialect](choice)
        self._width = len(choice.channels)
        self._refused_before = 0
        self._asked_ns: int | None = None
        self._waiting_since_ns = 0
        self._due_ns = 0
        self._missed = 0
        self._forgotten = False
        self._unsettled = False
        self._ear: Overhearing | None = None

    @property
    def byte_s(self) -> float:
        """Time that one byte takes on the way, seconds; 0 where there is no serial wire."""
        return self.port.byte_s

    @property
    def refused(self) -> int:
        """Answers not understood since the beginning."""
        return self._asker.refused - self._refused_before

    @property
    def last_refused(self) -> bytes:
        """The last of them, at most 200 bytes."""
        return self._asker.last_refused

    @property
    def repeated(self) -> int:
        """Answers passed over because they gave the reading before once more."""
        return self._asker.repeated

    def open(self) -> tuple[str, ...]:
        """Open the port, identify the instrument and set it up; give its complaints."""
        self.identity, errors = self._asker.introduce(self.port.open(), self._asker.answer_s)
        sign = VirtualSign()
        sign.meet(self.identity)
        self.simulated = sign.seen
        return errors

    def reopen(self) -> tuple[str, ...]:
        """Open the port again; complain if another instrument answers."""
        self.port.open()
        errors = self._introduce_again()
        self._asker.restart()
        self._asked_ns = None
        self._missed = 0
        self._forgotten = self._unsettled = False
        return errors

    @property
    def _link(self) -> Overhearing:
        """The port's link, overheard."""
        if self._ear is None or self._ear.link is not self.port.link:
            self._ear = Overhearing(self.port.link, b"" if self._ear is None else self._ear.taken())
        return self._ear

    def _introduce_again(self) -> tuple[str, ...]:
        known = self.identity
        found, errors = self._asker.introduce(self._link, self._short_answer_s)
        # Who does not always say who he is has not become another by keeping silent.
        same = {known, Identity()} if known != Identity() else {found}
        if found not in same:
            # The first answer may have been garbage from a plug just put in.
            found, errors = self._asker.introduce(self._link, self._short_answer_s)
        if found in same:
            return errors
        other = " ".join((found.maker, found.model, found.serial)).strip()
        return (f"another instrument answers now: {other}", *errors)

    @property
    def _short_answer_s(self) -> float:
        """Seconds of patience while nothing is measured meanwhile."""
        return min(self._asker.answer_s, _SHORT_ANSWER_S)

    def begin(self) -> None:
        """Forget all that came before now, and ask at once."""
        self._link.drop_input()
        self._link.taken()
        self._asker.restart()
        self._refused_before = self._asker.refused
        self._asked_ns = None
        self._due_ns = self._clock.now_ns()

    def hear(self, wait_s: float) -> Heard:
        """Ask when it is time to, and listen for at most about ``wait_s``."""
        now_ns = self._clock.now_ns()
        if self._asked_ns is None and now_ns >= self._due_ns:
            if self._forgotten:
                return self._no_reading(self._set_up_again(now_ns))
            if self._unsettled:
                return self._no_reading(self._settle(now_ns))
            self._ask()
        elif self._asked_ns is None:
            wait_s = min(wait_s, (self._due_ns - now_ns) / 1e9)
        data = self.port.link.read(wait_s)
        arrived_ns = self._clock.now_ns()
        if self._asked_ns is None:
            self._asker.refuse(data)
            return Heard(data, arrived_ns, no_readings(self._width), None, (), self._link.taken())
        answer = self._asker.take(self._link, data, arrived_ns)
        asked_ns = self._asked_ns if self._asker.timed_by_question else None
        complaints = (*answer.complaints, *self._go_on(answer, arrived_ns))
        aside = self._link.taken()
        return Heard(data, arrived_ns, answer.readings, asked_ns, complaints, aside)

    def _no_reading(self, complaints: tuple[str, ...]) -> Heard:
        """Give a turn in which was talked, but no reading asked for."""
        nothing = no_readings(self._width)
        now_ns = self._clock.now_ns()
        return Heard(b"", now_ns, nothing, None, complaints, self._link.taken())

    def _ask(self) -> None:
        # What came before the question can't be its answer.
        early = self._link.read(0.0)
        if early:
            self._asker.refuse(early)
        now_ns = self._clock.now_ns()
        self._due_ns = now_ns + round(self._asker.poll_s * 1e9)
        self._asked_ns = self._waiting_since_ns = now_ns
        self._asker.ask(self._link)

    def _go_on(self, answer: Answer, arrived_ns: int) -> tuple[str, ...]:
        """Draw the conclusions from an answer, or from its absence; give complaints."""
        if answer.progress is Progress.WHOLE:
            self._asked_ns = None
            self._missed = 0
        elif answer.progress is Progress.GIVEN_UP:
            self._asked_ns = None
            self._unsettled = True
        elif answer.progress is Progress.MOVING:
            self._waiting_since_ns = arrived_ns
        elif (
            self._asked_ns is not None
            and arrived_ns - self._waiting_since_ns > self._asker.answer_s * 1e9
        ):
            return self._miss()
        return ()

    def _miss(self) -> tuple[str, ...]:
        """Deal with a missing answer; only the first of several in a row is told."""
        self._asked_ns = None
        self._asker.restart()
        self._unsettled = True
        self._missed += 1
        if self._missed > 1:
            # Whoever is silent for so long may have been switched off, and has then forgotten
            # what it was told to measure.
            self._forgotten = True
            return ()
        return (f"no answer to {self._asker.question} within {self._asker.answer_s:g} s",)

    def _settle(self, now_ns: int) -> tuple[str, ...]:
        """Wait for what is owed; an instrument that does not answer that has to be set up again."""
        try:
            complaints = self._asker.settle(self._link, self._short_answer_s, self.identity)
        except TalkError:
            self._forgotten = True
            self._due_ns = now_ns + _SET_UP_EVERY_NS
            return ()
        self._unsettled = False
        return complaints

    def _set_up_again(self, now_ns: int) -> tuple[str, ...]:
        """Try to set up an instrument that was silent; until then no reading is asked for."""
        self._due_ns = now_ns + _SET_UP_EVERY_NS
        try:
            complaints = self._introduce_again()
        except TalkError:
            return ()  # still silent, which the rows say
        self._forgotten = self._unsettled = False
        self._due_ns = self._clock.now_ns()
        return complaints

    def close(self) -> None:
        """Close the port."""
        self.port.close()
