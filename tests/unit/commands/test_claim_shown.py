"""What a pack shows: nothing hidden in a card, no more photos than said, names that save flat."""

import json
import shutil
import subprocess
import zipfile

import pikepdf
import pytest
from PIL import Image

from meterlog.evidence import signing
from meterlog.evidence.pack_verify import verify_pack
from meterlog.work import claim_photos

MARKS = "\u200f\u202e\u2066\ufeff"


@pytest.fixture(autouse=True)
def keys(monkeypatch, tmp_path):
    monkeypatch.setattr(signing, "key_folder", lambda: tmp_path / "keys")


@pytest.fixture
def card(run, tmp_path):
    path = tmp_path / "job.json"
    run("job", path, "--set", "claim_number=CL-9", "--set", "complaint=Dead until I hit it")
    return path


def unpacked(pack, place):
    with zipfile.ZipFile(pack / "claim.zip") as archive:
        archive.extractall(place)
    return place / "claim"


def test_marks_that_steer_the_reading_are_shown_everywhere_and_said(run, small, card, tmp_path):
    values = json.loads(card.read_text())
    values["claim_number"] = f"CL-{MARKS}4711"
    values["complaint"] = f"It is {MARKS[1]}daed"
    card.write_text(json.dumps(values), encoding="utf-8")
    out = tmp_path / "pack"
    said = run("claim", card, "--before", small, "--out", out)
    assert "claim_number: holds characters that can't be seen" in said.err
    assert "complaint: holds characters that can't be seen" in said.err
    folder = unpacked(out, tmp_path / "here")
    texts = {path: path.read_bytes().decode("utf-8", "replace") for path in folder.rglob("*.*")
             if path.suffix in {".txt", ".json"}}  # fmt: skip
    assert not [path for path, text in texts.items() if any(mark in text for mark in MARKS)]
    shown = "CL-\\u200f\\u202e\\u2066\\ufeff4711"
    assert f"Internal-Sender-Identifier: {shown}" in texts[folder / "bag-info.txt"]
    with pikepdf.open(out / "claim.pdf") as pdf:
        assert str(pdf.docinfo.Title) == f"Cabin fan: claim {shown}"
    if shutil.which("pdftotext"):
        words = subprocess.run(
            ["pdftotext", "-layout", out / "claim.pdf", "-"], capture_output=True, check=True
        ).stdout.decode()
        assert not any(mark in words for mark in MARKS)
        assert shown in words


def test_photos_beyond_the_most_are_named_and_not_put_in(run, small, card, tmp_path, monkeypatch):
    monkeypatch.setattr(claim_photos, "MOST_PHOTOS", 3)
    Image.new("RGB", (60, 40), (200, 30, 30)).save(tmp_path / "a.png")
    values = json.loads(card.read_text())
    card.write_text(json.dumps({**values, "photos": ["a.png"] * 5}))
    out = tmp_path / "pack"
    answer = json.loads(run("claim", card, "--before", small, "--out", out, "--json").out)
    told = [text for text in answer["remarks"] if "a pack holds 3 photos at most" in text]
    assert len(told) == 2
    folder = unpacked(out, tmp_path / "here")
    assert len(list((folder / "data" / "photos").iterdir())) == 3


def test_copying_photos_can_be_cancelled_between_any_two(tmp_path):
    Image.new("RGB", (60, 40)).save(tmp_path / "a.png")
    card = claim_photos.JobCard(photos=("a.png",) * 4)
    parts = []

    def stop(part):
        parts.append(part)
        if part >= 0.5:
            raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        claim_photos.copy_photos(card, tmp_path, tmp_path / "out", stop)
    assert parts == [0.0, 0.25, 0.5]


def test_files_inside_save_into_one_folder_and_a_change_names_the_file(run, small, card, tmp_path):
    out = tmp_path / "pack"
    run("claim", card, "--before", small, "--out", out)
    pdf = out / "claim.pdf"
    with pikepdf.open(pdf, allow_overwriting_input=True) as document:
        names = {key: str(one.obj.Desc) for key, one in document.attachments.items()}
        assert not any("/" in key for key in names)
        assert names["data.before.steps.csv"] == "data/before/steps.csv"
        held = document.attachments["data.before.steps.csv"].get_file()
        held.obj.write(held.read_bytes().replace(b"\r\n", b" \r\n", 1))
        document.save(pdf)
    (changed,) = verify_pack(pdf, own="").changed
    assert (changed.file, changed.rows) == ("data/before/steps.csv", ((1, 1),))


def test_a_container_that_is_not_as_made_is_said_and_no_failure(run, small, card, tmp_path):
    out = tmp_path / "pack"
    run("claim", card, "--before", small, "--out", out)
    for name in ("claim.zip", "claim.pdf"):
        assert "to the byte" not in run("verify", out / name).out
    with pikepdf.open(out / "claim.pdf", allow_overwriting_input=True) as document:
        document.save(out / "claim.pdf", linearize=True)
    whole = bytearray((out / "claim.zip").read_bytes())
    whole[10] ^= 1
    (out / "claim.zip").write_bytes(whole)
    for name in ("claim.zip", "claim.pdf"):
        said = run("verify", out / name).out
        assert "intact" in said
        assert "is not, to the byte, as it was made" in said
        assert "What is in it is as it was packed." in said
        assert json.loads(run("verify", out / name, "--json").out)["container"]


def test_the_help_says_what_of_a_pdf_is_checked(run):
    said = " ".join(run("verify", "--help", code=0).out.split())
    assert "which page of the PDF" in said
