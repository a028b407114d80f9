"""The line of an overlay: where the current went once it goes once, and nowhere else."""

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtCore import QRectF
from PySide6.QtGui import QImage, QPainter

from meterlog.analysis.compare import OverlayGrid, overlay
from meterlog.evidence.claim_pdf.bar_walk import walked
from meterlog.evidence.claim_pdf.overlay_plot import paint_overlay

NAN = float("nan")


def _crossings(line, level):
    """Count how often the line goes through a level."""
    return sum((one[1] - level) * (two[1] - level) < 0.0 for one, two in pairwise(line))


def _laid(amps, bins, every_ns=10**7):
    t_ns = np.arange(len(amps), dtype=np.int64) * every_ns
    grids = [OverlayGrid(0, len(amps) * every_ns / 1e9, bins) for _ in range(2)]
    for grid in grids:
        grid.take(t_ns, np.asarray(amps, float))
    return overlay("speed 4", 4, grids, (1.0, 1.0))


@pytest.mark.parametrize("at", range(40, 50))
def test_a_motor_that_is_switched_off_falls_once(at):
    """Wherever in its bin it does so."""
    laid = _laid([13.5] * at + [0.0] * (100 - at), 10)
    (line,) = walked(laid.t_s, laid.new_a, laid.new_falls)
    assert _crossings(line, 7.0) == 1


@pytest.mark.parametrize("at", range(40, 50))
def test_a_current_that_came_back_and_decays_has_one_peak(at):
    laid = _laid([0.0] * at + [14.0 + 36.0 * 0.93**k for k in range(100 - at)], 10)
    (line,) = walked(laid.t_s, laid.old_a, laid.old_falls)
    peak = max(line, key=lambda point: point[1])
    rising, falling = line[: line.index(peak) + 1], line[line.index(peak) :]
    assert all(one[1] <= two[1] for one, two in pairwise(rising))
    assert all(one[1] >= two[1] for one, two in pairwise(falling))


def test_a_dropout_within_a_bin_goes_down_and_comes_back_there():
    laid = _laid([13.5] * 43 + [0.0] * 3 + [13.5] * 54, 10)
    (line,) = walked(laid.t_s, laid.new_a, laid.new_falls)
    assert _crossings(line, 7.0) == 2
    assert {round(at, 3) for at, value in line if value < 13.0} == {0.45}


def test_where_nothing_was_read_there_is_no_line():
    t_s = (0.5, 0.5, 1.5, 1.5, 2.5, 2.5, 3.5, 3.5)
    amps = (NAN, NAN, 3.0, 9.0, NAN, NAN, 4.0, 4.0)
    assert walked(t_s, amps) == [[(1.5, 3.0), (1.5, 9.0)], [(3.5, 4.0)]]
    assert walked(t_s, (NAN,) * 8) == []


_BARS = st.lists(st.tuples(st.integers(0, 20), st.integers(0, 20), st.booleans()), min_size=1)


@given(_BARS, st.booleans())
def test_every_end_is_reached_and_no_stroke_leaves_its_bar(bars, known):
    t_s = [at for at in range(len(bars)) for _ in range(2)]
    amps = [float(end) for one, two, _ in bars for end in sorted((one, two))]
    falls = tuple(fell for *_, fell in bars) if known else ()
    (line,) = walked(t_s, amps, falls)
    for at, (one, two, _) in enumerate(bars):
        values = [value for t, value in line if t == at]
        assert (min(values), max(values)) == (min(one, two), max(one, two))
    for (at, one), (then, two) in pairwise(line):
        if at == then:
            continue
        low, high = sorted(bars[at][:2]), sorted(bars[then][:2])
        gap = max(high[0] - low[1], low[0] - high[1], 0)
        # From bar to bar it need not go along both: beyond the gap between them no way is new.
        assert then == at + 1
        assert low[0] <= one <= low[1]
        assert high[0] <= two <= high[1]
        assert abs(two - one) >= gap


def test_the_picture_draws_the_order_in_which_it_was_read(qapp):
    """Without that order a start-up peak in the first bin would seem to be climbed to."""

    class Lines(QPainter):
        def __init__(self, image):
            super().__init__(image)
            self.seen = []

        def drawPolyline(self, points):  # noqa: N802 - as Qt names it
            self.seen.append([one.y() for one in points.toList()])
            super().drawPolyline(points)

    image = QImage(400, 300, QImage.Format.Format_RGB32)
    painter = Lines(image)
    laid = _laid([14.0 + 36.0 * 0.9**k for k in range(100)], 10)
    paint_overlay(painter, QRectF(0, 0, 400, 300), (laid,))
    lines = painter.seen
    painter.end()
    assert len(lines) == 2
    for downwards in lines:
        assert downwards == sorted(downwards)
