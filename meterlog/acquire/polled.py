"""Polled: the conversation with a SCPI instrument, which answers when it is asked."""

from __future__ import annotations

from dataclasses import replace

from meterlog.acquire.choice import MeterChoice
from meterlog.acquire.clock import Clock
from meterlog.acquire.conversation import Heard
from meterlog.instruments import Link, ScpiAnswerDecoder, ScpiDialogue, open_link
from meterlog.instruments.readings import no_readings
from meterlog.model import Identity
from meterlog.model.errors import TalkError

_SHORT_ANSWER_S = 0.5
_SET_UP_EVERY_NS = 1_000_000_000


class Polled:
    """Asks for one reading after the other.

    Parameters
    ----------
    choice : MeterChoice
    clock : Clock
    """

    def __init__(self, choice: MeterChoice, clock: Clock) -> None:
        self.identity = Identity()
        self.simulated = False
        self._choice = choice
        self._talk = choice.profile.scpi
        self._clock = clock
        self._decoder = ScpiAnswerDecoder(choice.profile.channels)
        self._refused_before = 0
        self._link: Link | None = None
        self._asked_ns: int | None = None
        self._due_ns = 0
        self._missed = 0
        self._forgotten = False

    @property
    def refused(self) -> int:
        """Answers not understood since the beginning."""
        return self._decoder.refused - self._refused_before

    @property
    def last_refused(self) -> bytes:
        """The last of them, at most 200 bytes."""
        return self._decoder.last_refused

    def open(self) -> tuple[str, ...]:
        """Open the port, identify the instrument and set it up; give its complaints."""
        self._link = open_link(self._choice.url, self._choice.profile.link)
        self.identity, errors = ScpiDialogue(self._link, self._talk).introduce()
        self.simulated = self.identity.maker.upper().startswith("VIRTUAL")
        return errors

    def reopen(self) -> tuple[str, ...]:
        """Open the port again; complain if another instrument answers."""
        self.close()
        self._link = open_link(self._choice.url, self._choice.profile.link)
        errors = self._introduce_again()
        self._decoder.restart()
        self._asked_ns = None
        self._missed = 0
        self._forgotten = False
        return errors

    def _introduce_again(self) -> tuple[str, ...]:
        known = self.identity
        found, errors = self._dialogue().introduce()
        if found == known:
            return errors
        other = " ".join((found.maker, found.model, found.serial)).strip()
        return (f"another instrument answers now: {other}", *errors)

    def _dialogue(self) -> ScpiDialogue:
        """Give a dialogue that is not patient: meanwhile nothing is measured."""
        short_s = min(self._talk.answer_s, _SHORT_ANSWER_S)
        return ScpiDialogue(self._opened(), replace(self._talk, answer_s=short_s))

    def begin(self) -> None:
        """Forget all that came before now, and ask at once."""
        self._opened().drop_input()
        self._decoder.restart()
        self._refused_before = self._decoder.refused
        self._asked_ns = None
        self._due_ns = self._clock.now_ns()

    def hear(self, wait_s: float) -> Heard:
        """Ask when it is time to, and listen for at most about ``wait_s``."""
        now_ns = self._clock.now_ns()
        if self._asked_ns is None and now_ns >= self._due_ns:
            if self._forgotten:
                return self._set_up_again(now_ns)
            self._ask(now_ns)
        elif self._asked_ns is None:
            wait_s = min(wait_s, (self._due_ns - now_ns) / 1e9)
        refused = self._decoder.refused
        data = self._opened().read(wait_s)
        arrived_ns = self._clock.now_ns()
        readings = self._decoder.feed(data)
        asked_ns = self._asked_ns
        complaints: tuple[str, ...] = ()
        if len(readings) or self._decoder.refused > refused:
            self._asked_ns = None
            self._missed = 0
        elif asked_ns is not None and arrived_ns - asked_ns > self._talk.answer_s * 1e9:
            complaints = self._miss()
        return Heard(data, arrived_ns, readings, asked_ns, complaints)

    def _ask(self, now_ns: int) -> None:
        self._due_ns = now_ns + round(self._talk.poll_s * 1e9)
        self._asked_ns = now_ns
        self._opened().write(self._talk.query.encode("latin-1", "replace") + b"\n")

    def _miss(self) -> tuple[str, ...]:
        """Deal with a missing answer; only the first of several in a row is told."""
        self._asked_ns = None
        self._decoder.restart()
        self._missed += 1
        if self._missed > 1:
            # Whoever is silent for so long may have been switched off, and has then forgotten
            # what it was told to measure.
            self._forgotten = True
            return ()
        told = f"no answer to {self._talk.query} within {self._talk.answer_s:g} s"
        try:
            return (told, *self._errors())
        except TalkError:  # it does not answer that either
            return (told,)

    def _set_up_again(self, now_ns: int) -> Heard:
        """Try to set up an instrument that was silent; until then no reading is asked for."""
        self._due_ns = now_ns + _SET_UP_EVERY_NS
        complaints: tuple[str, ...] = ()
        try:
            complaints = self._introduce_again()
        except TalkError:
            pass  # still silent, which the rows say
        else:
            self._forgotten = False
            self._due_ns = self._clock.now_ns()
        nothing = no_readings(len(self._choice.channels))
        return Heard(b"", self._clock.now_ns(), nothing, None, complaints)

    def _errors(self) -> tuple[str, ...]:
        dialogue = self._dialogue()
        dialogue.forget()
        return dialogue.errors() if self._talk.ask_errors else ()

    def _opened(self) -> Link:
        if self._link is None:
            raise RuntimeError("open() comes first")
        return self._link

    def close(self) -> None:
        """Close the port."""
        if self._link is not None:
            self._link.close()
