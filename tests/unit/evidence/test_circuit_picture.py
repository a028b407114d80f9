"""The drawing of a circuit: every shipped one fits, and its marks say what they mean."""

from itertools import combinations
from typing import ClassVar

import pytest
from PySide6.QtCore import QPointF, QRectF, QSizeF
from PySide6.QtGui import QImage, QPainter

from meterlog.evidence.circuit_marks import marks_of, point_letters
from meterlog.evidence.circuit_picture import is_cut, paint_circuit, plan_of
from meterlog.evidence.circuit_png import drawn_state, save_circuit_png
from meterlog.evidence.circuit_tags import CircuitTags
from meterlog.evidence.palette import DAY, PALETTES, contrast
from meterlog.model import (
    CircuitCheck,
    CircuitReading,
    CircuitState,
    CircuitVerdict,
    DoubtedReading,
    Expectation,
    Suspect,
    SuspectFault,
)
from meterlog.profile import load_circuit, names

ON = CircuitState("on", 4)
SMALL = QRectF(0.0, 0.0, 640.0, 340.0)


@pytest.fixture(scope="module")
def circuit():
    return load_circuit("low-side-linear-12v")


def verdict(**facts):
    fault = SuspectFault("fan motor: open", "motor", "open", 0.7)
    given = {
        "circuit": "invented",
        "suspects": (Suspect("motor", "fan motor", 0.7, 0.5, (fault,)),),
        "settled": "",
        "settled_words": "Not told yet.",
        "next_test": None,
    }
    return CircuitVerdict(**{**given, **facts})


def check_of(*readings):
    return CircuitCheck("invented", readings=readings)


@pytest.mark.parametrize("name", names("circuits"))
def test_every_shipped_circuit_fits_a_small_window(name):
    plan = plan_of(load_circuit(name), SMALL, 12)
    for point, at in plan.points.items():
        dot = QRectF(at.x() - plan.dot, at.y() - plan.dot, 2 * plan.dot, 2 * plan.dot)
        assert SMALL.contains(dot), point
        assert plan.point_at(at) == point
    for placed in plan.placed:
        assert SMALL.contains(placed.box), placed.element.name
    for first, second in combinations(plan.points.values(), 2):
        away = first - second
        assert (away.x() ** 2 + away.y() ** 2) ** 0.5 >= 1.55 * plan.dot


def test_letters_are_unique_and_easily_told_from_figures(circuit):
    letters = point_letters(circuit)
    assert len(set(letters.values())) == len(circuit.points)
    assert not {"I", "O"} & set(letters.values())


def test_marks_tell_expected_found_and_doubted(circuit):
    reading = CircuitReading(1, ON, "motor-feed", 12.31, 0.04)
    wrong = CircuitReading(2, ON, "motor-return", 6.0, 0.04)
    expected = (
        Expectation("motor-feed", ON, 11.9, 12.7),
        Expectation("motor-return", ON, 0.2, 0.4),
        Expectation("battery", CircuitState("off"), 12.2, 12.8),
    )
    doubted = DoubtedReading(2, "motor-return", 0.6, 0.2, 0.4, "repeat it")
    marks = marks_of(circuit, check_of(reading, wrong), verdict(), ON, expected)
    assert marks.points["motor-feed"].found_words == "✓ 12.31 ± 0.08 V"
    assert marks.points["motor-return"].sign == "✗"
    assert marks.points["battery"].healthy is None, "expected in another state"
    assert marks.points["motor-feed"].expected_words == "11.9 … 12.7 V"
    twice = marks_of(circuit, check_of(reading, wrong), verdict(doubted=(doubted,)), ON, expected)
    assert twice.points["motor-return"].sign == "?"
    assert marks.likeliest == {"motor": "motor"}
    other = marks_of(circuit, check_of(reading), verdict(), CircuitState("off"), expected)
    assert other.points["motor-feed"].found is None, "found in another state"


def painted(circuit, marks, palette=DAY):
    image = QImage(640, 340, QImage.Format.Format_RGB32)
    painter = QPainter(image)
    paint_circuit(painter, SMALL, circuit, marks, palette, 12)
    painter.end()
    return image


def test_state_suspects_and_readings_change_the_picture(circuit, qapp):
    del qapp
    check = check_of(CircuitReading(1, ON, "motor-feed", 12.31, 0.04))
    bare = painted(circuit, marks_of(circuit, check_of(), None, ON))
    for marks in (
        marks_of(circuit, check, None, ON),
        marks_of(circuit, check_of(), verdict(), ON),
        marks_of(circuit, check_of(), None, CircuitState("on", 4, unplugged=frozenset({"motor"}))),
        marks_of(circuit, check_of(), None, CircuitState("on", 4, pulled=frozenset({"main-fuse"}))),
        marks_of(
            circuit, check_of(), None,
            CircuitState("on", 4, jumpers=frozenset({("battery-plus", "motor-feed")})),
        ),
        marks_of(circuit, check_of(), None, ON, chosen="motor-feed"),
    ):  # fmt: skip
        assert painted(circuit, marks) != bare


