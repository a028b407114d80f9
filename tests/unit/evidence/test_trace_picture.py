import math
import os
import subprocess
import sys
from datetime import UTC, datetime
from pathlib import Path
from types import MappingProxyType

import numpy as np
import pytest
from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QImage, QPainter

from meterlog.evidence.event_lane import paint_events
from meterlog.evidence.palette import DARK, DAY
from meterlog.evidence.span_ribbon import TimeScale
from meterlog.evidence.speed_bands import speed_bands
from meterlog.evidence.trace_picture import TraceScene, paint, save_png
from meterlog.evidence.trace_store import TraceStore
from meterlog.model import (
    About,
    Block,
    Channel,
    Event,
    EventKind,
    Instrument,
    Job,
    Limits,
    Origin,
    Quantity,
    Review,
    Role,
    Span,
    SpanKind,
    SpeedLimits,
)
from meterlog.model.errors import EvidenceError
from meterlog.model.origin_mark import origin_mark

SECOND = 1_000_000_000
WIDTH, HEIGHT = 1000, 600


def _scene(origin=Origin.SIMULATED, *, current=None, events=(), spans=(), end_s=10):
    channels = (
        Channel("feed", Quantity.VOLTAGE, Role.MOTOR_FEED, interval_s=0.01),
        Channel("current", Quantity.CURRENT, Role.MOTOR_CURRENT, interval_s=0.01),
    )
    meter = Instrument("m", "m", "", channels, simulated=origin is Origin.SIMULATED)
    limits = Limits(speeds=MappingProxyType({1: SpeedLimits(2.0, 5.0)}))
    start = datetime(2030, 1, 2, 3, 4, 5, tzinfo=UTC)
    job = Job(work_order="WO 1 (invented)")
    about = About("id", start, 0, 0, "meterlog test", origin, (meter,), limits, job)
    count = end_s * 100
    t_ns = np.arange(count, dtype=np.int64) * (SECOND // 100)
    flow = np.full(count, 3.0) if current is None else current
    values = np.stack([np.full(count, 12.0), flow], axis=1)
    flags = np.where(np.isnan(values), 2, 0).astype(np.uint8)
    traces = TraceStore(about.instruments)
    traces.take(Block("m", t_ns, values, flags))
    return TraceScene(traces, Review(spans=spans), about, events, 0, end_s * SECOND)


@pytest.fixture
def painted(qapp):
    def paint_scene(scene, palette=DAY):
        image = QImage(WIDTH, HEIGHT, QImage.Format.Format_RGB32)
        painter = QPainter(image)
        paint(painter, QRectF(0, 0, WIDTH, HEIGHT), scene, palette)
        painter.end()
        return image

    return paint_scene


def _places(image, colour):
    """Give x and y of all pixels of exactly this colour."""
    raw = np.frombuffer(image.constBits(), np.uint32).reshape(HEIGHT, WIDTH) & 0xFFFFFF
    y, x = np.nonzero(raw == (QColor(colour).rgb() & 0xFFFFFF))
    return x, y


def _plot_edges(image):
    """Give left and right of the plots: what the feed, there all the time, spans."""
    x, y = _places(image, DAY.line(Role.MOTOR_FEED))
    row = np.bincount(y).argmax()
    return x[y == row].min(), x[y == row].max()


def test_the_current_is_at_its_place_in_time_and_a_gap_is_a_gap(painted):
    current = np.full(1000, 3.0)
    current[400:600] = math.nan
    image = painted(_scene(current=current))
    left, right = _plot_edges(image)
    x, y = _places(image, DAY.line(Role.MOTOR_CURRENT))
    plot = x[y < np.median(_places(image, DAY.line(Role.MOTOR_CURRENT))[1]) + 3]
    share = np.unique((plot - left) / (right - left))
    assert not np.any((share > 0.41) & (share < 0.59))
    assert np.count_nonzero(share < 0.4) > 0.35 * (right - left)
    assert np.count_nonzero(share > 0.6) > 0.35 * (right - left)


def test_more_current_is_drawn_higher_up(painted):
    current = np.full(1000, 1.0)
    current[500:] = 4.0
    image = painted(_scene(current=current))
    left, right = _plot_edges(image)
    x, y = _places(image, DAY.line(Role.MOTOR_CURRENT))
    middle = (left + right) / 2
    plot = y < HEIGHT * 0.8
    early = np.median(y[plot & (x < middle - 5) & (x > left)])
    late = np.median(y[plot & (x > middle + 5) & (x < right)])
    assert late < early - 50


def test_one_peak_of_one_reading_reaches_its_height(painted):
    current = np.zeros(100_000)
    current[50_000] = 9.9
    image = painted(_scene(current=current, end_s=1000))
    x, y = _places(image, DAY.line(Role.MOTOR_CURRENT))
    zero = np.bincount(y[y < HEIGHT * 0.8]).argmax()
    assert zero - y.min() > 120
    left, right = _plot_edges(image)
    assert abs((x[y.argmin()] - left) / (right - left) - 0.5) < 0.01


def test_limits_are_drawn_only_while_their_speed_is_commanded(painted):
    events = (Event(2 * SECOND, EventKind.SPEED, "1"), Event(6 * SECOND, EventKind.SPEED, "0"))
    image = painted(_scene(events=events))
    left, right = _plot_edges(image)
    x, y = _places(image, DAY.band)
    rows = np.bincount(y)
    row = rows.argmax()
    share = (x[y == row] - left) / (right - left)
    assert share.min() == pytest.approx(0.2, abs=0.01)
    assert share.max() == pytest.approx(0.6, abs=0.01)


def test_spans_stand_under_their_times_with_hatch(painted):
    spans = (
        Span(SpanKind.RUNNING, 0, 7 * SECOND, speed=1),
        Span(SpanKind.DEAD, 7 * SECOND, 8 * SECOND, speed=1),
        Span(SpanKind.RUNNING, 8 * SECOND, 10 * SECOND, speed=1),
    )
    image = painted(_scene(spans=spans))
    left, right = _plot_edges(image)
    style = DAY.spans[SpanKind.DEAD]
    fill_x, fill_y = _places(image, style.fill)
    ribbon = fill_y < np.median(fill_y) + 15
    share = (fill_x[ribbon] - left) / (right - left)
    assert share.min() == pytest.approx(0.7, abs=0.01)
    assert share.max() == pytest.approx(0.8, abs=0.01)
    x, y = _places(image, style.line)
    within = (x > left + 0.72 * (right - left)) & (x < left + 0.78 * (right - left))
    assert np.count_nonzero(within & (y >= fill_y.min()) & (y <= fill_y.max())) > 30


@pytest.mark.parametrize("origin", list(Origin))
def test_readings_that_were_not_measured_are_stamped(painted, origin):
    image = painted(_scene(origin))
    stamped = _places(image, DAY.caution)[0].size
    assert bool(stamped) is (origin is not Origin.MEASURED)
    words = {Origin.MEASURED: "", Origin.TYPED: "TYPED BY HAND"}
    assert origin_mark(_scene(origin).about) == words.get(origin, origin.value.upper())


def test_a_tap_is_marked_at_its_time_on_both_plots(painted):
    without = painted(_scene())
    image = painted(_scene(events=(Event(3 * SECOND, EventKind.TAP),)))
    left, right = _plot_edges(image)
    at = round(left + 0.3 * (right - left))
    marked = {
        y
        for x in (at - 1, at, at + 1)
        for y in range(HEIGHT)
        if image.pixel(x, y) != without.pixel(x, y)
    }
    assert len([y for y in marked if y < HEIGHT * 0.4]) > 20
    assert len([y for y in marked if y > HEIGHT * 0.45]) > 20


def test_an_empty_recording_makes_a_picture_too(painted):
    scene = _scene()
    nothing = TraceScene(TraceStore([]), Review(), scene.about, (), 0, 1)
    image = painted(nothing, DARK)
    assert image.pixelColor(0, 0) == QColor(DARK.ground)


def test_a_time_scale_goes_there_and_back():
    scale = TimeScale(2 * SECOND, 4 * SECOND, 100.0, 300.0)
    assert scale.x(2 * SECOND) == 100.0
    assert scale.x(3 * SECOND) == 200.0
    assert scale.t_ns(250.0) == 3_500_000_000


def test_a_band_lasts_from_its_speed_to_the_next():
    limits = Limits(speeds=MappingProxyType({1: SpeedLimits(2.0, 5.0), 2: SpeedLimits(None, 9.0)}))
    events = [
        Event(1, EventKind.SPEED, "1"),
        Event(2, EventKind.TAP),
        Event(3, EventKind.SPEED, "2"),
        Event(5, EventKind.SPEED, "0"),
        Event(6, EventKind.SPEED, "nonsense"),
        Event(7, EventKind.SPEED, "1"),
    ]
    bands = speed_bands(events, limits, 9)
    assert [(b.speed, b.start_ns, b.end_ns) for b in bands] == [(1, 1, 3), (2, 3, 5), (1, 7, 9)]
    assert bands[1].min_a is None
    assert speed_bands([], limits, 9) == ()


CHILD = """
import sys
from pathlib import Path
sys.path.insert(0, sys.argv[1])
import test_trace_picture as t
print(t.save_png(Path(sys.argv[2]), t._scene(), 640, 400))
"""


def test_a_picture_is_saved_on_a_machine_without_a_screen(tmp_path):
    bare = {
        k: v
        for k, v in os.environ.items()
        if k not in {"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"}
    }
    target = tmp_path / "trace.png"
    subprocess.run(
        [sys.executable, "-c", CHILD, str(Path(__file__).parent), str(target)],
        check=True,
        timeout=240,
        env=bare,
    )
    image = QImage(str(target))
    assert (image.width(), image.height()) == (640, 400)
    assert image.text("Source") == "simulated id"
    assert target.read_bytes()[:8] == b"\x89PNG\r\n\x1a\n"


def test_a_picture_that_can_not_be_written_says_where(qapp, tmp_path):
    target = tmp_path / "absent" / "trace.png"
    with pytest.raises(EvidenceError, match="can't be written") as caught:
        save_png(target, _scene())
    assert caught.value.subject == str(target)


def test_words_of_events_give_way_but_marks_stay(qapp):
    def lane(events):
        image = QImage(400, 40, QImage.Format.Format_RGB32)
        image.fill(QColor(DAY.ground))
        painter = QPainter(image)
        scale = TimeScale(0, 10 * SECOND, 0.0, 400.0)
        paint_events(painter, QRectF(0, 0, 400, 30), scale, events, DAY)
        painter.end()
        return image

    first, second = Event(4 * SECOND, EventKind.SPEED, "1"), Event(5 * SECOND, EventKind.SPEED, "2")
    ink = QColor(DAY.ink)
    both = lane([first, second])
    for place in (160, 200):
        assert both.pixelColor(place, 15) == ink
    # 40 pixels are too few for "speed 1": the bar of the next speed is not written over.
    alone = lane([second])
    for x in range(197, 204):
        for y in range(30):
            assert both.pixel(x, y) == alone.pixel(x, y)
