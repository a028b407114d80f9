"""Drawn: what one run draws, with all that a comparison with good motors asks of it.

It is made once a review and kept in the index of recordings, so that thousands of runs are held
against a table of baselines without being reviewed again.
"""

from __future__ import annotations

import json
from dataclasses import asdict, dataclass

from meterlog.analysis.budgets.usual_error import usual_more
from meterlog.analysis.compare import Side
from meterlog.analysis.off_by import off_words
from meterlog.model import ComparedRun, Conditions, DecisionRule, Limits
from meterlog.model.origin_mark import origin_mark
from meterlog.work.speed_figures import SpeedFigures, speed_figures


@dataclass(frozen=True, slots=True)
class Drawn:
    """Steady currents of one run, and what must be known beside them.

    Attributes
    ----------
    run : ComparedRun
    mark : str
        Where the readings come from, where no meter sent them from a vehicle; else empty.
    limits : str
        Name of the limits it was judged by.
    nominal_v, compared_at_v : float, volts
        By those limits.
    decision : str
        Rule of those limits.
    guard_factor : float
        Likewise.
    figures : tuple of SpeedFigures
        Lowest speed first.
    unstated_a : tuple of float, amperes
        For each of them, as read: what a clamp of the usual kind adds that nobody has stated.
    refusal : str
        Why it can be held against no motor at all, as whole sentences without a name in front;
        empty where it can.
    """

    run: ComparedRun
    mark: str
    limits: str
    nominal_v: float
    compared_at_v: float
    decision: str
    guard_factor: float
    figures: tuple[SpeedFigures, ...]
    unstated_a: tuple[float, ...]
    refusal: str

    @property
    def label(self) -> str:
        """Name the motor: by its part where somebody stated it, else by the folder."""
        return self.run.part or self.run.name

    @property
    def origin(self) -> str:
        """``simulated`` or ``measured``: with good ones of which kind it may be held."""
        return origin_of(self.mark)

    @property
    def rule(self) -> Limits:
        """By which rule a verdict on it is told."""
        return Limits(decision=DecisionRule(self.decision), guard_factor=self.guard_factor)


def origin_of(mark: str) -> str:
    """Give with good ones of which origin readings of this mark may be held."""
    return "simulated" if mark.startswith("SIMULATED") else "measured"


def drawn_of(side: Side) -> Drawn:
    """Give what a reviewed run draws."""
    figures = speed_figures(side)
    limits = side.limits
    return Drawn(
        run=side.run,
        mark=origin_mark(side.about),
        limits=limits.name,
        nominal_v=limits.nominal_v,
        compared_at_v=limits.compared_at_v,
        decision=limits.decision.value,
        guard_factor=limits.guard_factor,
        figures=figures,
        unstated_a=tuple(_unstated_a(side, one.current_a) for one in figures),
        refusal=_refusal(side),
    )


def drawn_text(drawn: Drawn) -> str:
    """Write it as the index keeps it."""
    return json.dumps(asdict(drawn))


def drawn_from(text: str) -> Drawn | None:
    """Read what :func:`drawn_text` wrote; None from anything else."""
    try:
        found = json.loads(text)
        figures = tuple(SpeedFigures(**one) for one in found.pop("figures"))
        run = ComparedRun(**found.pop("run"))
        unstated = tuple(float(one) for one in found.pop("unstated_a"))
        DecisionRule(found["decision"])
        return Drawn(run=run, figures=figures, unstated_a=unstated, **found)
    except (ValueError, TypeError, KeyError, AttributeError):
        return None


def conditions_unlike(conditions: Conditions) -> str:
    """Give what was stated that makes another current than a fan in the vehicle draws.

    Source
    ------
    The effects that forbid a comparison of two recordings: see the condition checks of those.
    """
    reasons = (
        (conditions.place.startswith("bench"), "the motor was on the bench"),
        (conditions.housing == "open", "the housing was open"),
        (conditions.filter == "clogged", "the filter was clogged"),
        (conditions.filter == "none", "there was no filter"),
    )
    return next((words for holds, words in reasons if holds), "")


def _refusal(side: Side) -> str:
    if side.current is None:
        return "no channel read the motor current; there is nothing to compare."
    if side.tenfold is not None:
        return (
            f"{off_words(side.tenfold.factor)}. {side.tenfold.text} Put that right and measure"
            f" again."
        )
    stated = conditions_unlike(side.about.job.measured_under)
    return f"{stated}; the good ones were measured in the vehicle as it runs." if stated else ""


def _unstated_a(side: Side, amps: float) -> float:
    """Give the usual error of what read the current where nobody has stated it; 0 for none."""
    return 0.0 if side.current is None else usual_more(side.current, amps, at_rest=False)
