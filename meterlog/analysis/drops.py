"""Drops: what is lost ahead of the motor and behind it, judged at full speed.

A bad contact drops three times as much on high as on low: the drop is judged on high only. Two
readings of about 12 V subtracted know a drop of 0.2 V badly; a channel straight across the part
knows it well.

Source: Kirchhoff's voltage law (OpenStax, University Physics 2, 10.3); the uncertainty of a
difference: JCGM 100:2008, 5.2.2. That drops are judged on high: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from meterlog.analysis.budgets import BudgetMaker, Conformity, combine, conformity
from meterlog.analysis.budgets.scatter import Scatter
from meterlog.analysis.drop_levels import WorseLevel, worse_level
from meterlog.analysis.judged import Judged
from meterlog.analysis.motor.points import SEVERAL_LEVELS, current_is_past, doubt_words, step_words
from meterlog.analysis.past_range import PAST, PAST_READING
from meterlog.analysis.resistive import ShiftTeller
from meterlog.analysis.rounding import with_uncertainty
from meterlog.analysis.side_volts import SideLevel, SideVolts
from meterlog.analysis.step_edges import step_edge_ns
from meterlog.analysis.within_step import shifts
from meterlog.model import (
    Budget,
    Doubt,
    DoubtKind,
    Finding,
    FindingKind,
    Limits,
    Role,
    Step,
    Verdict,
)

USUAL = 0.02
"""Where a meter's accuracy is not stated, a usual one's readings differ by up to this part of the
nominal voltage: a percent each. Common practice, no source."""
USUALLY_HELD = 3.5
"""A held rotor draws so many times the usual current at the least. Common practice, no source."""
WIDE = 0.3
"""An uncertainty above this part of the limit is wide beside it."""
LATE_LAGS = 2
_GROUND_NAMES = ("ground", "gnd", "earth", "return", "minus", "negative")
_OFF_PROBES = (
    DoubtKind.PROBE,
    DoubtKind.BEYOND,
    DoubtKind.NOMINAL,
    DoubtKind.STUCK,
    DoubtKind.CLAMP_QUIET,
)


def drop_findings(judged: Judged, side_volts: SideVolts) -> tuple[Finding, ...]:
    """Give the findings of drops, and of currents that left their level within a step.

    Parameters
    ----------
    judged : Judged
        Steps with their budgets.
    side_volts : SideVolts
        Of the same recording.

    Returns
    -------
    tuple of Finding
        In time order. Of kinds resistive-feed and resistive-ground, also where a limit could be
        held against nothing although its channels are there; drag for a current that rose
        for a while; under for one that fell without a voltage that says why. Drag over several
        speeds is told by :func:`~meterlog.analysis.drag.drag_finding`.
    """
    maker = BudgetMaker(judged.instruments, judged.conditions)
    for event in judged.events:
        maker.take(event)
    drops = _Drops(judged, side_volts, maker)
    teller = ShiftTeller(judged.limits, maker)
    late_ns = LATE_LAGS * round(judged.limits.command_lag_s * 1e9)
    found: list[Finding] = []
    for index, step in enumerate(judged.steps):
        if not step.speed:
            continue
        found += drops.of_step(step)
        last = index + 1 == len(judged.steps)
        off = shifts(side_volts, step, 0 if last else late_ns)
        sound = [one for one in off if not _slipped(judged.doubts, one.start_ns, one.end_ns)]
        found += [
            one
            for one in teller.of_step(step, sound, judged.findings)
            if _new(one, judged.findings)
        ]
    return tuple(sorted(found, key=lambda one: (one.start_ns, one.end_ns, one.kind.value)))


def _slipped(doubts: tuple[Doubt, ...], start_ns: int, end_ns: int) -> bool:
    """Tell whether a probe, or the current's meter, is to be doubted then."""
    return any(
        one.kind in _OFF_PROBES and one.start_ns < end_ns and one.end_ns > start_ns
        for one in doubts
    )


