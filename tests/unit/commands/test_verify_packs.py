"""``meterlog verify`` on packs: words, JSON and exit codes. All of it is invented."""

import json
import shutil

import pytest
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

from meterlog.evidence import pack_verify
from meterlog.evidence.pack_bag import write_bag
from meterlog.evidence.pack_zip import write_zip
from meterlog.evidence.signing import Signer


@pytest.fixture(autouse=True)
def no_key_of_ones_own(monkeypatch):
    monkeypatch.setattr(pack_verify, "own_fingerprint", lambda: "")


@pytest.fixture
def signer():
    return Signer(Ed25519PrivateKey.from_private_bytes(bytes(range(32))))


@pytest.fixture
def pack(tmp_path, signer):
    folder = tmp_path / "claim"
    (folder / "data").mkdir(parents=True)
    (folder / "data/steps.csv").write_bytes(b"speed,mean_a\r\n1,4.5\r\n2,6.25\r\n")
    write_bag(folder, {"Bagging-Date": "2026-05-04"}, signer)
    write_zip(folder, tmp_path / "claim.zip")
    return folder


def change(pack):
    path = pack / "data/steps.csv"
    path.write_bytes(path.read_bytes().replace(b"6.25", b"7.25"))


def test_an_intact_pack_says_so_and_by_whom(run, pack, signer):
    for path, files in ((pack, 5), (pack.with_suffix(".zip"), 5)):
        said = run("verify", path).out
        assert f"{path}: intact. {files} files agree" in said
        assert (
            f"Its lists are signed by the key {signer.fingerprint}. Compare it with the one" in said
        )


def test_ones_own_key_is_told(run, pack, signer, monkeypatch):
    monkeypatch.setattr(pack_verify, "own_fingerprint", lambda: signer.fingerprint)
    assert "which is your own on this machine" in run("verify", pack).out


def test_a_change_is_told_with_file_and_row_and_code_1(run, pack):
    change(pack)
    said = run("verify", pack, code=1).out
    assert f"{pack}: NOT as it was packed." in said
    assert "data/steps.csv: differs from what was packed" in said
    assert "row 3 differs." in said


def test_json_has_all_of_it(run, pack, signer):
    change(pack)
    said = json.loads(run("verify", pack, "--json", code=1).out)
    assert said["pack"] == str(pack)
    assert said["kind"] == "folder"
    assert said["intact"] is False
    assert said["changed"] == [{"file": "data/steps.csv", "rows": [[3, 3]]}]
    assert said["signature"] == {
        "state": "good", "fingerprint": signer.fingerprint, "own": False, "told": None,
    }  # fmt: skip
    zipped = json.loads(run("verify", pack.with_suffix(".zip"), "--json").out)
    assert (zipped["kind"], zipped["intact"], zipped["problems"]) == ("zip", True, [])


def test_the_key_that_must_have_signed(run, pack, signer):
    typed = signer.fingerprint.upper().replace(" ", "")
    assert "which is the one asked for" in run("verify", pack, "--key", typed).out
    other = "0" * 40
    said = run("verify", pack, "--key", other, code=1).out
    assert "was made by the key" in said
    assert "NOT the one asked for" in said
    said = run("verify", pack, "--key", "abc", code=2).err
    assert "no fingerprint of 40 digits" in said


def test_a_key_for_a_recording_is_bad_use(run, small):
    assert "only packs are signed" in run("verify", small, "--key", "0" * 40, code=2).err


def test_an_unsafe_or_broken_zip_is_refused_in_words(run, pack):
    path = pack.with_suffix(".zip")
    path.write_bytes(path.read_bytes()[:-40])
    said = run("verify", path, code=1)
    assert "can't be read as a zip" in said.err
    assert said.out == ""


def test_what_is_no_pack_is_refused_with_what_can_be_given(run, pack, tmp_path):
    said = run("verify", tmp_path / "gone.zip", code=2).err
    assert f"{tmp_path}/gone.zip: is not there. Give the folder of one recording, or a pack" in said
    said = run("verify", tmp_path, code=2).err
    assert "is neither a recording nor a pack." in said
    assert f"In it lies {pack}." in said
    shelf = tmp_path / "shelf"
    shelf.mkdir()
    (shelf / "zebra.pdf").write_text("no pack")
    shutil.copy(pack.with_suffix(".zip"), shelf / "claim.zip")
    said = run("verify", shelf, code=2).err
    assert "Perhaps it is a file in it: claim.zip, zebra.pdf." in said
    (tmp_path / "note.txt").write_text("nothing")
    said = run("verify", tmp_path / "note.txt", code=2).err
    assert "note.txt: is neither a recording nor a pack." in said
    assert "In it lies" not in said
