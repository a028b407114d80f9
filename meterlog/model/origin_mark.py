"""Origin mark: the words that stand wherever readings are shown that no meter sent."""

from __future__ import annotations

from meterlog.model.about import About, Origin


def origin_mark(about: About) -> str:
    """Give the words that mark readings that no meter sent; empty where all were measured."""
    typed = [instrument.typed for instrument in about.instruments]
    if about.origin is Origin.TYPED or (about.origin is Origin.MEASURED and typed and all(typed)):
        return "TYPED BY HAND"
    simulated = any(instrument.simulated for instrument in about.instruments)
    origin = Origin.SIMULATED if simulated else about.origin
    whole = "" if origin is Origin.MEASURED else origin.value.upper()
    partly = "PARTLY TYPED BY HAND" if any(typed) else ""
    return " · ".join(words for words in (whole, partly) if words)
