"""ScpiDialogue: the talk with a SCPI instrument before it measures, and about its errors."""

from __future__ import annotations

import re
import time

from meterlog.instruments.link import Link
from meterlog.instruments.readings import EXAMPLE_BYTES
from meterlog.instruments.scpi_text import is_left_over, parse_error, parse_identity
from meterlog.model import Identity
from meterlog.model.errors import TalkError
from meterlog.profile import ScpiTalk

MOST_ERRORS = 32
"""So many entries of the error queue are asked for at most: a broken instrument never says 0."""
_LONGEST = 65_536
_END = re.compile(rb"[\r\n]")
_QUIET_S = 0.05
_REMEDY = (
    "Check that it is on, that speed and parity of the line are those of the profile, and that "
    "it speaks SCPI."
)


class ScpiDialogue:
    """Talks to one instrument over an open link, one question at a time.

    Parameters
    ----------
    link : Link
    talk : ScpiTalk

    Attributes
    ----------
    passed_over : list of bytes
        Whole lines that came before an identity and were none: answers to what was asked before.
    """

    def __init__(self, link: Link, talk: ScpiTalk) -> None:
        self.passed_over: list[bytes] = []
        self._link = link
        self._talk = talk
        self._begun = b""

    def introduce(self) -> tuple[Identity, tuple[str, ...]]:
        """Identify the instrument and set it up: ``*CLS``, ``*IDN?``, the profile's lines, arm.

        Returns
        -------
        tuple of Identity and tuple of str
            Who it says it is, and what its error queue held afterwards, each as
            ``<number> <text>``.

        Raises
        ------
        TalkError
            If it does not answer ``*IDN?``, or its error queue can't be read.
        LinkLost
            If the port went away.
        """
        self.forget()
        self.tell("*CLS")
        identity = self.identify()
        for line in self._talk.setup:
            self.tell(line)
        errors = self.errors() if self._talk.ask_errors else ()
        if self._talk.arm:
            self.tell(self._talk.arm)
        return identity, errors

    def identify(self, known: Identity | None = None) -> Identity:
        """Ask ``*IDN?``; pass over what comes first and answers an earlier question.

        An instrument answers in the order in which it was asked. So once it has said who it is, it
        owes nothing more.

        Parameters
        ----------
        known : Identity or None
            Pass over everything else; None: what can't be an identity.

        Raises
        ------
        TalkError
            If it does not say who it is within the profile's ``answer_s``.
        LinkLost
            If the port went away.
        """
        until = time.monotonic() + self._talk.answer_s
        self.tell("*IDN?")
        said = self._line("*IDN?", until)
        while is_left_over(said) if known is None else parse_identity(said) != known:
            self.passed_over.append(said.encode("latin-1")[:EXAMPLE_BYTES])
            said = self._line("*IDN?", until)
        if self.passed_over:
            # It may have been asked more than once while it was busy.
            while time.monotonic() < until and self._link.read(_QUIET_S):
                self._begun = b""
        return parse_identity(said)

    def forget(self) -> None:
        """Forget answers that have come in but were not read."""
        self._begun = b""
        self._link.drop_input()

    def tell(self, line: str) -> None:
        """Send a line that is not answered."""
        self._link.write(line.encode("latin-1", "replace") + b"\n")

    def ask(self, query: str) -> str:
        """Send a query and give its answer, without the line end.

        Raises
        ------
        TalkError
            If no whole line came within the profile's ``answer_s``, or one without end.
        LinkLost
            If the port went away.
        """
        self.tell(query)
        return self._line(query, time.monotonic() + self._talk.answer_s)

    def _line(self, query: str, until: float) -> str:
        """Give the next line that is not empty, nor the query itself given back."""
        while True:
            left = until - time.monotonic()
            end = _END.search(self._begun)
            if end is not None and left > 0.0:
                line, self._begun = self._begun[: end.start()], self._begun[end.end() :]
                said = line.decode("latin-1").strip()
                if said and said != query:
                    return said
                continue
            if left <= 0.0 or len(self._begun) > _LONGEST:
                raise self._unanswered(query)
            self._begun += self._link.read(left)

    def _unanswered(self, query: str) -> TalkError:
        said = f"no answer to {query} within {self._talk.answer_s:g} s"
        if self.passed_over:
            said = f"{said}, only {self.passed_over[-1][:40]!r}"
        elif self._begun:
            said = f"{said}, only {self._begun[:40]!r} without a line end"
        return TalkError(f"{said}.", subject=self._link.url, remedy=_REMEDY)

    def errors(self) -> tuple[str, ...]:
        """Drain the error queue.

        Returns
        -------
        tuple of str
            At most 32 entries ``<number> <text>``, oldest first, without the final
            ``0,"No error"``; no more are asked for after ``answer_s`` in all.

        Raises
        ------
        TalkError
            If an answer is missing or is no entry of an error queue.
        LinkLost
            If the port went away.

        Source
        ------
        SCPI-1999, volume 2, 21.8 (clause from memory).
        """
        found: list[str] = []
        until = time.monotonic() + self._talk.answer_s
        while len(found) < MOST_ERRORS and (not found or time.monotonic() < until):
            answer = self.ask("SYST:ERR?")
            try:
                number, text = parse_error(answer)
            except ValueError as error:
                raise TalkError(
                    f"answers SYST:ERR? with {answer[:60]!r}.",
                    subject=self._link.url,
                    remedy="Set ask_errors = false under [scpi] if it knows no such query.",
                ) from error
            if number == 0:
                break
            found.append(f"{number} {text}".rstrip())
        return tuple(found)
