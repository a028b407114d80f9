"""BlockAsker: asks a SCPI instrument for blocks of samples that it took by its own clock."""

from __future__ import annotations

from dataclasses import replace

from meterlog.acquire.choice import MeterChoice
from meterlog.acquire.talk.asker import Answer, Progress
from meterlog.acquire.talk.scpi_asker import ScpiAsker
from meterlog.instruments import BlockDecoder, Link, Readings
from meterlog.instruments.ieee_block import BlockState, block_header
from meterlog.model.errors import TalkError

PAUSE_SHARE = 0.25
"""A sender that is silent for this part of ``answer_s`` has ended a block of unknown length."""
_ERRORS_EVERY_NS = 1_000_000_000
_LONGEST_HEAD = 16


class BlockAsker(ScpiAsker):
    """Sends the profile's query and reads one block, of any number of rows, for each.

    A long block on a slow line takes longer than ``answer_s``: patience lasts as long as bytes
    keep coming. The instrument took its samples by its own clock while nobody asked, so neither
    question nor arrival says when. If its memory overran meanwhile, samples are missing and its
    clock no longer tells which: so its error queue is asked about once a second, and where it
    holds something that is told, and the instrument's clock is tied anew to this computer's.

    Parameters
    ----------
    choice : MeterChoice

    Source
    ------
    IEEE 488.2-1992, 8.7.9 and 8.7.10, for blocks (clauses from memory).
    """

    timed_by_question = False

    def __init__(self, choice: MeterChoice) -> None:
        super().__init__(choice)
        self._blocks = BlockDecoder(choice.profile.blocks, choice.profile.channels)
        self._pause_ns = round(PAUSE_SHARE * choice.profile.scpi.answer_s * 1e9)
        self._head = b""
        self._heard_ns: int | None = None
        self._errors_due_ns = 0
        self._may_ask_errors = self._talk.ask_errors

    @property
    def refused(self) -> int:
        """Blocks and answers not understood so far."""
        return self._blocks.refused

    @property
    def last_refused(self) -> bytes:
        """The last of them, at most 200 bytes."""
        return self._blocks.last_refused

    def restart(self) -> None:
        """Forget the block that has begun; the instrument's clock begins anew."""
        self._blocks.restart()
        self._head, self._heard_ns = b"", None

    def ask(self, link: Link) -> None:
        """Send the query."""
        self._head, self._heard_ns = b"", None
        super().ask(link)

    def take(self, link: Link, data: bytes, now_ns: int) -> Answer:
        """Take what came in; see :class:`meterlog.acquire.talk.asker.Asker`."""
        refused = self._blocks.refused
        readings = self._blocks.feed(data)
        if not len(readings) and self._has_ended(link, data, now_ns):
            readings = self._blocks.message_end()
        if data:
            self._heard_ns = now_ns
            self._head += data[: _LONGEST_HEAD - len(self._head)]
        if len(readings) or self._blocks.refused > refused:
            return self._whole(link, readings, now_ns)
        if data and self._is_empty():
            return Answer(Progress.WHOLE, readings)
        return Answer(Progress.MOVING if data else Progress.WAITING, readings)

    def _has_ended(self, link: Link, data: bytes, now_ns: int) -> bool:
        """Tell whether the sender made an end, as far as the link lets it be seen."""
        if data:
            return link.messages
        return self._heard_ns is not None and now_ns - self._heard_ns >= self._pause_ns

    def _is_empty(self) -> bool:
        """Tell whether the answer is a block without samples: there were no new ones."""
        header = block_header(self._head.lstrip(b" \t\r\n"))
        return header.state is BlockState.COMPLETE and header.size == 0

    def _whole(self, link: Link, readings: Readings, now_ns: int) -> Answer:
        complaints: tuple[str, ...] = ()
        if self._may_ask_errors and now_ns >= self._errors_due_ns:
            self._errors_due_ns = now_ns + _ERRORS_EVERY_NS
            complaints = self._lost_meanwhile(link)
        if complaints:
            readings = _from_zero(readings)
            self._blocks.restart()
        return Answer(Progress.WHOLE, readings, complaints)

    def refuse(self, data: bytes) -> None:
        """Count what answers nothing that is asked now; if it was a block, its samples are lost."""
        if data.strip():
            self._blocks.refuse(data)
            self._blocks.restart()

    def _lost_meanwhile(self, link: Link) -> tuple[str, ...]:
        try:
            return self._dialogue(link, self.answer_s).errors()
        except TalkError as error:
            self._may_ask_errors = False  # once is enough: each time costs readings
            return (error.message,)


def _from_zero(readings: Readings) -> Readings:
    """Let the instrument's own times begin anew."""
    own = readings.own_time_s
    if own is None or not len(own):
        return readings
    return replace(readings, own_time_s=own - own[0])
