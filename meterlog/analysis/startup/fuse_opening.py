"""FuseOpening: the verdict on a fuse that did not open, or may."""

from __future__ import annotations

from collections.abc import Sequence

from meterlog.analysis.judged import Judged
from meterlog.analysis.past_range import current_parts, surely_a
from meterlog.analysis.startup.beyond_range import (
    beyond_words,
    lasting,
    longest_past_s,
    overloads,
    ran_past,
)
from meterlog.analysis.startup.opening import earliest_s, margins, must_have_opened, used_up
from meterlog.analysis.startup.time_above import Exceedances
from meterlog.analysis.taken_back import TakenBack
from meterlog.model import (
    Finding,
    FindingKind,
    Fuse,
    OpeningMargin,
    Role,
    StartUp,
    Step,
    Verdict,
    channel_of,
)
from meterlog.model.opening_times import OpeningTable

HIDDEN_TIMES = 5.0
"""A start-up peak that readings are too slow to show may be this many times the steady current:
three to five were published for cabin fans (from memory)."""
HIDDEN_S = 0.5
"""And may last so long."""
_PULSED = "pulsed"


def _size(value: float) -> str:
    return f"{value:.3g}"


def _range_ended(one: StartUp) -> str:
    """Say how the peak of a start shows that a range ended, as a clause; empty where none did."""
    if one.peak_over:
        return "the start-up peak was beyond the meter's range (overload)"
    if one.peak_cut:
        return "the readings stand at the start-up peak, as at the end of a range"
    if one.peak_past:
        return "the start-up peak is more than the meter or the clamp is stated for"
    return ""


