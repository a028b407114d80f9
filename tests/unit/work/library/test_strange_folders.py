"""One folder with something strange in it costs nobody the others, and does not vanish itself."""

import json
import os
import shutil
import tempfile
from pathlib import Path

import pytest

from meterlog.recording import layout
from meterlog.recording.continuation import Continuation, continuation_bytes
from meterlog.work.job_folder import CARD, WORK, Side, load_work
from meterlog.work.library import Kind, Wanted


def nothing(_part):
    pass


def found(library, shelf, **wanted):
    library.refresh([shelf], nothing)
    return {hit.folder.name: hit for hit in library.search([shelf], Wanted(**wanted))}


@pytest.fixture
def roomy():
    """A folder of a file system that keeps any time; those on disks often end in 2446."""
    if not os.access("/dev/shm", os.W_OK):
        pytest.skip("there is no file system in memory")
    with tempfile.TemporaryDirectory(dir="/dev/shm") as made:
        yield Path(made)


@pytest.mark.parametrize("seconds", [400_000_000_000, -100_000_000_000])
def test_a_card_of_a_year_that_is_none_is_found_without_a_date(
    library, shelf, recording, job, roomy, seconds
):
    recording("run")
    job("j", vehicle="van")
    copy = roomy / "shelf"
    shutil.copytree(shelf, copy)
    card = copy / "jobs" / "j" / CARD
    os.utime(card, (seconds, seconds))
    assert card.stat().st_mtime == seconds
    hits = found(library, copy)
    assert hits.keys() == {"run", "j"}
    assert (hits["j"].started, hits["j"].state, hits["j"].vehicle) == ("", "", "van")


def test_a_job_that_names_a_link_to_itself_is_found_with_its_other_recordings(
    library, shelf, recording, job
):
    run = recording("run")
    folder = job("j", [(run, Side.OLD)], vehicle="van")
    (folder / "loop").symlink_to("loop")
    work = json.loads((folder / WORK).read_text())
    work["recordings"].append({"folder": "loop/run", "part": "new", "circuit": False})
    (folder / WORK).write_text(json.dumps(work))
    kept = load_work(folder).recordings
    assert kept[0].folder == run
    assert kept[1].side is Side.NEW
    assert found(library, shelf)["j"].trouble == ""


@pytest.mark.parametrize("place", ["data/x.txt", "notes.txt"])
@pytest.mark.parametrize("to", ["/nowhere/at/all", None])
def test_a_recording_with_a_link_that_leads_nowhere_is_found(library, shelf, recording, place, to):
    link = recording("run") / place
    link.symlink_to(to or link.name)
    assert found(library, shelf).keys() == {"run"}
    assert library.refresh([shelf], nothing).read == 0
    link.unlink()
    assert library.refresh([shelf], nothing).read == 1


def test_what_a_link_leads_to_shows_as_changed(library, shelf, recording, tmp_path):
    (tmp_path / "elsewhere").write_text("1")
    (recording("run") / "data" / "x.txt").symlink_to(tmp_path / "elsewhere")
    library.refresh([shelf], nothing)
    (tmp_path / "elsewhere").write_text("12")
    assert library.refresh([shelf], nothing).read == 1


def test_a_job_whose_card_is_a_link_that_leads_nowhere_says_so(library, shelf, job, recording):
    recording("run")
    card = job("j") / CARD
    card.unlink()
    card.symlink_to("/nowhere/at/all")
    hit = found(library, shelf, kind=Kind.JOB)["j"]
    assert hit.state == "can't be read"
    assert hit.trouble


def test_a_fault_of_the_program_at_one_folder_is_told_there(
    library, shelf, recording, job, monkeypatch
):
    recording("good")
    bad = recording("bad", 1)
    job("j")
    real = layout.is_sealed
    monkeypatch.setattr(
        "meterlog.work.library.facts.layout.is_sealed",
        lambda folder: 1 // 0 if folder == bad else real(folder),
    )
    monkeypatch.setattr("meterlog.work.library.facts.value_of", lambda card, key: 1 // 0)
    hits = found(library, shelf)
    assert hits["good"].state == "sealed"
    for name, kind in (("bad", Kind.RUN), ("j", Kind.JOB)):
        assert hits[name].kind is kind
        assert hits[name].state == "can't be read"
        assert "ZeroDivisionError" in hits[name].trouble


def test_one_part_of_a_recording_whose_disk_failed_is_told_as_such(library, shelf, recording):
    run = recording("run")
    went_on = Continuation(shelf / "begun", "no space left", {}, {})
    (run / layout.CONTINUES).write_bytes(continuation_bytes(went_on))
    told = found(library, shelf)["run"].trouble
    assert f"It goes on from {shelf / 'begun'}, whose disk failed" in told
    assert f"meterlog join {run}" in told
