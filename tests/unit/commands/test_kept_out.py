"""What would be written into a recording breaks its seal: it is refused."""

import zipfile

import pytest
from PIL import Image

from meterlog.evidence import signing
from meterlog.evidence.pack_verify import verify_pack
from meterlog.evidence.verify import verify_folder
from meterlog.work.job_cards import load_card


@pytest.mark.parametrize("place", ["card.json", "data/card.json", "data/new/card.json"])
def test_no_card_is_begun_in_a_recording(run, small, place):
    said = run("job", small / place, "--set", "work_order=4711", code=2).err
    assert f"{small / place}: lies inside the recording {small}." in said
    assert "a recording holds nothing but itself" in said
    assert verify_folder(small).intact


def test_not_through_a_link_either_and_beside_it_may(run, small, tmp_path):
    (tmp_path / "link").symlink_to(small / "data")
    (tmp_path / "card.json").symlink_to(small / "card.json")
    for path in (tmp_path / "link" / "card.json", tmp_path / "card.json"):
        said = run("job", path, "--set", "work_order=4711", code=2).err
        assert "lies inside the recording" in said
    assert verify_folder(small).intact
    run("job", tmp_path / "other.json", "--set", "work_order=4711")
    assert load_card(tmp_path / "other.json").work_order == "4711"


def test_nor_into_a_pack_that_was_unpacked(run, small, tmp_path, monkeypatch):
    monkeypatch.setattr(signing, "key_folder", lambda: tmp_path / "keys")
    run("job", tmp_path / "card.json", "--set", "work_order=4711")
    run("claim", tmp_path / "card.json", "--before", small, "--out", tmp_path / "pack")
    with zipfile.ZipFile(tmp_path / "pack" / "claim.zip") as archive:
        archive.extractall(tmp_path)
    pack = tmp_path / "claim"
    card = pack / "data" / "job-card.json"
    assert "4711" in run("job", card).out  # to look at it breaks nothing
    said = run("job", card, "--set", "work_order=4712", code=2).err
    assert f"{card}: lies inside the sealed pack {pack}." in said
    said = run("screen", tmp_path / "small", "--out", pack / "data" / "tables", code=2).err
    assert "lies inside the sealed pack" in said
    said = run("export", small, "--out", pack / "data" / "export", code=2).err
    assert "lies inside the sealed pack" in said
    said = run("job", pack, "--set", "work_order=4712", code=2).err
    assert "is a sealed pack." in said
    assert verify_pack(pack, own="").intact


def test_nor_a_photo_through_a_link(run, small, tmp_path, monkeypatch):
    monkeypatch.setattr(signing, "key_folder", lambda: tmp_path / "keys")
    run("job", tmp_path / "card.json", "--set", "work_order=4711")
    run("claim", tmp_path / "card.json", "--before", small, "--out", tmp_path / "pack")
    with zipfile.ZipFile(tmp_path / "pack" / "claim.zip") as archive:
        archive.extractall(tmp_path)
    (tmp_path / "photos").symlink_to(tmp_path / "claim" / "data")
    away = tmp_path.parent / f"{tmp_path.name}-label.jpg"
    Image.new("RGB", (8, 8)).save(away)
    said = run("job", tmp_path / "card.json", "--photo", away, code=2).err
    assert "lies inside the sealed pack" in said
    assert verify_pack(tmp_path / "claim", own="").intact
