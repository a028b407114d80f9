"""Undo and redo are edits on top; which one can be undone follows from the list alone."""

from datetime import UTC, datetime
from uuid import UUID

import numpy as np
import pytest

from meterlog.model import (
    About,
    Block,
    Channel,
    Event,
    EventKind,
    Instrument,
    Origin,
    Quantity,
    Role,
)
from meterlog.model.amendment import Amendment, AmendmentKind
from meterlog.model.errors import EvidenceError, UsageError
from meterlog.recording import Recorder, Recording, seal
from meterlog.work.amendments import amendments_of, amendments_path
from meterlog.work.edits_on_top import EditsOnTop, turns

S = 1_000_000_000


def step(old, new, why="reason"):
    return Amendment(AmendmentKind.STEP, "", 0, old, new, "N. N.", why, "2030-01-02T03:04:05Z")


@pytest.fixture
def small(tmp_path):
    """A sealed recording of ten seconds: speed 1 from its beginning, a tap at 7 s."""
    channel = Channel("current", Quantity.CURRENT, Role.MOTOR_CURRENT, interval_s=0.1)
    meter = Instrument("logger", "logger", "invented", (channel,), simulated=True)
    started = datetime(2030, 1, 2, 3, 4, 5, tzinfo=UTC)
    about = About(str(UUID(int=0)), started, 0, 0, "meterlog test", Origin.SIMULATED, (meter,))
    recorder = Recorder.create(tmp_path / "small", about, keep_raw=False)
    for event in (Event(0, EventKind.SPEED, "1"), Event(7 * S, EventKind.TAP)):
        recorder.take(event)
    t_ns = np.arange(100, dtype=np.int64) * (S // 10)
    recorder.take(Block("logger", t_ns, np.full((100, 1), 4.0), np.zeros((100, 1), np.uint8)))
    recorder.close()
    seal(tmp_path / "small")
    return tmp_path / "small"


@pytest.fixture
def top_of(small):
    return lambda: EditsOnTop(Recording.open(small))


def write(top_of, make):
    top = top_of()
    return top.write(make(top))


def test_undo_and_redo_go_back_and_on_through_all_of_them(small, top_of):
    def relabel(speed):
        return lambda top: top.amended.marks.relabelled(0, speed, "N. N.", "wrong key")

    first = write(top_of, relabel("02"))
    second = write(top_of, relabel("3"))
    for wanted in ("2", "1"):
        write(top_of, lambda top: top.undoing("M. M."))
        assert top_of().amended.marks.standing[0].value == wanted
    with pytest.raises(UsageError, match="no edit to undo"):
        top_of().undoing("M. M.")
    for wanted in ("2", "3"):
        write(top_of, lambda top: top.redoing("M. M."))
        assert top_of().amended.marks.standing[0].value == wanted
    with pytest.raises(UsageError, match="no edit to redo"):
        top_of().redoing("M. M.")
    write(top_of, lambda top: top.undoing("M. M."))
    edits, damage = amendments_of(small)
    assert not damage
    assert edits[:2] == (first, second)
    assert len(edits) == 7
    assert all("(wrong key)" in one.why for one in edits[2:])
    assert {one.who for one in edits[2:]} == {"M. M."}


def test_another_edit_ends_what_could_be_done_again(top_of):
    write(top_of, lambda top: top.amended.marks.relabelled(0, "2", "N. N.", "x"))
    write(top_of, lambda top: top.undoing("N. N."))
    write(top_of, lambda top: top.amended.limited("min_dwell_s", "0.2", "N. N.", "x"))
    done, undone = turns(top_of().edits)
    assert [one.kind for one in done] == [AmendmentKind.LIMIT]
    assert undone == ()


def test_a_reason_that_only_reads_like_an_undo_is_an_edit_of_its_own():
    edits = step("1", "2"), step("5", "7", "undo of the edit of somebody")
    assert turns(edits) == (edits, ())


def test_a_mark_is_withdrawn_put_back_and_can_be_neither_twice(top_of):
    (tap,) = [one for one in top_of().amended.marks.standing if one.kind is EventKind.TAP]

    def back(top):
        return top.amended.marks.taken_back(EventKind.TAP, tap.t_ns, "N. N.", "x")

    write(top_of, back)
    top = top_of()
    assert tap not in top.amended.marks.events
    assert top.amended.marks.withdrawn == (tap,)
    with pytest.raises(UsageError, match="no tap is marked there"):
        back(top)
    with pytest.raises(UsageError, match="no tap is marked there"):
        top.amended.marks.moved(EventKind.TAP, tap.t_ns, S, "N. N.", "x")
    write(top_of, lambda top: top.amended.marks.put_back(EventKind.TAP, tap.t_ns, "N. N.", "x"))
    top = top_of()
    assert tap in top.amended.marks.events
    with pytest.raises(UsageError, match=r"no tap is withdrawn there.*No tap is withdrawn in"):
        top.amended.marks.put_back(EventKind.TAP, tap.t_ns, "N. N.", "x")


def test_checking_changes_nothing_and_damage_takes_no_edit(small, top_of):
    top = top_of()
    before = top.amended.marks.events
    edit = top.amended.marks.relabelled(0, "2", "N. N.", "x")
    top.check(edit)
    assert top.amended.marks.events == before
    with pytest.raises(UsageError, match="a reason"):
        top.check(top.amended.marks.relabelled(0, "2", "N. N.", " "))
    amendments_path(small).write_text("nothing of ours\n")
    with pytest.raises(EvidenceError, match="can't be added to"):
        top_of().write(edit)
    assert amendments_path(small).read_text() == "nothing of ours\n"
