"""Beside figures with a ± it is said what is not in it, on the first page and under the steps."""

from dataclasses import replace

from meterlog.analysis.budgets import budget
from meterlog.evidence.claim_pdf.key_readings import add_key_readings, add_key_words
from meterlog.evidence.claim_pdf.steps_table import add_steps, not_in_words
from meterlog.model import Finding, FindingKind, Source, Step, Verdict

ALONE = "the meter's accuracy for motor-current is not stated"
WIDE = "the meter's accuracy for motor-feed is not stated"


def figure(lacking, u=0.1):
    sources = (Source("scatter", u, "A"),) if u else ()
    return budget("x", 3.5, "A", sources, lacking)


STEP = Step(
    speed=1, start_ns=0, end_ns=1, n=9, mean_v=4.3, sd_v=0.1, mean_a=3.5, sd_a=0.1, median_a=3.5,
    min_a=3.4, max_a=3.6, steady_n=9, steady_mean_v=4.3, steady_mean_a=3.5,
    current=figure(ALONE), voltage=figure(f"{WIDE}; {ALONE}"),
)  # fmt: skip


def test_each_is_said_once_and_of_the_current_alone_where_the_voltage_is_not_told():
    steps = [STEP, replace(STEP, speed=2)]
    assert not_in_words(steps) == f" Not in the ±, which is a lower bound: {ALONE}; {WIDE}."
    assert not_in_words(steps, volts=False) == f" Not in the ±, which is a lower bound: {ALONE}."


def test_nothing_is_said_where_all_is_in_or_no_uncertainty_is_told():
    plain = replace(STEP, current=figure(""), voltage=None)
    assert not_in_words([plain]) == ""
    assert not_in_words([replace(plain, current=figure(ALONE, 0.0))]) == ""


def test_both_tables_say_it(claim, sheets, drawn):
    (side,) = claim().sides
    judged = Finding(
        FindingKind.STEP_CURRENT, Verdict.PASS, 0, 1, 0, 3.5, "A", 0.2, 2.0, 1, "A sentence."
    )  # fmt: skip
    review = replace(side.review, steps=(STEP,), findings=(judged,))
    side = replace(side, review=review)
    for add in (
        lambda: add_steps(sheets, review, side.recording.about.limits),
        lambda: add_key_readings(sheets, [side]),
        lambda: add_key_words(sheets, [side], 9),
    ):
        before = _said(drawn(sheets)).count(ALONE)
        add()
        assert _said(drawn(sheets)).count(ALONE) == before + 1


def _said(pages):
    return " ".join(" ".join(text for *_, text, _ in page) for page in pages)
