"""A circuit check by itself leads with what it found, and not with a run that nobody made."""

import pyarrow.parquet as pq
import pytest

CIRCUIT = "low-side-linear-12v"


@pytest.fixture
def check(run, tmp_path):
    words = ["--state", "key=on,speed=4", "--sign", "fan=dead", "--reading", "motor-feed=12.4"]
    run("circuit", CIRCUIT, *words, "--save", tmp_path / "shelf" / "check")
    return tmp_path / "shelf" / "check"


def test_the_review_leads_with_the_check(run, check):
    said = run("review", check).out
    assert "A circuit check by itself: no run was recorded, so none is judged." in said
    assert "Verdict:" not in said
    assert "nothing can be said about the motor" not in said
    assert said.index("Circuit: Low-side") < 300


def test_screening_says_of_it_what_the_library_does(run, check, tmp_path):
    pytest.importorskip("dask")
    found = run("find", "--folder", check.parent, "--judge").out
    run("screen", check.parent, "--out", tmp_path / "out", "--threads", "--workers", "1")
    (row,) = pq.read_table(tmp_path / "out" / "findings.parquet").to_pylist()
    assert row["outcome"] in found
    assert "nothing can be said about the motor" not in row["sentence"]
