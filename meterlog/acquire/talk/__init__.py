"""Talk: the conversation with one instrument, in each dialect, from opening its port on."""

from meterlog.acquire.talk.conversation import Conversation, Heard
from meterlog.acquire.talk.conversations import conversation_with
from meterlog.acquire.talk.open_port import OpenPort
from meterlog.acquire.talk.typed_by_hand import TypedByHand
from meterlog.acquire.talk.virtual_sign import VirtualSign

__all__ = [
    "Conversation",
    "Heard",
    "OpenPort",
    "TypedByHand",
    "VirtualSign",
    "conversation_with",
]
