"""ModbusDialogue: the talk with a Modbus RTU device before it measures."""

from __future__ import annotations

import time
from collections.abc import Callable, Mapping
from typing import TypeVar

from meterlog.instruments.link import Link
from meterlog.instruments.modbus_frames import AnswerFinder, ModbusRequests
from meterlog.instruments.modbus_identity import before_identity, identity_part, identity_request
from meterlog.model import Identity
from meterlog.profile import ModbusTalk

FASTEST_TIMED_BAUD = 19_200
_FIXED_S = 0.001_75
_CHARACTER_BITS = 11
_MOST_PARTS = 8
_LONGEST = 4_096
Found = TypeVar("Found")


def silent_interval_s(baud: int) -> float:
    """Give the silence that must separate two frames on the line, in seconds.

    Parameters
    ----------
    baud : int, bits per second

    Source
    ------
    Modbus over Serial Line V1.02, 2.5.1.1: 3.5 characters of 11 bits; above 19200 Bd 1.75 ms.
    """
    return _FIXED_S if baud > FASTEST_TIMED_BAUD else 3.5 * _CHARACTER_BITS / baud


class ModbusDialogue:
    """Talks to one device over an open link, one request at a time.

    Parameters
    ----------
    link : Link
    talk : ModbusTalk
    rest_s : float, seconds
        Silence before each request.

    Attributes
    ----------
    passed_over : bytes
        What came before the answers about the identity: answers to what was asked before.
    """

    def __init__(self, link: Link, talk: ModbusTalk, rest_s: float) -> None:
        self._link = link
        self._talk = talk
        self._rest_s = rest_s
        self.passed_over = b""
        self._heard = b""

    def identify(self) -> Identity | None:
        """Ask for maker, model and revision.

        Returns
        -------
        Identity or None
            Empty if the device does not know this request and says so; None if it says nothing,
            as some do.

        Raises
        ------
        LinkLost
            If the port went away.

        Source
        ------
        Modbus Application Protocol V1.1b3, 6.21: function 43, MEI type 14, basic identification.
        """
        device = self._talk.device
        objects: dict[int, bytes] = {}
        following = 0
        for _ in range(_MOST_PARTS):
            request = identity_request(device, following)
            part = self._ask(request, lambda heard: identity_part(heard, device))
            self.passed_over += before_identity(self._heard, device)
            if part is None:
                return _identity(objects) if objects else None
            objects.update(part.objects)
            if part.following is None or part.following <= following:
                break
            following = part.following
        return _identity(objects)

    def answers(self, requests: ModbusRequests) -> bool:
        """Tell whether the device answers the first request at all, be it by an exception.

        Raises
        ------
        LinkLost
            If the port went away.
        """
        finder = AnswerFinder(self._talk)
        read, frame = requests.reads[0], requests.frames[0]

        def find(heard: bytes) -> bool | None:
            found = (finder.at(heard, place, read, frame) for place in range(len(heard)))
            return any(one and (one.data or one.exception >= 0) for one in found) or None

        return self._ask(frame, find) is not None

    def _ask(self, request: bytes, read: Callable[[bytes], Found | None]) -> Found | None:
        time.sleep(self._rest_s)
        self._link.drop_input()
        self._link.write(request)
        heard = self._heard = b""
        until = time.monotonic() + self._talk.answer_s
        while (left := until - time.monotonic()) > 0.0 and len(heard) < _LONGEST:
            heard = self._heard = heard + self._link.read(left)
            found = read(heard)
            if found is not None:
                return found
        return None


def _identity(objects: Mapping[int, bytes]) -> Identity:
    maker, model, revision = (_text(objects.get(key, b"")) for key in range(3))
    return Identity(maker=maker, model=model, firmware=revision)


def _text(data: bytes) -> str:
    return "".join(sign for sign in data.decode("latin-1") if sign.isprintable()).strip()
