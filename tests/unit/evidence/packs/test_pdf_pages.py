"""Whoever changes a page of a pack's PDF is told which: what it shows is listed and signed."""

import pikepdf
import pytest

from meterlog.evidence.pack_bag import write_bag
from meterlog.evidence.pack_verify import verify_pack
from meterlog.evidence.page_list import PAGES
from meterlog.evidence.pdf_pages import differing, page_digests, put_inside
from meterlog.model.errors import EvidenceError

TABLE = "data/before/findings.csv"


@pytest.fixture
def claim(packer, tmp_path):
    """A PDF of three pages that share a font, with its pack inside."""
    folder = packer.fill(tmp_path / "claim")
    (folder / PAGES).touch()
    path = tmp_path / "claim.pdf"
    with pikepdf.new() as document:
        font = document.make_indirect(
            pikepdf.Dictionary(
                Type=pikepdf.Name.Font,
                Subtype=pikepdf.Name.Type1,
                BaseFont=pikepdf.Name.Helvetica,
            )
        )
        for number in (1, 2, 3):
            document.add_blank_page()
            page = document.pages[-1]
            page.Resources = pikepdf.Dictionary(Font=pikepdf.Dictionary(F=font))
            text = f"BT /F 12 Tf 50 50 Td ({number}.25 A) Tj ET".encode()
            page.Contents = document.make_stream(text)
        names = (PAGES, "bagit.txt", "bag-info.txt", "manifest-sha256.txt")
        for name in (*names, "tagmanifest-sha256.txt", "signature.json", TABLE):
            spec = pikepdf.AttachedFileSpec(document, b"", filename=name)
            document.attachments[name] = spec
        document.save(path)
    (folder / PAGES).write_bytes(page_digests(path))
    write_bag(folder, packer.info, packer.signer)
    with pikepdf.open(path) as document:
        inside = list(document.attachments)
    put_inside(path, {name: (folder / name).read_bytes() for name in inside})
    return path


def changed(path, change, **how):
    with pikepdf.open(path, allow_overwriting_input=True) as document:
        change(document)
        document.save(path, **how)
    return verify_pack(path, own="").problems


def test_pages_that_nobody_touched_are_intact(claim):
    found = verify_pack(claim, own="")
    assert found.problems == ()
    assert not any("pages" in text for text in found.remarks)


@pytest.mark.parametrize(
    "how",
    [
        {"linearize": True},
        {"object_stream_mode": pikepdf.ObjectStreamMode.generate},
        {"object_stream_mode": pikepdf.ObjectStreamMode.disable, "qdf": False},
    ],
)
def test_where_objects_lie_in_the_file_does_not_count(claim, how):
    assert changed(claim, lambda _: None, **how) == ()


def drawn_over(document):
    page = document.pages[1]
    page.contents_add(document.make_stream(b"1 g 0 0 600 600 re f"))


def figure(document):
    stream = document.pages[1].obj.Contents
    stream.write(stream.read_bytes().replace(b"2.25", b"7.25"))


def noted(document):
    note = pikepdf.Dictionary(
        Type=pikepdf.Name.Annot,
        Subtype=pikepdf.Name.FreeText,
        Rect=[0, 0, 99, 99],
        Contents=pikepdf.String("7.25 A"),
    )
    document.pages[1].obj.Annots = pikepdf.Array([document.make_indirect(note)])


def other_font(document):
    fonts = document.pages[1].obj.Resources.Font
    fonts.F = document.make_indirect(pikepdf.Dictionary(Type=pikepdf.Name.Font))


@pytest.mark.parametrize("change", [drawn_over, figure, noted, other_font])
def test_a_changed_page_is_named(claim, change):
    assert changed(claim, change) == (f"page 2: is not as it was made (SHA-256 in {PAGES}).",)


def test_what_pages_inherit_counts(tmp_path):
    digests = set()
    for box in (b"[0 0 595 842]", b"[0 400 595 842]"):
        path = tmp_path / "one.pdf"
        path.write_bytes(
            b"%PDF-1.4\n1 0 obj<</Type/Catalog/Pages 2 0 R>>endobj\n"
            b"2 0 obj<</Type/Pages/Kids[3 0 R]/Count 1/MediaBox" + box + b">>endobj\n"
            b"3 0 obj<</Type/Page/Parent 2 0 R>>endobj\ntrailer<</Root 1 0 R/Size 4>>\n%%EOF\n"
        )
        digests.add(page_digests(path).splitlines()[1])
    assert len(digests) == 2