def _doubted(doubts: tuple[Doubt, ...], step: Step) -> str:
    """Say why no voltage of a step is to be believed, or its current not at all."""
    grave = [
        one
        for one in doubts
        if one.kind in _OFF_PROBES
        or (one.kind is DoubtKind.SIGN and one.role is not Role.MOTOR_CURRENT)
    ]
    # A doubt without a time is no probe's, and is left to what is told of the meters.
    return doubt_words(step, [one for one in grave if one.end_ns > one.start_ns])


def _is_behind(name: str) -> bool:
    """Tell whether a channel straight across a part is on the ground side, by its name."""
    return any(word in name.lower() for word in _GROUND_NAMES)


def _not_read(roles: Sequence[Role]) -> str:
    names = " and ".join(role.value.replace("-", " ") for role in roles) or Role.DROP.value
    return f"{names} not read while it ran steadily"


def _open(step: Step, kind: FindingKind, limit: float, why: str, limits: Limits) -> Finding:
    """Say that a limit was held against nothing."""
    where = "feed" if kind is FindingKind.RESISTIVE_FEED else "ground side"
    return Finding(
        kind=kind,
        verdict=Verdict.CANT_TELL,
        start_ns=step.start_ns,
        end_ns=step.end_ns,
        edge_ns=step_edge_ns(step, limits),
        value=None,
        unit="V",
        expanded_uncertainty=None,
        limit=limit,
        speed=step.speed,
        statement=f"{step_words(step)}: voltage drop of the {where}: can't tell; {why}.",
    )


def _new(finding: Finding, known: tuple[Finding, ...]) -> bool:
    """Tell whether a finding of too little current says more than is said already."""
    if finding.kind is not FindingKind.UNDER:
        return True
    return not any(
        f.kind is FindingKind.UNDER and f.start_ns < finding.end_ns and f.end_ns > finding.start_ns
        for f in known
    )


@dataclass(frozen=True, slots=True)
class _Drop:
    """A drop with its budget, and how it is told.

    ``direct``: it was read by one channel, not as a difference. ``roles``: what it is made of, with
    signs.
    """

    kind: FindingKind
    what: str
    budget: Budget
    limit: float
    direct: bool
    roles: tuple[tuple[Role, float], ...]


@dataclass(frozen=True, slots=True)
class _More:
    """How many times the current that it may draw the motor draws; 1 where that is allowed.

    ``most``: at the most, by what is known against the current. ``doubted``: what that is; empty
    where the current is believed.
    """

    read: float
    most: float
    doubted: str


