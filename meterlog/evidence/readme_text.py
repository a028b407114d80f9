"""ReadmeText: what stands in an exported folder, in plain words."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator
from dataclasses import fields

import meterlog
from meterlog.evidence.accuracy_text import accuracy_of
from meterlog.evidence.cell_text import AS_USUAL
from meterlog.evidence.conditions_text import stated_conditions
from meterlog.evidence.origin_words import origin_words
from meterlog.evidence.readings_csv import column_names
from meterlog.evidence.seal_state import seal_problems, seal_state
from meterlog.evidence.sensors_text import sensors_of
from meterlog.evidence.table_form import TableForm
from meterlog.evidence.times_text import TIMES, times_of
from meterlog.evidence.unbroken import unbroken
from meterlog.evidence.uncertainty_text import UNCERTAINTY
from meterlog.evidence.verify import seal_digest
from meterlog.evidence.visibility_text import visibility_words
from meterlog.model import Channel, Instrument, Job, Limits, Origin, Review
from meterlog.recording import UNDATED, Recording

_WIDTH = 92
_NAMED = 15
"""Letters for the name of what is told beside it."""

_TABLES = """\
All tables are text (RFC 4180): UTF-8, one header line, {form}, CRLF line ends.
An empty cell means that there is no value. Text that a spreadsheet could run as a formula (it
begins with = + - @, tab or line end, or so after apostrophes) has an apostrophe in front. Times end
in Z: UTC. elapsed_s and all columns that end in _s are seconds; the recording's beginning is 0.
Beside each table lies <its name>-metadata.json (CSV on the Web, W3C, 2015): what programs need to
read it, with type, unit and meaning of each column. That of the readings also holds instruments,
accuracies and limits: "meterlog import" of this folder makes a recording with the same findings.

judgement.txt  Everything below in plain words: the verdict of the whole recording, what it rests
               on, what speaks against it and what to measure next; what this set-up could not
               have seen; the findings; the tap test point by point; start-ups and fuse; the motor's
               figures; and every uncertainty line by line. Read this first.
review.json    The same for programs (JSON, RFC 8259); units stand in the names.
findings.csv   One line a statement.
  kind         what it is about
  verdict      pass, fail or can't tell, by the decision rule (below); can't tell also where
               what is known against the meters (WHAT TO KNOW, below) reaches what it rests on
  start_s, end_s, edge_s   from when to when; each edge is known to within +-edge_s, by how
               far apart the readings are there, and by the meter's own times (below)
  value, unit, expanded_uncertainty, coverage_factor
               what was found, +- for about 95 % with the coverage factor given; empty
               where it can't be stated
  limit        the limit that decided
  probability  that the true value is within its limits, 0 to 1, by the value and its uncertainty
               (JCGM 106:2012, 7); empty where no uncertainty is known
  speed        commanded fan speed at the start, 0 is off; empty where nobody recorded it
  statement    the finding in one sentence
steps.csv      One line a stretch at one commanded speed: n readings, motor voltage and motor
               current (mean, standard deviation sd, median, least, greatest); steady_ the same
               without the start-up and without stretches where the motor had no current;
               steady_expanded_a is the expanded uncertainty (about 95 %) of steady_mean_a,
               made with the factor steady_coverage. Not steady: inrush_window_s after a start or
               a change of speed (after a dropout at most ten times its length), the last reading
               before a dropout or a missing value (overload, no-data), and command_lag_s before a
               new command.
               found: yes where nobody recorded the speed and the change was found in the current,
               to within +-edge_s; proposed_speed is then its rank by order of current (0: off),
               a proposal and no command. Where there is a speed besides, somebody who reviewed
               the recording took the proposals for commands.
budgets.csv    What each uncertainty of a step is made of, one row a line: figure (current, voltage,
               power, ratio of voltage to current) with value, combined_u, effective_degrees,
               coverage_factor and expanded_uncertainty repeated in each row; then the line: source
               in words, standard_u in its unit, shape of its distribution, degrees of freedom (INF:
               taken as exactly known), sensitivity, contribution = sensitivity x standard_u in
               value_unit, basis. Rows with one same_error are one error: their contributions add
               up with their signs; all others add up as squares. lacking says what ought to be in
               and is not known: U is then a lower bound.
{uncertainty}
startups.csv   One line a start of the motor: peak (peak_is_floor yes: the readings are too slow or
               averaged, the true peak was higher), its ratio to the steady current, the time
               until within 10 % of it, and the integral of the squared current.
taps.csv       One line a mark of a tap: motor before and after, mean current before and after,
               returned_s from the tap until the current was back. attempt numbers the taps; those
               within a second of each other are one. answered yes: the current was gone and came
               back; stopped yes: it flowed and went.
