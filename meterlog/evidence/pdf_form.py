"""PdfForm: the one form in which a pack's PDF is saved, and whether a file has it to the byte.

Equal contents give equal bytes: objects stand in the order in which they are met, their streams as
they were packed, and the identity of the file is a digest of all of it (ISO 32000-2, 14.4). So a
file that is read and saved again comes out the same, and one with any other byte does not, as long
as the same version of the library does it. The file says by which it was made.
"""

from __future__ import annotations

import logging
import re
from pathlib import Path
from typing import BinaryIO, Final, cast

import pikepdf

from meterlog.evidence.pdf_sink import PdfSink, file_sink, is_what

LIBRARY: Final = f"qpdf {pikepdf.__libqpdf_version__}"
"""What writes the form; different versions number objects differently."""

# What the library finds odd in a stranger's metadata it logs with a traceback, which Python shows
# where nobody listens. What is wrong with a file is told by whoever checks it.
logging.getLogger("pikepdf").addHandler(logging.NullHandler())


def save_in_form(document: pikepdf.Pdf, path: Path) -> None:
    """Save a document in the form.

    Parameters
    ----------
    document : pikepdf.Pdf
        May have been read from ``path`` where that was opened to be overwritten.
    path : Path
        A file there is replaced once the new one is whole.

    Raises
    ------
    OSError
        If the file can't be written.
    """
    with file_sink(path) as sink:
        _save(document, sink)


def _save(document: pikepdf.Pdf, sink: PdfSink) -> None:
    # The one it has would be kept: anew, it follows from all of the content.
    if "/ID" in document.trailer:
        del document.trailer["/ID"]
    document.save(
        cast(BinaryIO, sink),
        min_version="1.7",
        deterministic_id=True,
        object_stream_mode=pikepdf.ObjectStreamMode.generate,
        # Nothing is packed here: what comes out would depend on the version of zlib.
        compress_streams=False,
        stream_decode_level=pikepdf.StreamDecodeLevel.none,
    )


def out_of_form(path: Path) -> tuple[str, str]:
    """Tell whether a PDF is, to the byte, as it was saved.

    Parameters
    ----------
    path : Path

    Returns
    -------
    tuple of (str, str)
        What is wrong, and what should be known; both empty where it is as it was saved.

    Raises
    ------
    pikepdf.PdfError
        Or another of the library's errors, if it can't be read.
    OSError
        If it can't be read a second time.
    """
    with pikepdf.open(path) as document:
        by = _library(document)
        warned = bool(document.get_warnings())
        if is_what(lambda sink: _save(document, sink), path):
            return "", ""
    if warned or by in {LIBRARY, ""}:
        return (
            "The PDF file itself is not, to the byte, as it was made: it was damaged, or saved by"
            " another program.",
            "",
        )
    return "", (
        f"The PDF was saved by {by}, and {LIBRARY} is here: its form can't be compared to the byte."
    )


def _library(document: pikepdf.Pdf) -> str:
    said = str(document.docinfo.get("/Producer", ""))
    found = re.search(r"qpdf [0-9.]+", said)
    return found[0] if found else ""
