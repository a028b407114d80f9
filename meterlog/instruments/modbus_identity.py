"""The frames by which a Modbus RTU device is asked who it is, and what it answers."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

READ_IDENTITY = 0x2B
_MEI_TYPE = 0x0E
_EXCEPTION = 0x80
_EXCEPTION_BYTES = 5
_HEAD_BYTES = 8
_CRC_BYTES = 2
_MORE = 0xFF


@dataclass(frozen=True, slots=True)
class IdentityPart:
    """One answer about the identity; long ones come in parts.

    Attributes
    ----------
    objects : mapping of int to bytes
        0 vendor name, 1 product code, 2 revision; empty when the device refused.
    following : int or None
        The object to ask for next; None when this was the last part.
    """

    objects: Mapping[int, bytes]
    following: int | None = None


def identity_request(device: int, first: int = 0) -> bytes:
    """Give the frame that asks for the basic identification from object ``first`` on."""
    from pymodbus.pdu.mei_message import ReadDeviceInformationRequest

    request = ReadDeviceInformationRequest(read_code=1, object_id=first, dev_id=device)
    return _framed(bytes((device, READ_IDENTITY)) + request.encode())


def identity_part(data: bytes, device: int) -> IdentityPart | None:
    """Give the answer among some bytes; None while it is not all there.

    Parameters
    ----------
    data : bytes
        Anything at all; what is no answer of this device is passed over.
    device : int

    Source
    ------
    Modbus Application Protocol V1.1b3, 6.21.
    """
    for frame in _candidates(data, device, READ_IDENTITY):
        if frame[1] & _EXCEPTION:
            if _is_whole(frame[:_EXCEPTION_BYTES], _EXCEPTION_BYTES):
                return IdentityPart({})
        elif len(frame) >= _HEAD_BYTES and frame[2] == _MEI_TYPE:
            objects, size = _objects(frame)
            if _is_whole(frame[:size], size):
                return IdentityPart(objects, frame[6] if frame[5] == _MORE else None)
    return None


def before_identity(data: bytes, device: int) -> bytes:
    """Give what stands before the first place where an answer about the identity may begin."""
    fronts = (bytes((device, READ_IDENTITY)), bytes((device, READ_IDENTITY | _EXCEPTION)))
    places = [place for place in map(data.find, fronts) if place >= 0]
    return data[: min(places, default=len(data))]


def _objects(frame: bytes) -> tuple[dict[int, bytes], int]:
    """Give the objects of an answer and how long it must be in all."""
    objects = {}
    place = _HEAD_BYTES
    for _ in range(frame[7]):
        if place + 2 > len(frame):
            return {}, len(frame) + 1
        key, size = frame[place], frame[place + 1]
        objects[key] = frame[place + 2 : place + 2 + size]
        place += 2 + size
    return objects, place + _CRC_BYTES


def _candidates(data: bytes, device: int, function: int) -> Iterator[bytes]:
    """Give the bytes from each place on where a frame may begin."""
    for place in range(len(data) - 2):
        if data[place] == device and data[place + 1] & ~_EXCEPTION == function:
            yield data[place:]


def _is_whole(frame: bytes, size: int) -> bool:
    if len(frame) != size:
        return False
    return _framed(frame[:-_CRC_BYTES]) == frame


def _framed(frame: bytes) -> bytes:
    """Give a frame with its checksum, low byte first (Modbus over Serial Line V1.02, 2.5.1.2)."""
    from pymodbus.framer import FramerRTU

    return frame + FramerRTU.compute_CRC(frame).to_bytes(2, "big")
