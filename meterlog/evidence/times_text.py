"""TimesText: how the readings of an instrument got their times, in plain words."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator

from meterlog.model import EventKind, Instrument
from meterlog.model.timing_text import span_words, time_u_of
from meterlog.recording import Recording

_WIDTH = 92

TIMES = """\
times          A reading's time is the middle of what it averages: its arrival, less its time on
               the serial line, less half the averaging time. A meter that sends at a steady pace,
               or by a clock of its own, has its count or clock laid on the arrivals by a line of
               least squares, so that what came late has the time it was read at; what never came
               is a gap. Each meter's times have an uncertainty of their own (below), which
               matters where an edge of one meter is held against an edge of another.
"""


def times_of(recording: Recording, instrument: Instrument) -> Iterator[str]:
    """Give the lines about one instrument's times.

    Parameters
    ----------
    recording : Recording
    instrument : Instrument
        One of its instruments.

    Yields
    ------
    str
        Indented, wrapped; none for an imported trace, whose times are those of its file.
    """
    last, time_u_s = _last_told(recording, instrument)
    said = []
    if time_u_s is not None:
        said.append(
            f"times known to +-{span_words(2.0 * time_u_s)} against the computer's clock (k=2)"
        )
    if instrument.skew_u_s > 0.0:
        said.append(
            f"skew measured by common steps to +-{span_words(2.0 * instrument.skew_u_s)} (k=2)"
        )
    if instrument.skew_s > 0.0:
        said.append(f"skew of {instrument.skew_s * 1e3:.1f} ms subtracted")
    said += [last] if last else []
    if said:
        yield from textwrap.wrap(
            "; ".join(said), _WIDTH, initial_indent="    ", subsequent_indent="    "
        )


def times_to_list(recording: Recording) -> list[dict[str, object]]:
    """Give, for each instrument, how well its times are known, ready for JSON."""
    return [
        {
            "instrument": one.key,
            "standard_uncertainty_s": _last_told(recording, one)[1],
            "skew_subtracted_s": one.skew_s,
            "skew_standard_uncertainty_s": one.skew_u_s or None,
        }
        for one in recording.about.instruments
    ]


def _last_told(recording: Recording, instrument: Instrument) -> tuple[str, float | None]:
    """Give the last words on an instrument's times, and their standard uncertainty, seconds."""
    told = [
        event.value
        for event in recording.events
        if event.kind is EventKind.TIMING
        and event.source == instrument.key
        and time_u_of(event.value) is not None
    ]
    if not told:
        return "", instrument.time_u_s
    return told[-1], time_u_of(told[-1])
