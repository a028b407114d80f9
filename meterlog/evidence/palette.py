"""Palette: the colours of the window and of the pictures, by day and in a dark footwell.

No state is told by colour alone: every span kind also has a hatch and a word of its own.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from types import MappingProxyType

from meterlog.model import Role, SpanKind


class Hatch(StrEnum):
    """The pattern that tells a span kind without colour."""

    NONE = "none"
    RISING = "rising"
    FALLING = "falling"
    LEVEL = "level"
    UPRIGHT = "upright"
    SQUARES = "squares"
    LATTICE = "lattice"
    DOTS = "dots"
    GRAINS = "grains"
    SOLID = "solid"


@dataclass(frozen=True, slots=True)
class SpanStyle:
    """How one span kind looks.

    Attributes
    ----------
    fill, line : str, ``#rrggbb``
        Area, and the edge and hatch upon it.
    hatch : Hatch
    word : str
        What stands in or beside it.
    """

    fill: str
    line: str
    hatch: Hatch
    word: str


@dataclass(frozen=True, slots=True)
class Palette:
    """One set of colours, all ``#rrggbb``.

    Attributes
    ----------
    name : str
    ground, panel : str
        Behind everything; behind text fields and traces.
    ink, faint : str
        Text, and text of second rank.
    rule, edge : str
        Grid lines (ornament); outlines of controls and axes.
    accent, on_accent : str
        Chosen controls and the text on them.
    alert, on_alert : str
        Something is wrong, and the text on it.
    caution, on_caution : str
        Something to know, such as simulated data, and the text on it.
    band, band_edge : str
        Area and edges of the current limits.
    between : str
        Area between feed and return: the voltage across the motor.
    lines : mapping of Role to str
        Colour of the trace of each role.
    spans : mapping of SpanKind to SpanStyle
    """

    name: str
    ground: str
    panel: str
    ink: str
    faint: str
    rule: str
    edge: str
    accent: str
    on_accent: str
    alert: str
    on_alert: str
    caution: str
    on_caution: str
    band: str
    band_edge: str
    between: str
    lines: Mapping[Role, str]
    spans: Mapping[SpanKind, SpanStyle]

    def line(self, role: Role) -> str:
        """Give the colour of a role's trace."""
        return self.lines.get(role, self.faint)


def luminance(colour: str) -> float:
    """Give the relative luminance of ``#rrggbb``, 0 (black) to 1 (white).

    Source
    ------
    W3C, Web Content Accessibility Guidelines 2.2, "relative luminance".
    """
    shares = []
    for start in (1, 3, 5):
        part = int(colour[start : start + 2], 16) / 255.0
        shares.append(part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4)
    return 0.2126 * shares[0] + 0.7152 * shares[1] + 0.0722 * shares[2]


def contrast(first: str, second: str) -> float:
    """Give the contrast ratio of two colours, 1 to 21.

    Source
    ------
    W3C, Web Content Accessibility Guidelines 2.2, "contrast ratio": (L1 + 0.05) / (L2 + 0.05).
    """
    lights = sorted((luminance(first), luminance(second)))
    return (lights[1] + 0.05) / (lights[0] + 0.05)


_LOOKS: Mapping[SpanKind, tuple[Hatch, str]] = MappingProxyType(
    {
        SpanKind.NO_DATA: (Hatch.DOTS, "no data"),
        SpanKind.OFF: (Hatch.NONE, "off"),
        SpanKind.RUNNING: (Hatch.SOLID, "running"),
        SpanKind.OVER: (Hatch.RISING, "over limit"),
        SpanKind.UNDER: (Hatch.FALLING, "under limit"),
        SpanKind.LOCKED: (Hatch.SQUARES, "locked"),
        SpanKind.DEAD: (Hatch.LATTICE, "dead"),
        SpanKind.FEED_LOST: (Hatch.LEVEL, "feed lost"),
        SpanKind.GROUND_LOST: (Hatch.UPRIGHT, "ground lost"),
        SpanKind.COMMAND_LOST: (Hatch.GRAINS, "command lost"),
        SpanKind.NO_CURRENT: (Hatch.DOTS, "no current"),
    }
)


def _styles(colours: Mapping[SpanKind, tuple[str, str]]) -> Mapping[SpanKind, SpanStyle]:
    return MappingProxyType(
        {kind: SpanStyle(*colours[kind], *_LOOKS[kind]) for kind in SpanKind},
    )


DAY = Palette(
    name="day",
    ground="#f1eee6",
    panel="#fffdf8",
    ink="#16252b",
    faint="#4c5b61",
    rule="#dedacd",
    edge="#74818a",
    accent="#0d5560",
    on_accent="#ffffff",
    alert="#a3122b",
    on_alert="#ffffff",
    caution="#f4cf5a",
    on_caution="#2b2100",
    band="#d8ecdb",
    band_edge="#3f8a57",
    between="#dbe8f4",
    lines=MappingProxyType(
        {
            Role.MOTOR_FEED: "#0b5aa6",
            Role.MOTOR_RETURN: "#6a3d9a",
            Role.MOTOR_CURRENT: "#b23a06",
            Role.BATTERY: "#5a6a1e",
        }
    ),
    spans=_styles(
        {
            SpanKind.NO_DATA: ("#fffdf8", "#74818a"),
            SpanKind.OFF: ("#e4e2db", "#6c7378"),
            SpanKind.RUNNING: ("#bfe3c6", "#2d7a46"),
            SpanKind.OVER: ("#ffdcae", "#a65a00"),
            SpanKind.UNDER: ("#dfd3f2", "#64409c"),
            SpanKind.LOCKED: ("#ecc9b4", "#83330a"),
            SpanKind.DEAD: ("#ffc2c7", "#a3122b"),
            SpanKind.FEED_LOST: ("#cde0f4", "#0b5aa6"),
            SpanKind.GROUND_LOST: ("#c9ece9", "#0b6b66"),
            SpanKind.COMMAND_LOST: ("#e6e6b8", "#5a6a1e"),
            SpanKind.NO_CURRENT: ("#f8d2ea", "#8e2a6e"),
        }
    ),
)