def test_pages_taken_out_put_in_and_swapped_are_told(claim, tmp_path):
    whole = claim.read_bytes()

    def taken(document):
        del document.pages[2]

    assert changed(claim, taken) == ("page 3: is missing.",)
    claim.write_bytes(whole)
    assert changed(claim, lambda one: one.add_blank_page()) == ("page 4: was added later.",)
    claim.write_bytes(whole)

    def swapped(document):
        document.pages.append(document.pages[0])
        del document.pages[0]

    assert len(changed(claim, swapped)) == 3


def test_programs_and_files_beside_the_pages_are_told(claim):
    whole = claim.read_bytes()

    def script(document):
        document.Root.OpenAction = pikepdf.Dictionary(
            S=pikepdf.Name.JavaScript, JS=pikepdf.String("app.alert(1)")
        )

    def another(document):
        spec = pikepdf.AttachedFileSpec(document, b"evil", filename=TABLE)
        document.Root.AF = pikepdf.Array([document.make_indirect(spec.obj)])

    for change in (script, another):
        claim.write_bytes(whole)
        (told,) = changed(claim, change)
        assert told.startswith("the PDF besides its pages: is not as it was made")


def test_without_the_list_of_pages_nothing_is_intact(claim):
    def without(document):
        del document.attachments[PAGES]

    (told,) = changed(claim, without)
    assert told == f"{PAGES}: is missing; tagmanifest-sha256.txt lists it."


def test_a_list_made_to_fit_other_pages_is_told(claim):
    with pikepdf.open(claim, allow_overwriting_input=True) as document:
        figure(document)
        document.save(claim)
    put_inside(claim, {PAGES: page_digests(claim)})
    (told,) = verify_pack(claim, own="").problems
    assert told.startswith(f"{PAGES}: differs from what was packed")


def test_what_stands_around_the_pdf_is_told(claim):
    whole = claim.read_bytes()
    claim.write_bytes(whole + b"more")
    assert verify_pack(claim, own="").problems == ("There is something behind the end of the PDF.",)
    claim.write_bytes(b"more\n" + whole)
    (told,) = verify_pack(claim, own="").problems
    assert "does not begin at the beginning" in told


def test_a_list_that_is_none_is_told(claim):
    assert differing(claim, b"\xff\xfe") == (f"{PAGES}: is not as a pack holds it.",)
    assert differing(claim, b"") == (f"{PAGES}: is not as a pack holds it.",)


def test_loops_and_long_chains_are_followed_without_end(claim):
    before = page_digests(claim)
    with pikepdf.open(claim, allow_overwriting_input=True) as document:
        page = document.pages[0].obj
        last = page
        for _ in range(5000):
            last.Next = document.make_indirect(pikepdf.Dictionary())
            last = last.Next
        last.Next = page.Next
        document.save(claim)
    after = page_digests(claim)
    lines = zip(before.splitlines(), after.splitlines(), strict=True)
    assert [one == two for one, two in lines] == [True, False, True, True, True, True]


def later_date(document):
    document.attachments[TABLE].get_file().obj.Params.ModDate = pikepdf.String("D:20260101")


def other_words(document):
    document.attachments[TABLE].obj.Desc = pikepdf.String("data/after/findings.csv")


@pytest.mark.parametrize("change", [later_date, other_words])
def test_what_is_said_of_a_file_inside_is_signed_too(claim, change):
    (told,) = changed(claim, change)
    assert (
        told
        == f"what the PDF says of the files inside: is not as it was made (SHA-256 in {PAGES})."
    )


@pytest.mark.parametrize(("key", "why"), [("UF", "two names"), ("EF", "two contents")])
def test_a_file_that_programs_could_take_for_two_is_refused(claim, key, why):
    with pikepdf.open(claim, allow_overwriting_input=True) as document:
        spec = document.attachments[TABLE].obj
        if key == "UF":
            spec.UF = pikepdf.String("data/before/other.csv")
        else:
            spec.EF.UF = document.make_stream(b"evil")
        document.save(claim)
    with pytest.raises(EvidenceError, match=why):
        verify_pack(claim, own="")
