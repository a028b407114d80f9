"""TablesCsv: steps, spans, events, findings and what the judgement rests on as tables."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from meterlog.evidence.cell_text import AS_USUAL, Cell
from meterlog.evidence.judgement_columns import (
    EVENT_COLUMNS,
    FINDING_COLUMNS,
    ORIGIN,
    SPAN_COLUMNS,
    STEP_COLUMNS,
)
from meterlog.evidence.judgement_csv import YES, judgement_tables
from meterlog.evidence.readings_csv import origin_of
from meterlog.evidence.recording_head import head_of_events
from meterlog.evidence.table_column import Rows, Table
from meterlog.evidence.table_files import table_files
from meterlog.evidence.table_form import TableForm
from meterlog.evidence.utc_text import nanoseconds_of, utc_text
from meterlog.model import Event, Finding, Origin, Review, Span, Step
from meterlog.recording import UNDATED, Recording


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
    form : TableForm
    """

    recording: Recording
    review: Review
    form: TableForm = AS_USUAL

    def files(self) -> dict[str, bytes]:
        """Give file names and contents, each table with its metadata.

        Returns
        -------
        dict of str to bytes
            ``steps.csv``, ``spans.csv``, ``events.csv``, ``findings.csv``; ``budgets.csv``,
            ``startups.csv`` and ``taps.csv`` where there are any.
        """
        review = self.review
        tables = {
            "steps.csv": Table(
                "Steps",
                "One line a stretch at one commanded speed.",
                STEP_COLUMNS,
                [_step(step) for step in review.steps],
            ),
            "spans.csv": Table(
                "Spans",
                "One line a stretch in which the motor did one thing.",
                SPAN_COLUMNS,
                [_span(span) for span in review.spans],
            ),
            "events.csv": Table(
                "Events",
                "One line a mark of the technician's or a message of the program's.",
                EVENT_COLUMNS,
                [self._event(event) for event in self.recording.events],
            ),
            "findings.csv": Table(
                "Findings",
                "One line a statement of the judgement.",
                FINDING_COLUMNS,
                [_finding(finding) for finding in review.findings],
            ),
            **judgement_tables(review),
        }
        recording_id = self.recording.about.recording_id
        more = {"events.csv": head_of_events(self.recording, review)}
        return {
            file: content
            for name, table in tables.items()
            for file, content in table_files(
                name, self._marked(table), self.form, recording_id, more.get(name)
            ).items()
        }

    def _marked(self, table: Table) -> Table:
        """Say in every line what the readings are that were not measured."""
        origin = origin_of(self.recording)
        if origin is Origin.MEASURED:
            return table
        rows: Rows = [(*row, origin.value) for row in table.rows]
        return replace(table, columns=(*table.columns, ORIGIN), rows=rows)

    def _event(self, event: Event) -> Sequence[Cell]:
        about = self.recording.about
        dated = about.origin is not Origin.IMPORTED or about.started_utc != UNDATED
        stamp = utc_text(nanoseconds_of(about.started_utc) + event.t_ns) if dated else None
        return stamp, event.t_ns / 1e9, event.kind.value, event.value, event.source
