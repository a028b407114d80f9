"""BudgetMaker: the budgets of what was read, whichever role the channel plays."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from meterlog.analysis.budgets.combining import budget, combine
from meterlog.analysis.budgets.reading_lines import lacking_of, reading_lines
from meterlog.analysis.budgets.scatter import Scatter, scatter_lines
from meterlog.analysis.budgets.usual_error import usual_more
from meterlog.analysis.stated_channel import StatedChannel
from meterlog.analysis.time_notes import TimeNotes
from meterlog.model import Budget, Conditions, Event, EventKind, Instrument, Role, Source, Step

_ROOT_12 = 12.0**0.5


class BudgetMaker:
    """Follows the ranges, zeros and times of all channels, and makes budgets by them.

    Parameters
    ----------
    instruments : sequence of Instrument
        With roles assigned. Of several channels in one role the first counts.
    conditions : Conditions or None
        For the ambient temperature.
    """

    def __init__(
        self, instruments: Sequence[Instrument], conditions: Conditions | None = None
    ) -> None:
        self._homes: dict[Role, StatedChannel] = {}
        for instrument in instruments:
            for column, channel in enumerate(instrument.channels):
                if channel.role is not Role.OTHER and channel.role not in self._homes:
                    self._homes[channel.role] = StatedChannel(instrument, column)
        self._ambient_c = None if conditions is None else conditions.ambient_c
        self._times = TimeNotes(instruments)
        self._events = 0
        self._made: dict[int, tuple[Step, int, Step]] = {}

    @property
    def current(self) -> StatedChannel | None:
        """The motor current's channel; None without one."""
        return self._homes.get(Role.MOTOR_CURRENT)

    @property
    def version(self) -> int:
        """Grows with everything learnt: what was made before is out of date."""
        return self._events + sum(home.version for home in self._homes.values())

    @property
    def lacking(self) -> str:
        """What the uncertainty of the current does not hold, in brackets; empty for nothing."""
        return "" if self.current is None else self.current.lacking

    def take(self, event: Event) -> None:
        """Take the next event: ranges, zeros and times of the meters."""
        self._times.take(event)
        self._events += event.kind is EventKind.TIMING
        for home in self._homes.values():
            home.take(event)

    def of_reading(
        self, role: Role, name: str, mean: float, scatter: Scatter, during: tuple[int, int]
    ) -> Budget | None:
        """Give the budget of the mean of some readings, or of a single one.

        Parameters
        ----------
        role : Role
        name : str
            What the value is.
        mean : float, unit of the channel
            With its sign.
        scatter : Scatter
            Of the readings; ``Scatter(1)`` for a single one.
        during : tuple of int, nanoseconds since the recording's zero
            From when to when they were read.

        Returns
        -------
        Budget or None
            None where no channel plays the role.
        """
        home = self._homes.get(role)
        if home is None:
            return None
        tag = _tag(during[0], mean)
        (own,) = scatter_lines([(scatter, home.channel.unit)], None, f"readings {role} {tag}")
        return self._of(home, name, mean, during, own)

    def of_current(self, mean: float, scatter: Scatter, during: tuple[int, int]) -> Budget | None:
        """Give the budget of a motor current by its size; see :meth:`of_reading`."""
        plain = self.of_reading(Role.MOTOR_CURRENT, "motor current", mean, scatter, during)
        return None if plain is None else _by_size(plain)

    def of_motor_voltage(
        self, mean: float, feed_v: float | None, scatter: Sequence[Source], during: tuple[int, int]
    ) -> Budget | None:
        """Give the budget of the voltage across the motor.

        Parameters
        ----------
        mean : float, volts
            Feed minus return, or the feed where no return was read.
        feed_v : float or None, volts
            The mean of the feed alone; None: the return is taken to be near 0, as it is with full
            voltage across the motor.
        scatter : sequence of Source
            The lines of the scatter.
        during : tuple of int, nanoseconds since the recording's zero

        Returns
        -------
        Budget or None
            None where no feed was read.
        """
        feed, back = self._homes.get(Role.MOTOR_FEED), self._homes.get(Role.MOTOR_RETURN)
        if feed is None:
            return None
        if back is None:
            alone = self._of(feed, "motor voltage", mean, during, scatter)
            words = "the return was not read: this is the feed alone"
            return replace(alone, lacking="; ".join(filter(None, (alone.lacking, words))))
        high = mean if feed_v is None else feed_v
        parts = (
            (self._of(feed, "motor feed", high, during, ()), 1.0),
            (self._of(back, "motor return", high - mean, during, ()), -1.0),
        )
        return combine("motor voltage", mean, "V", parts, scatter)

    def usual_more(self, value: float, *, at_rest: bool) -> float:
        """Give what a usual meter, clamp or shunt may be off by, where nobody has said.

        See :func:`usual_more`. 0 where all is stated.
        """
        return 0.0 if self.current is None else usual_more(self.current, value, at_rest=at_rest)

    def with_budgets(self, steps: Sequence[Step]) -> tuple[Step, ...]:
        """Give the steps with the budgets of their steady figures.

        Parameters
        ----------
        steps : sequence of Step

        Returns
        -------
        tuple of Step
            ``steady_expanded_a`` and ``steady_coverage`` are those of ``current``; all None where
            nothing at all is known of the uncertainty.
        """
        version = self.version
        told = []
        for place, step in enumerate(steps):
            known = self._made.get(place)
            if known is None or known[1] != version or known[0] != step:
                made = self._with_budgets(step)
                # Whoever looks still holds the old ones: a day of steps would lie in memory twice
                # each time a meter says something of its clock.
                if known is not None and known[2] == made:
                    made = known[2]
                known = (step, version, made)
                self._made[place] = known
            told.append(known[2])
        return tuple(told)

    # -- one step --------------------------------------------------------------------------------

    def _with_budgets(self, step: Step) -> Step:
        during = (step.start_ns, step.end_ns)
        amps = Scatter(step.steady_n, step.steady_sd_a, step.steady_lag1_a)
        volts = Scatter(step.steady_volts_n, step.steady_sd_v, step.steady_lag1_v)
        tag = _tag(step.start_ns, step.steady_mean_a or step.steady_mean_v or 0.0)
        of_amps, of_volts = scatter_lines(
            [(amps, "A"), (volts, "V")], step.steady_correlation, f"readings {tag}"
        )
        current = self._current_of(step, of_amps)
        voltage = None
        if step.steady_mean_v is not None:
            extra = [*of_volts, *self._between_probes(volts)]
            voltage = self.of_motor_voltage(step.steady_mean_v, step.steady_feed_v, extra, during)
        told = current is not None and bool(current.sources)
        return replace(
            step,
            steady_expanded_a=current.expanded if current is not None and told else None,
            steady_coverage=current.coverage if current is not None and told else None,
            current=_named(current, step),
            voltage=_named(voltage, step),
            power=_named(self._power(current, voltage, amps), step),
            ratio=_named(self._ratio(current, voltage, amps), step),
        )

    def _current_of(self, step: Step, scatter: Sequence[Source]) -> Budget | None:
        home = self.current
        if home is None or step.steady_mean_a is None:
            return None
        during = (step.start_ns, step.end_ns)
        return _by_size(self._of(home, "motor current", step.steady_mean_a, during, scatter))

    def _of(
        self,
        home: StatedChannel,
        name: str,
        mean: float,
        during: tuple[int, int],
        extra: Sequence[Source],
    ) -> Budget:
        stated = home.at(mean, *during)
        lines = reading_lines(home, stated, mean, _tag(during[0], mean), self._ambient_c)
        lacking = "; ".join(lacking_of(home, stated, mean, self._ambient_c))
        return budget(name, mean, home.channel.unit, (*extra, *lines), lacking)

    def _power(
        self, current: Budget | None, voltage: Budget | None, amps: Scatter
    ) -> Budget | None:
        if current is None or voltage is None:
            return None
        parts = ((current, voltage.value), (voltage, current.value))
        apart, lacking = self._apart(amps, voltage.value, "W")
        made = combine("motor power", voltage.value * current.value, "W", parts, apart)
        return _lacking(made, lacking)

    def _ratio(
        self, current: Budget | None, voltage: Budget | None, amps: Scatter
    ) -> Budget | None:
        """Give volts by amperes; None where the current can't be told from none.

        The first-order law holds only where the divisor is well away from 0 (JCGM 100:2008, 5.1.2,
        note).
        """
        if current is None or voltage is None or current.value <= current.expanded:
            return None
        amperes, value = current.value, voltage.value / current.value
        parts = ((voltage, 1.0 / amperes), (current, -value / amperes))
        apart, lacking = self._apart(amps, -value / amperes, "ohm")
        return _lacking(combine("volts by amperes", value, "ohm", parts, apart), lacking)

    # -- two meters ------------------------------------------------------------------------------

    def _apart(self, amps: Scatter, per_ampere: float, unit: str) -> tuple[list[Source], str]:
        """Give the line of how far apart two meters' times are, and what is not known of it."""
        current, feed = self.current, self._homes.get(Role.MOTOR_FEED)
        if current is None or feed is None or current.key == feed.key or not amps.sd:
            return [], ""
        return self._times_line(current, feed, amps, per_ampere, unit)

    def _between_probes(self, volts: Scatter) -> list[Source]:
        """Give the line of feed and return read by two meters."""
        feed, back = self._homes.get(Role.MOTOR_FEED), self._homes.get(Role.MOTOR_RETURN)
        if feed is None or back is None or feed.key == back.key or not volts.sd:
            return []
        return self._times_line(feed, back, volts, 1.0, "V")[0]

    def _times_line(
        self, one: StatedChannel, other: StatedChannel, lot: Scatter, per: float, unit: str
    ) -> tuple[list[Source], str]:
        both = f"{one.key} and {other.key}"
        agree_s = self._times.agreement_s(one.instrument, other.instrument)
        if agree_s == 0.0:
            return [], ""
        if agree_s is None:
            return [], f"how well the times of {both} agree is not known"
        # A steady trend that makes all of the scatter is the steepest there can be.
        seconds = lot.n * one.channel.interval_s
        slope = (lot.sd or 0.0) * _ROOT_12 / seconds if seconds > 0.0 else 0.0
        line = Source(
            name=f"times of {both}",
            standard_u=agree_s,
            unit="s",
            sensitivity=per * slope,
            basis=f"times of the meters; all scatter taken as a trend, {unit}/s",
        )
        return [line], ""


def _tag(start_ns: int, mean: float) -> str:
    """Tell readings from all others: by when they began and what they gave to the last digit."""
    return f"{start_ns} {mean!r}"


def _by_size(signed: Budget) -> Budget:
    """Give the budget of a current's size: with its sign all sensitivities turn."""
    if signed.value >= 0.0:
        return signed
    turned = tuple(replace(one, sensitivity=-one.sensitivity) for one in signed.sources)
    return replace(signed, value=-signed.value, sources=turned)


def _named(made: Budget | None, step: Step) -> Budget | None:
    if made is None:
        return None
    at = "" if step.speed is None else f" at speed {step.speed}"
    return replace(made, name=f"{made.name}{at}")


def _lacking(made: Budget, words: str) -> Budget:
    return replace(made, lacking="; ".join(filter(None, (made.lacking, words))))
