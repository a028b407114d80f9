"""A stretch without data is told with its cause."""

import numpy as np
import pytest

from meterlog.analysis import Reviewer
from meterlog.analysis.absence import Absence
from meterlog.model import (
    Block,
    Channel,
    Event,
    EventKind,
    FindingKind,
    Flag,
    Instrument,
    Limits,
    Quantity,
    Role,
)

S = 1_000_000_000
CLAMP = Instrument(
    "clamp",
    "clamp",
    "",
    (
        Channel("other", Quantity.VOLTAGE),
        Channel("amps", Quantity.CURRENT, Role.MOTOR_CURRENT, interval_s=0.1),
    ),
)
FEED = Instrument("volts", "volts", "", (Channel("feed", Quantity.VOLTAGE, Role.MOTOR_FEED),))


def said(t_s: float, value: str, kind: EventKind = EventKind.LINK, source: str = "clamp") -> Event:
    return Event(round(t_s * S), kind, value, source)


def cause(*events: Event, start_s: float = 10.0, end_s: float = 20.0) -> str:
    absence = Absence((FEED, CLAMP))
    for event in events:
        absence.take(event)
    return absence.cause(round(start_s * S), round(end_s * S))


def test_silence_is_told_with_what_the_meter_is_known_to_do():
    assert cause(said(10.3, "silent since 10.000 s: no reading for 0.3 s")) == (
        "clamp: it sent nothing"
    )
    off = "silent since 10.000 s: no reading for 0.3 s (switched itself off? it does after 15 min)"
    assert cause(said(10.3, off)) == (
        "clamp: it sent nothing (switched itself off? it does after 15 min)"
    )


def test_a_port_that_was_gone_is_told_also_where_another_device_was_in_its_place():
    lost = said(9.95, "lost: the port went away (Input/output error).")
    assert cause(lost) == "clamp: its port was gone (plug, cable or adapter)"
    other = said(12.0, "not open: is not plugged in; another device is there now: X.")
    assert "another device is there now: X" in cause(lost, other)
    again = said(15.0, "open again: it is /dev/ttyUSB1 now")
    quiet = said(15.1, "silent since 10.000 s: no reading for 5.1 s")
    assert cause(lost, again, quiet) == (
        "clamp: its port was gone (plug, cable or adapter); it sent nothing"
    )
    assert cause(lost, again, quiet, start_s=16.0) == "clamp: it sent nothing"


def test_what_was_over_before_or_came_later_or_was_another_meters_is_no_cause():
    before = (said(2.0, "silent since 1.0 s"), said(3.0, "back after 2.000 s"))
    assert cause(*before, said(21.0, "lost: gone."), said(11.0, "lost: x", source="volts")) == ""
    assert cause(said(2.0, "silent since 1.0 s")) == "clamp: it sent nothing"
    assert cause(said(11.0, "12 byte(s) lost: they came faster than they were fetched")) == ""


def test_another_unit_and_a_held_display_are_told_while_they_last():
    turned = said(10.0, "the meter shows ohm, expected A: was its dial turned?", EventKind.UNIT)
    again = said(15.0, "shows A DC again", EventKind.UNIT)
    words = "clamp: the meter shows ohm, expected A: was its dial turned?"
    assert cause(turned, again) == words
    assert cause(again, turned) == words  # stamps count, not the order they come in
    assert cause(turned, again, start_s=16.0) == ""
    held = said(10.0, "HOLD is on: what it shows is no measurement", EventKind.DEVICE)
    assert "HOLD is on" in cause(held)
    assert cause(held, said(11.0, "HOLD is off", EventKind.DEVICE), start_s=12.5) == ""


def test_bytes_that_are_not_understood_are_told_as_such():
    words = "bytes come, none is understood: the line speed is probably not 9600 8N1; set baud"
    assert cause(said(11.0, words)) == (
        "clamp: what it sent was not understood (bytes come, none is understood: the line speed is"
        " probably not 9600 8N1)"
    )


def test_the_blanking_of_a_range_change_is_told_instead_of_silence():
    change = said(9.5, "range 60 V, steps of 0.01 V", EventKind.RANGE)
    silent = said(10.3, "silent since 9.9 s")
    assert cause(change, silent, end_s=10.6) == (
        "clamp: it changed its measuring range (range 60 V, steps of 0.01 V)"
    )
    assert cause(said(8.0, change.value, EventKind.RANGE), silent) == "clamp: it sent nothing"


def test_an_instruments_own_report_is_told_when_nothing_else_is_known():
    report = said(10.5, "no answer to READ? within 2 s", EventKind.DEVICE)
    assert cause(report) == "clamp: it reported 'no answer to READ? within 2 s'"
    assert cause(report, said(10.6, "silent since 10.0 s")) == "clamp: it sent nothing"


def block(start_s: float, flags: list[int]) -> Block:
    t = np.round((start_s + 0.1 * np.arange(len(flags))) * S).astype(np.int64)
    both = np.zeros((len(flags), 2), np.uint8)
    both[:, 1] = flags
    values = np.full((len(flags), 2), 5.0)
    values[both != 0] = np.nan
    return Block("clamp", t, values, both)


@pytest.mark.parametrize("cut", range(1, 13))
def test_overload_is_told_where_it_was_however_the_blocks_are_cut(cut):
    over = int(Flag.OVERLOAD)
    flags = [0, 0, over, over, over, 0, 0, over, 0, 0, int(Flag.NO_DATA), 0, 0]
    absence = Absence((CLAMP,))
    absence.take(block(10.0, flags[:cut]))
    absence.take(block(10.0 + 0.1 * cut, flags[cut:]))
    assert absence._overloads == [
        (round(10.2 * S), round(10.4 * S)),
        (round(10.7 * S), round(10.7 * S)),
    ]
    words = "clamp: overload: the current was beyond its range"
    assert absence.cause(round(10.15 * S), round(10.45 * S)) == words
    assert absence.cause(round(10.65 * S), round(10.75 * S)) == words
    assert absence.cause(round(10.95 * S), round(11.05 * S)) == ""
    assert absence.cause(0, round(10.1 * S)) == ""


def test_the_finding_and_the_span_name_the_cause():
    reviewer = Reviewer((CLAMP,), Limits())
    reviewer.feed(Event(0, EventKind.SPEED, "1"))
    nothing = int(Flag.NO_DATA)
    reviewer.feed(block(0.0, [0] * 40))
    reviewer.feed(said(4.2, "lost: the port went away."))
    reviewer.feed(block(4.2, [nothing] * 20))
    reviewer.feed(said(6.2, "open again"))
    reviewer.feed(said(6.3, "back after 2.300 s"))
    reviewer.feed(block(6.3, [0] * 40))
    review = reviewer.finish()
    (finding,) = [f for f in review.findings if f.kind is FindingKind.NO_DATA]
    assert "clamp: its port was gone (plug, cable or adapter)" in finding.statement
    assert "not known" in finding.statement
    (span,) = [s for s in review.spans if s.kind.value == "no-data"]
    assert "its port was gone" in span.detail


def test_without_a_current_nothing_is_said():
    absence = Absence((FEED,))
    absence.take(said(11.0, "lost: gone.", source="volts"))
    assert absence.cause(0, 20 * S) == ""
