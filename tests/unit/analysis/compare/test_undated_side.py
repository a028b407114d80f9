"""A trace of which nobody knows when it was taken has no date in a comparison, not that of 1970."""

from dataclasses import replace
from datetime import UTC, datetime

import pytest

from meterlog.analysis.compare import side_of
from meterlog.model import UNDATED, Review


@pytest.mark.parametrize(
    ("started", "told"),
    [(UNDATED, ""), (datetime(2030, 1, 1, tzinfo=UTC), "2030-01-01T00:00:00+00:00")],
)
def test_only_a_known_date_is_told(about_of, started, told):
    about = replace(about_of("old"), started_utc=started)
    assert side_of("old", about, Review()).run.started_utc == told
