"""Resistive: what a current that left its level within a step is put down to.

==================  ==================  ==================  ==================================
current             feed                return              kind
==================  ==================  ==================  ==================================
falls 10 to 40 %    falls               as before or falls  resistive-feed, or the supply itself
falls 10 to 40 %    as before or rises  rises               resistive-ground, or the controller
falls 10 to 40 %    as before           as before           under: in the motor, or less air
rises 20 % or more  falls a little      rises a little      drag, where V / I has become less
==================  ==================  ==================  ==================================

Source: Kirchhoff's voltage law on the series circuit; the pattern table is common practice, no
source. The uncertainty of a change: JCGM 100:2008, 5.2.2, one meter's gain counted once.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from meterlog.analysis.budgets import BudgetMaker, combine, conformity
from meterlog.analysis.budgets.scatter import Scatter
from meterlog.analysis.command_side import LEAST_SHARE, LEAST_V
from meterlog.analysis.rounding import with_uncertainty
from meterlog.analysis.within_step import Shift
from meterlog.model import Budget, Finding, FindingKind, Limits, Role, Step, Verdict

LEAST = 0.025
"""A voltage has moved by this part of the nominal one or more: 0.3 V of 12 V. Common practice has a
resistive side move it by 1 to 3 V."""
SUPPLY = 0.5
"""The supply itself fell when the battery did by this part of what the feed did."""
MORE_AIR = 1.3
"""More air than this part of the usual load has the fan draw no more than that. Common practice."""
MORE_ACROSS = 1.03
"""Above this part of the voltage before, more current is the supply's doing."""


@dataclass(frozen=True, slots=True)
class Cause:
    """What a shift is put down to.

    Attributes
    ----------
    kind : FindingKind
    words : str
        Why, as the rest of a sentence.
    sure : bool
        The channels at hand leave nothing else.
    role : Role or None
        The voltage whose move shows it.
    """

    kind: FindingKind
    words: str
    sure: bool = False
    role: Role | None = None


def cause_of(shift: Shift, limits: Limits) -> Cause | None:
    """Give what a shift is put down to; None for one that is in order.

    In order are a supply that moved, and a command that asked for something else.
    """
    command = shift.change(Role.COMMAND)
    if command is not None:
        was, now = shift.base[Role.COMMAND].mean, shift.now[Role.COMMAND].mean
        if abs(command) >= max(LEAST_V, LEAST_SHARE * max(abs(was), abs(now))):
            return None
    return _less(shift, limits) if shift.part < 1.0 else _more(shift)


def _less(shift: Shift, limits: Limits) -> Cause | None:
    feed, back = shift.change(Role.MOTOR_FEED), shift.change(Role.MOTOR_RETURN)
    least = LEAST * limits.nominal_v
    fell = -feed if feed is not None and feed <= -least else 0.0
    rose = back if back is not None and back >= least else 0.0
    if fell > 0.0 and rose > 0.0:
        both = "feed and return both moved: more than one cause, or a probe that moved"
        return Cause(FindingKind.UNDER, both)
    if fell > 0.0:
        return _ahead(shift, fell)
    if rose > 0.0:
        return _behind(shift, rose)
    if feed is not None and back is not None:
        stayed = "feed and return stayed: consistent with poor contact of the brushes, or less air"
        return Cause(FindingKind.UNDER, stayed)
    missing = [
        words
        for words, change in (("motor feed voltage", feed), ("motor return voltage", back))
        if change is None
    ]
    if feed is None:
        where = "in the feed" if back is not None else "in the feed or the ground side"
        where += ", a supply that fell"
    else:
        where = "on the ground side"
    return Cause(
        FindingKind.UNDER,
        f"consistent with resistance {where}, poor contact of the brushes or less air;"
        f" {' and '.join(missing)} would settle it",
    )


