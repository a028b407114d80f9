"""Tables over pages: heading repeated, every cell there, nothing beyond the margins."""

from itertools import pairwise

import pytest
from PySide6.QtGui import QFontMetricsF

from meterlog.evidence.claim_pdf.page_edges import add_edges
from meterlog.evidence.claim_pdf.table_block import Column, Row, lay_table

COLUMNS = (Column("number", right=True), Column("what"), Column("SHA-256", fixed=True))


def _words(page):
    return [words for _, _, words, _ in page]


def test_a_long_table_repeats_its_heading_and_keeps_every_cell_in_order(sheets, drawn):
    rows = [Row((f"n{k}", f"what {k}", f"{k:064x}"), f"sentence {k}") for k in range(150)]
    lay_table(sheets, COLUMNS, rows)
    pages = drawn(sheets)
    assert len(pages) > 3
    assert all(_words(page)[:3] == ["number", "what", "SHA-256"] for page in pages)
    said = [words for page in pages for words in _words(page)]
    assert [words for words in said if words.startswith("n") and words[1:].isdigit()] == [
        f"n{k}" for k in range(150)
    ]
    assert [words for words in said if words.startswith("sentence")] == [
        f"sentence {k}" for k in range(150)
    ]


def test_a_row_and_its_sentence_stay_on_one_page(sheets, drawn):
    rows = [Row((f"n{k}", "x", "y"), f"sentence {k}") for k in range(120)]
    lay_table(sheets, COLUMNS, rows)
    for page in drawn(sheets):
        words = _words(page)
        numbers = {one[1:] for one in words if one.startswith("n") and one[1:].isdigit()}
        sentences = {one.split()[1] for one in words if one.startswith("sentence")}
        assert numbers == sentences


def test_a_row_longer_than_a_page_goes_on_and_loses_nothing(sheets, drawn):
    text = " ".join(f"word{k}" for k in range(3000))
    lay_table(sheets, COLUMNS, [Row(("1", text, "a" * 64)), Row(("2", "after", "b"))])
    pages = drawn(sheets)
    assert len(pages) > 1
    heads = {"number", "what", "SHA-256"}
    said = [words for page in pages for words in _words(page) if words not in heads]
    assert [one for one in " ".join(said).split() if one.startswith("word")] == text.split()
    assert "after" in said


@pytest.mark.parametrize(
    "cells",
    [("1", "short", "x"), ("9" * 90, "w" * 300, "f" * 200), ("1", "a few words " * 40, "")],
)
def test_nothing_is_wider_than_the_page_and_no_cell_meets_the_next(sheets, drawn, cells):
    lay_table(sheets, COLUMNS, [Row(cells)])
    for page in drawn(sheets):
        lines = {}
        for x, y, words, font in page:
            wide = QFontMetricsF(font, sheets.device).horizontalAdvance(words)
            assert x >= sheets.left - 0.5
            assert x + wide <= sheets.right + 0.5
            assert sheets.top <= y <= sheets.bottom
            lines.setdefault(round(y), []).append((x, x + wide))
        for parts in lines.values():
            parts.sort()
            assert all(a[1] <= b[0] for a, b in pairwise(parts))


def test_no_rows_no_table(sheets, drawn):
    lay_table(sheets, COLUMNS, [])
    assert drawn(sheets) == [[]]


def test_a_fail_is_bold(sheets, drawn):
    lay_table(sheets, COLUMNS, [Row(("1", "fail", "")), Row(("2", "pass", ""))])
    fonts = {words: font.bold() for _, _, words, font in drawn(sheets)[0]}
    assert fonts["fail"]
    assert not fonts["pass"]


def test_edges_count_the_pages_and_name_key_and_recordings(sheets, drawn, claim):
    for _ in range(3):
        sheets.words("x")
        sheets.new_page()
    sheets.words("x")
    add_edges(sheets, claim(fingerprint="aaaa bbbb"))
    for number, page in enumerate(drawn(sheets), 1):
        words = _words(page)
        assert f"page {number} of 4" in words
        assert "signing key aaaa bbbb" in words
        assert "recordings: before 8f2d8d0c-51c5-4d0b-8f3e-6f0f8bb1a001" in words
