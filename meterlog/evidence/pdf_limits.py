"""PdfLimits: how much memory a stranger's PDF may have unpacked before anybody looks at it.

The library unpacks lists of objects by itself as soon as one of them is asked for. Half a megabyte
can be half a gigabyte then, and a file may hold many of them. Those of a claim's PDF have some
hundred kilobytes. What a PDF carries inside is unpacked elsewhere, by limits of its own
(:mod:`~meterlog.evidence.pdf_attached`).
"""

from __future__ import annotations

import pikepdf

MOST_BYTES = 64 << 20
"""Of one stream."""
_DEEPEST = 100
_MOST_ITEMS = 1_000_000


def bound() -> None:
    """Tell the library; it keeps to it in the whole process. A second time changes nothing."""
    tell = getattr(pikepdf.settings, "set_qpdf_limits", None)
    if tell is None:  # versions before 10.18 can't be told
        return
    tell(
        flate_max_memory=MOST_BYTES,
        png_max_memory=MOST_BYTES,
        tiff_max_memory=MOST_BYTES,
        run_length_max_memory=MOST_BYTES,
        parser_max_nesting=_DEEPEST,
        parser_max_container_size=_MOST_ITEMS,
    )
