"""OriginWords: what readings are that no meter sent from a vehicle, in one sentence each."""

from __future__ import annotations

from meterlog.evidence.readings_csv import origin_of
from meterlog.model import Origin
from meterlog.recording import Recording

_ORIGINS = {
    Origin.SIMULATED: "SIMULATED: these readings come from a model of a fan circuit, not from a "
    "vehicle. They prove nothing about any vehicle.",
    Origin.IMPORTED: "IMPORTED: these readings were not recorded here, but read from a file, which "
    "is kept inside the recording (data/original).",
    Origin.TYPED: "TYPED: these readings were typed by hand.",
}


def origin_words(recording: Recording) -> list[str]:
    """Give a sentence for each reason why readings are not plain measured ones; none for those."""
    origin = origin_of(recording)
    told = [_ORIGINS[origin]] if origin in _ORIGINS else []
    typed = [one.key for one in recording.about.instruments if one.typed]
    if typed and origin is not Origin.TYPED:
        told.append(f"PARTLY TYPED: the readings of {', '.join(typed)} were typed by hand.")
    return told
