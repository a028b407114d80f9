"""FuseLoad: the steady current on the highest speed in percent of the fuse's rating."""

from __future__ import annotations

from collections.abc import Sequence

from meterlog.analysis.budgets import Conformity, Scatter, combine
from meterlog.analysis.budgets.followed import maker_of
from meterlog.analysis.budgets.usual_error import cautious, usual_words
from meterlog.analysis.judged import Judged
from meterlog.analysis.motor.points import PULSED, SEVERAL_LEVELS, several_levels
from meterlog.analysis.rounding import with_uncertainty
from meterlog.analysis.startup.beyond_range import beyond_words, lasting
from meterlog.analysis.step_edges import step_edge_ns
from meterlog.analysis.taken_back import TakenBack
from meterlog.analysis.unread_speeds import unread_speeds
from meterlog.model import Budget, Finding, FindingKind, Fuse, StartUp, Step, Verdict


class FuseLoad:
    """The steady load on the highest speed that was run.

    Parameters
    ----------
    judged : Judged
    fuse : Fuse
    taken_back : TakenBack
        Which verdicts can't stand beside a doubt.
    startups : sequence of StartUp

    Attributes
    ----------
    budget : Budget or None
        In percent of the rating; None where nothing was steady.
    judged : Conformity
    verdict : Verdict
        With what the recording can't have seen.
    words : str
    """

    def __init__(
        self, judged: Judged, fuse: Fuse, taken_back: TakenBack, startups: Sequence[StartUp]
    ) -> None:
        self._fuse, self._limits = fuse, judged.limits
        self._step = _highest(judged.steps)
        self._run = {step.speed for step in judged.steps}
        self._unread = unread_speeds(judged.events, judged.steps)
        current = None if self._step is None else _current(judged, self._step)
        self.budget: Budget | None = None
        self._turned = ""
        self.judged = Conformity(Verdict.CANT_TELL, None, fuse.max_load_percent)
        self.verdict = Verdict.CANT_TELL
        over = lasting(judged.findings, startups, judged.limits.inrush_window_s)
        if over and (self._step is None or current is None):
            self.words = (
                f"Steady load of the {fuse.rating_a:g} A fuse: can't tell, as"
                f" {beyond_words(over)}; a meter and a clamp of a higher range would settle it."
            )
            return
        if self._step is None or current is None:
            self.words = (
                f"Steady load of the {fuse.rating_a:g} A fuse: can't tell; no speed is known"
                " to have been run long enough to be steady."
            )
            return
        part = 100.0 / fuse.rating_a
        name = "steady load of the fuse"
        self.budget = combine(name, part * current.value, "%", [(current, part)])
        maker = maker_of(judged)
        usual = maker.usual_more(current.value, at_rest=False)
        bounds = (None, fuse.max_load_percent)
        self.judged, turned = cautious(self.budget, bounds, judged.limits, part * usual)
        self._turned = usual_words(maker.current, usual) if turned else ""
        most_a = fuse.rating_a * fuse.max_load_percent / 100.0
        unsure = taken_back.of_step(self._step, most_a) or self._uneven(self._step)
        doubt = unsure or (beyond_words(over) if over else self._not_the_highest())
        self.verdict = self.judged.verdict
        if doubt and (self.verdict is Verdict.PASS or unsure):
            self.verdict = Verdict.CANT_TELL
        else:
            doubt = ""
        self.words = self._words(current, doubt)

    @property
    def speed(self) -> int | None:
        """The commanded speed; None where nobody recorded one."""
        return None if self._step is None else self._step.speed

    def _uneven(self, step: Step) -> str:
        pulsed = self._limits.controller.kind == PULSED
        return SEVERAL_LEVELS if several_levels(step) and not pulsed else ""

    def _not_the_highest(self) -> str:
        """Say why a load that is low enough proves nothing of the highest speed."""
        highest = max(self._limits.speeds, default=0)
        if self.speed is None:
            return "nobody recorded whether this was the highest speed"
        if self.speed < highest:
            if highest in self._unread:
                return f"speed {highest} was commanded and not read"
            if highest not in self._run:
                return f"speed {highest} was not run"
            return f"speed {highest} was not run long enough to be steady"
        return ""

    def _words(self, current: Budget, doubt: str) -> str:
        known = self.budget is not None and bool(self.budget.sources)
        value, wide = (0.0, None) if self.budget is None else (self.budget.value, None)
        if self.budget is not None and known:
            wide = self.budget.expanded
        at = "the strongest speed seen" if self.speed is None else f"speed {self.speed}"
        lacking = f" ({current.lacking})" if current.lacking else ""
        tail = f"can't tell, as {doubt}" if doubt else f"{self.verdict}{self._turned}"
        return (
            f"Steady load on {at}: {with_uncertainty(value, wide, '%')} of the"
            f" {self._fuse.rating_a:g} A fuse's rating{lacking}; allowed"
            f" {self._fuse.max_load_percent:g} %: {tail}."
        )

    def findings(self) -> tuple[Finding, ...]:
        """Give the finding on the load; none where nothing was steady."""
        step, value = self._step, self.budget
        if step is None or value is None:
            return ()
        return (
            Finding(
                kind=FindingKind.FUSE_LOAD,
                verdict=self.verdict,
                start_ns=step.start_ns,
                end_ns=step.end_ns,
                edge_ns=step_edge_ns(step, self._limits),
                value=value.value,
                unit="%",
                expanded_uncertainty=value.expanded if value.sources else None,
                limit=self._fuse.max_load_percent,
                speed=step.speed,
                statement=self.words,
                coverage_factor=value.coverage if value.sources else None,
                probability=self.judged.probability,
            ),
        )


def _highest(steps: Sequence[Step]) -> Step | None:
    """Give the steady step of the highest speed; where none is known, of the strongest current."""
    # Without a command or a found change a step may be several speeds: its mean is none of them.
    known = [step for step in steps if step.speed is not None or step.found]
    steady = [step for step in known if step.steady_n >= 2 and step.steady_mean_a is not None]
    named = [step for step in steady if step.speed]
    if named:
        top = max(step.speed or 0 for step in named)
        steady = [step for step in named if step.speed == top]
    elif any(step.speed == 0 for step in steady):
        steady = [step for step in steady if step.speed is None]
    return max(steady, key=lambda step: abs(step.steady_mean_a or 0.0), default=None)


def _current(judged: Judged, step: Step) -> Budget | None:
    """Give the step's steady current by its size."""
    if step.current is not None or step.steady_mean_a is None:
        return step.current
    scatter = Scatter(step.steady_n, step.steady_sd_a, step.steady_lag1_a)
    return maker_of(judged).of_current(step.steady_mean_a, scatter, (step.start_ns, step.end_ns))
