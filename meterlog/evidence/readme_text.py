"""ReadmeText: what stands in an exported folder, in plain words."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator
from dataclasses import fields

import meterlog
from meterlog.evidence.accuracy_text import accuracy_of
from meterlog.evidence.readings_csv import column_names, origin_of
from meterlog.evidence.sensors_text import sensors_of
from meterlog.evidence.times_text import TIMES, times_of
from meterlog.evidence.verify import seal_digest
from meterlog.model import Channel, Conditions, Instrument, Job, Limits, Origin, Review
from meterlog.recording import UNDATED, Recording

_WIDTH = 92

_ORIGINS = {
    Origin.SIMULATED: "SIMULATED: these readings come from a model of a fan circuit, not from a "
    "vehicle. They prove nothing about any vehicle.",
    Origin.IMPORTED: "IMPORTED: these readings were taken by another program and read from its "
    "file, which is kept inside the recording (data/original).",
    Origin.TYPED: "TYPED: these readings were typed by hand.",
}

_TABLES = """\
All tables are comma-separated values (RFC 4180): UTF-8, one header line, a point as decimal
mark, CRLF line ends. An empty cell means that there is no value. Text that a spreadsheet could
run as a formula has an apostrophe in front. Times end in Z: UTC. elapsed_s and all columns that
end in _s are seconds; the recording's beginning is 0.

findings.csv   One line a statement.
  kind         what it is about
  verdict      pass, fail or can't tell; can't tell also where what is known against the
               meters (WHAT TO KNOW, below) reaches what it rests on
  start_s, end_s, edge_s   from when to when; each edge is known to within +-edge_s, by how
               far apart the readings are there, and by the meter's own times (below)
  value, unit, expanded_uncertainty, coverage_factor
               what was found, +- for about 95 % with the coverage factor given; empty
               where it can't be stated
  limit        the limit that decided
  speed        commanded fan speed at the start, 0 is off; empty where nobody recorded it
  statement    the finding in one sentence
steps.csv      One line a stretch at one commanded speed: n readings, motor voltage and motor
               current (mean, standard deviation sd, median, least, greatest); steady_ the same
               without the start-up and without stretches where the motor had no current;
               steady_expanded_a is the expanded uncertainty (about 95 %) of steady_mean_a,
               made with the factor steady_coverage. Not steady: inrush_window_s after a start or
               a change of speed (after a dropout at most ten times its length), the last reading
               before a dropout, and command_lag_s before a new command.
