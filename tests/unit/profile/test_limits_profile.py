"""Limits profiles: what is read, and what is refused."""

import pytest

from meterlog.model import SpeedLimits
from meterlog.model.errors import ProfileError
from meterlog.profile import limits_profile, load_limits


def test_speeds_are_read_by_number_and_other_speeds_are_open():
    limits = load_limits("linear-12v")
    assert limits.at(1) == SpeedLimits(2.2, 5.5)
    assert limits.at(9) == SpeedLimits()
    assert limits.at(None) == SpeedLimits()


@pytest.mark.parametrize(
    "wrong", ["open_curent_a = 0.3", "nominal_v = 'x'", "[speed.fast]\nmin_a = 1"]
)
def test_a_wrong_key_or_value_is_refused(wrong):
    with pytest.raises(ProfileError) as caught:
        limits_profile("p", f'title = "t"\nbasis = "b"\n{wrong}\n', "p.toml")
    assert caught.value.subject == "p.toml"


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("[speed]\n1 = {min_a = 1}\n01 = {min_a = 2}\n", "speed.01 means speed 1 a second time"),
        ("[speed.2]\nmin_a = 1\n[speed.002]\nmin_a = 1\n", "speed.002 means speed 2"),
        ("[speed]\n'\u0662' = {min_a = 1}\n", "is no speed step"),
        (f"[speed]\n{'1' * 5000} = {{min_a = 1}}\n", "is no speed step"),
        (f"nominal_v = {'9' * 5000}\n", "is not valid TOML"),
        (f"nominal_v = {'[' * 5000}\n", "is not valid TOML"),
        ("[speed]\n-1 = {min_a = 1}\n", "is no speed step"),
        ("[speed.1000]\nmin_a = 1\n", "up to 999"),
    ],
)
def test_keys_and_numbers_that_can_not_be_meant_are_refused(text, words):
    with pytest.raises(ProfileError, match=words):
        limits_profile("p", text, "p.toml")


@pytest.mark.parametrize(
    ("name", "words"),
    [("", "no such file"), (".", "is a folder. Give a file"), ("absent.toml", "no such file")],
)
def test_a_place_that_is_no_file_is_refused(name, words):
    with pytest.raises(ProfileError, match=words) as caught:
        load_limits(name)
    assert caught.value.subject
