"""What belongs to a job is kept on the disk, and nothing that another program added is lost."""

import json
from dataclasses import replace
from pathlib import Path

import pytest

from meterlog.model.errors import DiskFailed, UsageError
from meterlog.work.job_folder import (
    WORK,
    JobWork,
    Side,
    change_work,
    fresh_pack,
    keep_work,
    load_work,
)


def made(tmp_path):
    job = tmp_path / "shelf" / "jobs" / "j1"
    work = JobWork().taking(tmp_path / "shelf" / "r1", Side.OLD)
    return job, work.taking(tmp_path / "shelf" / "c1", Side.OLD, circuit=True)


def test_a_list_is_read_back_as_it_was_kept(tmp_path):
    job, work = made(tmp_path)
    work = replace(work, fitted=Side.NEW).taking_pack(job / "claim-1")
    keep_work(job, work)
    assert load_work(job) == work
    assert [path.name for path in job.iterdir()] == [WORK]


def test_shelf_and_job_can_be_moved_together(tmp_path):
    job, work = made(tmp_path)
    keep_work(job, work)
    (tmp_path / "shelf").rename(tmp_path / "moved")
    (run, check) = load_work(tmp_path / "moved" / "jobs" / "j1").recordings
    assert run.folder == tmp_path / "moved" / "r1"
    assert check.circuit


def test_what_another_program_added_since_stays(tmp_path):
    job, work = made(tmp_path)
    keep_work(job, work)
    change_work(job, lambda now: now.taking(tmp_path / "theirs", Side.NEW))
    after = change_work(job, lambda now: replace(now, fitted=Side.NEW))
    assert after.newest(Side.NEW) == tmp_path / "theirs"
    assert after.newest(Side.OLD) == tmp_path / "shelf" / "r1"
    assert load_work(job) == after


def test_a_list_that_went_away_is_begun_with_what_is_known(tmp_path):
    job, work = made(tmp_path)
    after = change_work(job, lambda now: replace(now, fitted=Side.NEW), lambda: work)
    assert after == replace(work, fitted=Side.NEW)


def test_a_list_that_cannot_be_read_is_put_aside_and_not_lost(tmp_path):
    job, work = made(tmp_path)
    job.mkdir(parents=True)
    (job / WORK).write_text("{torn")
    with pytest.raises(UsageError, match="no list of a job's recordings"):
        load_work(job)
    change_work(job, lambda now: now, lambda: work)
    (aside,) = job.glob(f"{WORK}.unreadable-*")
    assert aside.read_text() == "{torn"
    assert load_work(job) == work


def test_where_nothing_can_be_written_it_says_so_and_what_was_there_stays(tmp_path):
    job, work = made(tmp_path)
    keep_work(job, work)
    before = (job / WORK).read_bytes()
    blocked = tmp_path / "file"
    blocked.write_text("")
    with pytest.raises(DiskFailed, match="can't be written"):
        keep_work(blocked / "job", work)
    with pytest.raises(ZeroDivisionError):
        change_work(job, lambda _: 1 / 0)
    assert (job / WORK).read_bytes() == before
    assert json.loads(before)["fitted"] == "old"


def test_packs_are_numbered_on(tmp_path):
    assert fresh_pack(tmp_path).name == "claim-1"
    (tmp_path / "claim-1").mkdir()
    (tmp_path / "claim-2").mkdir()
    assert fresh_pack(tmp_path).name == "claim-3"
    once = JobWork().taking_pack(tmp_path / "claim-1")
    assert once.taking_pack(tmp_path / "claim-1") == once


def test_a_stray_run_does_not_take_the_place_of_the_whole_one(tmp_path):
    whole, stray, again = (tmp_path / name for name in ("whole", "stray", "again"))
    job, work = tmp_path / "jobs" / "j1", JobWork().taking(whole, Side.NEW).telling(whole, 4)
    work = work.taking(stray, Side.NEW)
    assert work.newest(Side.NEW) == stray  # it runs, or somebody chose it
    work = work.telling(stray, 1)
    assert work.newest(Side.NEW) == whole
    assert work.newest(Side.OLD) is None
    keep_work(job, work)
    assert load_work(job) == work
    assert work.taking(again, Side.NEW).telling(again, 4).newest(Side.NEW) == again
    # Filed with the other part and back, it is what it was.
    turned = work.taking(stray, Side.OLD).taking(stray, Side.NEW)
    assert turned.newest(Side.NEW) == whole
    assert turned == work


def test_a_run_is_the_same_by_a_link_and_by_a_relative_path(tmp_path, monkeypatch):
    (tmp_path / "real").mkdir()
    (tmp_path / "link").symlink_to(tmp_path / "real")
    monkeypatch.chdir(tmp_path)
    work = JobWork().taking(tmp_path / "real" / "run", Side.OLD)
    for path in (tmp_path / "link" / "run", Path("real/run")):
        assert work.telling(path, 3).recordings[0].speeds == 3
        assert len(work.taking(path, Side.NEW).recordings) == 1


@pytest.mark.parametrize("odd", [True, -1, "4", 2.5, None, []])
def test_odd_numbers_of_speeds_are_none(tmp_path, odd):
    job, work = made(tmp_path)
    keep_work(job, work.telling(work.recordings[0].folder, 3))
    kept = json.loads((job / WORK).read_text())
    kept["recordings"][0]["speeds"] = odd
    (job / WORK).write_text(json.dumps(kept))
    assert load_work(job) == work
