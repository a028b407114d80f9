"""Edits lie on top of a recording: the recording stays as it is, and no edit can vanish unseen."""

import os
import subprocess
import sys
from datetime import UTC, datetime

import numpy as np
import pytest

from meterlog.evidence import verify_folder
from meterlog.model import About, Block, Channel, Instrument, Origin, Quantity
from meterlog.model.amendment import Amendment, AmendmentKind, amendment_words
from meterlog.model.errors import EvidenceError, UsageError
from meterlog.recording import Recorder, seal
from meterlog.work.amendments import add_amendment, amendments_of, amendments_path
from meterlog.work.checked_edits import check_all

STEP = Amendment(AmendmentKind.STEP, "", 12_300_000_000, "2", "3", "N. N.", "knob was at 3")
MARK = Amendment(AmendmentKind.MARKER, "tap", 5_000_000_000, "5", "4.8", "N. N.", "hand was late.")
LIMIT = Amendment(AmendmentKind.LIMIT, "speed.1.max_a", None, "12", "10", "Ö. Ö.", "data\nsheet")


@pytest.fixture
def run(tmp_path):
    one = Instrument("meter", "p", "x", (Channel("u", Quantity.VOLTAGE),))
    about = About("id", datetime(2026, 5, 4, tzinfo=UTC), 0, 0, "t", Origin.MEASURED, (one,))
    recorder = Recorder.create(tmp_path / "run", about)
    recorder.take(Block("meter", np.arange(9), np.ones((9, 1)), np.zeros((9, 1), np.uint8)))
    recorder.close()
    seal(tmp_path / "run")
    return tmp_path / "run"


def test_edits_read_back_in_order_and_the_recording_stays_sealed(run):
    assert amendments_of(run) == ((), ())
    made = [add_amendment(run, one) for one in (STEP, MARK, LIMIT)]
    assert amendments_of(run) == (tuple(made), ())
    assert made[0].made_utc.endswith("Z")
    assert verify_folder(run).intact
    assert amendments_path(run) == run.parent / "run.amendments.jsonl"
    assert sorted(path.name for path in run.parent.iterdir() if path.is_file()) == [
        "run.amendments.count",
        "run.amendments.jsonl",
    ]


def test_each_edit_is_said_in_words():
    at = "2026-05-04T10:00:00Z"
    said = [
        amendment_words(Amendment(one.kind, one.subject, one.t_ns, one.old, one.new, one.who,
                                  one.why, at))
        for one in (STEP, MARK, LIMIT)
    ]  # fmt: skip
    assert said == [
        f"{at}, N. N.: the step at 12.300 s was relabelled from 2 to 3. Reason: knob was at 3.",
        f"{at}, N. N.: the mark 'tap' was moved from 5 s to 4.8 s. Reason: hand was late.",
        f"{at}, Ö. Ö.: the limit 'speed.1.max_a' was changed from 12 to 10. Reason: data sheet.",
    ]


@pytest.mark.parametrize("gone", [0, 1])
def test_an_edit_taken_out_is_told_and_those_behind_it_do_not_stand(run, gone):
    made = [add_amendment(run, one) for one in (STEP, MARK, LIMIT)]
    path = amendments_path(run)
    lines = path.read_bytes().splitlines(keepends=True)
    del lines[gone]
    path.write_bytes(b"".join(lines))
    found, (damage, behind) = amendments_of(run)
    assert found == tuple(made[:gone])
    assert f"run.amendments.jsonl: line {gone + 1} does not follow from" in damage
    numbers = "line 2" if gone else "lines 1 to 2"
    assert f"run.amendments.jsonl: {numbers} can't be trusted" in behind


def test_a_changed_edit_is_told_and_left_out(run):
    add_amendment(run, STEP)
    path = amendments_path(run)
    path.write_bytes(path.read_bytes().replace(b"N. N.", b"M. M."))
    assert amendments_of(run) == ((), ("run.amendments.jsonl: line 1 is damaged and left out.",))


@pytest.mark.parametrize("kept", [1, 60, 130, -90, -2])
def test_behind_a_torn_line_the_next_is_whole_and_does_not_stand(run, kept):
    first = add_amendment(run, STEP)
    path = amendments_path(run)
    whole = path.read_bytes()
    add_amendment(run, MARK)
    second = path.read_bytes()[len(whole) :]
    path.write_bytes(whole + second[:kept])
    add_amendment(run, LIMIT)
    found, damage = amendments_of(run)
    assert found == (first,)
    assert damage == (
        "run.amendments.jsonl: line 2 is damaged and left out.",
        "run.amendments.jsonl: line 3 can't be trusted to be all that was written, and is not"
        " applied.",
    )


def test_any_flipped_bit_leaves_only_the_edits_before_it(run):
    made = tuple(add_amendment(run, one) for one in (STEP, MARK, LIMIT))
    path = amendments_path(run)
    whole = path.read_bytes()
    for place in range(0, len(whole) - 1, 7):
        path.write_bytes(whole[:place] + bytes([whole[place] ^ 4]) + whole[place + 1 :])
        found, damage = amendments_of(run)
        assert found == made[: whole.count(b"\n", 0, place)]
        assert damage


