"""WorkPage: what the frame asks of a page of its own, and the keys that act on it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Protocol

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget

from meterlog.evidence.palette import Palette


@dataclass(frozen=True, slots=True)
class PageKey:
    """A key that acts on one page alone.

    Attributes
    ----------
    keys : tuple of Qt.Key
    shown : str
        The keys as they read on the key map.
    words : str
        What they do.
    do : callable
    """

    keys: tuple[Qt.Key, ...]
    shown: str
    words: str
    do: Callable[[], object]


class WorkPage(Protocol):
    """A page with its working parts. The frame makes it after the first paint, ahead of its use."""

    @property
    def widget(self) -> QWidget:
        """What stands in the stack of pages."""

    def begin(self) -> None:
        """Look again at what may have changed: the page is being turned to."""

    def tick(self) -> None:
        """Look after what is under way; some four times a second, whichever page is on show."""

    def set_palette(self, palette: Palette, pixels: int) -> None:
        """Take other colours, and text of ``pixels`` height."""

    def keys(self) -> tuple[PageKey, ...]:
        """Give the keys that act on this page now."""

    def may_close(self) -> bool:
        """Tell whether nothing is lost when the window closes now."""

    def close(self) -> None:
        """Let go of threads and files."""
