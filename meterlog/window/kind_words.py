"""KindWords: what a finding is about, in as few words as a narrow list has room for."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from meterlog.evidence.palette import DAY
from meterlog.model import FindingKind, SpanKind

_OTHERS = {
    FindingKind.STEP_CURRENT: "current",
    FindingKind.RESISTIVE_FEED: "feed resistance",
    FindingKind.RESISTIVE_GROUND: "ground resistance",
    FindingKind.DRAG: "drag",
    FindingKind.DIP: "dip",
    FindingKind.MISSED_DROPOUT: "dropout not seen",
    FindingKind.FUSE_LOAD: "fuse load",
    FindingKind.FUSE_OPENING: "fuse opening",
    FindingKind.CONTROLLER_HEAT: "controller heat",
    FindingKind.BARS: "commutator bars",
}

KIND_WORDS: Mapping[FindingKind, str] = MappingProxyType(
    {
        # What is a span too is called as it is on the ribbon.
        **{FindingKind(kind.value): DAY.spans[kind].word for kind in SpanKind if kind.is_fault},
        FindingKind.NO_DATA: DAY.spans[SpanKind.NO_DATA].word,
        **_OTHERS,
    }
)
