"""The table of findings says what single reviews say."""

import math
from pathlib import Path
from types import MappingProxyType

import pandas as pd
import pyarrow.parquet as pq
import pytest

from meterlog.analysis.compare import side_of
from meterlog.model import Limits, SpeedLimits
from meterlog.work.review import review_folder
from meterlog.work.screening.columns import BASELINES, FINDINGS
from meterlog.work.screening.places import places_in
from meterlog.work.screening.reviewing import Asked, rows_of

_SAME = ("current_a", "current_u_a", "motor_v", "motor_u_v")


def _row(table, folder, kind):
    return table[(table["folder"] == str(folder)) & (table["row"] == kind)]


def test_every_figure_is_that_of_a_single_review_read_with_pandas(shelf, screened):
    said, _ = screened(shelf)
    table = pd.read_parquet(said.table)
    judged = table[(table["row"] == "recording") & table["outcome"].notna()]
    assert len(judged) >= 11
    for folder in judged["folder"]:
        recording, review = review_folder(Path(folder))
        (whole,) = _row(table, folder, "recording").to_dict("records")
        assert whole["outcome"] == review.verdict.outcome.value
        assert whole["sentence"] == review.verdict.paragraph
        assert whole["recording_id"] == recording.about.recording_id
        found = _row(table, folder, "finding")
        assert list(found["statement"]) == [one.statement for one in review.findings]
        assert list(found["kind"]) == [one.kind.value for one in review.findings]
        for got, one in zip(found.to_dict("records"), review.findings, strict=True):
            assert got["start_s"] == one.start_ns / 1e9
            for name, value in (("value", one.value), ("expanded_u", one.expanded_uncertainty)):
                assert (value is None and math.isnan(got[name])) or got[name] == value
        speeds = _row(table, folder, "speed").set_index("speed")
        for step in review.steps:
            if step.speed and step.current is not None:
                got = speeds.loc[step.speed]
                wanted = (step.current, step.voltage)
                figures = [f for one in wanted for f in (one.value, one.combined_u)]
                assert [got[name] for name in _SAME] == figures


def test_rows_are_in_order_and_one_recording_row_leads(shelf, screened):
    _, rows = screened(shelf)
    assert [(row["folder"], row["number"]) for row in rows] == sorted(
        (row["folder"], row["number"]) for row in rows
    )
    for row in rows:
        assert (row["row"] == "recording") == (row["number"] == 0)


def test_columns_carry_units_and_words(shelf, screened):
    said, _ = screened(shelf)
    for path, schema in ((said.table, FINDINGS), (said.baseline_table, BASELINES)):
        found = pq.read_schema(path)
        assert found.equals(schema, check_metadata=True)
        for field in found:
            assert field.metadata[b"description"] or field.metadata[b"unit"], field.name
            last = field.name.rpartition("_")[2]
            if last in {"a", "v", "s"}:
                assert field.metadata[b"unit"] == {"a": b"A", "v": b"V", "s": b"s"}[last]


def test_other_limits_are_those_that_judge(make, screened):
    folder = make("run", 0)
    strict = Limits(name="strict", speeds=MappingProxyType({4: SpeedLimits(20.0, 30.0)}))
    _, rows = screened(folder.parent, limits=strict)
    (own,) = rows_of(places_in([str(folder.parent)], _nothing)[0], Asked("a"))[:1]
    assert own["outcome"] == "in order"
    assert rows[0]["outcome"] == "fault found"
    assert {row["limits"] for row in rows} == {"strict"}


def test_figures_at_a_speed_are_those_of_the_step_a_comparison_takes(make):
    folder = make("run", 1)
    recording, review = review_folder(folder)
    side = side_of("run", recording.about, review, None, recording.standing)
    rows = rows_of(places_in([str(folder.parent)], _nothing)[0], Asked("a"))
    assert [row["speed"] for row in rows if row["row"] == "speed"] == [1, 2, 3, 4]
    assert side.fit.refusal == ""
    found = {row["speed"]: row for row in rows if row["row"] == "speed"}
    assert found[4]["exponent"] == pytest.approx(1.6, abs=2 * found[4]["exponent_u"])


def _nothing():
    return None
