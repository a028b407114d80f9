"""Which dialect is spoken how: the one table from a profile's dialect to its conversation."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType

from meterlog.acquire.choice import MeterChoice
from meterlog.acquire.clock import Clock
from meterlog.acquire.conversation import Conversation
from meterlog.acquire.free_running import FreeRunning
from meterlog.acquire.polled import Polled

CONVERSATIONS: Mapping[str, Callable[[MeterChoice, Clock], Conversation]] = MappingProxyType(
    {"ascii-lines": FreeRunning, "scpi": Polled}
)
"""One entry for each of :data:`meterlog.profile.DIALECTS`."""


def conversation(choice: MeterChoice, clock: Clock) -> Conversation:
    """Give the conversation that the chosen meter's dialect needs; its port is not yet open."""
    return CONVERSATIONS[choice.profile.dialect](choice, clock)
