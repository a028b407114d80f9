"""Folded: text as it is compared in a search, without accents and without case."""

from __future__ import annotations

import unicodedata

_WHOLE = str.maketrans(
    {"ø": "o", "ł": "l", "đ": "d", "ð": "d", "ħ": "h", "ı": "i", "æ": "ae", "œ": "oe"}
)
"""Letters that Unicode does not take apart into a plain one and its mark."""


def folded(text: str) -> str:
    """Give ``text`` in lower case without accents, blanks run together.

    Source
    ------
    The Unicode Standard, 3.13 (case folding) and annex 15 (compatibility decomposition).
    """
    apart = unicodedata.normalize("NFKD", text.casefold())
    plain = "".join(letter for letter in apart if not unicodedata.combining(letter))
    return " ".join(plain.casefold().translate(_WHOLE).split())
