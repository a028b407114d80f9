"""Contrast of the colours, against published values.

Source of the formula and of the requirements: W3C, Web Content Accessibility Guidelines 2.2,
success criteria 1.4.3 (text 4.5 : 1) and 1.4.11 (graphics 3 : 1), "relative luminance" and
"contrast ratio". Source of the eight colours: Okabe and Ito, "Color Universal Design", 2008; their
ratios follow from the W3C formula. Grey pairs 767676 / 777777 and 949494 / 959595 are the widely
published last pass and first failure on white.
"""

from itertools import combinations
from pathlib import Path

import pytest

from meterlog.evidence.palette import (
    DAY,
    PAIRS,
    PALETTES,
    STARK,
    Hatch,
    contrast,
    contrast_table,
    luminance,
)
from meterlog.model import Role, SpanKind
from meterlog.window.theme import FIRST_GROUND, FIRST_INK

TEXT = 4.5
GRAPHICS = 3.0


@pytest.mark.parametrize(
    ("first", "second", "ratio"),
    [
        ("#000000", "#ffffff", 21.00),
        ("#767676", "#ffffff", 4.542),
        ("#777777", "#ffffff", 4.478),
        ("#949494", "#ffffff", 3.034),
        ("#959595", "#ffffff", 2.995),
        ("#595959", "#ffffff", 7.005),
        ("#0000ff", "#ffffff", 8.592),
        ("#ff0000", "#ffffff", 3.998),
        ("#00ff00", "#ffffff", 1.372),
        ("#ff0000", "#000000", 5.252),
        ("#0000ff", "#ff0000", 2.149),
        ("#e69f00", "#ffffff", 2.25),
        ("#56b4e9", "#1e1e1e", 7.22),
        ("#009e73", "#000000", 6.14),
        ("#d55e00", "#1e1e1e", 4.31),
    ],
)
def test_the_contrast_ratio_is_the_published_one(first, second, ratio):
    assert contrast(first, second) == pytest.approx(ratio, abs=0.006)
    assert contrast(second, first) == contrast(first, second)


@pytest.mark.parametrize(
    ("colour", "light"),
    [("#000000", 0.0), ("#ffffff", 1.0), ("#e69f00", 0.4162), ("#0072b2", 0.1525)],
)
def test_the_luminance_is_the_published_one(colour, light):
    assert luminance(colour) == pytest.approx(light, abs=5e-5)


@pytest.mark.parametrize("palette", PALETTES, ids=lambda p: p.name)
def test_text_stands_out_from_what_is_behind_it(palette):
    pairs = [
        (palette.ink, palette.ground),
        (palette.ink, palette.panel),
        (palette.faint, palette.ground),
        (palette.faint, palette.panel),
        (palette.on_accent, palette.accent),
        (palette.on_alert, palette.alert),
        (palette.on_caution, palette.caution),
    ]
    # Words lie directly on the areas that have no hatch; on the others they get a plate.
    pairs += [
        (palette.ink, style.fill)
        for style in palette.spans.values()
        if style.hatch in {Hatch.NONE, Hatch.SOLID}
    ]
    # The digits have the colour of their trace.
    pairs += [(palette.line(role), palette.panel) for role in palette.lines]
    weak = [(a, b, contrast(a, b)) for a, b in pairs if contrast(a, b) < TEXT]
    assert weak == []


@pytest.mark.parametrize("palette", PALETTES, ids=lambda p: p.name)
def test_lines_and_edges_stand_out_from_what_is_behind_them(palette):
    behind_voltage = (palette.panel, palette.between)
    behind_current = (palette.panel, palette.band)
    pairs = [(palette.line(Role.MOTOR_CURRENT), b) for b in behind_current]
    pairs += [
        (palette.line(role), b)
        for role in (Role.MOTOR_FEED, Role.MOTOR_RETURN, Role.BATTERY, Role.OTHER)
        for b in behind_voltage
    ]
    pairs += [(palette.edge, palette.ground), (palette.edge, palette.panel)]
    pairs += [(palette.band_edge, palette.panel), (palette.accent, palette.ground)]
    pairs += [(palette.alert, palette.ground)]
    pairs += [(style.line, style.fill) for style in palette.spans.values()]
    pairs += [(style.line, palette.ground) for style in palette.spans.values()]
    weak = [(a, b, contrast(a, b)) for a, b in pairs if contrast(a, b) < GRAPHICS]
    assert weak == []


@pytest.mark.parametrize("palette", PALETTES, ids=lambda p: p.name)
def test_no_two_span_kinds_differ_by_colour_alone(palette):
    assert set(palette.spans) == set(SpanKind)
    assert len({style.word for style in palette.spans.values()}) == len(SpanKind)
    faults = [palette.spans[kind] for kind in SpanKind if kind.is_fault]
    for first, second in combinations(faults, 2):
        assert first.hatch is not second.hatch


def test_the_first_paint_has_the_colours_of_the_day():
    assert (DAY.ground, DAY.ink) == (FIRST_GROUND, FIRST_INK)


def test_high_contrast_text_is_that_of_the_enhanced_criterion():
    """WCAG 2.2, 1.4.6: 7 : 1; lines and outlines 4.5 : 1, more than 1.4.11 asks for."""
    for _, first, second, least in PAIRS:
        wanted = 7.0 if least == TEXT else TEXT
        assert contrast(getattr(STARK, first), getattr(STARK, second)) >= wanted
    for role in STARK.lines:
        assert contrast(STARK.line(role), STARK.panel) >= 7.0


@pytest.mark.parametrize("palette", PALETTES, ids=lambda p: p.name)
def test_what_is_published_holds(palette):
    for _, first, second, least in PAIRS:
        assert contrast(getattr(palette, first), getattr(palette, second)) >= least


def test_the_published_table_is_the_computed_one():
    guide = Path(__file__).parents[2] / "DEVELOPERS.md"
    assert contrast_table() in guide.read_text("utf-8")