DARK = Palette(
    name="dark footwell",
    ground="#0f1619",
    panel="#172125",
    ink="#e9eeee",
    faint="#a9b7bb",
    rule="#2a373c",
    edge="#74868c",
    accent="#7fd0d6",
    on_accent="#08262a",
    alert="#ff8791",
    on_alert="#3a0008",
    caution="#f0c64a",
    on_caution="#2b2100",
    band="#1d3a2a",
    band_edge="#5fae7c",
    between="#1b3247",
    lines=MappingProxyType(
        {
            Role.MOTOR_FEED: "#74bdf7",
            Role.MOTOR_RETURN: "#c4a2f2",
            Role.MOTOR_CURRENT: "#ff9b57",
            Role.BATTERY: "#c3d072",
        }
    ),
    spans=_styles(
        {
            SpanKind.NO_DATA: ("#172125", "#8b9aa0"),
            SpanKind.OFF: ("#2b363a", "#93a0a5"),
            SpanKind.RUNNING: ("#1e4a30", "#6fca8d"),
            SpanKind.OVER: ("#54370c", "#ffb454"),
            SpanKind.UNDER: ("#3a2c58", "#c4a2f2"),
            SpanKind.LOCKED: ("#4d2b1a", "#f0a27a"),
            SpanKind.DEAD: ("#5c1620", "#ff8791"),
            SpanKind.FEED_LOST: ("#163a5a", "#74bdf7"),
            SpanKind.GROUND_LOST: ("#0f4644", "#62d0c8"),
            SpanKind.COMMAND_LOST: ("#3c4218", "#c3d072"),
            SpanKind.NO_CURRENT: ("#51203f", "#f295ce"),
        }
    ),
)

STARK = Palette(
    name="high contrast",
    ground="#000000",
    panel="#000000",
    ink="#ffffff",
    faint="#e2e2e2",
    rule="#3a3a3a",
    edge="#ffffff",
    accent="#ffe14d",
    on_accent="#000000",
    alert="#ff9d9d",
    on_alert="#000000",
    caution="#ffe14d",
    on_caution="#000000",
    band="#0c3a1c",
    band_edge="#7dff9b",
    between="#0a2f55",
    lines=MappingProxyType(
        {
            Role.MOTOR_FEED: "#8fd0ff",
            Role.MOTOR_RETURN: "#e2b8ff",
            Role.MOTOR_CURRENT: "#ffb06b",
            Role.BATTERY: "#e8f58a",
        }
    ),
    spans=_styles(
        {
            SpanKind.NO_DATA: ("#000000", "#ffffff"),
            SpanKind.OFF: ("#1c1c1c", "#ffffff"),
            SpanKind.RUNNING: ("#0c3a1c", "#7dff9b"),
            SpanKind.OVER: ("#3f2700", "#ffc266"),
            SpanKind.UNDER: ("#2b1a4a", "#e2b8ff"),
            SpanKind.LOCKED: ("#3d1d0c", "#ffb48a"),
            SpanKind.DEAD: ("#4a0a14", "#ff9d9d"),
            SpanKind.FEED_LOST: ("#0a2f55", "#8fd0ff"),
            SpanKind.GROUND_LOST: ("#063b39", "#7ff0e6"),
            SpanKind.COMMAND_LOST: ("#303806", "#e8f58a"),
            SpanKind.NO_CURRENT: ("#45162f", "#ffb3e2"),
        }
    ),
)

PALETTES = (DAY, DARK, STARK)
"""In the order in which the window turns through them."""
PAIRS: tuple[tuple[str, str, str, float], ...] = (
    ("text", "ink", "ground", 4.5),
    ("text in fields", "ink", "panel", 4.5),
    ("second rank", "faint", "ground", 4.5),
    ("chosen control", "on_accent", "accent", 4.5),
    ("alert", "on_alert", "alert", 4.5),
    ("caution", "on_caution", "caution", 4.5),
    ("outline", "edge", "ground", 3.0),
    ("limit edge", "band_edge", "panel", 3.0),
)
"""What is published of every palette: what it is, the two colours, and the least ratio (W3C, Web
Content Accessibility Guidelines 2.2, 1.4.3 and 1.4.11)."""


def contrast_table() -> str:
    """Give the contrast of the pairs of every palette, as a table in Markdown."""
    names = " | ".join(palette.name for palette in PALETTES)
    lines = [f"| what | at least | {names} |", "|---|---|" + "---|" * len(PALETTES)]
    for words, first, second, least in PAIRS:
        cells = []
        for palette in PALETTES:
            one, other = getattr(palette, first), getattr(palette, second)
            cells.append(f"{one} on {other}: {contrast(one, other):.1f}")
        lines.append(f"| {words} | {least} | {' | '.join(cells)} |")
    return "\n".join(lines)