spans.csv      What the motor was doing from when to when. Kinds: off, running, over and under
               (current beyond the step's limits), locked, dead (full voltage, next to no
               current), feed-lost, ground-lost, command-lost (the controller was not asked to
               run), no-current (the channels at hand can't say which side), no-data. settled_by
               names the channels that would have told.
circuit.txt    Where the circuit was checked at its test points: the verdict, the suspected units
               with their odds, the next test, cautions, every reading beside what a circuit in
               order gives, the voltage drops beside their limits, the meters, what was not
               measured, and where the odds come from. Odds are by Bayes' rule from the prior odds
               of the circuit profile; a reading may be that of a slipped probe (2 in 100), and no
               unit is put above 95 % before it is told.
circuit.png    The circuit drawn, in the state of the newest reading, with what was found and what
               was expected at its test points, and the suspected parts outlined; circuit-2.png and
               so on where there is more than one check.
circuit.json   The same for programs.
circuit-readings.csv, circuit-suspects.csv, circuit-drops.csv   The same as tables; "check" counts
               the checks of the recording, whose entries are numbered anew in each. A probability
               "without best" is the least that is left when any one reading is left out: no one
               reading carries a verdict.
events.csv     What the technician marked (speed, tap, wiggle: what was moved by hand, note) and
               what the program met (link, refused, device, unit, range, zero, timing, fault, end);
               circuit: an entry of a circuit check, as JSON; nothing is ever taken out, undo is an
               entry of its own.
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


def readme_text(recording: Recording, review: Review, form: TableForm = AS_USUAL) -> str:
    """Give the text of ``README.txt``.

    Parameters
    ----------
    recording : Recording
    review : Review
    form : TableForm
        Of the tables.

    Returns
    -------
    str
        Lines end in line feeds.
    """
    return "\n".join(
        [
            *_head(recording, review),
            *_origin(recording),
            "",
            "THE FILES",
            _TABLES.replace("{form}", _form(form)).replace("{uncertainty}", _uncertainty()) + TIMES,
            *(line for one in recording.about.instruments for line in _one(recording, one)),
            _READINGS,
            *_rule(review),
            *_shortcomings(recording, review),
            "LIMITS USED",
            *_limits(recording.about.limits),
            "",
        ]
    )


def _form(form: TableForm) -> str:
    exact = " and no exponents" if form.decimal_comma else ""
    delimiter = f"a {form.delimiter_name} between fields"
    return f"{delimiter}, a {form.decimal_name} as\ndecimal mark{exact}"


def _uncertainty() -> str:
    indent = " " * _NAMED
    said = f"{'uncertainty':<{_NAMED}}{UNCERTAINTY}"
    return "\n".join(textwrap.wrap(said, _WIDTH, subsequent_indent=indent))


def _head(recording: Recording, review: Review) -> Iterator[str]:
    about = recording.about
    yield "Fan circuit recording, exported as tables"
    yield ""
    yield f"Recording    {about.recording_id}"
    if about.origin is Origin.IMPORTED and about.started_utc == UNDATED:
        yield "Started      not known: the imported file has seconds only"
    else:
        yield f"Started      {about.started_utc.isoformat()}"
    yield f"State        {seal_state(recording)}"
    for text in seal_problems(recording):
        yield from textwrap.wrap(text, _WIDTH, initial_indent=" " * 13, subsequent_indent=" " * 13)
    for text in review.part_lines:
        yield from (f"{' ' * 13}{line}" for line in unbroken(text, _WIDTH - 13))
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
    del words["measured_under"], words["conditions"]
    for name, value in words.items():
        if value:
            yield f"{name.replace('_', ' ').capitalize():<13}{' '.join(value.split())}"
    stated = stated_conditions(job)
    if stated:
        said = f"{'Conditions':<13}{' '.join(stated.split())}"
        yield from textwrap.wrap(said, _WIDTH, subsequent_indent=" " * 13)


def _origin(recording: Recording) -> Iterator[str]:
    for words in origin_words(recording):
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


def _rule(review: Review) -> Iterator[str]:
    if review.decision_rule:
        yield "HOW VERDICTS ARE MADE"
        yield from textwrap.wrap(review.decision_rule, _WIDTH)
        yield ""


def _shortcomings(recording: Recording, review: Review) -> Iterator[str]:
    yield "WHAT TO KNOW"
    damage = (f"Damage: {text}" for text in recording.damage)
    for text in (*visibility_words(review), *review.notes, *damage):
        yield from textwrap.wrap(f"- {text}", _WIDTH, subsequent_indent="  ")
    yield ""
