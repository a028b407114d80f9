"""The order of what was found."""

from dataclasses import replace
from pathlib import Path

import pytest

from meterlog.window.recordings_page.sorted_hits import sorted_hits
from meterlog.work.library import Hit, Kind, Verdicts

ONE = Hit(Path("a"), Kind.RUN, *[""] * 8, None, "", "sealed", "", Verdicts.IN_ORDER, "", "")
HITS = (
    replace(ONE, folder=Path("a"), started="2026-03-05T10:00:00", vehicle="wren"),
    replace(ONE, folder=Path("b"), started="2026-03-05T10:00:00", verdict=Verdicts.FAULT),
    replace(ONE, folder=Path("c"), started="", vehicle="Aral", verdict=Verdicts.NOT_JUDGED),
    replace(ONE, folder=Path("d"), started="2026-03-01T10:00:00", vehicle="aral"),
)


@pytest.mark.parametrize(
    ("column", "falling", "order"),
    [
        (0, True, "abdc"),
        (0, False, "dabc"),
        (2, False, "cdab"),
        (2, True, "acdb"),
        (5, False, "badc"),
        (5, True, "cadb"),
    ],
)
def test_what_says_nothing_comes_last_and_equals_stay_as_they_were(column, falling, order):
    found = sorted_hits(HITS, column, falling=falling)
    assert "".join(hit.folder.name for hit in found) == order
