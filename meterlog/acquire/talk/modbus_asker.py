"""ModbusAsker: asks a Modbus RTU device for its registers."""

from __future__ import annotations

import time
from dataclasses import replace

from meterlog.acquire.choice import MeterChoice
from meterlog.acquire.talk.asker import Answer, Progress
from meterlog.instruments import Link, ModbusDecoder, ModbusRequests
from meterlog.instruments.modbus_dialogue import ModbusDialogue, silent_interval_s
from meterlog.model import Identity
from meterlog.model.errors import TalkError

_REMEDY = (
    "Check that it is on, its address, that speed and parity of the line are those of the "
    "profile, and that A and B are not exchanged."
)
_TWICE_REST_S = 0.1


class ModbusAsker:
    """Sends the requests that make one row, one after the other, and reads their answers.

    Between an answer and the next request the line rests for 3.5 characters, as the standard
    asks: devices take the silence for the end of a frame.

    Parameters
    ----------
    choice : MeterChoice

    Source
    ------
    Modbus Application Protocol V1.1b3; Modbus over Serial Line V1.02, 2.5.1.1.
    """

    timed_by_question = True
    repeated = 0

    def __init__(self, choice: MeterChoice) -> None:
        self._talk = choice.profile.modbus
        self.question = f"device {self._talk.device}, function {self._talk.function}"
        self.poll_s = self._talk.poll_s
        self.answer_s = self._talk.answer_s
        self._requests = ModbusRequests(self._talk)
        self._decoder = ModbusDecoder(self._talk, choice.profile.channels, one_each=True)
        self._channels = choice.profile.channels
        self._says_who = False
        self._rest_s = silent_interval_s(choice.profile.link.baud)
        self._index = 0
        self._spoilt = False
        self._busy_s = 0.0

    @property
    def refused(self) -> int:
        """Answers not understood so far."""
        return self._decoder.refused

    @property
    def last_refused(self) -> bytes:
        """The last of them, at most 200 bytes."""
        return self._decoder.last_refused

    def introduce(self, link: Link, answer_s: float) -> tuple[Identity, tuple[str, ...]]:
        """Read the device identification, where there is one; there is nothing to set up.

        Raises
        ------
        TalkError
            If it answers neither that nor the first request.
        LinkLost
            If the port went away.
        """
        dialogue = ModbusDialogue(link, replace(self._talk, answer_s=answer_s), self._rest_s)
        identity = dialogue.identify()
        if identity is None and not dialogue.answers(self._requests):
            raise TalkError(
                f"no answer from {self.question} within {answer_s:g} s.",
                subject=link.url,
                remedy=_REMEDY,
            )
        self._busy_s = time.monotonic()
        self._says_who = identity is not None
        return identity or Identity(), ()

    def restart(self) -> None:
        """Forget the answers that have begun."""
        self._decoder.restart()
        self._index = 0

    def ask(self, link: Link) -> None:
        """Send the first request."""
        self._decoder.restart()
        self._send(link, 0)

    def _send(self, link: Link, index: int) -> None:
        rest_s = self._busy_s + self._rest_s - time.monotonic()
        if rest_s > 0.0:
            time.sleep(rest_s)
        if early := link.read(0.0):
            self.refuse(early)
        self._index = index
        self._spoilt = False
        self._decoder.expect(index)
        link.write(self._requests.frames[index])
        self._busy_s = time.monotonic()

    def take(self, link: Link, data: bytes, now_ns: int) -> Answer:
        """Take what came in; see :class:`meterlog.acquire.talk.asker.Asker`."""
        del now_ns
        if data:
            self._busy_s = time.monotonic()
        refused, answers = self._decoder.refused, self._decoder.complete_answers
        readings = self._decoder.feed(data)
        if self._decoder.complete_answers == answers:
            # A stray byte is usual where a line of two wires is turned round: the answer may yet
            # come. Only when the line has gone quiet after something spoilt is there none.
            self._spoilt = self._spoilt or self._decoder.refused > refused
            given_up = self._spoilt and not data
            return Answer(Progress.GIVEN_UP if given_up else Progress.WAITING, readings)
        if self._index + 1 < len(self._requests.frames):
            self._send(link, self._index + 1)
            return Answer(Progress.MOVING, readings)
        return Answer(Progress.WHOLE, readings)

    def settle(self, link: Link, answer_s: float, known: Identity) -> tuple[str, ...]:
        """Ask for the identification, whose answer is no other's.

        A device that answers no such request gets ``answer_s`` to say what it still has to say.
        """
        del known
        if self._says_who:
            dialogue = ModbusDialogue(link, replace(self._talk, answer_s=answer_s), self._rest_s)
            told = dialogue.identify() is not None
            self._decoder.refuse(dialogue.passed_over)
            self._busy_s = time.monotonic()
            if not told:
                raise TalkError(f"no answer from {self.question}.", subject=link.url)
            return ()
        until = time.monotonic() + answer_s
        while (left_s := until - time.monotonic()) > 0.0:
            self._decoder.refuse(link.read(left_s))
        return ()

    def refuse(self, data: bytes) -> None:
        """Count what answers nothing that is asked now.

        A device that answers a request twice would have the second taken for the answer to the
        request that follows in the same row; so from then on the line rests longer between these.
        """
        self._decoder.refuse(data)
        if len(self._requests.frames) > 1 and self._holds_answer(data):
            self._rest_s = max(self._rest_s, _TWICE_REST_S)

    def _holds_answer(self, data: bytes) -> bool:
        heard = ModbusDecoder(self._talk, self._channels)
        heard.feed(data)
        return heard.complete_answers > 0
