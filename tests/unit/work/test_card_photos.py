"""Photos of a job card lie in its folder: others are copied there, and a claim takes no others."""

import json

import pytest

from meterlog import cli
from meterlog.model.errors import DiskFailed
from meterlog.model.job_card import JobCard
from meterlog.work.card_photos import OUTSIDE, photo_words, taken_photo
from meterlog.work.claim_photos import copy_photos
from meterlog.work.job_cards import load_card


@pytest.fixture
def card(tmp_path):
    (tmp_path / "job" / "pictures").mkdir(parents=True)
    return tmp_path / "job" / "card.json"


@pytest.fixture
def picture(tmp_path):
    image = pytest.importorskip("PIL.Image").new("RGB", (4, 3))
    path = tmp_path / "label.png"
    image.save(path)
    return path


def test_one_that_lies_there_is_named_from_there_and_not_copied(card):
    photo = card.parent / "pictures" / "a.jpg"
    photo.write_bytes(b"a")
    assert taken_photo(photo, card) == "pictures/a.jpg"
    assert [one.name for one in card.parent.iterdir()] == ["pictures"]


def test_one_from_elsewhere_is_copied_once_and_over_no_other(card, tmp_path):
    for name, content in (("x", b"one"), ("y", b"two"), ("z", b"one")):
        (tmp_path / name).mkdir()
        (tmp_path / name / "a.jpg").write_bytes(content)
        (card.parent / "pictures" / name).symlink_to(tmp_path / name / "a.jpg")
    taken = [taken_photo(tmp_path / name / "a.jpg", card) for name in "xyzx"]
    assert taken == ["photos/a.jpg", "photos/a-2.jpg", "photos/a.jpg", "photos/a.jpg"]
    assert (card.parent / "photos" / "a-2.jpg").read_bytes() == b"two"
    # What only seems to lie there is from elsewhere, too.
    (tmp_path / "y" / "a.jpg").write_bytes(b"three")
    assert taken_photo(card.parent / "pictures" / "y", card) == "photos/a-3.jpg"


def test_what_can_not_be_copied_is_told_and_leaves_nothing(card, tmp_path):
    (card.parent / "photos").write_bytes(b"no folder")
    (tmp_path / "a.jpg").write_bytes(b"a")
    with pytest.raises(DiskFailed, match=r"--photo .*a\.jpg: can't be copied into .*photos"):
        taken_photo(tmp_path / "a.jpg", card)


@pytest.mark.parametrize(
    "how", ["../secret.png", "/secret.png", "link.png", "pictures/../../x.png"]
)
def test_no_name_on_a_card_takes_a_file_from_outside(card, picture, tmp_path, how):
    name = how
    for secret in (tmp_path / "secret.png", tmp_path / "x.png"):
        secret.write_bytes(picture.read_bytes())
    if how.startswith("/"):
        name = str(tmp_path / "secret.png")
    if how == "link.png":
        (card.parent / how).symlink_to(tmp_path / "secret.png")
    files, lost = copy_photos(
        JobCard(photos=(name,)), card.parent, tmp_path / "out", lambda _: None
    )  # fmt: skip
    assert files == ()
    assert [one.why for one in lost] == [OUTSIDE]
    (words,) = photo_words(JobCard(photos=(name,)), card)
    assert words.startswith(f"The photo {name} lies outside the card's folder and goes into no")


def test_who_gave_the_path_himself_has_it_in_the_pack(card, picture, tmp_path, capsys):
    assert cli.main(["job", str(card), "--photo", str(picture)]) == 0
    assert "outside" not in capsys.readouterr().out
    assert load_card(card).photos == ("photos/label.png",)
    files, lost = copy_photos(load_card(card), card.parent, tmp_path / "out", lambda _: None)
    assert ([one.name for one in files], lost) == (["photo-1.jpg"], ())


def test_a_photo_is_copied_only_where_nothing_else_is_wrong(card, picture, capsys):
    card.write_text(json.dumps({"no such key": 1}))
    assert cli.main(["job", str(card), "--photo", str(picture)]) == 2
    assert "no such key" in capsys.readouterr().err
    assert not (card.parent / "photos").exists()


def test_names_that_no_file_can_have_and_files_gone_are_said(card):
    held = JobCard(photos=("x" * 3000, "a\0b", "c.jpg"))
    assert photo_words(held, card) == (
        f"The photo {'x' * 200}… is not there.",
        "The photo a\0b is not there.",
        "The photo c.jpg is not there.",
    )
