"""A path as it leads, whatever stands in it."""

from pathlib import Path

import pytest

from meterlog.model.errors import UsageError
from meterlog.profile.full_path import full_path, rooted, typed_path


def test_links_are_followed_and_what_is_not_there_stays(tmp_path):
    (tmp_path / "there").mkdir()
    (tmp_path / "link").symlink_to("there")
    assert full_path(tmp_path / "link" / "not yet") == tmp_path / "there" / "not yet"


@pytest.mark.parametrize("links", [{"a": "a"}, {"a": "b", "b": "a"}, {"a": "b/x", "b": "a/y"}])
def test_links_in_a_circle_are_left_to_whoever_opens_them(tmp_path, links):
    for name, to in links.items():
        (tmp_path / name).symlink_to(to)
    found = full_path(tmp_path / "a" / "inside")
    with pytest.raises(OSError, match="Too many levels"):
        found.open("rb")


def test_a_relative_path_is_one_from_here(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    assert full_path(tmp_path.relative_to(tmp_path) / "x") == tmp_path / "x"


def test_a_rooted_path_leads_there_from_anywhere_and_links_stay(tmp_path, monkeypatch):
    (tmp_path / "there").mkdir()
    (tmp_path / "link").symlink_to("there")
    monkeypatch.chdir(tmp_path)
    assert rooted(Path("link/x")) == tmp_path / "link" / "x"
    assert rooted(tmp_path / "link") == tmp_path / "link"


def test_a_relative_path_is_refused_once_the_folder_one_is_in_has_gone(tmp_path, monkeypatch):
    here = tmp_path / "here"
    here.mkdir()
    monkeypatch.chdir(here)
    here.rmdir()
    with pytest.raises(UsageError, match="run: the folder you are in is gone: it was"):
        rooted(Path("run"))
    assert rooted(tmp_path / "run") == tmp_path / "run"


def test_what_was_typed_is_a_path_whoever_it_names(monkeypatch, tmp_path):
    monkeypatch.setenv("HOME", str(tmp_path))
    monkeypatch.setenv("USERPROFILE", str(tmp_path))
    assert typed_path("~/runs") == tmp_path / "runs"
    assert typed_path("~nobody-of-that-name/runs") == Path("~nobody-of-that-name/runs")
    assert typed_path("runs") == Path("runs")
