"""BeatNote: losses that come as evenly as the beat of pulses with readings are told to do so."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from meterlog.model import Channel, Limits, PulsedFeed, Span, SpanKind

BEAT_S = 2.0
"""Longer losses are no beat worth the name."""
_FEWEST = 6
_ALIKE, _ALIKE_PART = 0.15, 0.8
"""So many of the times from loss to loss differ by no more than this part from the median."""
_LOST = (SpanKind.DEAD, SpanKind.FEED_LOST, SpanKind.GROUND_LOST, SpanKind.NO_CURRENT)


def beat_note(
    spans: Sequence[Span],
    pulsed: Sequence[PulsedFeed],
    limits: Limits,
    channel: Channel | None,
) -> list[str]:
    """Say that losses come so evenly that a pulsed feed would look the same; empty else.

    Readings without averaging that are slower than a feed's pulses catch now a pulse, now a
    pause, and do so in a beat. A relay or a contact that opens as evenly gives the same readings,
    so the losses stay: whether anything pulses the feed is for the technician to say.

    Parameters
    ----------
    spans : sequence of Span
    pulsed : sequence of PulsedFeed
        Losses inside of these are dealt with.
    limits : Limits
    channel : Channel or None
        The motor current's.

    Source
    ------
    Aliasing: the difference of a frequency and the nearest multiple of the rate (sampling theorem;
    any textbook of signal processing). How even is even: common practice, no source.
    """
    if channel is None or channel.integration_s > 0.0 or limits.controller.kind or pulsed:
        return []
    longest_ns = round(BEAT_S * 1e9)
    for speed in sorted({span.speed for span in spans if span.speed is not None}):
        starts = [
            span.start_ns
            for span in spans
            if span.speed == speed and span.kind in _LOST and span.duration_ns <= longest_ns
        ]
        if len(starts) < _FEWEST:
            continue
        apart_s = np.diff(starts) / 1e9
        middle = float(np.median(apart_s))
        if np.mean(np.abs(apart_s - middle) <= _ALIKE * middle) >= _ALIKE_PART:
            return [_words(speed, len(starts), middle, channel)]
    return []


def _words(speed: int, count: int, apart_s: float, channel: Channel) -> str:
    pace = f"{channel.interval_s * 1e3:.3g} ms"
    return (
        f"The {count} losses at speed {speed} come evenly, every {apart_s:.2g} s: if anything"
        f" pulses this feed, readings every {pace} without averaging would show the same beat, and"
        f" nothing need be lost. State the controller's kind in the limits, or read with a meter"
        f" that averages."
    )
