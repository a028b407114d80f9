"""FoundBy: where, in what is known of a hit, the words stand by which it was found."""

from __future__ import annotations

from collections.abc import Sequence

_AROUND = 24
"""Letters on either side."""


def found_by(terms: Sequence[str], seen: str, own: str, of_job: str) -> tuple[str, ...]:
    """Give the surroundings of each word that a line of hits does not show itself.

    Parameters
    ----------
    terms : sequence of str
        What was looked for, folded.
    seen : str
        What the line shows, folded.
    own : str
        All that is known of the hit, folded.
    of_job : str
        All that its job's card says, folded; looked into where it is not its own.

    Returns
    -------
    tuple of str
        In the order of the words; those that stand together once.
    """
    told = list[str]()
    for term in terms:
        if term in seen or any(term in one for one in told):
            continue
        place = next((text for text in (own, of_job) if term in text), "")
        if place:
            told.append(_around(place, place.index(term), len(term)))
    return tuple(told)


def _around(text: str, at: int, size: int) -> str:
    """Cut a piece out of a text, at blanks where there are any nearby."""
    first, last = max(at - _AROUND, 0), min(at + size + _AROUND, len(text))
    if first:
        first = max(text.find(" ", first, at) + 1, first)
    if last < len(text):
        blank = text.rfind(" ", at + size, last)
        last = blank if blank > 0 else last
    return f"{'…' if first else ''}{text[first:last]}{'…' if last < len(text) else ''}"
