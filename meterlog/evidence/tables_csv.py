"""TablesCsv: steps, spans, events, findings and what the judgement rests on as tables."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import TypeVar

from meterlog.evidence.cell_text import Cell, csv_lines
from meterlog.evidence.judgement_csv import YES, judgement_tables
from meterlog.evidence.readings_csv import origin_of
from meterlog.evidence.utc_text import nanoseconds_of, utc_text
from meterlog.model import Event, Finding, Origin, Review, Span, Step
from meterlog.recording import UNDATED, Recording

Thing = TypeVar("Thing")

STEP_COLUMNS = (
    "speed", "start_s", "end_s", "n", "mean_v (V)", "sd_v (V)", "mean_a (A)", "sd_a (A)",
    "median_a (A)", "min_a (A)", "max_a (A)", "steady_n", "steady_mean_v (V)",
    "steady_mean_a (A)", "steady_sd_a (A)", "steady_expanded_a (A)", "steady_coverage", "edge_s",
    "found", "proposed_speed",
)  # fmt: skip
SPAN_COLUMNS = (
    "kind", "start_s", "end_s", "start_edge_s", "end_edge_s", "speed", "detail", "settled_by",
)  # fmt: skip
EVENT_COLUMNS = ("time_utc", "elapsed_s", "kind", "value", "source")
FINDING_COLUMNS = (
    "kind", "verdict", "start_s", "end_s", "edge_s", "value", "unit", "expanded_uncertainty",
    "coverage_factor", "limit", "probability", "speed", "statement",
)  # fmt: skip


def _step(step: Step) -> Sequence[Cell]:
    return (
        step.speed, step.start_ns / 1e9, step.end_ns / 1e9, step.n, step.mean_v, step.sd_v,
        step.mean_a, step.sd_a, step.median_a, step.min_a, step.max_a, step.steady_n,
        step.steady_mean_v, step.steady_mean_a, step.steady_sd_a, step.steady_expanded_a,
        step.steady_coverage, step.edge_ns / 1e9, YES[step.found], step.proposed_speed,
    )  # fmt: skip


def _span(span: Span) -> Sequence[Cell]:
    return (
        span.kind.value, span.start_ns / 1e9, span.end_ns / 1e9, span.start_edge_ns / 1e9,
        span.end_edge_ns / 1e9, span.speed, span.detail,
        " ".join(role.value for role in span.settled_by),
    )  # fmt: skip


def _finding(finding: Finding) -> Sequence[Cell]:
    return (
        finding.kind.value, finding.verdict.value, finding.start_ns / 1e9, finding.end_ns / 1e9,
        finding.edge_ns / 1e9, finding.value, finding.unit, finding.expanded_uncertainty,
        finding.coverage_factor, finding.limit, finding.probability, finding.speed,
        finding.statement,
    )  # fmt: skip


@dataclass(frozen=True, slots=True)
class TablesCsv:
    """Makes the small tables of one recording.

    Each has a last column ``origin`` where the readings were not measured.

    Parameters
    ----------
    recording : Recording
    review : Review
    """

    recording: Recording
    review: Review

    def files(self) -> dict[str, bytes]:
        """Give file names and contents.

        Returns
        -------
        dict of str to bytes
            ``steps.csv``, ``spans.csv``, ``events.csv``, ``findings.csv``; ``budgets.csv``,
            ``startups.csv`` and ``taps.csv`` where there are any.
        """
        review = self.review
        more = {
            name: self._csv(columns, rows, lambda row: row)
            for name, (columns, rows) in judgement_tables(review).items()
        }
        return {
            "steps.csv": self._csv(STEP_COLUMNS, review.steps, _step),
            "spans.csv": self._csv(SPAN_COLUMNS, review.spans, _span),
            "events.csv": self._csv(EVENT_COLUMNS, self.recording.events, self._event),
            "findings.csv": self._csv(FINDING_COLUMNS, review.findings, _finding),
            **more,
        }

    def _csv(
        self,
        columns: Sequence[str],
        things: Sequence[Thing],
        cells: Callable[[Thing], Sequence[Cell]],
    ) -> bytes:
        origin = origin_of(self.recording)
        mark: Sequence[Cell] = () if origin is Origin.MEASURED else (origin.value,)
        head = (*columns, *(("origin",) if mark else ()))
        return csv_lines([head, *((*cells(thing), *mark) for thing in things)])

    def _event(self, event: Event) -> Sequence[Cell]:
        about = self.recording.about
        dated = about.origin is not Origin.IMPORTED or about.started_utc != UNDATED
        stamp = utc_text(nanoseconds_of(about.started_utc) + event.t_ns) if dated else None
        return stamp, event.t_ns / 1e9, event.kind.value, event.value, event.source