def _ahead(shift: Shift, fell: float) -> Cause | None:
    battery, relay = shift.change(Role.BATTERY), shift.change(Role.RELAY_OUT)
    if battery is not None and -battery >= SUPPLY * fell:
        return None
    if battery is None and relay is None:
        return Cause(
            FindingKind.RESISTIVE_FEED,
            "consistent with resistance ahead of the motor, or a supply that fell; battery voltage"
            " would settle it",
            role=Role.MOTOR_FEED,
        )
    where = "resistance between battery and motor"
    if relay is not None:
        where = (
            "resistance in fuse, relay or their wires"
            if -relay >= SUPPLY * fell
            else "resistance between relay and motor (plug or wire)"
        )
    if battery is None and relay is not None and -relay >= SUPPLY * fell:
        where = f"consistent with {where}, or a supply that fell; battery voltage would settle it"
        return Cause(FindingKind.RESISTIVE_FEED, where, role=Role.MOTOR_FEED)
    held = "the battery held" if battery is not None else "the voltage behind the relay held"
    return Cause(FindingKind.RESISTIVE_FEED, f"{held}: {where}", sure=True, role=Role.MOTOR_FEED)


def _behind(shift: Shift, rose: float) -> Cause:
    ground = shift.change(Role.CONTROLLER_GROUND)
    stayed = " though its command stayed" if shift.change(Role.COMMAND) is not None else ""
    if ground is None:
        words = (
            f"consistent with resistance in the ground wire, or a controller that gave less{stayed}"
        )
        settle = (
            "controller ground would settle it"
            if stayed
            else ("controller ground and the command would settle it")
        )
        return Cause(FindingKind.RESISTIVE_GROUND, f"{words}; {settle}", role=Role.MOTOR_RETURN)
    if ground >= SUPPLY * rose:
        words = "the controller's ground rose with it: resistance in the ground wire"
        return Cause(FindingKind.RESISTIVE_GROUND, words, sure=True, role=Role.MOTOR_RETURN)
    return Cause(
        FindingKind.UNDER,
        f"the return rose but the controller's ground did not: consistent with a controller that"
        f" gave less{stayed}",
    )


def _more(shift: Shift) -> Cause | None:
    feed, back = shift.change(Role.MOTOR_FEED), shift.change(Role.MOTOR_RETURN)
    if feed is not None and back is not None:
        was = shift.base[Role.MOTOR_FEED].mean - shift.base[Role.MOTOR_RETURN].mean
        if was <= 0.0 or (was + feed - back) > MORE_ACROSS * was:
            return None
        ratio = (was + feed - back) / was / shift.part
        air = "" if shift.part > MORE_AIR else ", or more air"
        return Cause(
            FindingKind.DRAG,
            f"at {was + feed - back:.1f} V across the motor after {was:.1f} V, so that volts by"
            f" amperes fell to {100.0 * ratio:.0f} %: consistent with drag (bearing,"
            f" wheel){air}",
            sure=shift.part > MORE_AIR,
            role=Role.MOTOR_FEED,
        )
    if feed is not None and feed > (MORE_ACROSS - 1.0) * shift.base[Role.MOTOR_FEED].mean:
        return None
    missing = [
        words
        for words, change in (("motor feed voltage", feed), ("motor return voltage", back))
        if change is None
    ]
    return Cause(
        FindingKind.DRAG,
        f"consistent with drag, more air or a higher voltage at the motor;"
        f" {' and '.join(missing)} would settle it",
    )