class _Drops:
    def __init__(self, judged: Judged, side_volts: SideVolts, maker: BudgetMaker) -> None:
        self._judged, self._limits = judged, judged.limits
        self._side = side_volts
        self._maker = maker
        speeds = [step.speed for step in judged.steps if step.speed]
        self._highest = max((*self._limits.speeds, *speeds), default=0)

    def of_step(self, step: Step) -> list[Finding]:
        """Give the findings of the drops of one step; none below full speed."""
        if step.speed != self._highest:
            return []
        doubted = _doubted(self._judged.doubts, step)
        if doubted:
            return self._untold(step, doubted, ())
        made = (self._feed(step), self._ground(step), self._direct(step))
        told = [self._finding(step, one) for one in made if one is not None]
        return [*told, *self._untold(step, "", [one.kind for one in told])]

    def _untold(self, step: Step, why: str, told: Sequence[FindingKind]) -> list[Finding]:
        """Say of each limit that channels are there for and nothing was held against why not.

        Where no current flowed nothing dropped, and no limit was missed.
        """
        if step.mean_a is None or abs(step.mean_a) < self._limits.open_current_a:
            return []
        if not why and self._side.steady(Role.MOTOR_CURRENT, step) is None:
            why = "it did not run steadily for long enough"
        return [
            _open(step, kind, limit, why or missing, self._limits)
            for kind, limit, missing in self._held_by(step)
            if kind not in told and limit is not None
        ]

    def _held_by(self, step: Step) -> Iterator[tuple[FindingKind, float | None, str]]:
        """Give each kind of drop that the channels are there for: its limit, and what lacks."""
        has, steady, limits = self._side.has, self._side.steady, self._limits
        ahead, behind = (Role.BATTERY, Role.MOTOR_FEED), (Role.CONTROLLER_GROUND, Role.MOTOR_RETURN)
        home = self._side.home(Role.DROP)
        at_ground = home is not None and _is_behind(home[1].name)
        if all(has(role) for role in ahead) or (home is not None and not at_ground):
            lacking = [role for role in ahead if has(role) and steady(role, step) is None]
            yield FindingKind.RESISTIVE_FEED, limits.max_feed_drop_v, _not_read(lacking or ahead)
        there = [role for role in behind if has(role)]
        if there or at_ground:
            yield FindingKind.RESISTIVE_GROUND, limits.max_ground_drop_v, _not_read(there)

    def _worse(self, step: Step, drop: _Drop) -> WorseLevel | None:
        until_ns = step.end_ns - round(self._limits.command_lag_s * 1e9)
        apart_v = drop.budget.expanded
        return worse_level(self._side, drop.roles, (step.start_ns, until_ns), apart_v)

    def _at_worse(self, step: Step, drop: _Drop, worse: WorseLevel) -> _Drop:
        """Give a drop with the figures of its worse level."""
        parts = []
        for (role, sign), level in zip(drop.roles, worse.levels, strict=True):
            made = self._reading(role, level, step)
            parts += [] if made is None else [(made, sign)]
        value = sum(made.value * sign for made, sign in parts)
        return replace(drop, budget=combine(drop.budget.name, value, "V", parts))

    def _more_current(self, step: Step, worse: WorseLevel | None) -> _More:
        """Give by how much more current than allowed flows.

        A sound wire drops more where a held or dragging motor draws more: that is the motor's.
        """
        level = self._side.steady(Role.MOTOR_CURRENT, step)
        most = self._limits.at(step.speed).max_a
        if most is None:
            most = self._limits.locked_current_a / USUALLY_HELD
        if level is None or most <= 0.0:
            return _More(1.0, 1.0, "")
        part = (abs(level.mean) if worse is None else worse.amps) / most
        doubts = self._judged.doubts
        tenfold = max((one.factor for one in doubts if one.kind is DoubtKind.DECADE), default=1.0)
        doubted = doubt_words(step, doubts, current_only=True)
        return _More(max(part, 1.0), max(part * max(tenfold, 1.0), 1.0), doubted)

    def _level(self, role: Role, step: Step) -> Budget | None:
        level = self._side.steady(role, step)
        return None if level is None else self._reading(role, level, step)

    def _reading(self, role: Role, level: SideLevel, step: Step) -> Budget | None:
        scatter = Scatter(level.n, level.sd if level.n > 1 else None)
        during = (step.start_ns, step.end_ns)
        return self._maker.of_reading(role, role.value, level.mean, scatter, during)

    def _feed(self, step: Step) -> _Drop | None:
        limit = self._limits.max_feed_drop_v
        battery, feed = self._level(Role.BATTERY, step), self._level(Role.MOTOR_FEED, step)
        if limit is None or battery is None or feed is None:
            return None
        drop = combine(
            "drop from battery to motor feed",
            battery.value - feed.value,
            "V",
            [(battery, 1.0), (feed, -1.0)],
        )
        what, roles = (
            "between battery and motor feed",
            ((Role.BATTERY, 1.0), (Role.MOTOR_FEED, -1.0)),
        )
        return _Drop(FindingKind.RESISTIVE_FEED, what, drop, limit, direct=False, roles=roles)

    def _ground(self, step: Step) -> _Drop | None:
        limit = self._limits.max_ground_drop_v
        if limit is None:
            return None
        for role, what in (
            (Role.CONTROLLER_GROUND, "between controller ground and battery negative"),
            (Role.MOTOR_RETURN, "between motor return and battery negative, controller included,"),
        ):
            level = self._level(role, step)
            if level is not None:
                kind, roles = FindingKind.RESISTIVE_GROUND, ((role, 1.0),)
                return _Drop(kind, what, level, limit, direct=True, roles=roles)
        return None

    def _direct(self, step: Step) -> _Drop | None:
        """Judge a channel straight across one part: by its name it is on the ground side or not."""
        home, level = self._side.home(Role.DROP), self._level(Role.DROP, step)
        if home is None or level is None:
            return None
        name = home[1].name
        behind = _is_behind(name)
        limit = self._limits.max_ground_drop_v if behind else self._limits.max_feed_drop_v
        if limit is None:
            return None
        sign = 1.0 if level.value >= 0.0 else -1.0
        size = combine(level.name, abs(level.value), "V", [(level, sign)])
        kind = FindingKind.RESISTIVE_GROUND if behind else FindingKind.RESISTIVE_FEED
        what, roles = f"straight across ({name})", ((Role.DROP, sign),)
        return _Drop(kind, what, size, limit, direct=True, roles=roles)

    def _conformity(self, drop: _Drop, more: _More) -> tuple[Conformity, float, str]:
        """Give the verdict, how many times the current its limit is for, and what takes it back.

        A current that is doubted widens no limit: what is within the plain one passes whatever
        flows, and what is beyond the widest fails.
        """
        times = 1.0 if more.doubted else more.read
        told = conformity(drop.budget, None, drop.limit * times, self._limits)
        if not more.doubted or more.most == 1.0 or told.verdict is Verdict.PASS:
            return told, times, ""
        widest = conformity(drop.budget, None, drop.limit * more.most, self._limits)
        if widest.verdict is Verdict.FAIL:
            return widest, more.most, ""
        return told, times, more.doubted

    def _other_speed(self, drop: _Drop, worse: WorseLevel) -> str:
        """Say why a worse level need not be of this speed; empty where it is or the best fails."""
        best = replace(drop.budget, value=worse.least_v)
        fails = conformity(best, None, drop.limit, self._limits).verdict is Verdict.FAIL
        return "" if worse.same_current or fails else SEVERAL_LEVELS

    def _finding(self, step: Step, drop: _Drop) -> Finding:
        worse = self._worse(step, drop)
        drop = drop if worse is None else self._at_worse(step, drop, worse)
        more = self._more_current(step, worse)
        told, times, doubted = self._conformity(drop, more)
        value, limit, verdict = drop.budget, drop.limit * times, told.verdict
        known_u = value.expanded if value.sources else None
        near = abs(value.value - limit) < USUAL * self._limits.nominal_v
        lacking = f" (not in: {value.lacking})" if value.lacking and known_u and not near else ""
        size = with_uncertainty(value.value, known_u, "V") + lacking
        at = "" if times == 1.0 else f" at {times:.1f} times the current it may draw"
        statement = (
            f"Speed {step.speed}: {size} {drop.what} at full"
            f" speed, at most {limit:.3g} V{at}: {verdict}"
        )
        unknown = doubted or (value.lacking if near else "")
        if PAST_READING in value.lacking and not (drop.direct and verdict is Verdict.FAIL):
            unknown = unknown or PAST_READING
        if verdict is Verdict.FAIL and current_is_past(step, self._judged):
            unknown = unknown or PAST  # more may flow than was read, and drop more
        if verdict is Verdict.FAIL and worse is not None:
            unknown = unknown or self._other_speed(drop, worse)
        if unknown:
            verdict = Verdict.CANT_TELL
            statement += f", but can't tell, as {unknown}"
        if worse is not None:
            statement += (
                f"; it stood there for {100.0 * worse.part:.0f} % of its steady running, down to"
                f" {worse.least_v:.2f} V else"
            )
        if not drop.direct and (verdict is Verdict.CANT_TELL or value.expanded > WIDE * limit):
            statement += (
                f"; two readings of about {self._limits.nominal_v:g} V subtracted know it only to"
                f" that, a channel straight across the part (drop) would settle it"
            )
        return Finding(
            kind=drop.kind,
            verdict=verdict,
            start_ns=step.start_ns,
            end_ns=step.end_ns,
            edge_ns=step_edge_ns(step, self._limits),
            value=value.value,
            unit="V",
            expanded_uncertainty=known_u,
            limit=limit,
            speed=step.speed,
            statement=f"{statement}.",
            coverage_factor=value.coverage if value.sources else None,
            probability=told.probability,
        )
