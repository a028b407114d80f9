"""A seal covers files: what lies among them and is none is told, whatever it leads to."""

import os
import shutil

import pytest

from meterlog.evidence import verify_folder


@pytest.fixture
def folder(recording, tmp_path):
    """A sealed recording that a test may change."""
    shutil.copytree(recording.folder, tmp_path / "copy")
    return tmp_path / "copy"


@pytest.mark.parametrize("to", ["/nowhere/at/all", "x.txt", "/"])
def test_a_link_that_leads_to_no_file_is_told(folder, to):
    assert verify_folder(folder).intact
    (folder / "data" / "x.txt").symlink_to(to)
    found = verify_folder(folder)
    assert [one for one in found.problems if one.startswith("data/x.txt: is not in the seal")]


def test_a_pipe_is_told(folder):
    os.mkfifo(folder / "data" / "pipe")
    assert "pipe" in " ".join(verify_folder(folder).problems)


def test_a_link_to_a_file_was_added_later(folder, tmp_path):
    (tmp_path / "elsewhere").write_text("x")
    (folder / "data" / "x.txt").symlink_to(tmp_path / "elsewhere")
    assert any("data/x.txt" in one for one in verify_folder(folder).problems)


def test_folders_are_none_of_it(folder):
    (folder / "data" / "empty").mkdir()
    assert verify_folder(folder).intact
