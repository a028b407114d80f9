"""TraceStore: all lines of a recording, live or from the disk, in bounded memory."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from meterlog.evidence.kept_line import KeptLine, KeptMeter
from meterlog.evidence.trace_line import CAP, SILENT_INTERVALS, TAIL, TraceLine
from meterlog.model import Block, Channel, Instrument, Quantity, Role
from meterlog.recording import Pyramid

__all__ = ["CAP", "SILENT_INTERVALS", "TAIL", "TraceLine", "TraceStore"]


class TraceStore:
    """All lines of one recording.

    Parameters
    ----------
    instruments : sequence of Instrument
        Channels with a role are drawn; where no channel has one, all are.
    tail, cap : int
        See :class:`TraceLine`.
    pyramids : mapping of str to Pyramid, or None
        Of long recordings on the disk, by instrument; whose readings need not be taken.
    """

    def __init__(
        self,
        instruments: Sequence[Instrument],
        tail: int = TAIL,
        cap: int = CAP,
        pyramids: Mapping[str, Pyramid] | None = None,
    ) -> None:
        any_role = any(c.role is not Role.OTHER for i in instruments for c in i.channels)
        self.end_ns = 0
        self.lines: list[TraceLine] = []
        self.kept: list[KeptMeter] = []
        self._columns: dict[str, list[tuple[int, TraceLine]]] = {}
        for instrument in instruments:
            meter = None
            if pyramids is not None and instrument.key in pyramids:
                meter = KeptMeter(pyramids[instrument.key])
                self.kept.append(meter)
                self.end_ns = max(self.end_ns, meter.last_ns)
            columns = self._columns.setdefault(instrument.key, [])
            for index, channel in enumerate(instrument.channels):
                if channel.role is Role.OTHER and any_role:
                    continue
                label = _label(channel) + (", typed by hand" if instrument.typed else "")
                if meter is not None:
                    self.lines.append(KeptLine(label, channel, meter, index))
                    continue
                line = TraceLine(label, channel, tail, cap, typed=instrument.typed)
                columns.append((index, line))
                self.lines.append(line)

    @property
    def trouble(self) -> str:
        """Why some lines can't be drawn any more; empty while all is well."""
        return next((meter.trouble for meter in self.kept if meter.trouble), "")

    def take(self, block: Block) -> None:
        """Take a Block of one of the instruments; others are passed over."""
        for index, line in self._columns.get(block.source, ()):
            line.append(block.t_ns, block.values[:, index])
            if len(block):
                line.last_flags = int(block.flags[-1, index])
        if len(block) and block.source in self._columns:
            self.end_ns = max(self.end_ns, int(block.t_ns[-1]))

    def line(self, role: Role) -> TraceLine | None:
        """Give the first line that plays ``role``, or None."""
        return next((line for line in self.lines if line.role is role), None)

    def of(self, quantity: Quantity) -> tuple[TraceLine, ...]:
        """Give the lines of one quantity, in the order of the meters."""
        return tuple(line for line in self.lines if line.channel.quantity is quantity)


def _label(channel: Channel) -> str:
    if channel.role is Role.OTHER:
        return channel.name
    return channel.role.value.replace("-", " ")
