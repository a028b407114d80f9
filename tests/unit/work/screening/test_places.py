"""Recordings are found wherever they lie; what is damaged is a row and stops nothing."""

import os
import shutil

import pytest

from meterlog.model.errors import DiskFailed, UsageError
from meterlog.model.job_card import with_value
from meterlog.work.job_cards import change_card
from meterlog.work.job_folder import CARD, JobWork, Side, keep_work
from meterlog.work.library.places import walk
from meterlog.work.screening.cards import PartOf, parts_of_jobs
from meterlog.work.screening.places import places_in


def test_what_is_damaged_is_a_row_with_the_reason(shelf, screened, of):
    said, rows = screened(shelf)
    assert said.recordings == 15
    heads = {row["folder"].rpartition("-")[2]: row for row in of(rows)}
    assert heads["000007"]["state"] == "changed"
    assert "differs from what was sealed" in heads["000007"]["reason"]
    assert heads["000027"]["state"] == "can't be read"
    assert "is not valid JSON" in heads["000027"]["reason"]
    assert heads["000047"]["state"] == "can't be read"
    assert heads["000067"]["state"] == "not sealed"
    assert "never sealed" in heads["000067"]["reason"]
    assert {row["not_good"] for row in rows if row["state"] != "sealed"} == {
        "it is changed",
        "it was not judged",
    }
    assert dict(said.not_judged).keys() == {
        heads[n]["folder"] for n in ("000027", "000047", "000067")
    }
    assert heads["000003"]["outcome"] == "fault found"
    assert sum(said.outcomes.values()) == 12


def test_what_is_being_recorded_or_empty_is_told(tmp_path, shelf, screened, of, rig):
    recorder = rig.Recorder.create(tmp_path / "shelf" / "now", rig.about(99))
    (shelf / "empty").mkdir()
    (shelf / "other" / "data").mkdir(parents=True)
    (shelf / "other" / "data" / "notes.txt").write_text("no recording")
    _, rows = screened(shelf)
    recorder.close()
    (row,) = of(rows, folder=str(shelf / "now"))
    assert row["state"] == "being recorded"
    assert not [row for row in rows if "other" in row["folder"] or "empty" in row["folder"]]


def test_nothing_in_a_recording_a_link_or_a_hidden_folder_is_found(make, tmp_path):
    folder = make("run", 0)
    shutil.copytree(folder, folder.parent / ".hidden")
    shutil.copytree(folder.parent / ".hidden", folder / "data" / "original" / "inner")
    (folder.parent / "link").symlink_to(folder)
    (folder.parent / "round").symlink_to(folder.parent)
    found = places_in([str(folder.parent), str(tmp_path)], lambda: None)
    assert [one.url for one in found] == [str(folder)]


def test_odd_names_are_no_addresses_and_what_is_no_text_is_a_row(make, screened, of):
    odd = make("a::b #1 %41 ü", 0)
    bad = odd.parent / os.fsdecode(b"bad\xff")
    shutil.copytree(odd, bad)
    said, rows = screened(odd.parent)
    assert of(rows, folder=str(odd))[0]["outcome"] == "in order"
    ((folder, why),) = said.not_judged
    assert "its name is no text" in why
    assert folder.endswith("bad\\udcff")
    assert screened(odd.parent)[0].reviewed == 0


def test_a_folder_that_is_not_there_is_refused_before_anything_is_written(tmp_path, screened):
    with pytest.raises(UsageError, match="is no folder, or is not there"):
        screened(tmp_path / "nowhere")
    with pytest.raises(UsageError, match="can't be opened"):
        screened("nokind://somewhere")
    assert not (tmp_path / "out").exists()


def test_two_screenings_into_one_folder_are_refused(make, screened):
    folder = make("run", 0)

    def again(done, whole):
        if whole:
            with pytest.raises(DiskFailed, match="is being changed by another program"):
                screened(folder.parent)
            refused.append(done)

    refused = []
    screened(folder.parent, progress=again)
    assert refused


def test_a_recording_that_nobody_may_read_is_a_row(make, screened, monkeypatch, of):
    folder = make("run", 0)
    make("run-2", 1)

    def broken(path):
        if path == folder:
            raise OSError(5, "Input/output error", str(path))
        return verify(path)

    verify = __import__("meterlog.evidence.verify", fromlist=["x"]).verify_folder
    monkeypatch.setattr("meterlog.work.screening.reviewing.verify_folder", broken)
    said, rows = screened(folder.parent)
    assert said.not_judged == ((str(folder), f"{folder}: Input/output error"),)
    assert len(of(rows)) == 2


def test_a_fault_of_the_program_is_a_row(make, screened, monkeypatch):
    folder = make("run", 0)
    monkeypatch.setattr("meterlog.work.screening.reviewing.speed_figures", lambda side: 1 / 0)
    said, _ = screened(folder.parent)
    ((_, why),) = said.not_judged
    assert "ZeroDivisionError" in why
    assert "report it" in why


def test_folders_that_lie_too_deep_are_told(make, screened, tmp_path):
    seen = make("/".join("abcdefghijk") + "/seen", 0)
    make("/".join("abcdefghijkl") + "/unseen", 1)
    said, rows = screened(tmp_path / "own")
    ((folder, why),) = said.not_judged
    assert folder == str(seen.parent / "l")
    assert "more than 12 levels deep" in why
    assert next(row["folder"] for row in rows if row["outcome"]) == str(seen)
    said, _ = screened(tmp_path / "own", seen.parent / "l")
    assert said.outcomes == {"in order": 2}


def test_a_card_too_deep_for_one_folder_is_found_in_the_one_that_is_given_too(make, tmp_path):
    top = tmp_path / "own"
    deep = top.joinpath(*"abcdefghijkl")
    folder = make("/".join("abcdefghijkl") + "/job/run", 1)
    job = folder.parent
    change_card(job / CARD, lambda card: with_value(card, "old_part.number", "fm-99"))
    keep_work(job, JobWork().taking(folder, Side.OLD))
    for roots in ([deep], [top, deep]):
        assert parts_of_jobs(roots, lambda: None, 12) == {folder: PartOf("fm-99", "")}
    found = walk((top, deep), lambda: None, 12).places
    assert [one.folder for one in found] == [job, folder]


def test_folders_that_can_t_be_meant_are_refused(make, screened, monkeypatch, tmp_path):
    folder = make("run", 0)
    monkeypatch.chdir(folder.parent)
    with pytest.raises(UsageError, match="a FOLDER: is empty"):
        screened("")
    with pytest.raises(UsageError, match=r"data: lies inside the recording .*run\."):
        screened(folder / "data")
    assert not (tmp_path / "out").exists()


def test_a_name_too_long_to_be_edited_is_no_fault_of_the_recording(make, screened):
    folder = make("r" * 240, 0)
    assert screened(folder.parent)[0].outcomes == {"in order": 1}
