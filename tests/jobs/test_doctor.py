"""The doctor's self-test: it passes here, and fails as soon as something is not as it was done."""

from dataclasses import replace

import pytest

from meterlog.model import SpanKind, Verdict
from meterlog.work.demo import DemoBench
from meterlog.work.doctor import self_test
from meterlog.work.doctor.look import State
from meterlog.work.review import review_folder

pytestmark = pytest.mark.pty


@pytest.fixture(scope="module")
def judged(tmp_path_factory):
    import time

    folder = tmp_path_factory.mktemp("doctor") / "run"
    bench = DemoBench(self_test.SCENARIO, 1, folder)
    time.sleep(self_test.SECONDS)
    bench.close()
    return review_folder(folder)


def test_the_fault_of_the_virtual_bench_is_found_and_no_other(judged):
    assert self_test.faults(*judged) == []


def test_a_dead_segment_that_is_not_found_or_found_elsewhere_fails_the_self_test(judged):
    recording, review = judged
    none = tuple(one for one in review.spans if one.kind is not SpanKind.DEAD)
    assert any(
        "was not found" in one for one in self_test.faults(recording, replace(review, spans=none))
    )
    moved = tuple(
        replace(one, start_ns=one.start_ns + 900_000_000) if one.kind is SpanKind.DEAD else one
        for one in review.spans
    )
    assert self_test.faults(recording, replace(review, spans=moved))


def test_a_side_that_is_blamed_without_cause_fails_the_self_test(judged):
    recording, review = judged
    blamed = tuple(
        replace(one, kind=SpanKind.FEED_LOST) if one.kind is SpanKind.RUNNING else one
        for one in review.spans
    )
    assert "found what is not there: feed-lost" in self_test.faults(
        recording, replace(review, spans=blamed)
    )
    told = tuple(
        replace(one, verdict=Verdict.PASS) if one.verdict is Verdict.FAIL else one
        for one in review.findings
    )
    assert self_test.faults(recording, replace(review, findings=told)) == [
        "findings that failed: none"
    ]


def test_a_bench_that_does_not_start_is_a_bad_line(monkeypatch):
    from meterlog.model.errors import LinkNotFound

    def broken(*_, **__):
        raise LinkNotFound("the virtual meter did not start", subject="line-logger")

    monkeypatch.setattr(self_test, "DemoBench", broken)
    (line,) = self_test.look_at_bench()
    assert line.state is State.BAD
    assert "did not start" in line.words
    assert line.do
