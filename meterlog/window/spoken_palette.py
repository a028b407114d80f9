"""A palette whose words, those of the ribbon and its legend, are in the window's language."""

from __future__ import annotations

from dataclasses import replace
from types import MappingProxyType

from meterlog.evidence.palette import Palette
from meterlog.window.words import say


def in_language(palette: Palette) -> Palette:
    """Give the palette with its words translated; its colours stay."""
    spans = {kind: replace(style, word=say(style.word)) for kind, style in palette.spans.items()}
    return replace(palette, spans=MappingProxyType(spans))
