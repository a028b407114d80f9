"""JudgementColumns: the columns of the tables that a review fills, each with what it means."""

from __future__ import annotations

from meterlog.evidence.table_column import Column, Kind

TEXT, WORDS, NUMBER, DEGREES = Kind.TEXT, Kind.WORDS, Kind.NUMBER, Kind.DEGREES
WHOLE, YES_NO, INSTANT = Kind.WHOLE, Kind.YES_NO, Kind.INSTANT

_SPEED = "Commanded fan speed, 0 is off; empty where nobody recorded it."
_ROW_UNIT = "In the unit of the line."

ORIGIN = Column("origin", TEXT, "What the readings are that no meter sent from a vehicle.")

STEP_COLUMNS = (
    Column("speed", WHOLE, _SPEED),
    Column("start_s", NUMBER, "Where the step begins, from the recording's beginning.", "s"),
    Column("end_s", NUMBER, "Where it ends.", "s"),
    Column("n", WHOLE, "Readings in it."),
    Column("mean_v (V)", NUMBER, "Mean motor voltage.", "V"),
    Column("sd_v (V)", NUMBER, "Standard deviation of the motor voltage.", "V"),
    Column("mean_a (A)", NUMBER, "Mean motor current.", "A"),
    Column("sd_a (A)", NUMBER, "Standard deviation of the motor current.", "A"),
    Column("median_a (A)", NUMBER, "Median motor current.", "A"),
    Column("min_a (A)", NUMBER, "Least motor current.", "A"),
    Column("max_a (A)", NUMBER, "Greatest motor current.", "A"),
    Column("steady_n", WHOLE, "Readings without start-up and without lost current."),
    Column("steady_mean_v (V)", NUMBER, "Mean motor voltage of those.", "V"),
    Column("steady_mean_a (A)", NUMBER, "Mean motor current of those.", "A"),
    Column("steady_sd_a (A)", NUMBER, "Standard deviation of the current of those.", "A"),
    Column("steady_expanded_a (A)", NUMBER, "Expanded uncertainty of steady_mean_a, 95 %.", "A"),
    Column("steady_coverage", NUMBER, "Coverage factor of that.", "1"),
    Column("edge_s", NUMBER, "Each edge is known to within +- this.", "s"),
    Column("found", YES_NO, "yes: nobody recorded the change, it was found in the current."),
    Column("proposed_speed", WHOLE, "Rank of a found step by current; a proposal, no command."),
)
SPAN_COLUMNS = (
    Column("kind", TEXT, "What the motor was doing."),
    Column("start_s", NUMBER, "From when, from the recording's beginning.", "s"),
    Column("end_s", NUMBER, "To when.", "s"),
    Column("start_edge_s", NUMBER, "The beginning is known to within +- this.", "s"),
    Column("end_edge_s", NUMBER, "The end is known to within +- this.", "s"),
    Column("speed", WHOLE, _SPEED),
    Column("detail", TEXT, "Why."),
    Column("settled_by", WORDS, "The channels that would have told which side it was."),
)
EVENT_COLUMNS = (
    Column("time_utc", INSTANT, "When, in UTC; empty where no date is known."),
    Column("elapsed_s", NUMBER, "The same from the recording's beginning.", "s"),
    Column("kind", TEXT, "What happened."),
    Column("value", TEXT, "Which speed, which words, as of its kind."),
    Column("source", TEXT, "Key of the instrument concerned; empty for people and program."),
)
FINDING_COLUMNS = (
    Column("kind", TEXT, "What it is about."),
    Column("verdict", TEXT, "pass, fail or can't tell."),
    Column("start_s", NUMBER, "From when, from the recording's beginning.", "s"),
    Column("end_s", NUMBER, "To when.", "s"),
    Column("edge_s", NUMBER, "Each edge is known to within +- this; 0: it is a reading's.", "s"),
    Column("value", NUMBER, f"What was found. {_ROW_UNIT}"),
    Column("unit", TEXT, "Unit of value, expanded_uncertainty and limit."),
    Column("expanded_uncertainty", NUMBER, f"+- for about 95 %; empty: not known. {_ROW_UNIT}"),
    Column("coverage_factor", NUMBER, "Factor of that.", "1"),
    Column("limit", NUMBER, f"The limit that decided. {_ROW_UNIT}"),
    Column("probability", NUMBER, "That the true value is within its limits.", "1"),
    Column("speed", WHOLE, _SPEED),
    Column("statement", TEXT, "The finding in one sentence."),
)
BUDGET_COLUMNS = (
    Column("speed", WHOLE, _SPEED),
    Column("start_s", NUMBER, "Where the step begins.", "s"),
    Column("end_s", NUMBER, "Where it ends.", "s"),
    Column("figure", TEXT, "Which figure of the step."),
    Column("value", NUMBER, "The figure, in value_unit."),
    Column("value_unit", TEXT, "Its unit."),
    Column("combined_u", NUMBER, "Combined standard uncertainty, in value_unit."),
    Column("effective_degrees", DEGREES, "Effective degrees of freedom; INF: no end."),
    Column("coverage_factor", NUMBER, "Coverage factor for about 95 %.", "1"),
    Column("expanded_uncertainty", NUMBER, "Expanded uncertainty, in value_unit."),
    Column("lacking", TEXT, "What ought to be in and is not known."),
    Column("source", TEXT, "This line's source of error."),
    Column("standard_u", NUMBER, "Its standard uncertainty, in unit."),
    Column("unit", TEXT, "The unit of standard_u."),
    Column("shape", TEXT, "Shape of its distribution."),
    Column("degrees", DEGREES, "Its degrees of freedom; INF: taken as exactly known."),
    Column("sensitivity", NUMBER, "Change of the figure with it, value_unit per unit."),
    Column("contribution", NUMBER, "sensitivity x standard_u, in value_unit."),
    Column("basis", TEXT, "Where it is from."),
    Column("same_error", TEXT, "Lines with the same text here are one error."),
)
START_COLUMNS = (
    Column("start_s", NUMBER, "When the motor started, from the recording's beginning.", "s"),
    Column("edge_s", NUMBER, "Known to within +- this.", "s"),
    Column("speed", WHOLE, _SPEED),
    Column("cause", TEXT, "After what."),
    Column("peak_a (A)", NUMBER, "Greatest current.", "A"),
    Column("peak_expanded_a (A)", NUMBER, "Expanded uncertainty of that, 95 %.", "A"),
    Column("peak_is_floor", YES_NO, "yes: the true peak was higher."),
    Column("peak_after_s", NUMBER, "From the start to the peak.", "s"),
    Column("steady_a (A)", NUMBER, "Steady current after it.", "A"),
    Column("ratio", NUMBER, "Peak to steady.", "1"),
    Column("settle_s", NUMBER, "From the start until within 10 % of steady.", "s"),
    Column("settle_edge_s", NUMBER, "Known to within +- this.", "s"),
    Column("i2t (A2s)", NUMBER, "Integral of the squared current.", "A2 s"),
    Column("i2t_over_s", NUMBER, "Over so long.", "s"),
)
TAP_COLUMNS = (
    Column("tap_s", NUMBER, "When the tap was marked, from the recording's beginning.", "s"),
    Column("attempt", WHOLE, "Taps within a second of each other are one attempt."),
    Column("speed", WHOLE, _SPEED),
    Column("before", TEXT, "What the motor did before."),
    Column("after", TEXT, "What it did after."),
    Column("before_a (A)", NUMBER, "Mean current before.", "A"),
    Column("after_a (A)", NUMBER, "Mean current after.", "A"),
    Column("returned_s", NUMBER, "From the tap until the current was back.", "s"),
    Column("returned_edge_s", NUMBER, "Known to within +- this.", "s"),
    Column("answered", YES_NO, "yes: the current was gone and came back."),
    Column("stopped", YES_NO, "yes: the current flowed and went."),
    Column("marked_late", YES_NO, "yes: marked just after the current had changed."),
)
