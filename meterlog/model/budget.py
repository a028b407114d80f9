"""Budget: what the uncertainty of one value is made of, line by line."""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import StrEnum


class Shape(StrEnum):
    """How the possible values of one source are spread (JCGM 100:2008, 4.3 and 4.4)."""

    NORMAL = "normal"
    RECTANGULAR = "rectangular"
    TRIANGULAR = "triangular"
    U_SHAPED = "U-shaped"


@dataclass(frozen=True, slots=True)
class Source:
    """One line of a budget.

    Attributes
    ----------
    name : str
        In plain words, such as ``scatter of 240 readings``.
    standard_u : float, in ``unit``
        Standard uncertainty of the input.
    unit : str
        Of the input, such as ``V``, ``A`` or ``°C``.
    sensitivity : float
        What the value changes for one unit of the input, sign included.
    shape : Shape
    degrees : float
        Degrees of freedom; infinite for what is taken as exactly known.
    key : str
        Which error this is, such as ``meter-1.current:accuracy``: sources with one key, in one
        budget or in two, are one and the same error and move together. Empty: by itself. What
        follows ``#`` tells apart the independent parts of one set of readings, which have their
        degrees of freedom in common.
    basis : str
        Where the figure comes from.
    whole : str
        Lines with one whole are parts of one rectangle, such as the gain and the digits of one
        accuracy statement: their squares add up to its. Empty: by itself.
    """

    name: str
    standard_u: float
    unit: str
    sensitivity: float = 1.0
    shape: Shape = Shape.NORMAL
    degrees: float = math.inf
    key: str = ""
    basis: str = ""
    whole: str = ""

    @property
    def contribution(self) -> float:
        """Sensitivity times standard uncertainty, sign included, in the unit of the value."""
        return self.sensitivity * self.standard_u


@dataclass(frozen=True, slots=True)
class Budget:
    """A value with its uncertainty and the lines it is made of.

    Attributes
    ----------
    name : str
        What the value is, such as ``motor current at speed 3``.
    value : float, in ``unit``
    unit : str
    sources : tuple of Source
    combined_u : float, in ``unit``
        Combined standard uncertainty, correlated lines added as such.
    degrees : float
        Effective degrees of freedom; infinite where no line has few.
    coverage : float
        The coverage factor, for about 95 %.
    expanded : float, in ``unit``
    reason : str
        How the coverage factor was found, such as ``Student's t for 7.3 degrees of freedom`` or
        ``one rectangular source dominates``.
    lacking : str
        What ought to be in and is not known, as the rest of a sentence; empty for nothing.
    """

    name: str
    value: float
    unit: str
    sources: tuple[Source, ...]
    combined_u: float
    degrees: float
    coverage: float
    expanded: float
    reason: str = ""
    lacking: str = ""
