"""A pack of long recordings: what is too large for a PDF is in the zip alone, or is refused."""

import zipfile
from dataclasses import replace

import pikepdf
import pytest

from meterlog.evidence import signing
from meterlog.evidence.pack_verify import verify_pack
from meterlog.work import claim_inside


@pytest.fixture(autouse=True)
def keys(monkeypatch, tmp_path):
    monkeypatch.setattr(signing, "key_folder", lambda: tmp_path / "keys")


@pytest.fixture
def card(run, tmp_path):
    run("job", tmp_path / "job.json", "--set", "work_order=WO-7781")
    return tmp_path / "job.json"


def carried(pdf):
    with pikepdf.open(pdf) as document:
        return {document.attachments[name].obj.Desc for name in document.attachments}


def test_a_table_too_large_for_a_pdf_is_in_the_zip_and_both_hold(
    run, small, card, tmp_path, monkeypatch
):
    before = tmp_path / "whole"
    run("claim", card, "--before", small, "--out", before)
    with zipfile.ZipFile(before / "claim.zip") as archive:
        tables = [one for one in archive.infolist() if one.filename.endswith(".csv")]
        large = max(tables, key=lambda one: one.file_size)
        inside = large.filename.removeprefix("claim/")
        texts = {
            one.filename.removeprefix("claim/"): one.file_size
            for one in archive.infolist()
            if not one.filename.endswith(".png")
        }
        assert inside.startswith("data/before/readings-")
    monkeypatch.setattr(claim_inside, "MOST_EACH", large.file_size - 1)
    too_large = {name for name, size in texts.items() if size >= large.file_size}
    out = tmp_path / "pack"
    said = run("claim", card, "--before", small, "--out", out)
    assert f"{inside}: is too large for the PDF and in the zip alone" in said.err
    names, less = carried(before / "claim.pdf"), carried(out / "claim.pdf")
    assert {str(one) for one in names - less} == too_large
    assert inside in too_large
    with zipfile.ZipFile(out / "claim.zip") as archive:
        assert archive.read(large.filename) == (
            zipfile.ZipFile(before / "claim.zip").read(large.filename)
        )
    for name in ("claim.pdf", "claim.zip"):
        found = verify_pack(out / name, own="")
        assert found.intact
        assert not found.container
    assert any("not attached" in text for text in verify_pack(out / "claim.pdf", own="").remarks)


def test_all_together_are_bounded_and_the_smallest_come_first(tmp_path, monkeypatch):
    bag = tmp_path / "claim"
    (bag / "data").mkdir(parents=True)
    for name, size in (("data/a.csv", 500), ("data/b.csv", 300), ("c.txt", 10), ("data/d.png", 5)):
        (bag / name).write_bytes(bytes(size))
    assert claim_inside.names_inside(bag) == (("c.txt", "data/a.csv", "data/b.csv"), ())
    monkeypatch.setattr(claim_inside, "MOST_TOGETHER", 320)
    assert claim_inside.names_inside(bag) == (("c.txt", "data/b.csv"), ("data/a.csv",))


def test_a_pack_that_no_check_would_unpack_is_refused_before_it_is_drawn(
    run, small, card, tmp_path, monkeypatch
):
    monkeypatch.setattr(claim_inside, "LIMITS", replace(claim_inside.LIMITS, total=2_000))
    said = run("claim", card, "--before", small, "--out", tmp_path / "pack", code=1)
    assert "most that a check unpacks" in said.err
    assert "shorter recording" in said.err
    assert not (tmp_path / "pack").exists()


def test_nor_is_one_made_that_its_lists_make_too_large(run, small, card, tmp_path, monkeypatch):
    run("claim", card, "--before", small, "--out", tmp_path / "whole")
    with zipfile.ZipFile(tmp_path / "whole" / "claim.zip") as archive:
        size = sum(one.file_size for one in archive.infolist())
    monkeypatch.setattr(claim_inside, "LIMITS", replace(claim_inside.LIMITS, total=size - 500))
    said = run("claim", card, "--before", small, "--out", tmp_path / "pack", code=1)
    assert "most that a check unpacks" in said.err
    assert not (tmp_path / "pack").exists()
