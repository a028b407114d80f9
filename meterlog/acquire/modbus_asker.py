"""ModbusAsker: asks a Modbus RTU device for its registers."""

from __future__ import annotations

import time
from dataclasses import replace

from meterlog.acquire.asker import Answer, Progress
from meterlog.acquire.choice import MeterChoice
from meterlog.instruments import Link, ModbusDecoder, ModbusRequests
from meterlog.instruments.modbus_dialogue import ModbusDialogue, silent_interval_s
from meterlog.model import Identity
from meterlog.model.errors import TalkError

_REMEDY = (
    "Check that it is on, its address, that speed and parity of the line are those of the "
    "profile, and that A and B are not exchanged."
)


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
        self._decoder = ModbusDecoder(self._talk, choice.profile.channels)
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
        self._index = index
        self._spoilt = False
        self._decoder.expect(index)
        link.write(self._requests.frames[index])
        self._busy_s = time.monotonic()

    def take(self, link: Link, data: bytes, now_ns: int) -> Answer:
        """Take what came in; see :class:`meterlog.acquire.asker.Asker`."""
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
            return Answer(Progress.WHOLE if given_up else Progress.WAITING, readings)
        if self._index + 1 < len(self._requests.frames):
            self._send(link, self._index + 1)
            return Answer(Progress.MOVING, readings)
        return Answer(Progress.WHOLE, readings)

    def reasons(self, link: Link, answer_s: float) -> tuple[str, ...]:
        """Nothing: a device that does not answer can't be asked why."""
        del answer_s
        link.drop_input()
        return ()
