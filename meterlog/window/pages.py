"""Page: the pages of the window, in the order of the work."""

from __future__ import annotations

from dataclasses import dataclass
from enum import IntEnum

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

from meterlog.window.keys import DIGITS


class Page(IntEnum):
    """Where a page stands in the stack."""

    METERS = 0
    RUN = 1
    CIRCUIT = 2
    JOB = 3
    COMPARE = 4
    CLAIM = 5
    RECORDINGS = 6
    KEYS = 7


@dataclass(frozen=True, slots=True)
class PageTitle:
    """What the button of a page says.

    Attributes
    ----------
    page : Page
    words : str
    name : str
        For who can't see the button.
    """

    page: Page
    words: str
    name: str


TITLES = (
    PageTitle(Page.JOB, "Job", "page: what the work order says"),
    PageTitle(Page.METERS, "Meters", "page: choose the meters"),
    PageTitle(Page.CIRCUIT, "Circuit", "page: find the bad part"),
    PageTitle(Page.RUN, "Trace", "page: measure and look"),
    PageTitle(Page.COMPARE, "Before / after", "page: old part against new"),
    PageTitle(Page.CLAIM, "Claim", "page: make the claim pack"),
    PageTitle(Page.RECORDINGS, "Recordings", "page: find a job or a recording"),
)
"""In the order of the work, as they stand at the top; Ctrl and a digit turns to each."""


def page_by_place(event: QKeyEvent) -> Page | None:
    """Give the page that Ctrl and a digit turn to, in the order of the work; also while typing."""
    held = event.modifiers() & ~Qt.KeyboardModifier.KeypadModifier
    key = Qt.Key(event.key())
    if held != Qt.KeyboardModifier.ControlModifier or key not in DIGITS:
        return None
    place = DIGITS.index(key) - 1
    return TITLES[place].page if 0 <= place < len(TITLES) else None
