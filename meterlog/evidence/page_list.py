"""PageList: the name of the file that lists what the pages of a pack's PDF show."""

PAGES = "pdf-pages.txt"
"""A tag file of the pack, carried in its PDF too; see :mod:`meterlog.evidence.pdf_pages`."""
