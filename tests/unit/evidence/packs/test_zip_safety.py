"""Zips that could harm are refused before anything is unpacked, and nothing is left behind."""

import shutil
import stat
import struct
import tempfile
import zipfile
from types import SimpleNamespace

import pytest

from meterlog.evidence.pack_verify import verify_pack
from meterlog.evidence.zip_safety import ZipLimits, unpack
from meterlog.model.errors import EvidenceError


@pytest.fixture
def outside(tmp_path, monkeypatch):
    """A folder for temporary files deep in another, so that what gets out is seen."""
    place = tmp_path / "a/b/c"
    place.mkdir(parents=True)
    monkeypatch.setattr(tempfile, "tempdir", str(place))
    return tmp_path


def made(path, entries, mode=None):
    """Write a zip with these (name, content) entries, odd names and all."""
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, content in entries:
            entry = zipfile.ZipInfo("x")
            entry.filename = name  # past what the library would put right
            entry.compress_type = zipfile.ZIP_DEFLATED
            if mode is not None:
                entry.external_attr = mode << 16
            archive.writestr(entry, content)
    return path


def refused(path, outside, why):
    before = sorted(outside.rglob("*"))
    with pytest.raises(EvidenceError, match=why):
        verify_pack(path, own="")
    assert sorted(outside.rglob("*")) == before


@pytest.mark.parametrize(
    "name",
    ["../evil", "claim/../../evil", "/etc/evil", "C:/evil", "c:evil", "..\\evil", "claim\\evil",
     "claim//x", "./x", "", "claim/x\n", "\\\\host\\share", "claim/..", "nul"],
)  # fmt: skip
def test_names_that_lead_out_are_refused(outside, name):
    path = made(outside / "x.zip", [("claim/bagit.txt", b"x"), (name, b"evil")])
    refused(path, outside, "leads out|odd")


@pytest.mark.parametrize("kind", [stat.S_IFLNK, stat.S_IFIFO, stat.S_IFCHR, stat.S_IFDIR])
def test_links_and_devices_are_refused(outside, kind):
    path = made(outside / "x.zip", [("claim/data", b"/etc/passwd")], kind | 0o777)
    refused(path, outside, "link or a device")


@pytest.mark.filterwarnings("ignore:Duplicate name")
@pytest.mark.parametrize("second", ["claim/a.txt", "CLAIM/A.txt", "claim/a.txt/b"])
def test_two_entries_at_one_place_are_refused(outside, second):
    path = made(outside / "x.zip", [("claim/a.txt", b"x"), (second, b"y")])
    refused(path, outside, "two entries|lies in a file")


def test_one_accent_written_in_two_ways_is_one_name(outside):
    path = made(outside / "x.zip", [("claim/m\u00e4rz", b"x"), ("claim/ma\u0308rz", b"y")])
    refused(path, outside, "two entries")


def test_a_bomb_is_refused_by_its_ratio(outside):
    path = made(outside / "x.zip", [("claim/zeros", bytes(40 << 20))])
    assert path.stat().st_size < 100_000
    refused(path, outside, "times its size")


def test_too_many_or_too_much_is_refused(outside):
    path = made(outside / "x.zip", [(f"claim/{k}", b"") for k in range(10_001)])
    refused(path, outside, "10001 entries")
    path = made(outside / "y.zip", [("claim/a", b"12345"), ("claim/b", b"12345")])
    with pytest.raises(EvidenceError, match="unpack to 10 bytes, 9"):
        unpack(path, outside / "a", ZipLimits(total=9))


def test_more_than_the_disk_has_room_for_is_told(outside, monkeypatch):
    path = made(outside / "x.zip", [("claim/a", b"12345")])
    monkeypatch.setattr(shutil, "disk_usage", lambda _: SimpleNamespace(free=4))
    refused(path, outside, "needs 5 bytes, 4 are free")


def test_a_size_that_is_stated_too_small_is_never_gone_beyond(outside):
    path = made(outside / "x.zip", [("claim/zeros", bytes(30 << 20))])
    content = bytearray(path.read_bytes())
    head = content.rindex(b"PK\x01\x02")
    content[head + 24 : head + 28] = struct.pack("<I", 1000)
    path.write_bytes(content)
    into = outside / "into"
    into.mkdir()
    _, problems, torn = unpack(path, into)
    assert "claim/zeros: is damaged in the zip" in problems[0]
    assert torn == {"zeros"}
    assert (into / "claim/zeros").stat().st_size <= 1000


def test_entries_that_lie_upon_each_other_are_refused(outside):
    path = made(outside / "x.zip", [("claim/a", b"x" * 99), ("claim/b", b"y" * 99)])
    content = bytearray(path.read_bytes())
    second = content.rindex(b"PK\x01\x02")
    content[second + 42 : second + 46] = struct.pack("<I", 0)
    path.write_bytes(content)
    refused(path, outside, "lies upon another")


def test_encrypted_entries_and_other_methods_are_refused(outside):
    path = made(outside / "x.zip", [("claim/a", b"x")])
    content = bytearray(path.read_bytes())
    head = content.rindex(b"PK\x01\x02")
    content[head + 8] |= 1
    path.write_bytes(content)
    refused(path, outside, "encrypted")
    with zipfile.ZipFile(outside / "y.zip", "w", zipfile.ZIP_BZIP2) as archive:
        archive.writestr("claim/a", b"x")
    refused(outside / "y.zip", outside, "another method")


def test_a_cut_zip_is_told_as_such(outside):
    path = made(outside / "x.zip", [("claim/a", b"x" * 1000)])
    path.write_bytes(path.read_bytes()[:-30])
    refused(path, outside, "can't be read as a zip")


def test_a_harmless_zip_goes_where_it_shall_and_nowhere_else(outside):
    path = made(outside / "x.zip", [("claim/data/a.txt", b"hello")])
    into = outside / "into"
    into.mkdir()
    top, problems, torn = unpack(path, into)
    assert (top, problems, torn) == (into / "claim", (), frozenset())
    assert (top / "data/a.txt").read_bytes() == b"hello"


def test_any_flipped_bit_of_a_small_zip_ends_in_words(outside):
    path = made(outside / "x.zip", [("claim/bagit.txt", b"abc"), ("claim/data/x", b"def" * 9)])
    whole = path.read_bytes()
    for bit in range(0, len(whole) * 8, 3):
        wrong = bytearray(whole)
        wrong[bit // 8] ^= 1 << bit % 8
        path.write_bytes(wrong)
        try:
            intact = verify_pack(path, own="").intact
        except EvidenceError:
            intact = False
        assert not intact  # it lacks every list
