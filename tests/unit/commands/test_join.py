"""``meterlog join``: the parts of a recording whose disk failed, put together."""

import json
import shutil
import sys
from pathlib import Path

import pytest

from meterlog.recording import Recording, seal

RIG = str(Path(__file__).resolve().parents[2] / "rig")


@pytest.fixture
def last(tmp_path):
    sys.path.insert(0, RIG)
    try:
        from kill_models import spill_of
    finally:
        sys.path.remove(RIG)
    part = spill_of(tmp_path, 400, 250)
    seal(part)
    return part


def test_both_parts_are_joined_and_sealed(run, last, tmp_path):
    out = tmp_path / "whole"
    said = run("join", last, "--out", out)
    assert said.out.startswith("2 parts joined and sealed in ")
    assert Recording.open(out).rows("meter") == 400
    assert run("verify", out).out.count("intact") == 1


def test_what_is_missing_is_counted_and_the_exit_code_says_so(run, last, tmp_path):
    path = tmp_path / "run" / "data" / "meter.arrows"
    path.write_bytes(path.read_bytes()[:1500])
    moved = tmp_path / "found again"
    shutil.move(tmp_path / "run", moved)
    said = run("join", last, "--before", moved, "--out", tmp_path / "whole", "--json", code=1)
    told = json.loads(said.out)
    assert told["parts"] == [str(moved), str(last)]
    assert told["missing_rows"]["meter"] == 400 - Recording.open(tmp_path / "whole").rows("meter")
    # Rows come a millisecond apart; the first part kept none of the 125 that the next leaves to it.
    assert told["missing_rows"] == {"meter": 125}
    assert told["gaps_s"] == {"meter": [[0.0, 0.125]]}
    assert (
        "125 rows are in none of the parts: nothing from 0.000 s to 0.125 s (0.125 s)" in said.err
    )


def test_without_the_part_before_nothing_is_made_and_the_way_on_is_said(run, last, tmp_path):
    shutil.move(tmp_path / "run", tmp_path / "away")
    said = run("join", last, "--out", tmp_path / "whole", code=1)
    assert "the part before it is not there" in said.err
    assert "Put its disk in again" in said.err
    assert not (tmp_path / "whole").exists()