uncertainty    U = k x sqrt(a^2 / 3 + c^2 / 3 + s^2 / n' + z^2 / m + d^2 / 3): a is the half-width
               of the meter's accuracy stated below at the mean, wider by its temperature
               coefficient where the ambient temperature was recorded; c that of the sensor's own
               accuracy (below, both are added up); s the standard deviation, n' = n (1 - r) /
               (1 + r) with r the lag-1 correlation, if positive (not for findings of a stretch:
               n' = n); z and m are scatter and number of the readings that made the zero, d how
               far the zero taken next lies away (JCGM 100:2008, 4.3.7, 4.2.3, 5.1.2). k is
               0.95 x sqrt(3) = 1.65 where one of a, c and d is nearly all of it, up to 1.90 where
               two are (EA-4/02 M:2022, S9 and S10), else for 95.45 % by the effective degrees of
               freedom (G.4.1): 2 for many readings. What is not known is left out: an accuracy
               that nobody stated, a zero that nobody took, its drift where no second one was
               taken, the temperature where nobody recorded it.
spans.csv      What the motor was doing from when to when. Kinds: off, running, over and under
               (current beyond the step's limits), locked, dead (full voltage, next to no
               current), feed-lost, ground-lost, no-current (the channels at hand can't say which
               side), no-data. settled_by names the channels that would have told.
events.csv     What the technician marked (speed, tap, wiggle: what was moved by hand, note) and
               what the program met (link, refused, device, unit, range, zero, timing, fault, end).
"""

_READINGS = """\
  time_utc     when, in UTC (RFC 3339); digits beyond the edges' +- are the program's, not the
               meter's
  elapsed_s    the same as seconds from the recording's beginning, by a clock that nobody can set
  flags        channel:word for what is to be known about a value: overload and no-data (the cell
               is empty), range-changed, zeroed (a zero offset was subtracted), typed (by
               hand, not sent by a meter)
  step         commanded fan speed at that time; empty where nobody recorded it
  span         kind of the span at that time, as in spans.csv
  origin       only where the readings were not sent by a meter on a vehicle
"""


def readme_text(recording: Recording, review: Review) -> str:
    """Give the text of ``README.txt``.

    Parameters
    ----------
    recording : Recording
    review : Review

    Returns
    -------
    str
        Lines end in line feeds.
    """
    return "\n".join(
        [
            *_head(recording),
            *_origin(recording),
            "",
            "THE FILES",
            _TABLES + TIMES,
            *(line for one in recording.about.instruments for line in _one(recording, one)),
            _READINGS,
            *_shortcomings(recording, review),
            "LIMITS USED",
            *_limits(recording.about.limits),
            "",
        ]
    )


def _head(recording: Recording) -> Iterator[str]:
    about = recording.about
    yield "Fan circuit recording, exported as tables"
    yield ""
    yield f"Recording    {about.recording_id}"
    if about.origin is Origin.IMPORTED and about.started_utc == UNDATED:
        yield "Started      not known: the imported file has seconds only"
    else:
        yield f"Started      {about.started_utc.isoformat()}"
    yield f"State        {recording.state}"
    seal = seal_digest(recording.folder)
    if seal:
        yield f"Seal         {seal}"
        yield "             (SHA-256 of the recording's manifest-sha256.txt)"
    yield f"Recorded by  {about.program}"
    yield f"Exported by  meterlog {meterlog.__version__}"
    yield f"Limits       {about.limits.name}"
    yield from _job(about.job)


def _job(job: Job) -> Iterator[str]:
    words = {field.name: getattr(job, field.name) for field in fields(job)}
    under: Conditions = words.pop("measured_under")
    for name, value in words.items():
        if value:
            yield f"{name.replace('_', ' ').capitalize():<13}{' '.join(value.split())}"
    stated = [
        f"{name.replace('_', ' ')} {value if isinstance(value, str) else format(value, 'g')}"
        for name, value in ((field.name, getattr(under, field.name)) for field in fields(under))
        if value not in ("", None)
    ]
    if stated:
        yield f"{'Under':<13}{', '.join(stated)}"


def _origin(recording: Recording) -> Iterator[str]:
    origin = origin_of(recording)
    told = [_ORIGINS[origin]] if origin in _ORIGINS else []
    typed = [one.key for one in recording.about.instruments if one.typed]
    if typed and origin is not Origin.TYPED:
        told.append(f"PARTLY TYPED: the readings of {', '.join(typed)} were typed by hand.")
    for words in told:
        yield ""
        yield from textwrap.wrap(words, _WIDTH)


def _limits(limits: Limits) -> Iterator[str]:
    if limits.text.strip():
        yield limits.text.strip()
        return
    yield f"{limits.name}, as built into the program:"
    for field in fields(limits):
        value = getattr(limits, field.name)
        if isinstance(value, float):
            yield f"{field.name} = {value:g}"


def _one(recording: Recording, instrument: Instrument) -> Iterator[str]:
    yield from _readings(instrument)
    yield from sensors_of(recording, instrument)
    yield from times_of(recording, instrument)


def _readings(instrument: Instrument) -> Iterator[str]:
    who = " ".join(
        part
        for part in (
            instrument.identity.maker,
            instrument.identity.model,
            instrument.identity.serial and f"serial {instrument.identity.serial}",
            instrument.identity.calibration_due
            and f"calibration due {instrument.identity.calibration_due}",
        )
        if part
    )
    yield f"readings-{instrument.key}.csv   Every reading of one instrument"
    yield f"  {who or f'profile {instrument.profile}'}"
    if instrument.typed:
        yield "  TYPED BY HAND: each is what somebody read off the meter at that moment"
    for name, channel in zip(column_names(instrument), instrument.channels, strict=True):
        yield (
            f"  {name} ({channel.unit})   channel {channel.name}, "
            f"{_paced(channel, typed=instrument.typed)}"
        )
        yield f"    scale {channel.scale:g}, zero {channel.offset:g} {channel.unit} subtracted"
        yield from accuracy_of(channel)


def _paced(channel: Channel, *, typed: bool) -> str:
    if typed:
        return f"a reading when one was typed; believed for {3.0 * channel.interval_s:g} s"
    return f"a reading every {channel.interval_s:g} s, {_averaged(channel)}"


def _averaged(channel: Channel) -> str:
    if channel.integration_s:
        return f"averaged over {channel.integration_s:g} s"
    return "averaging time not stated"


def _shortcomings(recording: Recording, review: Review) -> Iterator[str]:
    yield "WHAT TO KNOW"
    shortest = review.shortest_visible_dropout_s
    if shortest is not None:
        yield (
            f"- A loss of current of {shortest:.4g} s or more can't have been missed while readings"
            " came."
        )
    if review.catch_chances:
        chances = (f"{one.duration_s:g} s {one.chance:.0%}" for one in review.catch_chances)
        words = f"- The chance to catch one of a given length: {', '.join(chances)}."
        yield from textwrap.wrap(words, _WIDTH, subsequent_indent="  ")
    for text in (*review.notes, *(f"Damage: {text}" for text in recording.damage)):
        yield from textwrap.wrap(f"- {text}", _WIDTH, subsequent_indent="  ")
    yield ""
