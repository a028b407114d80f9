"""VerdictJson: the verdict of a run as plain texts, ready for JSON."""

from __future__ import annotations

import math

from meterlog.model import Ranked, RunVerdict


def verdict_to_dict(verdict: RunVerdict | None) -> dict[str, object] | None:
    """Give the verdict of a run as a JSON object; None while it still runs.

    Returns
    -------
    dict or None
        ``outcome``, ``paragraph``, ``ranked`` (each ``what``, ``part``, ``sureness``,
        ``probability`` (that what it rests on is beyond its limit), ``rests_on``,
        ``against``, ``next_measurement``) and ``unseen``.
    """
    if verdict is None:
        return None
    return {
        "outcome": verdict.outcome.value,
        "paragraph": verdict.paragraph,
        "ranked": [_ranked(one) for one in verdict.ranked],
        "unseen": list(verdict.unseen),
    }


def _ranked(one: Ranked) -> dict[str, object]:
    known = one.probability is not None and math.isfinite(one.probability)
    return {
        "what": one.what,
        "part": one.part,
        "sureness": one.sureness.value,
        "probability": one.probability if known else None,
        "rests_on": list(one.rests_on),
        "against": list(one.against),
        "next_measurement": one.next_measurement,
    }
