"""PdfForm: the one form in which a pack's PDF is saved, and whether a file has it to the byte.

Equal contents give equal bytes: objects stand in the order in which they are met, their streams as
they were packed, and the identity of the file is a digest of all of it (ISO 32000-2, 14.4). So a
file that is read and saved again comes out the same, and one with any other byte does not, as long
as the same version of the library does it. The file says by which it was made.
"""

from __future__ import annotations

import filecmp
import re
import tempfile
from pathlib import Path
from typing import Final

import pikepdf

LIBRARY: Final = f"qpdf {pikepdf.__libqpdf_version__}"
"""What writes the form; different versions number objects differently."""


def save_in_form(document: pikepdf.Pdf, path: Path) -> None:
    """Save a document in the form.

    Raises
    ------
    OSError
        If the file can't be written.
    """
    # The one it has would be kept: anew, it follows from all of the content.
    if "/ID" in document.trailer:
        del document.trailer["/ID"]
    document.save(
        path,
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
        If there is no room for another copy of it.
    """
    with tempfile.TemporaryDirectory(prefix="meterlog-verify-") as place:
        again = Path(place) / "again.pdf"
        with pikepdf.open(path) as document:
            by = _library(document)
            warned = bool(document.get_warnings())
            save_in_form(document, again)
        if filecmp.cmp(path, again, shallow=False):
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