def test_what_the_state_opens_is_drawn_open(circuit):
    switch, fuse = circuit.element("ignition-switch"), circuit.element("main-fuse")
    assert is_cut(switch, CircuitState("off"))
    assert not is_cut(switch, ON)
    assert is_cut(fuse, CircuitState("on", pulled=frozenset({"main-fuse"})))
    assert is_cut(circuit.element("motor-feed-pin"), CircuitState(unplugged=frozenset({"motor"})))


def test_words_have_contrast_in_both_palettes():
    # W3C, Web Content Accessibility Guidelines 2.2, 1.4.3 (4.5 : 1) and 1.4.11 (3 : 1).
    for palette in PALETTES:
        for ground, ink in (
            (palette.panel, palette.ink),
            (palette.panel, palette.faint),
            (palette.panel, palette.alert),
            (palette.alert, palette.on_alert),
            (palette.caution, palette.on_caution),
            (palette.accent, palette.on_accent),
        ):
            assert contrast(ground, ink) >= 4.5
        assert contrast(palette.panel, palette.edge) >= 3.0


def test_tags_keep_off_dots_and_each_other():
    area = QRectF(0, 0, 200, 100)
    dot = QRectF(95, 45, 10, 10)
    tags = CircuitTags(area, [dot])
    placed = [tags.place(dot, QSizeF(40, 12)) for _ in range(4)]
    assert None not in placed
    for first, second in combinations([dot, *placed], 2):
        assert not first.intersects(second)
    full = CircuitTags(area, boxes=[area])
    assert full.place(dot, QSizeF(40, 12)) is None
    assert full.place(dot, QSizeF(40, 12), must=True) is not None


class Noted(CircuitTags):
    """Keeps the rooms that were given, for the test to look at."""

    given: ClassVar[list[QRectF]] = []

    def place(self, around, size, *, must=False):
        room = super().place(around, size, must=must)
        if room is not None:
            self.given.append(room)
        return room


@pytest.mark.parametrize("name", names("circuits"))
@pytest.mark.parametrize(
    ("wide", "high", "pixels"), [(655, 282, 12), (822, 526, 15), (878, 494, 15)]
)
def test_percents_readings_and_names_never_cover_each_other(  # the drawing at three window sizes
    name, wide, high, pixels, qapp, monkeypatch
):
    del qapp
    monkeypatch.setattr("meterlog.evidence.circuit_picture.CircuitTags", Noted)
    circuit = load_circuit(name)
    faulty = [
        unit for unit in circuit.units
        if any(one.unit == unit.name and one.faults for one in circuit.elements)
    ]  # fmt: skip
    for turn in range(3):
        readings = [
            CircuitReading(at + 1, ON, point.name, (12.31, 0.03, 6.5)[at % 3], 0.04)
            for at, point in enumerate(circuit.points[turn::4])
        ]
        suspects = tuple(
            Suspect(unit.name, unit.label, 0.5 / (at + 1), 0.3)
            for at, unit in enumerate(faulty[turn::2][:4])
        )
        expected = [Expectation(point.name, ON, 11.9, 12.7) for point in circuit.points]
        chosen = circuit.points[3 * turn].name
        check, found = check_of(*readings), verdict(suspects=suspects)
        marks = marks_of(circuit, check, found, ON, expected, chosen)
        image = QImage(wide, high, QImage.Format.Format_RGB32)
        painter = QPainter(image)
        Noted.given.clear()
        paint_circuit(painter, QRectF(image.rect()), circuit, marks, DAY, pixels)
        painter.end()
        assert len(Noted.given) > len(readings) + len(suspects)
        for first, second in combinations(Noted.given, 2):
            assert not first.intersects(second)


def test_the_picture_of_an_export_has_heading_and_legend(circuit, tmp_path, qapp):
    del qapp
    check = check_of(CircuitReading(1, ON, "motor-feed", 12.31, 0.04))
    assert drawn_state(check) == ON
    path = save_circuit_png(
        tmp_path / "circuit.png", circuit, check, verdict(), mark="SIMULATED", program="meterlog 0"
    )
    image = QImage(str(path))
    assert image.width() == 1600
    assert image.text("Software") == "meterlog 0"
    stamp = image.pixelColor(QPointF(1575.0, 20.0).toPoint())
    assert stamp.name() == DAY.caution
