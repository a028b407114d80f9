"""Origin: the mark of readings that no meter sent from a vehicle, without loading a picture."""

from __future__ import annotations

from meterlog.model import About, Origin


def origin_told(about: About) -> str:
    """Give the same words as ``evidence.trace_picture.origin_mark``; empty for measured ones."""
    typed = [instrument.typed for instrument in about.instruments]
    if about.origin is Origin.TYPED or (about.origin is Origin.MEASURED and typed and all(typed)):
        return "TYPED BY HAND"
    simulated = any(instrument.simulated for instrument in about.instruments)
    origin = Origin.SIMULATED if simulated else about.origin
    whole = "" if origin is Origin.MEASURED else origin.value.upper()
    partly = "PARTLY TYPED BY HAND" if any(typed) else ""
    return " · ".join(words for words in (whole, partly) if words)
