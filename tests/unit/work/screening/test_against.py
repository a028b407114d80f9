"""One recording held against baselines, and the same by comparing with the good ones themselves."""

import pytest

from meterlog.model import Conditions, Origin, Verdict
from meterlog.model.errors import UsageError
from meterlog.work.compare import CompareRequest, compare_folders
from meterlog.work.screening import AgainstRequest, compare_with_baselines

GOOD = (0, 3, 6, 9, 12, 18, 21, 24)


@pytest.fixture
def table(make, screened, tmp_path):
    for number in GOOD:
        make(f"run-{number}", number)
    return screened(tmp_path / "own")[0].baseline_table


def test_it_says_what_a_comparison_with_the_good_ones_themselves_says(table, make, tmp_path):
    new = make("new", 27)
    by_table = compare_with_baselines(AgainstRequest(table, new))
    good = tuple(tmp_path / "own" / f"run-{number}" for number in GOOD)
    direct = compare_folders(CompareRequest(good, new, baseline=True))
    assert [one.speed for one in by_table.steps] == [one.speed for one in direct.steps]
    for mine, theirs in zip(by_table.steps, direct.steps, strict=True):
        assert mine.count == theirs.count == len(GOOD)
        scale = (mine.reference_v / theirs.reference_v) ** 1.6
        assert mine.baseline_mean_a / scale == pytest.approx(theirs.baseline_mean_a, rel=0.01)
        assert mine.new_a.value / scale == pytest.approx(theirs.new_a.value, rel=0.01)
        # What both were measured with cancels only where the recordings themselves are there.
        assert mine.difference_a.expanded > theirs.difference_a.expanded
    assert len(by_table.old) == len(GOOD)
    assert not by_table.refusal


def test_a_bad_motor_fails_and_a_good_one_does_not(table, make):
    bad = make("bad", 30, part="FM-20, serial 9")
    again = compare_with_baselines(AgainstRequest(table, bad))
    assert Verdict.FAIL not in {one.verdict for one in again.steps}
    heavy = make("heavy", 30, part="FM-20, serial 9", load=1.45)
    told = compare_with_baselines(AgainstRequest(table, heavy))
    assert {one.verdict for one in told.steps} == {Verdict.FAIL}
    assert "It is not within what good ones draw" in told.summary


def test_nothing_stands_against_itself(table, tmp_path):
    own = compare_with_baselines(AgainstRequest(table, tmp_path / "own" / "run-0"))
    assert {one.count for one in own.steps} == {len(GOOD) - 1}
    assert all(one.recording_id[-3:] != "000" for one in own.old)


@pytest.mark.parametrize(
    ("more", "number", "words"),
    [
        ({"part": ""}, "", "does not say which part number"),
        ({"part": "ZZ-1"}, "", "holds no measured baseline of ZZ-1"),
        ({"origin": Origin.SIMULATED}, "FM-20", "holds no simulated baseline of FM-20"),
    ],
)
def test_what_has_no_baseline_is_refused(table, make, more, number, words):
    new = make("new", 27, **more)
    with pytest.raises(UsageError, match=words):
        compare_with_baselines(AgainstRequest(table, new, number))


def test_what_no_meter_has_read_is_marked(table, make):
    new = make("new", 27, origin=Origin.TYPED)
    told = compare_with_baselines(AgainstRequest(table, new))
    assert told.notes[0] == "new is typed by hand; the good ones were read by meters."


def test_conditions_unlike_the_good_ones_are_refused(table, make):
    new = make("new", 27, measured_under=Conditions(housing="open"))
    told = compare_with_baselines(AgainstRequest(table, new))
    assert "the housing was open" in told.refusal
    assert told.steps == ()
