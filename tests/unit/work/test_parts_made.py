"""A recording that went on elsewhere is one folder again when it has ended, wherever it can be."""

import shutil
import sys
from pathlib import Path
from types import SimpleNamespace

import pytest

from meterlog.evidence import verify_folder
from meterlog.recording import Recording, find_unsealed, seal
from meterlog.work import parts_made
from meterlog.work.parts_made import PartsMade
from meterlog.work.wholeness import join_line

RIG = str(Path(__file__).resolve().parents[2] / "rig")


@pytest.fixture
def parts(tmp_path):
    sys.path.insert(0, RIG)
    try:
        from kill_models import spill_of
    finally:
        sys.path.remove(RIG)
    last = spill_of(tmp_path, 300, 200)
    seal(last)
    return [tmp_path / "run", last]


def test_one_part_alone_is_left_as_it_is(parts):
    made = PartsMade()
    made.put_together(parts[:1])
    assert (made.folder, made.words) == (None, "")


def test_where_there_is_room_the_whole_lies_beside_where_it_was_begun(parts, tmp_path):
    made = PartsMade()
    made.put_together(parts)
    assert made.folder == tmp_path / "run-whole"
    assert made.words == f" The whole of it is in {tmp_path / 'run-whole'}."
    assert Recording.open(made.folder).rows("meter") == 300
    assert all(verify_folder(part).intact for part in (*parts, made.folder))
    assert find_unsealed(tmp_path) == ()


def test_where_there_is_none_it_lies_beside_the_last_part(parts, tmp_path, monkeypatch):
    rooms = {tmp_path: 100, parts[1].parent: 1 << 40}
    usage = SimpleNamespace(disk_usage=lambda place: SimpleNamespace(free=rooms[place]))
    monkeypatch.setattr(parts_made, "shutil", usage)
    made = PartsMade()
    made.put_together(parts)
    assert made.folder == parts[1].parent / "run-whole"
    rooms[parts[1].parent] = 100
    again = PartsMade()
    again.put_together(parts)
    assert again.folder == parts[1]
    assert "there is no room" in again.words
    assert f"meterlog join {parts[1]}" in again.words


def test_a_part_that_is_gone_is_said_and_the_last_one_is_what_there_is(parts):
    shutil.rmtree(parts[0])
    made = PartsMade()
    made.put_together(parts)
    assert made.folder == parts[1]
    assert "can't be read now" in made.words


def test_a_long_one_is_put_together_when_somebody_asks(parts, tmp_path, monkeypatch):
    monkeypatch.setattr(parts_made, "_MOST_BYTES", 100)
    made = PartsMade()
    made.put_together(parts)
    assert (made.folder, made.words) == (
        parts[1],
        f" Put together with: meterlog join {parts[1]} --out {parts[1]}-whole",
    )
    assert join_line(tmp_path / "away", parts[1]) == (
        f"meterlog join {parts[1]} --before {tmp_path / 'away'} --out {parts[1]}-whole"
    )
