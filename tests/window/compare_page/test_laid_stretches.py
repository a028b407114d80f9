"""What lies over each other is told with the comparison, also of one that is refused."""

import pytest

from meterlog.model import Verdict
from meterlog.work.compare import CompareRequest, compare_folders, lay_folders

SECOND = 1_000_000_000


def test_the_stretches_are_those_of_the_overlays(worn, healthy):
    laid = lay_folders(CompareRequest((worn,), healthy))
    assert [one.name for one in laid.stretches] == [one.name for one in laid.comparison.overlays]
    whole, first, second = laid.stretches
    assert [start for start, _ in whole.ends_ns] == [2 * SECOND, SECOND]
    assert [start for start, _ in first.ends_ns] == [2 * SECOND, SECOND]
    assert [start for start, _ in second.ends_ns] == [8 * SECOND, 7 * SECOND]
    assert [one.folder for one in laid.recordings] == [worn, healthy]
    assert laid.signs == (1.0, 1.0)


def test_a_refused_comparison_still_lays_the_whole_runs(healthy, recorded, tmp_path):
    other = recorded(tmp_path / "other", nominal_v=24.0)
    laid = lay_folders(CompareRequest((other,), healthy))
    assert laid.comparison.refusal
    assert laid.comparison.overlays == ()
    assert [one.speed for one in laid.stretches] == [None]


def test_a_clamp_the_other_way_round_has_its_sign(healthy, recorded, tmp_path):
    turned = recorded(tmp_path / "turned", more=-1.0)
    laid = lay_folders(CompareRequest((turned,), healthy))
    if laid.comparison.refusal:
        pytest.fail(laid.comparison.refusal)
    assert laid.signs == (-1.0, 1.0)


def test_the_folders_compared_alone_give_the_same_verdicts(worn, healthy):
    said = compare_folders(CompareRequest((worn,), healthy))
    assert [one.verdict for one in said.steps] == [Verdict.FAIL, Verdict.FAIL]
