"""Packs against the reference implementation of BagIt, and against ``sha256sum``.

Source: RFC 8493 (October 2018), sections 2 to 4; the ``bagit`` library of the format's authors;
``sha256sum`` of the GNU core utilities.
"""

import shutil
import subprocess
import zipfile

import bagit
import pytest
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

from meterlog.evidence.pack_bag import write_bag
from meterlog.evidence.pack_verify import verify_pack
from meterlog.evidence.pack_zip import write_zip
from meterlog.evidence.signing import Signer

TABLE = b"t,i\r\n" + b"".join(b"%d,1.5\r\n" % k for k in range(400))


@pytest.fixture
def pack(tmp_path):
    folder = tmp_path / "claim of märz"
    (folder / "data/after").mkdir(parents=True)
    (folder / "data/after/readings.csv").write_bytes(TABLE)
    (folder / "data/off & on.txt").write_bytes(b"x")
    (folder / "README.txt").write_bytes(b"beside the payload")
    signer = Signer(Ed25519PrivateKey.generate())
    write_bag(folder, {"Source-Organization": "invented", "Contact-Name": "a\nb"}, signer)
    return folder


def test_the_library_finds_the_pack_valid(pack):
    found = bagit.Bag(str(pack))
    found.validate()
    assert found.version_info == (1, 0)
    assert found.info["Source-Organization"] == "invented"
    assert found.info["Contact-Name"] == "a b"
    assert found.info["Payload-Oxum"] == f"{len(TABLE) + 1}.2"
    assert verify_pack(pack, own="").intact


def test_the_library_finds_the_unpacked_zip_valid(pack, tmp_path):
    write_zip(pack, tmp_path / "claim.zip")
    with zipfile.ZipFile(tmp_path / "claim.zip") as archive:
        assert archive.testzip() is None
        archive.extractall(tmp_path / "out")
    bagit.Bag(str(tmp_path / "out/claim of märz")).validate()


@pytest.mark.parametrize("name", ["data/after/readings.csv", "README.txt", "bag-info.txt"])
def test_the_library_and_we_agree_that_it_is_no_longer_valid(pack, name):
    content = bytearray((pack / name).read_bytes())
    content[3] ^= 1
    (pack / name).write_bytes(content)
    with pytest.raises(bagit.BagError):
        bagit.Bag(str(pack)).validate()
    assert not verify_pack(pack, own="").intact


@pytest.mark.skipif(shutil.which("sha256sum") is None, reason="sha256sum is not here")
def test_sha256sum_checks_both_lists(pack):
    for manifest in ("manifest-sha256.txt", "tagmanifest-sha256.txt"):
        command = ["sha256sum", "--check", "--strict", manifest]
        subprocess.run(command, cwd=pack, check=True, capture_output=True)
    (pack / "data/after/readings.csv").write_bytes(TABLE + b"\n")
    command = ["sha256sum", "--check", "manifest-sha256.txt"]
    ended = subprocess.run(command, cwd=pack, check=False, capture_output=True, text=True)
    assert ended.returncode == 1
    assert "data/after/readings.csv: FAILED" in ended.stdout
