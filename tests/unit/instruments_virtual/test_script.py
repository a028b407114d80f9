import csv
import io

import pytest

from meterlog.instruments.virtual.play import Play
from meterlog.instruments.virtual.scenarios import find_scenario
from meterlog.instruments.virtual.script import note, order, script_csv, speed, tap
from meterlog.model import EventKind
from meterlog.model.errors import UsageError


def test_an_events_file_reads_back_as_it_was_written():
    text = script_csv([speed(0.0, 0), tap(3.5), note(4.0, 'plug "B", wet')])
    rows = list(csv.reader(io.StringIO(text)))
    assert rows[0] == ["elapsed_s", "kind", "value"]
    assert [(float(at), kind, value) for at, kind, value in rows[1:]] == [
        (0.0, "speed", "0"),
        (3.5, "tap", ""),
        (4.0, "note", 'plug "B", wet'),
    ]


@pytest.mark.parametrize(
    ("line", "kind", "value"),
    [
        ("speed 3", EventKind.SPEED, "3"),
        ("  SPEED 0 \r", EventKind.SPEED, "0"),
        ("tap", EventKind.TAP, ""),
        ("note wet plug", EventKind.NOTE, "wet plug"),
    ],
)
def test_typed_orders_are_understood(line, kind, value):
    done = order(line, 7.5, 4)
    assert (done.elapsed_s, done.kind, done.value) == (7.5, kind, value)


def test_quit_is_an_order_of_its_own():
    assert order("quit", 0.0, 4) is None


@pytest.mark.parametrize("line", ["speed 5", "speed -1", "speed x", "speed", "tap hard", "sped 1"])
def test_what_is_no_order_is_refused_with_the_orders_there_are(line):
    with pytest.raises(UsageError, match="speed 0 to speed 4, tap, note WORDS, quit"):
        order(line, 0.0, 4)


def test_what_is_planned_besides_the_script_happens_at_its_time():
    play = Play(find_scenario("healthy-new"), 1, scripted=False, more=[tap(0.5), speed(0.3, 2)])
    assert [h.elapsed_s for h in play.planned()] == [0.0, 0.3, 0.5]
    play.advance(play.steps_at(1.0))
    assert [(h.elapsed_s, h.value) for h in play.happened] == [(0.0, "0"), (0.3, "2"), (0.5, "")]
    assert play.spans()[-1].start_s == pytest.approx(0.3, abs=0.01)
