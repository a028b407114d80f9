"""LooseContact: a contact that opens after a while, and what a tap does to it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from numpy.random import Generator


class TapEffect(StrEnum):
    """What a tap does to the contact."""

    NONE = "none"
    CLOSES = "closes"
    OPENS = "opens"


@dataclass(frozen=True, slots=True)
class LooseContactFigures:
    """How a loose contact behaves. Times are drawn evenly between two bounds.

    Attributes
    ----------
    holds_s : tuple of two floats, seconds
        How long it carries current before it opens by itself.
    opens_s : tuple of two floats, seconds, or None
        How long it stays open; None: until tapped.
    tap : TapEffect
    """

    holds_s: tuple[float, float]
    opens_s: tuple[float, float] | None = None
    tap: TapEffect = TapEffect.NONE


class LooseContact:
    """One loose contact: a brush, a plug, a ground stud.

    Parameters
    ----------
    figures : LooseContactFigures
    rng : numpy Generator
        Decides all times.
    """

    def __init__(self, figures: LooseContactFigures, rng: Generator) -> None:
        self.figures = figures
        self._rng = rng
        self.is_open = False
        self._left_s = rng.uniform(*figures.holds_s)

    def go_on(self, step_s: float, *, carrying: bool) -> bool:
        """Go on by one step; True while open.

        Parameters
        ----------
        step_s : float, seconds
        carrying : bool
            Whether current is asked of it: an idle contact does not wear.
        """
        if self.is_open:
            if self.figures.opens_s is not None:
                self._left_s -= step_s
                if self._left_s <= 0.0:
                    self._close()
        elif carrying:
            self._left_s -= step_s
            if self._left_s <= 0.0:
                self._open()
        return self.is_open

    def tap(self) -> None:
        """Be hit."""
        if self.figures.tap is TapEffect.CLOSES:
            self._close()
        elif self.figures.tap is TapEffect.OPENS and not self.is_open:
            self._open()

    def _open(self) -> None:
        self.is_open = True
        if self.figures.opens_s is not None:
            self._left_s = self._rng.uniform(*self.figures.opens_s)

    def _close(self) -> None:
        self.is_open = False
        self._left_s = self._rng.uniform(*self.figures.holds_s)
