"""ArchiveForm: a PDF made fit for keeping: files inside, fixed dates, marked as PDF/A-3b.

Source
------
ISO 19005-3 (PDF/A-3): 6.6 metadata, 6.8 embedded files; ISO 32000-2, 7.11.4 and 14.13 (associated
files). Qt writes PDF/A-1b, whose rules for pages all hold in PDF/A-3b.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path, PurePosixPath
from typing import BinaryIO
from xml.sax.saxutils import escape

import pikepdf

from meterlog.evidence.attached_names import attached_names
from meterlog.evidence.claim_pdf.sheets import Mark
from meterlog.evidence.packed_ahead import PIECE, Packed, none_packed, pack
from meterlog.evidence.pdf_form import save_in_form

_KINDS = {
    ".csv": "text/csv",
    ".json": "application/json",
    ".jsonl": "application/jsonl",
    ".txt": "text/plain",
    ".toml": "application/toml",
    ".png": "image/png",
    ".jpg": "image/jpeg",
}
_ANY = "application/octet-stream"

_XMP = """\
<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/">
 <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
  <rdf:Description rdf:about=""
    xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/"
    xmlns:dc="http://purl.org/dc/elements/1.1/"
    xmlns:xmp="http://ns.adobe.com/xap/1.0/"
    xmlns:pdf="http://ns.adobe.com/pdf/1.3/">
   <pdfaid:part>3</pdfaid:part>
   <pdfaid:conformance>B</pdfaid:conformance>
   <dc:title><rdf:Alt><rdf:li xml:lang="x-default">{title}</rdf:li></rdf:Alt></dc:title>
   <xmp:CreatorTool>{creator}</xmp:CreatorTool>
   <xmp:CreateDate>{made}</xmp:CreateDate>
   <xmp:ModifyDate>{made}</xmp:ModifyDate>
   <pdf:Producer>{producer}</pdf:Producer>
  </rdf:Description>
 </rdf:RDF>
</x:xmpmeta>
<?xpacket end="r"?>"""


@dataclass(frozen=True, slots=True)
class Told:
    """What the file says of itself.

    Attributes
    ----------
    title, creator, producer : str
    made : datetime
        With its offset.
    """

    title: str
    creator: str
    producer: str
    made: datetime


def write_archived(
    pages: BinaryIO,
    out: Path,
    attachments: Mapping[str, bytes],
    told: Told,
    marks: Sequence[Mark] = (),
    tick: Callable[[], None] = lambda: None,
    packed: Callable[[str], Packed | None] = none_packed,
) -> None:
    """Write a PDF/A-3b: equal contents give equal bytes.

    Parameters
    ----------
    pages : BinaryIO
        A PDF/A-1b.
    out : Path
        A file there is replaced once the new one is whole.
    attachments : mapping of str to bytes
        By their names in the pack, which become their descriptions.
    told : Told
    marks : sequence of Mark
        For the list of contents.
    tick : callable
        Called now and then. May raise to cancel.
    packed : callable
        Gives one of the attachments, by its name, as it has been packed already, or None.

    Raises
    ------
    EvidenceError
        If two files would have one name inside.
    OSError
        If the file can't be written.
    """
    made = told.made.astimezone(UTC).replace(microsecond=0)
    with pikepdf.open(pages) as document:
        _pack_all(document, tick)
        _say(document, told, made)
        _attach(document, attachments, made, tick, packed)
        document.Root.PageMode = pikepdf.Name.UseOutlines
        document.Root.Lang = pikepdf.String("en")
        document.Root.ViewerPreferences = pikepdf.Dictionary(DisplayDocTitle=True)
        with document.open_outline() as outline:
            outline.root.extend(pikepdf.OutlineItem(one.title, one.page) for one in marks)
        save_in_form(document, out)


def _pack_all(document: pikepdf.Pdf, tick: Callable[[], None]) -> None:
    """Pack what Qt left unpacked: a program that saves the file anew would, and change a page."""
    for one in document.objects:
        if isinstance(one, pikepdf.Stream) and "/Filter" not in one:
            one.write(_packed(one.read_raw_bytes(), tick), filter=pikepdf.Name.FlateDecode)


def _say(document: pikepdf.Pdf, told: Told, made: datetime) -> None:
    """Write title, dates and form, in the metadata and, equal to it, in the older dictionary."""
    dated = pikepdf.String(f"D:{made:%Y%m%d%H%M%S}Z")
    document.trailer.Info = document.make_indirect(
        pikepdf.Dictionary(
            Title=pikepdf.String(told.title),
            Creator=pikepdf.String(told.creator),
            Producer=pikepdf.String(told.producer),
            CreationDate=dated,
            ModDate=dated,
        )
    )
    text = _XMP.format(
        title=escape(told.title),
        creator=escape(told.creator),
        producer=escape(told.producer),
        made=f"{made:%Y-%m-%dT%H:%M:%SZ}",
    )
    document.Root.Metadata = document.make_stream(
        text.encode(), Type=pikepdf.Name.Metadata, Subtype=pikepdf.Name.XML
    )


def _attach(
    document: pikepdf.Pdf,
    attachments: Mapping[str, bytes],
    made: datetime,
    tick: Callable[[], None],
    packed: Callable[[str], Packed | None],
) -> None:
    when = f"D:{made:%Y%m%d%H%M%S}Z"
    specs = []
    for name, inside in attached_names(attachments).items():
        spec = pikepdf.AttachedFileSpec(
            document,
            attachments[name],
            filename=inside,
            description=name,
            mime_type=_KINDS.get(PurePosixPath(name).suffix.lower(), _ANY),
            creation_date=when,
            mod_date=when,
            relationship=pikepdf.Name.Data,
        )
        # What has no folder in the pack is a list, some of which get their content later.
        if "/" in name:
            known = packed(name)
            content = known.stream if known else _packed(attachments[name], tick)
            spec.get_file().obj.write(content, filter=pikepdf.Name.FlateDecode)
        document.attachments[inside] = spec
        specs.append(document.attachments[inside].obj)
    if specs:
        document.Root.AF = document.make_indirect(pikepdf.Array(specs))


def _packed(content: bytes, tick: Callable[[], None]) -> bytes:
    return pack(_ticking(content, tick)).stream


def _ticking(content: bytes, tick: Callable[[], None]) -> Iterator[bytes]:
    for at in range(0, len(content), PIECE):
        tick()
        yield content[at : at + PIECE]
