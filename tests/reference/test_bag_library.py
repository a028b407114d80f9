"""Sealed recordings against the reference implementation of BagIt.

Source: RFC 8493 (October 2018), The BagIt File Packaging Format (V1.0), sections 2 and 3; the
``bagit`` library of the format's authors as an independent judge of complete and valid.
"""

import shutil
from datetime import UTC, datetime

import bagit
import numpy as np
import pytest

from meterlog.evidence import verify_folder
from meterlog.model import About, Block, Channel, Instrument, Origin, Quantity, RawBytes
from meterlog.recording import Recorder, seal
from meterlog.recording.bag import decode_name, encode_name


@pytest.fixture(scope="module")
def sealed(tmp_path_factory):
    folder = tmp_path_factory.mktemp("bag") / "run"
    one = Instrument("meter", "p", "x", (Channel("u", Quantity.VOLTAGE),))
    about = About("the-id", datetime(2026, 5, 4, tzinfo=UTC), 0, 0, "t", Origin.MEASURED, (one,))
    recorder = Recorder.create(folder, about)
    recorder.take(RawBytes("meter", 0, b"1.0\r\n"))
    recorder.take(Block("meter", np.arange(9), np.ones((9, 1)), np.zeros((9, 1), np.uint8)))
    recorder.close()
    (folder / "data/original").mkdir()
    (folder / "data/original/trace of märz.csv").write_text("0,1\n")
    seal(folder)
    return folder


@pytest.fixture
def bag(sealed, tmp_path):
    shutil.copytree(sealed, tmp_path / "bag")
    return tmp_path / "bag"


def test_the_library_finds_the_bag_valid(bag):
    found = bagit.Bag(str(bag))
    found.validate()
    assert found.version_info == (1, 0)
    assert found.algorithms == ["sha256"]
    assert found.info["External-Identifier"] == "the-id"
    size = sum(path.stat().st_size for path in (bag / "data").rglob("*") if path.is_file())
    assert found.info["Payload-Oxum"] == f"{size}.5"
    assert verify_folder(bag).intact


def test_a_cache_that_no_manifest_lists_leaves_the_bag_valid(bag):
    (bag / "cache").mkdir()
    (bag / "cache/envelope").write_bytes(b"x")
    bagit.Bag(str(bag)).validate()


@pytest.mark.parametrize(
    "change",
    ["flip", "cut", "missing", "added", "tag", "manifest"],
)
def test_the_library_and_we_agree_on_what_is_no_longer_valid(bag, change):
    payload = bag / "data/meter.arrows"
    if change == "flip":
        content = bytearray(payload.read_bytes())
        content[100] ^= 1
        payload.write_bytes(content)
    elif change == "cut":
        payload.write_bytes(payload.read_bytes()[:-1])
    elif change == "missing":
        payload.unlink()
    elif change == "added":
        (bag / "data/extra").write_text("x")
    else:
        name = "bag-info.txt" if change == "tag" else "manifest-sha256.txt"
        text = (bag / name).read_text(encoding="utf-8")
        wrong = text.replace("the-id", "The-id").replace("data/meter.raw", "data/meter.row")
        (bag / name).write_text(wrong, encoding="utf-8")
    with pytest.raises(bagit.BagError):
        bagit.Bag(str(bag)).validate()
    assert not verify_folder(bag).intact


def test_names_are_written_as_section_2_1_3_wants_it():
    # carriage return, line feed and the percent sign become codes
    assert encode_name("data/a\rb\nc%0A.csv") == "data/a%0Db%0Ac%250A.csv"
    assert decode_name("data/a%0Db%0Ac%250A.csv") == "data/a\rb\nc%0A.csv"
