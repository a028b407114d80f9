"""Profiles by name: the user's own first, and a broken one is told, not fatal."""

from pathlib import Path

import pytest

from meterlog.model.errors import ProfileError
from meterlog.profile import (
    listed,
    load_listed_meters,
    load_meter,
    names,
    profile_file,
    read_text,
    settings_folder,
    shipped_folder,
    user_folder,
)
from meterlog.profile.folders import OWN_FOLDER

OWN = """
title = "My own"
dialect = "typed"
interval_s = 1
[[channels]]
name = "a"
quantity = "voltage"
"""


@pytest.fixture
def own(tmp_path, monkeypatch):
    """A folder of the user's own meter profiles."""
    monkeypatch.setenv(OWN_FOLDER, str(tmp_path))
    folder = tmp_path / "meters"
    folder.mkdir()
    return folder


def test_a_profile_of_ones_own_wins_by_name(own):
    shipped = load_meter("line-logger")
    (own / "line-logger.toml").write_text(OWN)
    mine = load_meter("line-logger")
    assert (shipped.title, mine.title) == (shipped.title, "My own")
    assert mine.title != shipped.title
    assert profile_file("meters", "line-logger") == own / "line-logger.toml"
    (entry,) = [one for one in listed("meters") if one.name == "line-logger"]
    assert (entry.own, entry.replaces, entry.file) == (True, True, own / "line-logger.toml")


def test_ones_own_stand_before_those_that_are_shipped(own):
    (own / "zz-mine.toml").write_text(OWN)
    (own / "line-logger.toml").write_text(OWN)
    found = names("meters")
    assert found[:2] == ("line-logger", "zz-mine")
    assert list(found[2:]) == sorted(found[2:])
    assert found.count("line-logger") == 1
    assert "bench-scpi" in found


def test_a_broken_profile_is_told_and_the_others_are_there(own):
    (own / "broken.toml").write_text(OWN.replace("voltage", "volts"))
    (own / "no-text.toml").write_bytes(b"\xff\xfe")
    (own / "a@b.toml").write_text(OWN)
    (own / "good.toml").write_text(OWN)
    (own / "folder.toml").mkdir()
    good, bad = load_listed_meters()
    assert good[0].name == "good"
    assert {"line-logger", "bench-scpi"} <= {profile.name for profile in good}
    said = "\n".join(str(error) for error in bad)
    assert len(bad) == 3
    for words in ("broken.toml, line 7: channels[0].quantity", "no-text.toml: is not UTF-8"):
        assert words in said
    assert "a@b.toml: can't be the name of a profile. Name the file with letters" in said


def test_no_folder_of_ones_own_is_no_trouble(own):
    own.rmdir()
    assert {one.own for one in listed("meters")} == {False}


@pytest.mark.parametrize("name", ["a@b", "a=b", "a,b", " a", "-a", ".a", "a\nb"])
def test_a_name_that_could_not_be_told_from_a_port_is_refused(name, tmp_path):
    file = tmp_path / f"{name}.toml"
    file.write_text(OWN)
    with pytest.raises(ProfileError, match="can't be the name of a profile"):
        load_meter(str(file))


@pytest.mark.parametrize("name", ["my meter", "messgerät-2", "m_1.5"])
def test_a_name_that_people_give_is_taken(name, tmp_path):
    file = tmp_path / f"{name}.toml"
    file.write_text(OWN)
    assert load_meter(str(file)).name == name


def test_ones_own_folder_is_in_the_settings_of_the_system_unless_another_is_named(monkeypatch):
    monkeypatch.delenv(OWN_FOLDER, raising=False)
    assert user_folder() == settings_folder() / "profiles"
    assert user_folder().is_absolute()
    assert "meterlog" in str(settings_folder())
    assert not user_folder().is_relative_to(shipped_folder())


def test_a_folder_of_ones_own_that_is_none_is_told(tmp_path, monkeypatch):
    wrong = tmp_path / "file"
    wrong.write_text("")
    monkeypatch.setenv(OWN_FOLDER, str(wrong))
    assert "line-logger" in names("meters")
    with pytest.raises(ProfileError) as caught:
        load_meter("my-own")
    assert f"METERLOG_PROFILES names {wrong}, which is no folder" in caught.value.remedy
    monkeypatch.setenv(OWN_FOLDER, str(tmp_path))
    with pytest.raises(ProfileError) as caught:
        load_meter("my-own")
    assert OWN_FOLDER not in caught.value.remedy


def test_what_is_much_longer_than_a_profile_is_not_read(own):
    """A parser takes minutes for it, and a device that never ends fills the memory."""
    (own / "long.toml").write_text(OWN + "#" * 300_000)
    with pytest.raises(ProfileError, match="is longer than 256 KiB"):
        load_meter("long")
    with pytest.raises(ProfileError, match="is longer than 256 KiB"):
        read_text(own / "long.toml")
    with pytest.raises(ProfileError, match="is a pipe or a device, not a file"):
        read_text(Path("/dev/zero"))
