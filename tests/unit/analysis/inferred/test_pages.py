"""Pages hold a fixed count of readings, with those beside, however the rows are cut."""

import itertools

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from meterlog.analysis.inferred.page import Pages
from meterlog.analysis.labels import Stretch
from meterlog.analysis.rows import Rows

COUNT = 137


def rows(first, last):
    t_ns = np.arange(first, last, dtype=np.int64)
    amps = t_ns * 0.5
    there = np.ones(len(t_ns), bool)
    return Rows(t_ns, amps, amps + 2.0, None, there, t_ns % 31 == 0)


def told(pages, cuts):
    """Take so many rows in these pieces; give what each page says, and the rest."""
    ends = sorted({0, COUNT, *cuts})
    found = []
    for first, last in itertools.pairwise(ends):
        piece = rows(first, last)
        found += pages.take(piece, [Stretch(0, len(piece), 3, steady=True)])
    rest = pages.rest()
    assert rest is None or pages.rest().t_ns.tolist() == rest.t_ns.tolist()
    return found if rest is None else [*found, rest]


@given(
    size=st.integers(1, 60),
    beside=st.integers(0, 60),
    cuts=st.lists(st.integers(1, COUNT - 1), max_size=40),
)
def test_each_new_reading_is_in_one_page_with_those_beside_it(size, beside, cuts):
    found = told(Pages(size, beside), cuts)
    full = [page for page in found if page.last - page.first == size]
    for number, page in enumerate(found):
        start = max(0, number * size - beside)
        assert page.t_ns[0] == start
        assert page.first == number * size - start
        end = (number + 1) * size + beside
        last = min(COUNT, end) if number < len(full) else COUNT
        np.testing.assert_array_equal(page.t_ns, np.arange(start, last))
        np.testing.assert_array_equal(page.amps, page.t_ns * 0.5)
        np.testing.assert_array_equal(page.feed, page.t_ns * 0.5 + 2.0)
        np.testing.assert_array_equal(page.gap, page.t_ns % 31 == 0)
        assert np.isnan(page.back).all()
        assert (page.speed == 3.0).all()
        assert page.steady.all()
    news = np.concatenate([page.t_ns[page.first : page.last] for page in found])
    assert news.tolist() == list(range(COUNT))
