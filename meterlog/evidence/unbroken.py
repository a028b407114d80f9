"""Unbroken: text in lines that break at spaces alone, as what is copied from it must hold."""

from __future__ import annotations

import textwrap


def unbroken(text: str, width: int) -> list[str]:
    """Give lines of about ``width`` characters; a name or a path is never cut, however long."""
    return textwrap.wrap(text, width, break_long_words=False, break_on_hyphens=False)
