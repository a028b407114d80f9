"""What is out of sight for a while is tried again, and forgotten by no table."""

import shutil
from contextlib import suppress

import pytest

from meterlog.model.errors import DiskFailed
from meterlog.work.screening import places, reviewing


@pytest.fixture
def away(make, tmp_path):
    """Three good recordings, and what takes them out of sight and brings them back."""
    for number in range(3):
        make(f"run-{number}", number)
    shelf, aside = tmp_path / "own", tmp_path / "aside"

    def go(*, back=False):
        if back:
            shutil.rmtree(shelf)
            aside.rename(shelf)
        else:
            shelf.rename(aside)
            shelf.mkdir()  # the empty place that a disk was mounted at

    yield shelf, go
    if aside.exists():
        go(back=True)


def test_recordings_that_go_away_before_their_review_are_tried_again(away, screened):
    shelf, go = away
    _, wanted = screened(shelf, out="other")

    def gone(done, whole):
        if whole and done == 0:
            go()

    said, rows = screened(shelf, progress=gone)
    assert [row["passing"] for row in rows] == [True] * 3
    assert all("is not there any more" in why for _, why in said.not_judged)
    go(back=True)
    said, rows = screened(shelf)
    assert (said.reviewed, said.not_judged) == (3, ())
    assert rows == wanted


@pytest.mark.parametrize("when", ["before", "after"])
def test_one_that_goes_away_during_its_review_is_tried_again(away, screened, monkeypatch, when):
    shelf, go = away
    truly, left = reviewing.review_folder, [1]

    def review(folder, limits):
        if when == "after":
            outcome = truly(folder, limits)
        if left and left.pop():
            go()
        return outcome if when == "after" else truly(folder, limits)

    monkeypatch.setattr(reviewing, "review_folder", review)
    said, _ = screened(shelf)
    assert len(said.not_judged) == 3
    go(back=True)
    said, _ = screened(shelf)
    assert (said.reviewed, said.not_judged) == (3, ())


@pytest.mark.parametrize("kind", ["gone", "empty"])
def test_folders_that_go_away_while_they_are_looked_through_leave_the_tables(
    away, screened, monkeypatch, tmp_path, kind
):
    shelf, go = away
    _, wanted = screened(shelf)
    table = (tmp_path / "out" / "findings.parquet").read_bytes()
    truly, left = places._listed, [0, 1]

    def listed(files, path):
        if left and left.pop() == 0:
            go()
            if kind == "gone":
                shelf.rmdir()
        return truly(files, path)

    monkeypatch.setattr(places, "_listed", listed)
    with pytest.raises(DiskFailed, match="own: went away while it was looked through"):
        screened(shelf)
    assert not left
    assert (tmp_path / "out" / "findings.parquet").read_bytes() == table
    with suppress(FileExistsError):
        shelf.mkdir()
    go(back=True)
    said, rows = screened(shelf)
    assert (said.reviewed, rows) == (0, wanted)


def test_one_folder_that_goes_away_while_others_are_looked_through_is_a_row(
    make, screened, monkeypatch, of
):
    make("a/run", 0)
    lost = make("b/run", 1).parent
    truly = places._listed

    def listed(files, path):
        if path == lost.as_posix():
            shutil.rmtree(lost)
        return truly(files, path)

    monkeypatch.setattr(places, "_listed", listed)
    said, rows = screened(lost.parent)
    assert said.not_judged == ((str(lost), "went away while it was looked through."),)
    assert len(of(rows)) == 2
    monkeypatch.undo()
    said, rows = screened(lost.parent)
    assert (said.recordings, said.not_judged) == (1, ())


def test_a_share_that_numbers_its_folders_anew_each_time_is_there(away, screened, monkeypatch):
    shelf, _ = away
    numbers = iter(range(100))
    monkeypatch.setattr(places, "_sign", lambda path: (1, next(numbers)))
    assert screened(shelf)[0].recordings == 3
    devices = iter(range(100))
    monkeypatch.setattr(places, "_sign", lambda path: (next(devices), 1))
    with pytest.raises(DiskFailed, match="went away"):
        screened(shelf)
