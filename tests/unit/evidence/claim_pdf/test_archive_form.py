"""A PDF for keeping: files inside, dates that are given, the mark of PDF/A-3b."""

import io
from datetime import UTC, datetime
from xml.etree import ElementTree

import pikepdf
import pytest

from meterlog.evidence.claim_pdf.archive_form import Told, write_archived
from meterlog.evidence.claim_pdf.sheets import Mark
from meterlog.evidence.pdf_form import out_of_form
from meterlog.model.errors import EvidenceError

TOLD = Told("a <title> & more", "maker", "writer", datetime(2026, 5, 4, 10, 20, 30, tzinfo=UTC))
FILES = {"data/b.csv": b"1,2\r\n", "data/a.json": b"{}", "odd.xyz": b"\x00" * 9}
INSIDE = ["data.a.json", "data.b.csv", "odd.xyz"]


@pytest.fixture
def pages():
    out = io.BytesIO()
    with pikepdf.new() as document:
        document.add_blank_page()
        document.add_blank_page()
        document.save(out)
    return out.getvalue()


@pytest.fixture
def archived(pages, tmp_path):
    """Write it, and give its bytes."""

    def write(files, marks=()):
        write_archived(io.BytesIO(pages), tmp_path / "out.pdf", files, TOLD, marks)
        return (tmp_path / "out.pdf").read_bytes()

    return write


def _open(content):
    return pikepdf.open(io.BytesIO(content))


def test_the_files_are_inside_by_order_of_names_each_with_kind_and_date(archived):
    with _open(archived(FILES)) as document:
        assert list(document.attachments) == INSIDE
        for spec in document.attachments.values():
            inside = spec.get_file()
            assert inside.read_bytes() == FILES[str(spec.obj.Desc)]
            assert spec.obj.AFRelationship == "/Data"
            assert inside.obj.Params.ModDate == "D:20260504102030Z"
        kinds = [one.get_file().mime_type for one in document.attachments.values()]
        assert kinds == ["application/json", "text/csv", "application/octet-stream"]
        listed = [str(spec.UF) for spec in document.Root.AF]
        assert listed == INSIDE


def test_two_files_of_one_name_inside_are_refused(archived):
    with pytest.raises(EvidenceError, match="two of its files would have one name inside"):
        archived({"data/a.csv": b"", "data.a.CSV": b""})


def test_any_other_byte_is_told_and_none_where_there_is_none(archived, tmp_path):
    whole, path = archived(FILES), tmp_path / "out.pdf"
    assert out_of_form(path) == ("", "")
    told = 0
    for at in range(len(whole) - 700, len(whole), 7):
        path.write_bytes(whole[:at] + bytes([whole[at] ^ 4]) + whole[at + 1 :])
        try:
            told += "not, to the byte, as it was made" in out_of_form(path)[0]
        except pikepdf.PdfError:
            told += 1
    assert told == 100


def test_a_form_of_another_version_is_known_and_no_harm(archived, tmp_path):
    archived(FILES)
    path = tmp_path / "out.pdf"
    with pikepdf.open(path, allow_overwriting_input=True) as document:
        document.docinfo["/Producer"] = "writer, qpdf 1.2.3"
        document.save(path)
    wrong, known = out_of_form(path)
    assert wrong == ""
    assert known.startswith("The PDF was saved by qpdf 1.2.3, and qpdf ")


def test_metadata_say_part_3_b_and_the_same_as_the_dictionary(archived):
    with _open(archived({})) as document:
        xmp = ElementTree.fromstring(document.Root.Metadata.read_bytes().decode("utf-8"))
        said = {one.tag.rpartition("}")[2]: "".join(one.itertext()) for one in xmp.iter()}
        assert (said["part"], said["conformance"]) == ("3", "B")
        assert said["title"] == TOLD.title == document.docinfo.Title
        assert said["CreatorTool"] == TOLD.creator == document.docinfo.Creator
        assert said["Producer"] == TOLD.producer == document.docinfo.Producer
        assert said["CreateDate"] == said["ModifyDate"] == "2026-05-04T10:20:30Z"
        assert document.docinfo.CreationDate == document.docinfo.ModDate == "D:20260504102030Z"
        assert "/AF" not in document.Root


def test_equal_contents_give_equal_bytes_and_others_do_not(archived):
    first = archived(FILES)
    assert archived(dict(reversed(FILES.items()))) == first
    assert archived({**FILES, "odd.xyz": b"\x01"}) != first


def test_chapters_are_a_list_of_contents(archived):
    marks = (Mark("The job", 0), Mark("Photos", 1))
    with (
        _open(archived({}, marks)) as document,
        document.open_outline() as outline,
    ):
        assert [one.title for one in outline.root] == ["The job", "Photos"]
        places = [document.pages.index(pikepdf.Page(one.destination[0])) for one in outline.root]
        assert places == [0, 1]
