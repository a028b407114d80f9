"""ArchiveForm: a PDF made fit for keeping: files inside, fixed dates, marked as PDF/A-3b.

Source
------
ISO 19005-3 (PDF/A-3): 6.6 metadata, 6.8 embedded files; ISO 32000-2, 7.11.4 and 14.13 (associated
files). Qt writes PDF/A-1b, whose rules for pages all hold in PDF/A-3b.
"""

from __future__ import annotations

import io
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import PurePosixPath
from typing import Final
from xml.sax.saxutils import escape

import pikepdf

from meterlog.evidence.claim_pdf.sheets import Mark

_LEVEL: Final = 3
"""Of zlib: tables of readings come out an eighth larger than with its usual 6, in less than half
the time."""
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


def archived(
    pages: bytes, attachments: Mapping[str, bytes], told: Told, marks: Sequence[Mark] = ()
) -> bytes:
    """Give a PDF/A-3b: equal contents give equal bytes.

    Parameters
    ----------
    pages : bytes
        A PDF/A-1b.
    attachments : mapping of str to bytes
        By the name they get; put in by order of names.
    told : Told
    marks : sequence of Mark
        For the list of contents.
    """
    made = told.made.astimezone(UTC).replace(microsecond=0)
    with pikepdf.open(io.BytesIO(pages)) as document:
        # Qt's is random; one that follows from the content is made when it is saved.
        if "/ID" in document.trailer:
            del document.trailer["/ID"]
        _say(document, told, made)
        _attach(document, attachments, made)
        document.Root.PageMode = pikepdf.Name.UseOutlines
        document.Root.Lang = pikepdf.String("en")
        document.Root.ViewerPreferences = pikepdf.Dictionary(DisplayDocTitle=True)
        with document.open_outline() as outline:
            outline.root.extend(pikepdf.OutlineItem(one.title, one.page) for one in marks)
        out = io.BytesIO()
        pikepdf.settings.set_flate_compression_level(_LEVEL)
        try:
            document.save(
                out,
                min_version="1.7",
                deterministic_id=True,
                object_stream_mode=pikepdf.ObjectStreamMode.generate,
            )
        finally:
            pikepdf.settings.set_flate_compression_level(-1)
    return out.getvalue()


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


def _attach(document: pikepdf.Pdf, attachments: Mapping[str, bytes], made: datetime) -> None:
    when = f"D:{made:%Y%m%d%H%M%S}Z"
    specs = []
    for name in sorted(attachments):
        spec = pikepdf.AttachedFileSpec(
            document,
            attachments[name],
            filename=name,
            description=name,
            mime_type=_KINDS.get(PurePosixPath(name).suffix.lower(), _ANY),
            creation_date=when,
            mod_date=when,
            relationship=pikepdf.Name.Data,
        )
        document.attachments[name] = spec
        specs.append(document.attachments[name].obj)
    if specs:
        document.Root.AF = document.make_indirect(pikepdf.Array(specs))
