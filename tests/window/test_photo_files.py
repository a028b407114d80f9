"""Photos are copied into the job's folder, whole or not at all."""

import pytest
from PySide6.QtGui import QImage

from meterlog.model.errors import UsageError
from meterlog.window.job_page import photo_files
from meterlog.window.job_page.photo_files import copy_in, thumbs_of
from meterlog.window.long_work import Cancelled


def picture(path, colour=0xFF884422, size=(80, 60)):
    image = QImage(*size, QImage.Format.Format_RGB32)
    image.fill(colour)
    path.parent.mkdir(parents=True, exist_ok=True)
    assert image.save(str(path))
    return path


@pytest.fixture
def job(tmp_path):
    folder = tmp_path / "job"
    folder.mkdir()
    return folder


def test_copies_bear_their_names_and_nothing_is_written_over(job, tmp_path):
    first = picture(tmp_path / "a" / "label.png")
    other = picture(tmp_path / "b" / "label.png", 0xFF224488)
    parts = []
    names = copy_in([first, other], job, parts.append)
    assert names == ("photos/label.png", "photos/label-2.png")
    assert [(job / name).read_bytes() for name in names] == [
        first.read_bytes(),
        other.read_bytes(),
    ]
    assert parts[-1] == 1.0
    # The same picture again, from the card or from the folder itself, is that one.
    assert copy_in([other], job, parts.append) == ("photos/label-2.png",)
    assert copy_in([job / names[0]], job, parts.append) == ("photos/label.png",)
    assert len(list((job / "photos").iterdir())) == 2


def test_a_cancelled_copy_leaves_nothing(job, tmp_path, monkeypatch):
    monkeypatch.setattr(photo_files, "_CHUNK", 100)
    files = [picture(tmp_path / f"{n}.png", 0xFF000000 + n, (200, 200)) for n in range(2)]

    def stop(part):
        if part > 0.6:
            raise Cancelled

    with pytest.raises(Cancelled):
        copy_in(files, job, stop)
    assert list((job / "photos").iterdir()) == []


def test_what_no_claim_takes_is_refused_before_anything_is_copied(job, tmp_path, monkeypatch):
    good, empty = picture(tmp_path / "good.png"), tmp_path / "empty.jpg"
    empty.write_bytes(b"")
    script, torn = tmp_path / "script.jpg", tmp_path / "torn.png"
    script.write_bytes(b"#!/bin/sh\necho label\n")
    torn.write_bytes(good.read_bytes()[:-40])
    for bad, words in (
        (empty, "is empty"),
        (tmp_path / "none.jpg", "is no file"),
        (script, r"script\.jpg: goes into no claim: it is no picture that can be read"),
        (torn, r"torn\.png: goes into no claim: it is no picture that can be read"),
    ):
        with pytest.raises(UsageError, match=words):
            copy_in([good, bad], job, lambda _: None)
    monkeypatch.setattr(photo_files, "MOST_BYTES", 10)
    with pytest.raises(UsageError, match="no claim takes"):
        copy_in([good], job, lambda _: None)
    assert not (job / "photos").exists()


def test_small_pictures_keep_their_shape_and_what_cannot_be_shown_says_why(job):
    picture(job / "photos" / "wide.png", size=(800, 400))
    (job / "photos" / "torn.jpg").write_bytes(b"no picture")
    names = ("photos/wide.png", "photos/torn.jpg", "photos/gone.jpg", "photos")
    wide, torn, gone, folder = thumbs_of(names, job, 60, lambda _: None)
    assert (wide.image.width(), wide.image.height()) == (60, 30)
    assert torn.image is None
    assert "can be shown" in torn.why
    assert gone.why.startswith("GONE")
    assert folder.why == "it is no file"
