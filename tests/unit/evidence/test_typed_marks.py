"""A meter typed by hand is visible as such in the picture, the text and the tables."""

from dataclasses import replace
from datetime import UTC, datetime

import numpy as np
import pytest
from PySide6.QtCore import QRectF
from PySide6.QtGui import QImage, QPainter

from meterlog.evidence import export_recording
from meterlog.evidence.motor_voltage import across_motor
from meterlog.evidence.palette import DAY
from meterlog.evidence.readings_csv import origin_of
from meterlog.evidence.trace_key import key_entries
from meterlog.evidence.trace_picture import TraceScene, paint, save_png
from meterlog.evidence.trace_store import TraceStore
from meterlog.model import (
    About,
    Block,
    Channel,
    Flag,
    Instrument,
    Limits,
    Origin,
    Quantity,
    Review,
    Role,
)
from meterlog.model.origin_mark import origin_mark
from meterlog.recording import Recorder, Recording, seal

SECOND = 1_000_000_000


def volts(role, typed):
    channel = Channel("volts", Quantity.VOLTAGE, role, interval_s=1.0)
    return Instrument(f"{role.value}-meter", "invented", "x", (channel,), typed=typed)


def about(*instruments, origin=Origin.MEASURED):
    return About("id", datetime(2030, 1, 2, tzinfo=UTC), 0, 0, "test", origin, instruments)


def block(instrument, values, *, every_s=1.0):
    t_ns = (np.arange(len(values)) * every_s * SECOND).astype(np.int64)
    flag = Flag.TYPED if instrument.typed else Flag.OK
    column = np.array(values, float).reshape(-1, 1)
    return Block(instrument.key, t_ns, column, np.full(column.shape, int(flag), np.uint8))


LIVE, HAND = volts(Role.MOTOR_FEED, typed=False), volts(Role.MOTOR_FEED, typed=True)
BACK = volts(Role.MOTOR_RETURN, typed=False)


@pytest.mark.parametrize(
    ("instruments", "origin", "words"),
    [
        ((LIVE,), Origin.MEASURED, ""),
        ((HAND,), Origin.TYPED, "TYPED BY HAND"),
        ((HAND,), Origin.MEASURED, "TYPED BY HAND"),
        ((HAND, BACK), Origin.MEASURED, "PARTLY TYPED BY HAND"),
        ((HAND, BACK), Origin.SIMULATED, "SIMULATED · PARTLY TYPED BY HAND"),
        (
            (HAND, replace(BACK, simulated=True)),
            Origin.MEASURED,
            "SIMULATED · PARTLY TYPED BY HAND",
        ),
    ],
)
def test_the_stamp_says_whether_all_or_a_part_was_typed(instruments, origin, words):
    assert origin_mark(about(*instruments, origin=origin)) == words


def painted(*instruments):
    traces = TraceStore(instruments)
    for instrument in instruments:
        traces.take(block(instrument, [12.0] * 5))
    scene = TraceScene(traces, Review(), about(*instruments), (), 0, 4 * SECOND)
    image = QImage(900, 600, QImage.Format.Format_RGB32)
    painter = QPainter(image)
    paint(painter, QRectF(0.0, 0.0, 900.0, 600.0), scene)
    painter.end()
    return image


def columns_of(image, colour):
    """Count, column by column below the heading, the pixels of one colour."""
    pixels = np.frombuffer(image.constBits(), np.uint32).reshape(image.height(), image.width())
    wanted = int(colour.removeprefix("#"), 16) | 0xFF000000
    return (pixels[80:320] == wanted).sum(axis=0)


def test_typed_readings_are_crosses_that_nothing_joins(qapp):
    joined = columns_of(painted(LIVE), DAY.line(Role.MOTOR_FEED))
    crosses = columns_of(painted(HAND), DAY.line(Role.MOTOR_FEED))
    assert np.count_nonzero(joined) > 600
    assert 5 <= np.count_nonzero(crosses) < 80
    assert crosses.max() > joined.max()


def test_the_key_names_them_and_no_area_is_drawn_between(qapp):
    store = TraceStore((HAND, BACK))
    for instrument in (HAND, BACK):
        store.take(block(instrument, [12.0, 12.0] if instrument.typed else [1.0, 1.0]))
    words = [entry.words for entry in key_entries(store.lines, (), DAY, limits=False)]
    assert words == ["motor feed, typed by hand", "motor return"]
    assert across_motor(store.lines, 0, SECOND, 10) is None
    store = TraceStore((LIVE, BACK))
    store.take(block(LIVE, [12.0, 12.0]))
    store.take(block(BACK, [1.0, 1.0]))
    words = [entry.words for entry in key_entries(store.lines, (), DAY, limits=False)]
    assert "across the motor: feed above, return below" in words
    assert across_motor(store.lines, 0, SECOND, 10) is not None


@pytest.fixture
def mixed(tmp_path):
    recorder = Recorder.create(tmp_path / "run", replace(about(HAND, BACK), limits=Limits()))
    recorder.take(block(HAND, [12.4, 12.5]))
    recorder.take(block(BACK, [1.0, 1.0, 1.0]))
    recorder.close()
    seal(tmp_path / "run")
    return Recording.open(tmp_path / "run")


def test_each_table_says_of_its_own_meter_where_its_readings_come_from(mixed):
    assert origin_of(mixed) is Origin.MEASURED
    assert origin_of(mixed, HAND) is Origin.TYPED
    assert origin_of(mixed, BACK) is Origin.MEASURED


def test_the_exported_folder_says_it_in_words_and_in_every_row(mixed, tmp_path, qapp):
    export_recording(mixed, Review(), tmp_path / "out", lambda _: None)
    readme = (tmp_path / "out" / "README.txt").read_text()
    assert f"PARTLY TYPED: the readings of {HAND.key} were typed by hand." in readme
    typed, other = (part for part in readme.split("readings-")[1:3])
    assert "TYPED BY HAND" in typed
    assert "a reading when one was typed; believed for 3 s" in typed
    assert "TYPED BY HAND" not in other
    rows = (tmp_path / "out" / f"readings-{HAND.key}.csv").read_text().splitlines()
    assert rows[0].endswith(",origin")
    assert all("motor-feed:typed" in row and row.endswith(",typed") for row in rows[1:])
    other = (tmp_path / "out" / f"readings-{BACK.key}.csv").read_text()
    assert "typed" not in other


def test_the_picture_of_a_recording_keeps_which_readings_were_typed(mixed, tmp_path, qapp):
    from meterlog.evidence.trace_picture import scene_of

    scene = scene_of(mixed, Review())
    assert [line.typed for line in scene.traces.lines] == [True, False]
    assert save_png(tmp_path / "a.png", scene).stat().st_size > 1000
