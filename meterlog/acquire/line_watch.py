"""LineWatch: what the bytes and the system's counts say of the line to one instrument."""

from __future__ import annotations

from meterlog.acquire.condition import Topic
from meterlog.acquire.losses import LossWatch
from meterlog.acquire.talk import Conversation, Heard
from meterlog.acquire.wrong_speed import SpeedWatch
from meterlog.profile import MeterProfile


class LineWatch:
    """Notices a wrong line speed, and bytes lost or damaged.

    Parameters
    ----------
    profile : MeterProfile
    conversation : Conversation
    """

    def __init__(self, profile: MeterProfile, conversation: Conversation) -> None:
        self._conversation = conversation
        self._speed = SpeedWatch(profile)
        self._losses = LossWatch()

    @property
    def lost(self) -> int:
        """Bytes lost or damaged so far, as far as the system counts them."""
        return self._losses.lost

    def lost_port(self) -> None:
        """Note that the port went away."""
        self._speed.restart()

    def reopened(self) -> None:
        """Note that it is open again."""
        self._losses.reopened()

    def check(self, heard: Heard) -> list[tuple[Topic, str]]:
        """Take one turn of listening; give what is to be told and shown."""
        if not self._conversation.watched:
            return []
        said = [(Topic.LINE, self._counted(heard.arrived_ns))]
        said.append((Topic.SPEED, self._doubt(heard)))
        return [(topic, words) for topic, words in said if words]

    def _counted(self, now_ns: int) -> str:
        port = self._conversation.port
        if port is None or not self._losses.is_due(now_ns):
            return ""
        counts = port.line_counts()
        if counts is None:
            return ""
        self._speed.counted(counts)
        return self._losses.check(counts)

    def _doubt(self, heard: Heard) -> str:
        rows = len(heard.readings)
        if not heard.data and not rows:
            return ""
        talk = self._conversation
        return self._speed.heard(heard.data, rows, talk.last_refused, heard.arrived_ns)
