"""Origin words: the mark of readings that no meter sent, in the window's language."""

from __future__ import annotations

from meterlog.model.about import About
from meterlog.model.origin_mark import origin_mark
from meterlog.window.words import say

_BETWEEN = " · "


def origin_words(about: About) -> str:
    """Say the mark of a recording; empty where all was measured."""
    return mark_words(origin_mark(about))


def mark_words(mark: str) -> str:
    """Say a mark, or several that stand behind each other."""
    return _BETWEEN.join(map(say, mark.split(_BETWEEN))) if mark else ""
