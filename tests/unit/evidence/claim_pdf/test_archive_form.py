"""A PDF for keeping: files inside, dates that are given, the mark of PDF/A-3b."""

import io
from datetime import UTC, datetime
from xml.etree import ElementTree

import pikepdf
import pytest

from meterlog.evidence.claim_pdf.archive_form import Told, archived
from meterlog.evidence.claim_pdf.sheets import Mark

TOLD = Told("a <title> & more", "maker", "writer", datetime(2026, 5, 4, 10, 20, 30, tzinfo=UTC))
FILES = {"data/b.csv": b"1,2\r\n", "data/a.json": b"{}", "odd.xyz": b"\x00" * 9}


@pytest.fixture
def pages():
    out = io.BytesIO()
    with pikepdf.new() as document:
        document.add_blank_page()
        document.add_blank_page()
        document.save(out)
    return out.getvalue()


def _open(content):
    return pikepdf.open(io.BytesIO(content))


def test_the_files_are_inside_by_order_of_names_each_with_kind_and_date(pages):
    with _open(archived(pages, FILES, TOLD)) as document:
        assert list(document.attachments) == sorted(FILES)
        for name, spec in document.attachments.items():
            inside = spec.get_file()
            assert inside.read_bytes() == FILES[name]
            assert spec.obj.AFRelationship == "/Data"
            assert inside.obj.Params.ModDate == "D:20260504102030Z"
        kinds = [one.get_file().mime_type for one in document.attachments.values()]
        assert kinds == ["application/json", "text/csv", "application/octet-stream"]
        listed = [str(spec.UF) for spec in document.Root.AF]
        assert listed == sorted(FILES)


def test_metadata_say_part_3_b_and_the_same_as_the_dictionary(pages):
    with _open(archived(pages, {}, TOLD)) as document:
        xmp = ElementTree.fromstring(document.Root.Metadata.read_bytes().decode("utf-8"))
        said = {one.tag.rpartition("}")[2]: "".join(one.itertext()) for one in xmp.iter()}
        assert (said["part"], said["conformance"]) == ("3", "B")
        assert said["title"] == TOLD.title == document.docinfo.Title
        assert said["CreatorTool"] == TOLD.creator == document.docinfo.Creator
        assert said["Producer"] == TOLD.producer == document.docinfo.Producer
        assert said["CreateDate"] == said["ModifyDate"] == "2026-05-04T10:20:30Z"
        assert document.docinfo.CreationDate == document.docinfo.ModDate == "D:20260504102030Z"
        assert "/AF" not in document.Root


def test_equal_contents_give_equal_bytes_and_others_do_not(pages):
    first = archived(pages, FILES, TOLD)
    assert archived(pages, dict(reversed(FILES.items())), TOLD) == first
    assert archived(pages, {**FILES, "odd.xyz": b"\x01"}, TOLD) != first


def test_chapters_are_a_list_of_contents(pages):
    marks = (Mark("The job", 0), Mark("Photos", 1))
    with (
        _open(archived(pages, {}, TOLD, marks)) as document,
        document.open_outline() as outline,
    ):
        assert [one.title for one in outline.root] == ["The job", "Photos"]
        places = [document.pages.index(pikepdf.Page(one.destination[0])) for one in outline.root]
        assert places == [0, 1]
