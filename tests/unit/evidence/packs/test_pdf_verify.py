"""What a PDF carries is checked against the lists and the signature that it carries, too."""

import pikepdf
import pytest

from meterlog.evidence import pdf_attached
from meterlog.evidence.pack_verification import SignatureState
from meterlog.evidence.pack_verify import verify_pack
from meterlog.model.errors import EvidenceError

TAGS = (
    "bagit.txt",
    "bag-info.txt",
    "manifest-sha256.txt",
    "tagmanifest-sha256.txt",
    "signature.json",
    "row-checks/before/findings.csv.txt",
    "row-checks/before/readings-m.csv.txt",
)
TABLES = ("data/before/findings.csv", "data/before/readings-m.csv")


def pdf(path, contents, **how):
    with pikepdf.new() as document:
        document.add_blank_page()
        for name, content in contents.items():
            spec = pikepdf.AttachedFileSpec(document, content, filename=name)
            document.attachments[name] = spec
        document.save(path, **how)
    return path


@pytest.fixture
def contents(pack):
    return {name: (pack / name).read_bytes() for name in (*TAGS, *TABLES)}


def test_a_pdf_is_intact_and_says_who_signed_and_what_it_does_not_cover(contents, packer, tmp_path):
    found = verify_pack(pdf(tmp_path / "claim.pdf", contents), own="")
    assert (found.kind, found.problems) == ("pdf", ())
    assert found.signature.state is SignatureState.GOOD
    assert found.signature.fingerprint == packer.signer.fingerprint
    assert "What the pages of a PDF show is not covered" in found.remarks[0]
    assert found.remarks[1].startswith("Listed and not attached, so not checked here: 2 files.")


@pytest.mark.parametrize("how", [{"compress_streams": False}, {"recompress_flate": True}])
def test_packed_or_not_the_attachments_are_read(contents, tmp_path, how):
    assert verify_pack(pdf(tmp_path / "claim.pdf", contents, **how), own="").intact


def test_names_without_folders_are_found_by_content_and_by_name(contents, tmp_path):
    bare = {name.rpartition("/")[2]: content for name, content in contents.items()}
    found = verify_pack(pdf(tmp_path / "claim.pdf", bare), own="")
    assert found.problems == ()
    bare["findings.csv"] = bare["findings.csv"].replace(b"0.3,", b"0.4,")
    (one,) = verify_pack(pdf(tmp_path / "c2.pdf", bare), own="").changed
    assert (one.file, one.rows) == ("data/before/findings.csv", ((4, 4),))


@pytest.mark.parametrize("name", [*TAGS, *TABLES])
def test_a_bit_flipped_in_any_attachment_is_found_and_named(contents, tmp_path, name):
    for bit in (0, 99, len(contents[name]) * 8 - 5):
        wrong = bytearray(contents[name])
        wrong[bit // 8] ^= 1 << bit % 8
        found = verify_pack(pdf(tmp_path / "x.pdf", {**contents, name: bytes(wrong)}), own="")
        assert any(name in problem for problem in found.problems)
        if name in TABLES:
            assert found.changed[0].rows


@pytest.mark.parametrize(
    "name", ["manifest-sha256.txt", "tagmanifest-sha256.txt", "signature.json"]
)
def test_without_the_lists_or_the_signature_it_is_not_intact(contents, tmp_path, name):
    del contents[name]
    found = verify_pack(pdf(tmp_path / "x.pdf", contents), own="")
    assert any(name in problem and "missing" in problem for problem in found.problems)


def test_a_table_that_is_not_attached_is_told_by_name(contents, tmp_path):
    del contents["data/before/findings.csv"]
    found = verify_pack(pdf(tmp_path / "x.pdf", contents), own="")
    assert "data/before/findings.csv and 2 other files" in found.remarks[1]


def test_an_attachment_that_no_list_names_is_told(contents, tmp_path):
    contents["extra.csv"] = b"a,b\r\n"
    (problem,) = verify_pack(pdf(tmp_path / "x.pdf", contents), own="").problems
    assert problem == "extra.csv: is listed nowhere; it was added later."


def test_pdfs_that_can_not_be_checked_are_told(contents, tmp_path, monkeypatch):
    with pytest.raises(EvidenceError, match="carries no files"):
        verify_pack(pdf(tmp_path / "none.pdf", {}))
    locked = pikepdf.Encryption(owner="a", user="b")
    with pytest.raises(EvidenceError, match="locked by a password"):
        verify_pack(pdf(tmp_path / "locked.pdf", contents, encryption=locked))
    (tmp_path / "bad.pdf").write_bytes(b"%PDF-1.7\nnothing")
    with pytest.raises(EvidenceError, match="can't be read as a PDF"):
        verify_pack(tmp_path / "bad.pdf")
    monkeypatch.setattr(pdf_attached, "_MOST_BYTES", 1000)
    with pytest.raises(EvidenceError, match="too large"):
        verify_pack(pdf(tmp_path / "big.pdf", contents))


def test_a_packed_attachment_is_never_unpacked_beyond_what_may_be(tmp_path, monkeypatch):
    monkeypatch.setattr(pdf_attached, "_MOST_BYTES", 1 << 20)
    seen = []
    whole = pdf_attached._inflated

    def watched(*given):
        content = whole(*given)
        seen.append(len(content))
        return content

    monkeypatch.setattr(pdf_attached, "_inflated", watched)
    path = pdf(tmp_path / "bomb.pdf", {"zeros": bytes(50 << 20)})
    assert path.stat().st_size < 200_000
    with pytest.raises(EvidenceError, match="too large"):
        verify_pack(path)
    assert seen == [(1 << 20) + 1]
