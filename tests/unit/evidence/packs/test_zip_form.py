"""A zip that is not to the byte as it was made is told apart from one whose content is changed."""

import random
import zipfile

import pytest

from meterlog.evidence import pack_zip, zip_form
from meterlog.evidence.pack_bag import write_bag
from meterlog.evidence.pack_verify import verify_pack
from meterlog.evidence.pack_zip import write_zip
from meterlog.evidence.zip_form import PACKED_BY, PACKER
from meterlog.model.errors import EvidenceError


@pytest.fixture
def packed(packer, tmp_path):
    folder = packer.fill(tmp_path / "claim")
    write_bag(folder, {**packer.info, PACKED_BY: PACKER}, packer.signer)
    write_zip(folder, tmp_path / "claim.zip")
    return tmp_path / "claim.zip"


def test_as_made_nothing_is_said(packed):
    found = verify_pack(packed, own="")
    assert (found.problems, found.container, found.remarks) == ((), "", ())
    assert found.to_dict()["container"] == ""


def test_every_single_bit_that_is_flipped_is_told(packed):
    """Dates, modes, versions, the list at the end: 300 places, drawn with a seed."""
    whole, draw = packed.read_bytes(), random.Random(4)
    told = {"content": 0, "container": 0, "refused": 0, "nothing": 0}
    for number in range(300):
        # Half of them where the list of entries stands, which is mostly dates and modes.
        at = draw.randrange(len(whole) - 900 * (number % 2), len(whole)) if number % 2 else (
            draw.randrange(len(whole)))  # fmt: skip
        packed.write_bytes(
            whole[:at] + bytes([whole[at] ^ (1 << draw.randrange(8))]) + whole[at + 1 :]
        )
        try:
            found = verify_pack(packed, own="")
        except EvidenceError:
            told["refused"] += 1
            continue
        container = "container" if found.container else "nothing"
        told[container if found.intact else "content"] += 1
    assert told["nothing"] == 0
    assert told["container"] > 30
    assert told["content"] > 30


def test_a_changed_date_leaves_the_content_intact(packed):
    whole = bytearray(packed.read_bytes())
    whole[10] ^= 1  # time of the first entry, in its head
    packed.write_bytes(whole)
    found = verify_pack(packed, own="")
    assert found.intact
    assert found.container.startswith("The zip file itself is not, to the byte, as it was made")


def test_packed_by_another_zlib_is_known_and_no_fault_but_a_date_is(packed, monkeypatch):
    monkeypatch.setattr(zip_form, "PACKER", "zlib 9.9.9")
    assert verify_pack(packed, own="").container == ""
    # One that packs less: other packed bytes, other places in the list.
    monkeypatch.setattr(pack_zip, "LEVEL", 1)
    found = verify_pack(packed, own="")
    assert (found.intact, found.container) == (True, "")
    assert found.remarks == (
        f"It was packed by {PACKER}, and zlib 9.9.9 is here: its packed bytes can't be compared.",
    )
    whole = bytearray(packed.read_bytes())
    whole[10] ^= 1
    packed.write_bytes(whole)
    assert verify_pack(packed, own="").container


def test_large_entries_packed_by_another_zlib_have_the_same_form(tmp_path, monkeypatch):
    """Above a limit (lowered here) sizes and places stand elsewhere, with 64 bits."""
    folder = tmp_path / "claim"
    folder.mkdir()
    rows = "".join(f"{k},{k * k % 977}\n" for k in range(60_000))
    (folder / "a.csv").write_text(rows)
    (folder / "b.csv").write_text("x\n")
    for limit in (zipfile.ZIP64_LIMIT, 200_000, 100):
        monkeypatch.setattr(zipfile, "ZIP64_LIMIT", limit)
        forms = []
        for level in (1, 6):
            monkeypatch.setattr(pack_zip, "LEVEL", level)
            path = tmp_path / f"{limit}-{level}.zip"
            write_zip(folder, path)
            forms.append(zip_form._form(path))
            whole = bytearray(path.read_bytes())
            whole[10] ^= 1  # time of the first entry
            path.write_bytes(whole)
            assert zip_form._form(path) != forms[-1]
        assert forms[0] == forms[1]
