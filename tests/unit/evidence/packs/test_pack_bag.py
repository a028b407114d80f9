"""A folder becomes a bag and a zip: always the same, and nothing odd gets in."""

import errno
import os
import shutil
import zipfile

import pytest

from meterlog.evidence import pack_bag
from meterlog.evidence.pack_bag import tag_files, write_bag
from meterlog.evidence.pack_verify import verify_pack
from meterlog.evidence.pack_zip import write_zip
from meterlog.model.errors import EvidenceError
from meterlog.recording.bag import read_manifest


def test_all_that_is_there_is_listed_but_the_signature(pack):
    tags, _ = read_manifest((pack / "tagmanifest-sha256.txt").read_bytes())
    payload, _ = read_manifest((pack / "manifest-sha256.txt").read_bytes())
    there = {path.relative_to(pack).as_posix() for path in pack.rglob("*") if path.is_file()}
    assert there - {*tags, *payload} == {"tagmanifest-sha256.txt", "signature.json"}
    assert "row-checks/before/findings.csv.txt" in tags
    assert "README.txt" in tags
    assert "data/photo of the plug.png" in payload


def test_the_lists_can_be_had_without_writing_them(packer, tmp_path):
    folder = packer.fill(tmp_path / "claim")
    tags = tag_files(folder, packer.info, packer.signer)
    assert not (folder / "bagit.txt").exists()
    made = packer.make(tmp_path / "made")
    assert {name: (made / name).read_bytes() for name in tags} == tags


def test_without_a_signer_there_is_no_signature_and_no_word_of_one(packer, tmp_path):
    folder = packer.make(tmp_path / "claim", signed=False)
    assert not (folder / "signature.json").exists()
    assert "Signed-By" not in (folder / "bag-info.txt").read_text()
    found = verify_pack(folder, own="")
    assert found.intact
    assert "Not signed" in found.signature.words


def test_what_can_not_be_packed_is_refused_and_named(packer, tmp_path):
    (tmp_path / "empty/data").mkdir(parents=True)
    with pytest.raises(EvidenceError, match="no files in data"):
        write_bag(tmp_path / "empty", {}, None)
    for field in ("", "a:b", "a\nb", " a"):
        with pytest.raises(EvidenceError, match="no name of a field"):
            tag_files(packer.fill(tmp_path / f"f{hash(field)}"), {field: "x"}, None)
    made = packer.make(tmp_path / "made")
    with pytest.raises(EvidenceError, match="sealed bag already"):
        write_bag(made, {}, None)


@pytest.mark.skipif(os.name != "posix", reason="Windows has no such names")
@pytest.mark.parametrize(
    "odd",
    ["link", "folder link", "pipe", "back\\slash", "line\nfeed", "c:x", "50%", "x.", "NUL.txt"],
)
def test_links_pipes_and_odd_names_are_refused(packer, tmp_path, odd):
    folder = packer.fill(tmp_path / "claim")
    path = folder / "data" / odd
    if odd == "link":
        path.symlink_to(folder / "README.txt")
    elif odd == "folder link":
        path.symlink_to(folder / "data/before")
    elif odd == "pipe":
        os.mkfifo(path)
    else:
        path.write_bytes(b"x")
    with pytest.raises(EvidenceError, match="can't be part of a pack"):
        write_bag(folder, {}, None)
    assert not (folder / "bagit.txt").exists()


@pytest.mark.parametrize("taken", [0, 3])
def test_a_disk_that_takes_no_seal_is_told_and_leaves_no_bag(packer, tmp_path, monkeypatch, taken):
    folder = packer.fill(tmp_path / "claim")
    written = []

    def full(path, content):
        if len(written) == taken:
            raise OSError(errno.ENOSPC, "No space left on device", str(path))
        written.append(path)
        path.write_bytes(content)

    monkeypatch.setattr(pack_bag, "write_aside", full)
    with pytest.raises(EvidenceError, match=r"can't be sealed: No space left.*make the pack again"):
        write_bag(folder, {}, packer.signer)
    assert not (folder / "bagit.txt").exists()


def test_the_zip_is_the_same_whenever_and_wherever_it_is_made(pack, packer, tmp_path):
    write_zip(pack, tmp_path / "one.zip")
    (tmp_path / "other").mkdir()
    again = packer.make(tmp_path / "other/claim")
    for path in again.rglob("*"):
        os.utime(path, (1e9, 1e9))
        if path.is_file():
            path.chmod(0o600)
    write_zip(again, tmp_path / "two.zip")
    assert (tmp_path / "one.zip").read_bytes() == (tmp_path / "two.zip").read_bytes()
    with zipfile.ZipFile(tmp_path / "one.zip") as archive:
        names = archive.namelist()
        assert names == sorted(names)
        assert all(name.startswith("claim/") for name in names)
        assert {entry.date_time for entry in archive.infolist()} == {(1980, 1, 1, 0, 0, 0)}
        assert archive.read("claim/README.txt") == (pack / "README.txt").read_bytes()
    assert not list(tmp_path.glob("*.partial"))


def test_a_zip_writes_over_nothing_and_not_into_what_it_holds(pack, tmp_path):
    (tmp_path / "there.zip").write_bytes(b"mine")
    with pytest.raises(EvidenceError, match="there already"):
        write_zip(pack, tmp_path / "there.zip")
    with pytest.raises(EvidenceError, match="in what it shall hold"):
        write_zip(pack, pack / "data/claim.zip")
    with pytest.raises(EvidenceError, match="can't be written"):
        write_zip(pack, tmp_path / "none/claim.zip")
    shutil.rmtree(pack)
    assert (tmp_path / "there.zip").read_bytes() == b"mine"


def test_packing_tells_how_far_it_is_and_can_be_cancelled(pack, tmp_path):
    parts = []
    write_zip(pack, tmp_path / "whole.zip", parts.append)
    assert parts == sorted(parts)
    assert len(parts) >= len([one for one in pack.rglob("*") if one.is_file()])
    assert parts[-1] == 1.0

    def stop(part):
        if part > 0.5:
            raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        write_zip(pack, tmp_path / "half.zip", stop)
    assert not list(tmp_path.glob("half*"))


def test_row_checks_that_are_known_are_not_made_again_and_come_out_the_same(packer, tmp_path):
    one, two = (packer.fill(tmp_path / name) for name in ("one", "two"))
    ticks = []
    tags = tag_files(one, packer.info, packer.signer, tick=lambda: ticks.append(1))
    made = len(ticks)
    write_bag(one, packer.info, packer.signer, tags, lambda: ticks.append(1))
    # Once a file, and now and then while rows are digested: that falls away.
    assert 0 < len(ticks) - made < made
    write_bag(two, packer.info, packer.signer)
    for name in tags:
        assert (one / name).read_bytes() == (two / name).read_bytes()
