"""PlainNote: words that only tell how something went, among those that say what is wrong."""

from __future__ import annotations

from meterlog.acquire import ZeroTaking


class PlainNote(str):
    """Said where troubles are said, but not in the colour of a caution."""

    __slots__ = ()


def zero_words(taking: ZeroTaking) -> str:
    """Say how the taking of a zero goes or went; that none was taken is no plain note."""
    return str(taking) if taking.refused else PlainNote(taking)
