"""SortedHits: hits in the order of a column of the table."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from meterlog.window.recordings_page.hit_words import USUAL, cells_of
from meterlog.work.library import Hit, Usual, Verdicts

_GRAVITY = {verdict: place for place, verdict in enumerate(Verdicts)}
_VERDICT = 5
_USUALLY = {None: ""} | {usual: f"{place}" for place, usual in enumerate(Usual)}


def sorted_hits(hits: Sequence[Hit], column: int, *, falling: bool) -> tuple[Hit, ...]:
    """Sort by what a column says: dates by time, verdict and current by gravity, words by letters.

    What says nothing there comes last either way; what is equal stays newest first.
    """
    if column == 0:
        dated = [hit for hit in hits if hit.started]
        dated.sort(key=lambda hit: hit.started, reverse=falling)
        return (*dated, *(hit for hit in hits if not hit.started))
    key = _key(column)
    keyed = [(key(hit), hit) for hit in hits]
    told = sorted((one for one in keyed if one[0] != ""), key=lambda one: one[0], reverse=falling)
    return (*(hit for _, hit in told), *(hit for word, hit in keyed if word == ""))


def _key(column: int) -> Callable[[Hit], str]:
    if column == _VERDICT:
        return lambda hit: f"{_GRAVITY[hit.verdict]} {hit.worst}"
    if column == USUAL:
        return lambda hit: _USUALLY[hit.usual]
    return lambda hit: cells_of(hit)[column].casefold()