class FuseOpening:
    """Whether a sound fuse could have opened by what was seen.

    Parameters
    ----------
    judged : Judged
    fuse : Fuse
    table : OpeningTable
        Of that fuse.
    startups : sequence of StartUp
    seen : Exceedances

    Attributes
    ----------
    margins : tuple of OpeningMargin
    verdict : Verdict
    words : str
    """

    def __init__(
        self,
        judged: Judged,
        fuse: Fuse,
        table: OpeningTable,
        startups: Sequence[StartUp],
        seen: Exceedances,
    ) -> None:
        self._fuse, self._table, self._seen = fuse, table, seen
        self._start_ns = judged.spans[0].start_ns if judged.spans else 0
        self._end_ns = judged.spans[-1].end_ns if judged.spans else 0
        self.margins = margins(table, seen)
        self._named = f"a sound {fuse.rating_a:g} A {fuse.kind} fuse"
        late = must_have_opened(self._known_rows(judged))
        whole = Step(None, self._start_ns, self._end_ns)
        doubt = TakenBack(judged.instruments, judged.doubts).of_step(whole)
        self._over = lasting(judged.findings, startups, judged.limits.inrush_window_s)
        self._beyond = beyond_words(self._over) if self._over else ""
        if not self._beyond and ran_past(judged, startups):
            self._beyond = "the current was more than the meter or the clamp is stated for"
        peaks = [one for one in overloads(judged.findings) if one not in self._over]
        self._peak_s = max([HIDDEN_S, *((one.end_ns - one.start_ns) / 1e9 for one in peaks)])
        self._past_s = max(HIDDEN_S, longest_past_s(judged, startups))
        if seen.highest_a <= 0.0 and not self._over:
            doubt = doubt or "no current was read"
        self.row = late or self._nearest()
        if late is not None:
            self.verdict, words = Verdict.FAIL, self._late(late, pulsed=_pulsed(judged))
            if _pulsed(judged):
                self.verdict = Verdict.CANT_TELL
        else:
            self.verdict, words = self._not_late(startups)
        if doubt:
            self.verdict, words = (
                Verdict.CANT_TELL,
                f"Opening of {self._named}: can't tell, as {doubt}.",
            )
        checked = "" if table.checked else ", not all of them compared with published sheets"
        self.words = f"{words} Opening times: {table.kind} by ISO 8820-3{checked}."

    def _known_rows(self, judged: Judged) -> list[OpeningMargin]:
        """Give the rows that what was read can prove: at least so much flowed, however far off."""
        current = channel_of(judged.instruments, Role.MOTOR_CURRENT)
        if not current_parts(judged.doubts):
            return list(self.margins)
        return [row for row in self.margins if row.amps <= surely_a(current)]

    def _nearest(self) -> OpeningMargin | None:
        """Give the row that comes nearest to opening."""
        told = [row for row in self.margins if row.margin is not None]
        return min(told, key=lambda row: row.margin or 0.0, default=None)

    def _late(self, row: OpeningMargin, *, pulsed: bool) -> str:
        seen = (
            f"The current stood at {row.percent:g} % of the rating ({row.amps:g} A) or above for"
            f" {_size(row.longest_s)} s (at least {_size(row.least_s)} s);"
            f" {self._named} opens by {row.opens_by_s:g} s at that"
        )
        if pulsed:
            return (
                f"{seen}. The controller pulses, so that the fuse carries less than the motor:"
                " can't tell; the current through the fuse itself would settle it."
            )
        return (
            f"{seen}: fail. As it did not open, the fuse is not of that rating or kind, or the"
            " clamp reads too high, or the current goes another way: look at the fuse first."
        )

    def _not_late(self, startups: Sequence[StartUp]) -> tuple[Verdict, str]:
        used = used_up(self._table, self._seen, self._fuse.rating_a)
        if used >= 1.0:
            return Verdict.CANT_TELL, self._may_open()
        lowest_a = self.margins[0].amps
        hot = sum(one.peak_a >= lowest_a for one in startups)
        if hot > 1 and used * hot >= 1.0:
            return Verdict.CANT_TELL, self._one_after_another(hot)
        if self._beyond:
            return Verdict.CANT_TELL, (
                f"What was read can't open {self._named}, but {self._beyond}: can't tell; a meter"
                f" and a clamp of a higher range would settle it."
            )
        hidden = self._hidden(startups)
        if hidden:
            return Verdict.CANT_TELL, hidden
        if self.row is None:
            lowest = self.margins[0]
            return Verdict.PASS, (
                f"The current never reached {lowest.percent:g} % of the rating"
                f" ({lowest.amps:g} A): by what was seen {self._named} can't open: pass."
            )
        row = self.row
        return Verdict.PASS, (
            f"By what was seen {self._named} can't open: it stands nearest to it at"
            f" {row.percent:g} % ({row.amps:g} A), {_size(row.longest_s)} s of the"
            f" {row.opens_after_s:g} s it lasts at least: pass."
        )

    def _one_after_another(self, count: int) -> str:
        """Say that starts which by themselves open no fuse may do so together.

        How fast a fuse cools no table says: none of its heat is taken to be gone in between, which
        errs towards opening.
        """
        lowest = self.margins[0]
        return (
            f"By what was seen no single start can open {self._named}; but {count} starts went"
            f" above {lowest.percent:g} % of the rating ({lowest.amps:g} A), and what heat is left"
            f" in the fuse from one to the next adds up: can't tell."
        )

    def _may_open(self) -> str:
        if self._beyond:
            return (
                f"A{self._named[1:]} may open by what was read, but {self._beyond}: can't tell; a"
                f" meter and a clamp of a higher range would settle it."
            )
        reached = [row for row in self.margins if row.most_s > 0.0]
        rows = ", ".join(
            f"{_size(row.longest_s)} s at {row.percent:g} % or above{_window(row)}"
            for row in reached
        )
        return (
            f"A{self._named[1:]} may open by what was seen and need not: can't tell."
            f" The current stood {rows}. Between the rows taken as a line in logarithms. The"
            " opening times of the very fuse would settle it."
        )

    def _hidden(self, startups: Sequence[StartUp]) -> str:
        """Say that a start-up peak which the readings do not show might open the fuse."""
        for one in startups:
            if not one.peak_floor or not one.steady_a:
                continue
            worst = max(HIDDEN_TIMES * one.steady_a, one.peak_a)
            lasts_s = self._peak_s if one.peak_over else HIDDEN_S
            if one.peak_past:
                lasts_s = max(lasts_s, self._past_s)
            if earliest_s(self._table, 100.0 * worst / self._fuse.rating_a) <= lasts_s:
                if ended := _range_ended(one):
                    return (
                        f"What was read can't open {self._named}, but {ended}; it may reach"
                        f" {_size(worst)} A for up to {_size(lasts_s)} s: can't tell; a meter and a"
                        f" clamp of a higher range would settle it."
                    )
                return (
                    f"What was read can't open {self._named}, but the readings are too slow to show"
                    f" the start-up peak, which may reach {_size(worst)} A for up to"
                    f" {HIDDEN_S:g} s: can't tell; readings 5 ms apart or closer would settle it."
                )
        return ""

    def findings(self) -> tuple[Finding, ...]:
        """Give the finding on opening."""
        row = self.row
        limit = None
        if row is not None:
            limit = row.opens_by_s if self.verdict is Verdict.FAIL else row.opens_after_s
        return (
            Finding(
                kind=FindingKind.FUSE_OPENING,
                verdict=self.verdict,
                start_ns=self._start_ns,
                end_ns=self._end_ns,
                edge_ns=0,  # the first and the last reading
                value=None if row is None else row.longest_s,
                unit="s",
                expanded_uncertainty=None,
                limit=limit,
                speed=None,
                statement=self.words,
            ),
        )


def _pulsed(judged: Judged) -> bool:
    return judged.limits.controller.kind == _PULSED


def _window(row: OpeningMargin) -> str:
    """Say within which window a fuse opens at a row."""
    if row.opens_after_s is None:
        return f" (opens by {row.opens_by_s:g} s)"
    if row.opens_by_s is None:
        return f" (carried for {row.opens_after_s / 3600.0:g} h)"
    return f" (opens after {row.opens_after_s:g} to {row.opens_by_s:g} s)"
