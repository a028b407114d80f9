"""ScpiAsker: asks a SCPI instrument for numbers as text."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from meterlog.acquire.choice import MeterChoice
from meterlog.acquire.talk.asker import Answer, Progress
from meterlog.instruments import Link, Readings, ScpiAnswerDecoder, ScpiDialogue
from meterlog.instruments.readings import no_readings
from meterlog.model import Identity

_LAST_RESULT = re.compile(r":?FETC(H)?(:[A-Z:]+)?\?.*", re.IGNORECASE)
_LONGEST_KEPT = 65_536


class ScpiAsker:
    """Sends the profile's query and reads its answer, one value a channel.

    ``FETCh?`` gives the last result without a new measurement, so when it is asked faster than the
    instrument measures, the same result comes twice. Kept twice, it would make the scatter of the
    readings look smaller than it is, and a reading look younger than it is. So an answer to
    ``FETCh?`` that is byte for byte the one kept last, and comes sooner after it than the profile's
    ``interval_s``, is passed over and counted as repeated. It has been understood, so it is not
    refused; and a reading that is really the same again comes an interval later and is kept.
    ``READ?`` measures anew each time: its answers are all kept.

    Parameters
    ----------
    choice : MeterChoice

    Source
    ------
    SCPI-1999, volume 2, chapter 3 (from memory), for what ``FETCh?`` and ``READ?`` do.
    """

    timed_by_question = True

    def __init__(self, choice: MeterChoice) -> None:
        self._talk = choice.profile.scpi
        self.question = self._talk.query
        self.poll_s = self._talk.poll_s
        self.answer_s = self._talk.answer_s
        self.repeated = 0
        self._channels = choice.profile.channels
        self._decoder = ScpiAnswerDecoder(self._channels, self._talk.query)
        self._told_late = False
        self._width = len(choice.profile.channels)
        self._may_repeat = _LAST_RESULT.fullmatch(self._talk.query.strip()) is not None
        self._interval_ns = round(choice.profile.interval_s * 1e9)
        self._heard = bytearray()
        self._kept = b""
        self._kept_ns: int | None = None

    @property
    def refused(self) -> int:
        """Answers not understood so far."""
        return self._decoder.refused

    @property
    def last_refused(self) -> bytes:
        """The last of them, at most 200 bytes."""
        return self._decoder.last_refused

    def introduce(self, link: Link, answer_s: float) -> tuple[Identity, tuple[str, ...]]:
        """Identify the instrument and set it up; give what its error queue held."""
        return self._dialogue(link, answer_s).introduce()

    def _dialogue(self, link: Link, answer_s: float) -> ScpiDialogue:
        return ScpiDialogue(link, replace(self._talk, answer_s=answer_s))

    def restart(self) -> None:
        """Forget the answer that has begun."""
        self._decoder.restart()
        self._heard.clear()

    def ask(self, link: Link) -> None:
        """Send the query."""
        self._heard.clear()
        link.write(self._talk.query.encode("latin-1", "replace") + b"\n")

    def take(self, link: Link, data: bytes, now_ns: int) -> Answer:
        """Take what came in; see :class:`meterlog.acquire.talk.asker.Asker`."""
        del link
        refused = self._decoder.refused
        readings = self._decoder.feed(data)
        if not len(readings) and self._decoder.refused == refused:
            self._heard += data[-_LONGEST_KEPT:]
            return Answer(Progress.WAITING, readings)
        self._told_late = self._told_late and not len(readings)
        if len(readings) > 1:
            readings = self._first(readings, data)
        if self._may_repeat and self._repeats(bytes(self._heard) + data, readings, now_ns):
            readings = no_readings(self._width)
        self._heard.clear()
        return Answer(Progress.WHOLE, readings)

    def _first(self, readings: Readings, data: bytes) -> Readings:
        """Give the first row: one question has one answer, and what it says again is no news."""
        for line in _lines(data)[1 : len(readings)]:
            self._decoder.refuse(line)
        return Readings(readings.values[:1], readings.flags[:1])

    def _repeats(self, said: bytes, readings: Readings, now_ns: int) -> bool:
        """Tell whether an answer gives the kept one once more; keep it if not."""
        soon = self._kept_ns is not None and now_ns - self._kept_ns < self._interval_ns
        if soon and len(readings) and said.strip() == self._kept:
            self.repeated += 1
            return True
        self._kept, self._kept_ns = said.strip(), now_ns
        return False

    def settle(self, link: Link, answer_s: float, known: Identity) -> tuple[str, ...]:
        """Ask ``*IDN?`` and the error queue; see :class:`meterlog.acquire.talk.asker.Asker`."""
        dialogue = self._dialogue(link, answer_s)
        try:
            dialogue.identify(known)
        finally:
            late = self._refuse_lines(dialogue.passed_over)
        errors = dialogue.errors() if self._talk.ask_errors else ()
        if not late or self._told_late:
            return errors
        self._told_late = True
        return (
            f"its answer to {self.question} came later than answer_s = {self.answer_s:g} s and was "
            "passed over: set more under [scpi] in the profile if it needs so long",
            *errors,
        )

    def _refuse_lines(self, lines: Sequence[bytes]) -> bool:
        """Refuse lines; tell whether one was a reading."""
        for line in lines:
            self.refuse(line)
        reader = ScpiAnswerDecoder(self._channels, self._talk.query)
        return len(reader.feed(b"".join(line + b"\n" for line in lines))) > 0

    def refuse(self, data: bytes) -> None:
        """Count what answers nothing that is asked now; a line end alone is nothing."""
        for line in _lines(data):
            self._decoder.refuse(line)


def _lines(data: bytes) -> list[bytes]:
    return [line for line in map(bytes.strip, data.splitlines()) if line]
