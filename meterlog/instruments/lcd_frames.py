"""LcdFrameDecoder: the 14-byte frames of a hand-held meter's display, as a pure byte machine."""

from __future__ import annotations

import math
import re

import numpy as np

from meterlog.instruments.lcd_segments import FRAME_BYTES, Shown, read_frame
from meterlog.instruments.readings import Readings, Remark
from meterlog.instruments.stray_bytes import StrayBytes
from meterlog.model import Channel, EventKind, Flag
from meterlog.model.event import TO_BEGIN_WITH

_FRAME = re.compile(
    b"".join(b"[\\x%x0-\\x%xf]" % (place, place) for place in range(1, FRAME_BYTES + 1)), re.DOTALL
)
_SIGNS = (
    ("low_battery", "low battery: its readings can't be trusted much longer", "battery is good"),
    ("hold", "HOLD is on: what it shows is no measurement", "HOLD is off"),
    ("relative", "REL is on: readings are relative to a stored one", "REL is off"),
)
"""Attribute of Shown, what is said when it begins, and when it ends."""


class LcdFrameDecoder:
    """Reads frames of which every byte says its place, 1 to 14, in its upper half.

    A byte that is out of place costs its frame only. The readings and remarks do not depend on how
    the bytes were cut. What stands on the display without being a reading of the channel's
    quantity (another unit, alternating current, a held display) becomes ``NO_DATA``, and what has
    changed on it becomes a remark.

    Parameters
    ----------
    channels : tuple of Channel
        Exactly one, as the profile has it: its quantity is what the display shows, also where a
        clamp will turn volts into amperes later.

    Attributes
    ----------
    refused : int
        Frames not understood so far, and stretches of 14 bytes that were no frames.
    last_refused : bytes
        The last of them.
    range_step : float or None, unit of the channel
        Worth of one count in the range of the last number; None before the first.
    """

    def __init__(self, channels: tuple[Channel, ...]) -> None:
        (self._channel,) = channels
        self.refused = 0
        self.last_refused = b""
        self.range_step: float | None = None
        self._stray = StrayBytes(FRAME_BYTES)
        self._begun = b""
        self._rest_of_frame = FRAME_BYTES - 1
        self._other_unit = ""
        self._signs = dict.fromkeys((name for name, _, _ in _SIGNS), False)
        self._rows: list[tuple[float, int]] = []
        self._remarks: list[Remark] = []

    def skip_to_end(self) -> None:
        """Forget the frame that has begun, and its rest: it was joined in the middle.

        So it is from the beginning: the first bytes are not counted as refused.
        """
        self._begun = b""
        self._stray.end()
        self._rest_of_frame = FRAME_BYTES - 1

    def feed(self, data: bytes) -> Readings:
        """Give the readings whose frames end within ``data``.

        Parameters
        ----------
        data : bytes
            Anything at all, cut anywhere.

        Returns
        -------
        Readings
            In V or A, one column; ``RANGE_CHANGED`` on the first number in another range; with
            remarks of kinds ``unit``, ``range`` and ``device``.
        """
        data = self._begun + data
        place = 0
        for match in _FRAME.finditer(data):
            self._pass_over(data[place : match.start()])
            self._take(match.group())
            place = match.end()
        rest = data[place:]
        stray = len(rest) - _begun(rest)
        self._pass_over(rest[:stray])
        self._begun = rest[stray:]
        self.refused, self.last_refused = self._stray.count, self._stray.last
        return self._collect()

    def _pass_over(self, data: bytes) -> None:
        allowed = min(self._rest_of_frame, len(data))
        self._rest_of_frame -= allowed
        self._stray.add(data[allowed:])

    def _take(self, frame: bytes) -> None:
        self._rest_of_frame = 0
        shown = read_frame(frame)
        if shown is None:
            self._stray.refuse(frame)
            return
        self._stray.end()
        right = self._check_unit(shown)
        self._check_signs(shown)
        if not right or shown.hold or not (shown.digits or shown.overload):
            self._rows.append((math.nan, int(Flag.NO_DATA)))
        elif shown.overload:
            self._rows.append((math.nan, int(Flag.OVERLOAD)))
        else:
            flag = self._check_range(shown)
            self._rows.append((shown.number, int(flag)))

    def _remark(self, kind: EventKind, text: str) -> None:
        self._remarks.append(Remark(len(self._rows), kind, text))

    def _check_unit(self, shown: Shown) -> bool:
        """Tell whether it shows the channel's quantity; remark on a change."""
        wanted = self._channel.unit
        said = f"{shown.unit} {shown.coupling}".rstrip()
        if shown.unit == wanted and shown.coupling in {"", "DC"}:
            if self._other_unit:
                self._remark(EventKind.UNIT, f"shows {said} again")
            self._other_unit = ""
            return True
        if said != self._other_unit:
            self._other_unit = said
            self._remark(
                EventKind.UNIT,
                f"the meter shows {said}, expected {wanted}: was its dial turned?",
            )
        return False

    def _check_signs(self, shown: Shown) -> None:
        for name, begins, ends in _SIGNS:
            now = bool(getattr(shown, name))
            if now != self._signs[name]:
                self._signs[name] = now
                self._remark(EventKind.DEVICE, begins if now else ends)

    def _check_range(self, shown: Shown) -> Flag:
        """Give the flag of a number; remark on the first range, and on each other one."""
        before, self.range_step = self.range_step, shown.step
        if before is None:
            self._remark(EventKind.RANGE, self._range_words(shown.step) + TO_BEGIN_WITH)
        if before is None or before == shown.step:
            return Flag.OK
        self._remark(EventKind.RANGE, self._range_words(shown.step))
        return Flag.RANGE_CHANGED

    def _range_words(self, step: float) -> str:
        channel = self._channel
        scaled = step * abs(channel.scale)
        for one in channel.ranges:
            if math.isclose(one.accuracy.resolution, scaled, rel_tol=1e-6):
                return f"range {one.top:g} {channel.unit}, steps of {scaled:g} {channel.unit}"
        return f"another range, steps of {scaled:g} {channel.unit}"

    def _collect(self) -> Readings:
        values = np.array([[value] for value, _ in self._rows], float).reshape(-1, 1)
        flags = np.array([[flag] for _, flag in self._rows], np.uint8).reshape(-1, 1)
        remarks = tuple(self._remarks)
        self._rows = []
        self._remarks = []
        return Readings(np.asfortranarray(values), np.asfortranarray(flags), None, remarks)


def _begun(rest: bytes) -> int:
    """Count the bytes at the end that may become a frame."""
    for count in range(min(FRAME_BYTES - 1, len(rest)), 0, -1):
        if all(byte >> 4 == place for place, byte in enumerate(rest[-count:], 1)):
            return count
    return 0
