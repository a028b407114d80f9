"""Which dialect is spoken how: the one table from a profile's dialect to its conversation."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType

from meterlog.acquire.choice import MeterChoice
from meterlog.acquire.clock import Clock
from meterlog.acquire.talk.conversation import Conversation
from meterlog.acquire.talk.free_running import FreeRunning
from meterlog.acquire.talk.polled import Polled
from meterlog.acquire.talk.typed_by_hand import ADDRESS, TypedByHand
from meterlog.model.errors import UsageError

CONVERSATIONS: Mapping[str, Callable[[MeterChoice, Clock], Conversation]] = MappingProxyType(
    {
        "ascii-lines": FreeRunning,
        "lcd-frames": FreeRunning,
        "scpi": Polled,
        "scpi-blocks": Polled,
        "modbus-rtu": Polled,
        "typed": TypedByHand,
    }
)
"""One entry for each of :data:`meterlog.profile.DIALECTS`."""


def conversation_with(choice: MeterChoice, clock: Clock) -> Conversation:
    """Give the conversation that the chosen meter's dialect needs; its port is not yet open.

    Raises
    ------
    UsageError
        If a meter that is typed by hand is given a port, or another is given none.
    """
    name, url = choice.profile.name, choice.url
    typed = choice.profile.typed
    if typed and not url.startswith(ADDRESS):
        raise UsageError(
            f"{name} is typed by hand and has no port.",
            subject=url,
            remedy=f"Write {name}@{ADDRESS} for it.",
        )
    if not typed and url.startswith(ADDRESS):
        raise UsageError(
            f"{name} is not typed by hand: its readings come from a port.",
            subject=url,
            remedy='Give its port, or choose a profile with dialect = "typed".',
        )
    return CONVERSATIONS[choice.profile.dialect](choice, clock)
