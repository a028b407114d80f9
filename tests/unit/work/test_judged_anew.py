"""A withdrawn mark counts for nothing: in the judgement in progress, afterwards, in exports."""

import time
from datetime import UTC, datetime

import numpy as np
import pytest

from meterlog.model import (
    About,
    Block,
    Channel,
    Event,
    EventKind,
    Instrument,
    Limits,
    Origin,
    Quantity,
    Role,
    withdrawal,
)
from meterlog.recording import Recorder, Recording, parse_events_csv, seal
from meterlog.work.judge import Judge
from meterlog.work.judged_anew import new_reviewer
from meterlog.work.review import review_folder

S = 1_000_000_000
KEY = "logger"
SPEED, WRONG, TAP = (
    Event(2 * S, EventKind.SPEED, "1"),
    Event(4 * S, EventKind.SPEED, "4"),
    Event(6 * S, EventKind.TAP),
)


@pytest.fixture
def about():
    channels = (
        Channel("feed", Quantity.VOLTAGE, Role.MOTOR_FEED, interval_s=0.1),
        Channel("current", Quantity.CURRENT, Role.MOTOR_CURRENT, interval_s=0.1),
    )
    return About(
        "00000000-0000-4000-8000-000000000000",
        datetime(2030, 1, 2, 3, 4, 5, tzinfo=UTC),
        0,
        0,
        "meterlog test",
        Origin.SIMULATED,
        (Instrument(KEY, KEY, "invented", channels, simulated=True),),
        Limits(name="invented"),
    )


def block(start_s, end_s, amperes):
    count = round((end_s - start_s) * 10)
    t_ns = (start_s * S + np.arange(count) * S // 10).astype(np.int64)
    values = np.tile(np.array([12.3, amperes]), (count, 1))
    return Block(KEY, t_ns, values, np.zeros((count, 2), np.uint8))


ITEMS = (
    block(0, 2, 0.0), SPEED, block(2, 4, 4.0), WRONG, block(4, 6, 4.0), TAP, block(6, 7, 4.0),
)  # fmt: skip
LATER = (block(7, 9, 4.0), Event(9 * S, EventKind.SPEED, "0"), block(9, 12, 0.0))


def fed(about, items):
    reviewer = new_reviewer(about)
    for item in items:
        reviewer.feed(item)
    return reviewer.live()


def put(recorder, judge, items):
    for item in items:
        recorder.take(item)
        judge.take(item)


def wait_for_the_new_one(judge):
    end = time.monotonic() + 60.0
    while judge._anew is not None and not judge._anew.done:
        assert time.monotonic() < end
        time.sleep(0.01)


def plain(review):
    """Give what is judged, without what is said of marks taken back."""
    notes = tuple(one for one in review.notes if "withdrawn" not in one)
    return review.spans, review.steps, review.findings, notes


def test_the_judgement_in_progress_is_made_anew_without_it(about, tmp_path):
    folder = tmp_path / "run"
    recorder = Recorder.create(folder, about, keep_raw=False)
    judge = Judge(about, folder)
    put(recorder, judge, ITEMS)
    assert 4 in {step.speed for step in judge.review().steps}
    entries = withdrawal(WRONG, 7 * S), withdrawal(TAP, 7 * S + 1)
    put(recorder, judge, entries)
    recorder.flush()  # the bus's tick does, within 0.1 s
    put(recorder, judge, LATER[:1])
    wait_for_the_new_one(judge)
    put(recorder, judge, LATER[1:])
    judge._taken_s = float("-inf")
    wanted = fed(about, [one for one in (*ITEMS, *entries, *LATER) if one not in (WRONG, TAP)])
    assert judge.review() == wanted
    assert {step.speed for step in wanted.steps} == {None, 1, 0}
    assert sum("withdrawn" in note for note in wanted.notes) == 2
    recorder.close()


def test_readings_that_do_not_reach_the_disk_are_told_and_the_run_goes_on(
    about, tmp_path, monkeypatch
):
    monkeypatch.setattr("meterlog.work.judged_anew._PATIENCE_S", 0.05)
    folder = tmp_path / "run"
    recorder = Recorder.create(folder, about, keep_raw=False)
    judge = Judge(about, folder)
    for item in (*ITEMS, withdrawal(WRONG, 7 * S)):  # to the judge alone
        judge.take(item)
    wait_for_the_new_one(judge)
    judge.take(LATER[0])
    assert "still counts in what is told while recording" in judge.review().notes[0]
    recorder.close()


def test_a_second_one_while_the_first_is_under_way_and_a_stop(about, tmp_path):
    folder = tmp_path / "run"
    recorder = Recorder.create(folder, about, keep_raw=False)
    judge = Judge(about, folder)
    entries = [withdrawal(WRONG, 7 * S), withdrawal(TAP, 7 * S)]
    for item in (*ITEMS, entries[0]):  # nothing is on the disk yet: the first one waits for it
        judge.take(item)
    first = judge._anew
    judge.take(entries[1])
    assert judge._anew is not first
    for item in (*ITEMS, *entries):
        recorder.take(item)
    recorder.flush()
    time.sleep(0.1)
    assert not first.done
    judge.stop()
    assert judge._anew is None
    recorder.close()


@pytest.fixture
def folder(about, tmp_path):
    folder = tmp_path / "run"
    recorder = Recorder.create(folder, about, keep_raw=False)
    for item in (*ITEMS, withdrawal(WRONG, 7 * S), *LATER):
        recorder.take(item)
    recorder.close()
    seal(folder)
    return folder


def test_afterwards_it_is_listed_and_judged_as_if_it_had_not_been_made(about, folder, tmp_path):
    recording, review = review_folder(folder)
    assert WRONG in recording.events
    assert WRONG not in recording.standing
    assert any("'speed' at 4.000 s was withdrawn by hand at 7.000 s" in n for n in review.notes)
    other = tmp_path / "never"
    recorder = Recorder.create(other, about, keep_raw=False)
    for item in (*ITEMS, *LATER):
        if item is not WRONG:
            recorder.take(item)
    recorder.close()
    assert plain(review_folder(other)[1]) == plain(review)


def test_exports_leave_it_out_of_the_judgement_and_list_it_with_what_withdrew_it(folder, tmp_path):
    from meterlog.evidence import export_recording
    from meterlog.recording import ExportRequest, import_export

    recording, review = review_folder(folder)
    out = tmp_path / "out"
    export_recording(recording, review, out, lambda _: None)
    events = next(out.glob("*events.csv"))
    lines = [line for line in events.read_text().splitlines() if "speed" in line]
    assert any(",withdrawn,speed@4," in line for line in lines)
    readings = next(p for p in out.glob("*.csv") if KEY in p.name)
    assert ",4,running" not in readings.read_text()
    assert WRONG not in parse_events_csv(events)
    assert [one.value for one in parse_events_csv(events) if one.kind is EventKind.SPEED] == [
        "1",
        "0",
    ]
    back = tmp_path / "back"
    import_export(ExportRequest(readings, back, events))
    assert plain(review_folder(back)[1])[:2] == plain(review)[:2]
    assert Recording.open(back).standing[:2] == recording.standing[:2]