def test_edits_of_another_recording_do_not_belong_here(run, tmp_path):
    add_amendment(run, STEP)
    about = run / "data/about.json"
    about.write_bytes(about.read_bytes().replace(b'"id"', b'"ie"'))
    found, (damage, _) = amendments_of(run)
    assert found == ()
    assert "line 1 does not follow from data/about.json" in damage


@pytest.mark.parametrize(
    ("change", "words"),
    [({"who": " "}, "who made the edit"), ({"why": ""}, "a reason"), ({"new": "2"}, "the same")],
)
def test_an_edit_without_who_why_or_change_is_refused(run, change, words):
    values = {"old": "2", "new": "3", "who": "N. N.", "why": "x", **change}
    with pytest.raises(UsageError, match=words):
        add_amendment(run, Amendment(AmendmentKind.STEP, "", 0, **values))
    assert not amendments_path(run).exists()


def test_a_place_that_can_not_be_written_is_told(run, tmp_path):
    amendments_path(run).mkdir()
    with pytest.raises(EvidenceError, match="can't be read or written"):
        add_amendment(run, STEP)
    with pytest.raises(EvidenceError, match="can't be read or written"):
        add_amendment(tmp_path / "none", STEP)


@pytest.mark.parametrize("left", [0, 1, 2])
def test_whole_edits_cut_off_at_the_end_are_told(run, left):
    made = [add_amendment(run, one) for one in (STEP, MARK, LIMIT)]
    path = amendments_path(run)
    lines = path.read_bytes().splitlines(keepends=True)
    path.write_bytes(b"".join(lines[:left]))
    found, (damage,) = amendments_of(run)
    assert found == tuple(made[:left])
    assert "bytes were written" in damage
    assert damage.endswith("edits at its end are missing.")
    # More edits do not hide it.
    for _ in range(3):
        add_amendment(run, LIMIT)
    (damage,) = amendments_of(run)[1]
    assert damage.endswith("edits at its end are missing.")


def test_a_count_of_another_recording_or_none_says_nothing(run):
    made = add_amendment(run, STEP)
    amendments_path(run).with_suffix(".count").write_text(f"999999 {'0' * 64}\n")
    assert amendments_of(run) == ((made,), ())
    amendments_path(run).with_suffix(".count").unlink()
    assert amendments_of(run) == ((made,), ())


def test_programs_that_amend_at_once_lose_nothing(run):
    script = (
        "import sys\nfrom pathlib import Path\n"
        "from meterlog.model.amendment import Amendment, AmendmentKind\n"
        "from meterlog.work.amendments import add_amendment\n"
        "for k in range(20):\n"
        "    add_amendment(Path(sys.argv[1]), Amendment(AmendmentKind.STEP, '', 0, '2', '3',"
        " sys.argv[2], str(k)))\n"
    )
    two = [subprocess.Popen([sys.executable, "-c", script, run, name]) for name in ("A", "B")]
    assert [one.wait(60) for one in two] == [0, 0]
    found, damage = amendments_of(run)
    assert damage == ()
    for name in ("A", "B"):
        assert [one.why for one in found if one.who == name] == [str(k) for k in range(20)]


@pytest.mark.skipif(sys.platform == "win32", reason="RLIMIT_FSIZE is POSIX")
@pytest.mark.parametrize("is_first", [True, False])
@pytest.mark.parametrize("room", [0, 1, 30, 120])
def test_a_full_disk_leaves_no_half_line_that_would_bar_what_comes_after(run, room, is_first):
    import resource

    path = amendments_path(run)
    first = () if is_first else (add_amendment(run, STEP),)
    before = path.read_bytes() if first else b""
    most = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (len(before) + room, most[1]))
    try:
        with pytest.raises(EvidenceError, match="can't be read or written"):
            add_amendment(run, MARK)
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, most)
    assert (path.read_bytes() if path.exists() else b"") == before
    assert amendments_of(run) == (first, ())
    later = add_amendment(run, MARK)
    assert amendments_of(run) == ((*first, later), ())


def test_a_count_that_is_no_file_is_an_error_and_no_silence(run):
    add_amendment(run, STEP)
    count = amendments_path(run).with_suffix(".count")
    count.unlink()
    count.symlink_to(os.devnull)
    with pytest.raises(EvidenceError, match="a pipe or a device, not a file") as refused:
        amendments_of(run)
    assert refused.value.subject == str(count)
    assert not check_all(run).intact


def test_an_edit_that_could_not_be_counted_is_not_there(run, monkeypatch):
    first = add_amendment(run, STEP)

    def full(*_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("meterlog.work.amendments.count_more", full)
    with pytest.raises(EvidenceError, match="No space left"):
        add_amendment(run, MARK)
    monkeypatch.undo()
    assert amendments_of(run) == ((first,), ())
    assert len((add_amendment(run, MARK), *amendments_of(run)[0])) == 3
