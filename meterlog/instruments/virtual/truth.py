"""TruthLog: what the circuit really did, as spans in scenario time."""

from __future__ import annotations

from dataclasses import dataclass

from meterlog.model import SpanKind

_SHORTEST_S = 0.02
_AT_ONCE = (SpanKind.RUNNING, SpanKind.OFF)


@dataclass(frozen=True, slots=True)
class TruthSpan:
    """One stretch in one condition.

    Attributes
    ----------
    kind : SpanKind
    start_s, end_s : float, seconds since the scenario's zero
        Exact to one step of the model.
    """

    kind: SpanKind
    start_s: float
    end_s: float


class TruthLog:
    """Collects conditions step by step.

    A fault that lasts less than 20 ms is no span: a motor takes some milliseconds to break away,
    and a turning commutator passes its dead bars in less.

    Attributes
    ----------
    begun : int
        How many spans have begun so far.
    """

    def __init__(self) -> None:
        self._ended: list[TruthSpan] = []
        self._kind = SpanKind.OFF
        self._start_s = 0.0
        self._left_s = 0.0
        self._next = SpanKind.OFF
        self._next_s = 0.0
        self.begun = 1

    def see(self, kind: SpanKind, from_s: float, to_s: float) -> bool:
        """Take the condition from ``from_s`` to ``to_s``; True when a new span has begun."""
        if kind is self._kind:
            self._next = kind
            return False
        if self._next is self._kind:
            self._left_s = from_s
        if kind is not self._next:
            self._next = kind
            self._next_s = from_s
        if kind not in _AT_ONCE and to_s - self._next_s < _SHORTEST_S:
            return False
        # The old span ended when its condition was left, even if others came in between.
        if self._left_s > self._start_s:
            self._ended.append(TruthSpan(self._kind, self._start_s, self._left_s))
        self._kind = kind
        self._start_s = self._left_s
        self.begun += 1
        return True

    @property
    def kind(self) -> SpanKind:
        """The condition now."""
        return self._kind

    @property
    def start_s(self) -> float:
        """When it began, seconds."""
        return self._start_s

    def spans(self, until_s: float) -> tuple[TruthSpan, ...]:
        """Give all spans, the last one cut at ``until_s``; they touch."""
        if until_s <= self._start_s:
            return tuple(self._ended)
        return (*self._ended, TruthSpan(self._kind, self._start_s, until_s))
