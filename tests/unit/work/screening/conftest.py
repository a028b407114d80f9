"""A shelf of small invented recordings, good, bad and damaged ones, and a screening of it."""

from __future__ import annotations

import shutil
import sys
from pathlib import Path

import pyarrow.parquet as pq
import pytest

from meterlog.work.screening import ScreenRequest, Workers, screen

RIG = str(Path(__file__).resolve().parents[3] / "rig")
sys.path.insert(0, RIG)
try:
    import shelf as shelf_rig
finally:
    sys.path.remove(RIG)

SHORT = {"seconds": 3.0, "rate": 10.0}


@pytest.fixture(scope="session")
def made_shelf(tmp_path_factory):
    place = tmp_path_factory.mktemp("made") / "shelf"
    shelf_rig.fill(place, [*range(12), 27, 47, 67], **SHORT)
    return place


@pytest.fixture
def shelf(made_shelf, tmp_path):
    """A copy of the shelf that a test may change."""
    shutil.copytree(made_shelf, tmp_path / "shelf")
    return tmp_path / "shelf"


@pytest.fixture
def make(tmp_path):
    """Make one recording on an empty shelf: its name, its number, and what is to be special."""

    def maker(name, number, **more):
        return shelf_rig.make(tmp_path / "own" / name, number, **{**SHORT, **more})

    return maker


@pytest.fixture
def screened(tmp_path):
    """Screen folders in this process; gives what came of it and the table's rows."""

    def work(*folders, out="out", progress=lambda done, whole: None, **more):
        workers = more.pop("workers", Workers(1, threads=True))
        request = ScreenRequest(tuple(map(str, folders)), tmp_path / out, workers=workers, **more)
        said = screen(request, progress)
        return said, pq.read_table(said.table).to_pylist()

    return work


@pytest.fixture
def rig():
    """What makes shelves."""
    return shelf_rig


@pytest.fixture
def of():
    """Give the rows of one kind that say what is wanted."""

    def chosen(rows, kind="recording", **wanted):
        return [
            row
            for row in rows
            if row["row"] == kind and all(row[name] == value for name, value in wanted.items())
        ]

    return chosen
