"""One row, one sign: the value beside a limit is shown as its sentence says it."""

import pytest

from meterlog.evidence.claim_pdf.steps_table import findings_rows
from meterlog.evidence.findings_table import findings_table
from meterlog.model import Finding, FindingKind, Limits, Review, Verdict


def finding(kind, value):
    return Finding(kind, Verdict.PASS, 0, 1, 0, value, "A", 0.2, 2.2, 1, "A sentence.")


@pytest.mark.parametrize(
    ("kind", "shown"),
    [
        (FindingKind.STEP_CURRENT, "3.50 ± 0.20 A"),
        (FindingKind.OVER, "3.50 ± 0.20 A"),
        (FindingKind.UNDER, "3.50 ± 0.20 A"),
        (FindingKind.LOCKED, "3.50 ± 0.20 A"),
        (FindingKind.DEAD, "-3.50 ± 0.20 A"),
    ],
)
def test_a_current_judged_by_its_size_is_shown_by_it(kind, shown):
    one = finding(kind, -3.5)
    (row,) = findings_rows([one], Limits())
    assert row.cells[6] == shown
    table = findings_table(Review(findings=(one,)))
    assert f" {shown} " in table


def test_what_has_no_value_has_none():
    (row,) = findings_rows([finding(FindingKind.STEP_CURRENT, None)], Limits())
    assert row.cells[6] == ""
