"""All that lies below a folder is given once; links are not gone into, and depth has an end."""

import os

import pytest

from meterlog.model.errors import RecordingUnreadable
from meterlog.profile.files_below import DEEPEST, files_below


def given(folder):
    return sorted(one.relative_to(folder).as_posix() for one in files_below(folder))


def test_files_links_and_pipes_are_given_and_folders_are_not(tmp_path):
    (tmp_path / "a/b").mkdir(parents=True)
    (tmp_path / "a/b/file").write_text("x")
    (tmp_path / "top").write_text("x")
    (tmp_path / "a/loop").symlink_to(tmp_path)
    (tmp_path / "a/nowhere").symlink_to("no such thing")
    os.mkfifo(tmp_path / "a/pipe")
    assert given(tmp_path) == ["a/b/file", "a/loop", "a/nowhere", "a/pipe", "top"]


def test_the_deepest_folder_is_looked_into_and_one_below_it_is_refused(tmp_path):
    deepest = tmp_path / "first" / "/".join("d" * (DEEPEST - 1))
    deepest.mkdir(parents=True)
    (deepest / "file").write_text("x")
    assert len(given(tmp_path)) == 1
    (deepest / "one more").mkdir()
    with pytest.raises(RecordingUnreadable, match=f"more than {DEEPEST} levels deep") as refused:
        given(tmp_path)
    assert refused.value.subject == str(tmp_path / "first/d/d")
    assert "take it out" in refused.value.remedy


def test_a_folder_that_is_not_there_is_an_error(tmp_path):
    with pytest.raises(FileNotFoundError):
        given(tmp_path / "gone")
