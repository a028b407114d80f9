"""Folders without end, put into a recording, are named; no command goes down with them."""

from __future__ import annotations

import os
import subprocess
import zipfile

import pyarrow.parquet as pq
import pytest

_LEVELS = 1500
"""More than Python's own limit of calls within calls, which walks of the library end at."""


@pytest.fixture
def deepen():
    """Put folders in folders below one; they are removed by a program that can."""
    made = []

    def work(folder):
        made.append(folder / "d")
        at = os.open(folder, os.O_RDONLY)
        for _ in range(_LEVELS):
            os.mkdir("d", dir_fd=at)
            below = os.open("d", os.O_RDONLY, dir_fd=at)
            os.close(at)
            at = below
        os.close(at)
        return folder / "d"

    yield work
    for one in made:
        subprocess.run(["rm", "-rf", one], check=True)


def test_a_recording_is_refused_with_the_folder_and_what_to_do(run, small, deepen, tmp_path):
    top = deepen(small / "data")
    for words in (("verify", small), ("export", small, "--out", tmp_path / "out")):
        said = run(*words, code=1)
        assert f"{top}/d/d: folders in it lie more than 32 levels deep." in said.err
        assert "take it out" in said.err


def test_a_screening_has_a_row_that_says_so(run, small, deepen, tmp_path):
    top = deepen(small / "data")
    run("screen", small, "--out", tmp_path / "out")
    (row,) = pq.read_table(tmp_path / "out/findings.parquet").to_pylist()
    assert row["reason"].startswith(f"{top}/d/d: folders in it lie more than 32 levels deep.")


def test_a_zip_is_refused_before_it_is_unpacked(run, tmp_path):
    with zipfile.ZipFile(tmp_path / "x.zip", "w") as archive:
        archive.writestr("claim/bagit.txt", "x")
        archive.writestr(f"claim/data/{'d/' * 40}x", "x")
    said = run("verify", tmp_path / "x.zip", code=1)
    assert "lies more than 32 folders deep" in said.err


def test_a_recording_in_a_zip_is_a_row(run, tmp_path):
    with zipfile.ZipFile(tmp_path / "x.zip", "w") as archive:
        archive.writestr("run/data/about.json", "{}")
        archive.writestr(f"run/data/{'d/' * 490}x", "x")
    run("screen", f"zip://::file://{tmp_path / 'x.zip'}", "--out", tmp_path / "out")
    (row,) = pq.read_table(tmp_path / "out/findings.parquet").to_pylist()
    assert "run/data/d/d/d: folders in it lie more than 32 levels deep." in row["reason"]


def test_a_zip_that_what_reads_it_goes_down_with_is_refused(run, tmp_path):
    with zipfile.ZipFile(tmp_path / "x.zip", "w") as archive:
        archive.writestr(f"run/data/{'d/' * _LEVELS}x", "x")
    address = f"zip://::file://{tmp_path / 'x.zip'}"
    said = run("screen", address, "--out", tmp_path / "out", code=2)
    assert "folders in it lie deeper than can be gone into" in said.err
