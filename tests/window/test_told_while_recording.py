"""What speaks against a meter is told where one looks, in the window's own remedies."""

import pytest

from meterlog.acquire import ReaderState
from meterlog.model import Doubt, DoubtKind, Event, EventKind, Review
from meterlog.window.doubts_told import DoubtsTold
from meterlog.window.findings_view import FindingsView, event_words
from meterlog.window.remedies_here import remedy_here, remedy_while_recording
from meterlog.window.session import Phase
from meterlog.window.status_strip import alarm_words, meter_words
from meterlog.window.wrong_unit import WORDS, wrong_unit
from meterlog.work import RunStatus

SECOND = 1_000_000_000
LOW = Doubt(DoubtKind.BATTERY, "Its battery is low.", SECOND, SECOND, "hand")
TURNED = Doubt(DoubtKind.UNIT, "Its dial was turned.", 3 * SECOND, 4 * SECOND, "hand")
NO_ZERO = Doubt(DoubtKind.ZERO_MISSING, "No zero (z, or --take-zero motor-current).")


def test_a_doubt_is_told_once_for_some_seconds_the_newest_first():
    told = DoubtsTold()
    assert told.words([LOW], 100.0) == "⚠ Its battery is low."
    assert told.words([LOW, TURNED], 105.0) == "⚠ Its dial was turned."
    assert told.words([LOW, TURNED], 116.9) == "⚠ Its dial was turned."
    assert told.words([LOW, TURNED], 117.1) == ""
    told.forget()
    assert told.words([LOW], 200.0) == "⚠ Its battery is low."


def test_what_is_so_from_the_start_is_no_news():
    assert DoubtsTold().words([NO_ZERO], 1.0) == ""


def test_a_turned_dial_is_said_until_it_is_turned_back():
    events = (
        Event(1, EventKind.UNIT, "the meter shows A DC, expected V: was its dial turned?", "h"),
    )
    assert wrong_unit(events, "h") == WORDS
    assert wrong_unit(events, "another") == ""
    assert wrong_unit((*events, Event(2, EventKind.UNIT, "shows V DC again", "h")), "h") == ""
    assert wrong_unit((*events, Event(2, EventKind.LINK, "lost: gone.", "h")), "h") == ""
    assert wrong_unit((*events, Event(2, EventKind.LINK, "lost: gone.", "x")), "h") == WORDS


def test_a_turned_dial_stands_at_the_digits_that_are_empty(window, show, block_of):
    shown = show(window, live=True)
    shown.traces.take(block_of(8, 9, (float("nan"), 8.0, 3.81)))
    event = Event(8 * SECOND, EventKind.UNIT, "the meter shows A DC, expected V", "line-logger")
    shown.events = (*shown.events, event)
    window.desk.run_page.show_session(window.desk.session)
    assert window.desk.run_page.volts.note == f"no data {WORDS}"
    assert WORDS not in window.desk.run_page.amperes.note


@pytest.mark.parametrize(
    ("words", "here"),
    [
        ("No zero (z, or --take-zero motor-current).", "No zero (press Z)."),
        ("no channel. Start again with --assign motor-current=PROFILE.CHANNEL.", "Meters page"),
        ("x: gone. See `meterlog ports` for those that are there.", "The Meters page lists"),
        ("State it (--sensor-accuracy motor-current=PERCENT+AMPERES).", "It on the Meters page."),
        ("turns. Leave out --turns.", "Set the turns to 1."),
    ],
)
def test_no_remedy_names_a_command_or_an_option(words, here):
    assert here.lower() in remedy_here(words).lower()
    assert "--" not in remedy_here(words)
    assert "`" not in remedy_here(words)


def test_a_port_that_went_away_says_that_the_recording_goes_on():
    lost = (
        "lost: /dev/ttyUSB0: there is no such port. See `meterlog ports` for those that are there."
    )
    assert "recording goes on" in remedy_while_recording(lost)
    status = RunStatus(meters=(ReaderState("hand", message=lost),))
    assert "Plug it in again" in alarm_words(Phase.RECORDING, status)
    assert meter_words(status) == "hand: NOT CONNECTED (lost: /dev/ttyUSB0: there is no such port)"


def _texts(view):
    return [view.list.item(row).text() for row in range(view.list.count())]


def test_notes_and_losses_can_be_read_among_the_findings(qtbot):
    view = FindingsView()
    qtbot.addWidget(view)
    events = (
        Event(SECOND, EventKind.SPEED, "2"),
        Event(61 * SECOND, EventKind.NOTE, "smells hot (invented)"),
        Event(62 * SECOND, EventKind.LINK, "lost: the port went away.", "hand"),
        Event(63 * SECOND, EventKind.LINK, "open again", "hand"),
        Event(64 * SECOND, EventKind.LINK, "back after 2.0 s", "hand"),
    )
    view.show_review(Review(), events)
    assert _texts(view)[1:] == [
        "✎ NOTE  at 1:01\nsmells hot (invented)",
        "⚠ METER  at 1:02\nhand: lost: the port went away.",
        "⚠ METER  at 1:04\nhand: back after 2.0 s",
    ]
    picked = []
    view.picked.connect(picked.append)
    view.list.itemActivated.emit(view.list.item(1))
    assert picked == [events[1]]


def test_a_note_of_the_recording_leads_to_its_time(window, show):
    shown = show(window)
    page = window.desk.run_page
    page.findings.picked.emit(Event(4 * SECOND, EventKind.NOTE, "here"))
    start_ns, end_ns = page.outlook.stretch(shown.end_ns)
    assert start_ns < 4 * SECOND < end_ns
    assert end_ns - start_ns <= 3 * SECOND


def test_other_events_are_not_listed():
    assert event_words(Event(1, EventKind.TAP)) == ""
    assert event_words(Event(1, EventKind.NOTE, "")) == ""


def test_many_remarks_push_no_finding_out_of_sight(window, show, qtbot):
    from dataclasses import replace

    shown = show(window)
    window.resize(1024, 600)
    shown.review = replace(shown.review, notes=tuple(f"Remark {n}. " * 12 for n in range(8)))
    view = window.desk.run_page.findings
    window.desk.run_page.show_judgement(window.desk.session)
    qtbot.waitUntil(lambda: window.height() == 600)
    assert view.list.visualItemRect(view.list.item(0)).intersects(view.list.viewport().rect())
    assert view.list.viewport().height() >= 100
    assert "Remark 7" in _texts(view)[-1]


def test_what_failed_stands_first_and_a_chosen_line_stays_chosen(window, show):
    from dataclasses import replace

    from meterlog.model import Verdict

    shown = show(window)
    fail = shown.review.findings[0]
    unclear = replace(fail, verdict=Verdict.CANT_TELL, start_ns=0, end_ns=SECOND)
    shown.review = replace(shown.review, findings=(unclear, fail))
    view = window.desk.run_page.findings
    window.desk.run_page.show_judgement(window.desk.session)
    assert "FAIL" in _texts(view)[0]
    view.list.setCurrentRow(1)
    shown.review = replace(shown.review, notes=("something new",))
    window.desk.run_page.show_judgement(window.desk.session)
    assert view.list.currentRow() == 1


def test_an_alarm_is_heard_once_when_it_comes_up(window, monkeypatch):
    heard = []
    monkeypatch.setattr("meterlog.window.main_window.QApplication.beep", lambda: heard.append(1))
    for words in ("", "NO READINGS FROM hand", "NO READINGS FROM hand: still", ""):
        window.sound_alarm(words)
    assert heard == [1]
    window.sound_alarm("NO READINGS FROM hand")
    assert heard == [1, 1]