class ShiftTeller:
    """Makes the findings of shifts.

    Parameters
    ----------
    limits : Limits
    maker : BudgetMaker
        That has taken the recording's events.
    """

    def __init__(self, limits: Limits, maker: BudgetMaker) -> None:
        self._limits = limits
        self._maker = maker

    def of_step(
        self, step: Step, shifts: Sequence[Shift], known: Sequence[Finding]
    ) -> Iterator[Finding]:
        """Give one finding for each cause within one step.

        Parameters
        ----------
        step : Step
        shifts : sequence of Shift
        known : sequence of Finding
            Of the recording: a rise is drag for certain only where one of them says that the
            current left its limits meanwhile.
        """
        causes = [(shift, cause_of(shift, self._limits)) for shift in shifts]
        groups: dict[tuple[FindingKind, str], list[Shift]] = {}
        first: dict[tuple[FindingKind, str], Cause] = {}
        for shift, cause in causes:
            if cause is not None:
                # Words with figures differ from one to the next: one finding of a kind is enough.
                key = (cause.kind, "" if cause.sure else cause.words)
                groups.setdefault(key, []).append(shift)
                first.setdefault(key, cause)
        for key, lot in groups.items():
            yield self._finding(step, first[key], lot, known)

    def _finding(
        self, step: Step, cause: Cause, lot: Sequence[Shift], known: Sequence[Finding]
    ) -> Finding:
        worst = max(lot, key=lambda one: abs(1.0 - one.part))
        moved = self._moved(worst, cause.role)
        value = moved
        if cause.kind is FindingKind.DRAG or moved is None:
            value = self._level(worst, Role.MOTOR_CURRENT, worst.now[Role.MOTOR_CURRENT].mean)
        return Finding(
            kind=cause.kind,
            verdict=self._verdict(cause, moved, lot, known),
            start_ns=lot[0].start_ns,
            end_ns=lot[-1].end_ns,
            edge_ns=100_000_000,
            value=None if value is None else abs(value.value),
            unit="V" if value is moved and moved is not None else "A",
            expanded_uncertainty=None if value is None or not value.sources else value.expanded,
            limit=None,
            speed=step.speed,
            statement=_statement(step, cause, lot, worst, moved),
            coverage_factor=None if value is None or not value.sources else value.coverage,
        )

    def _verdict(
        self, cause: Cause, moved: Budget | None, lot: Sequence[Shift], known: Sequence[Finding]
    ) -> Verdict:
        if not cause.sure or moved is None:
            return Verdict.CANT_TELL
        if cause.kind is FindingKind.DRAG:
            beyond = (FindingKind.OVER, FindingKind.LOCKED)
            left = any(
                f.kind in beyond
                and f.verdict is Verdict.FAIL
                and any(f.start_ns < one.end_ns and f.end_ns > one.start_ns for one in lot)
                for f in known
            )
            return Verdict.FAIL if left else Verdict.CANT_TELL
        least = LEAST * self._limits.nominal_v
        sure = conformity(moved, None, least, self._limits).verdict is Verdict.FAIL
        return Verdict.FAIL if sure else Verdict.CANT_TELL

    def _moved(self, shift: Shift, role: Role | None) -> Budget | None:
        """Give the budget of a voltage's move: what one meter has in common goes out."""
        if role is None or shift.change(role) is None:
            return None
        before = self._level(shift, role, shift.base[role].mean, base=True)
        now = self._level(shift, role, shift.now[role].mean)
        if before is None or now is None:
            return None
        sign = 1.0 if now.value >= before.value else -1.0
        change = abs(now.value - before.value)
        return combine(f"move of the {role}", change, "V", [(now, sign), (before, -sign)])

    def _level(self, shift: Shift, role: Role, mean: float, *, base: bool = False) -> Budget | None:
        level = shift.base[role] if base else shift.now[role]
        during = shift.base_ns if base else (shift.start_ns, shift.end_ns)
        scatter = Scatter(level.n, level.sd if level.n > 1 else None)
        return self._maker.of_reading(role, f"{role}", mean, scatter, during)


def _statement(
    step: Step, cause: Cause, lot: Sequence[Shift], worst: Shift, moved: Budget | None
) -> str:
    was, now = (abs(part[Role.MOTOR_CURRENT].mean) for part in (worst.base, worst.now))
    way = "fell" if now < was else "rose"
    together_s = sum(one.end_ns - one.start_ns for one in lot) / 1e9
    times = "once" if len(lot) == 1 else f"{len(lot)} times, {together_s:.1f} s together,"
    back = "and came back" if lot[-1].came_back else "and was still so at the step's end"
    told = (
        f"Speed {step.speed}: the current {way} {times} from {was:.1f} A to {now:.1f} A"
        f" ({100.0 * (now / was - 1.0):+.0f} %), first from {lot[0].start_ns / 1e9:.1f} s to"
        f" {lot[0].end_ns / 1e9:.1f} s, {back}"
    )
    if moved is not None and cause.kind is not FindingKind.DRAG and cause.role is not None:
        name = "feed fell" if cause.role is Role.MOTOR_FEED else "return rose"
        told += f"; the {name} by {with_uncertainty(moved.value, moved.expanded, 'V')}"
    return f"{told}; {cause.words}."
