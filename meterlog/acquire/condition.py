"""Condition: what is wrong with one instrument, the most pressing first."""

from __future__ import annotations

from enum import IntEnum

SAID_NS = 10_000_000_000
"""What an instrument reports of itself is shown for so long, if nothing ends it earlier."""


class Topic(IntEnum):
    """What a message is about; of several, the first is shown."""

    STOPPED = 1
    """Reading has ended by an error of the program."""
    SPEED = 2
    """Bytes come, but nothing is understood."""
    LINK = 3
    """Silent or lost."""
    OTHER_DEVICE = 4
    """What was found after a loss."""
    DEVICE = 5
    """The instrument's own report."""
    LINE = 6
    """Bytes were lost or damaged on the way."""
    PACE = 7
    """It sends at another pace than its profile says."""


_PASSING = frozenset({Topic.DEVICE, Topic.LINE})


class Condition:
    """Keeps a message for each topic."""

    def __init__(self) -> None:
        self._said: dict[Topic, tuple[str, int]] = {}

    def say(self, topic: Topic, words: str, now_ns: int) -> None:
        """Set the message of one topic."""
        self._said[topic] = (words, now_ns)

    def clear(self, *topics: Topic) -> None:
        """Forget the messages of these topics: it is well again."""
        for topic in topics:
            self._said.pop(topic, None)

    def words(self, now_ns: int) -> str:
        """Give the most pressing message; empty when all is well. May be called by any thread."""
        for topic, (words, at_ns) in sorted(self._said.copy().items()):
            if topic not in _PASSING or now_ns - at_ns < SAID_NS:
                return words
        return ""
