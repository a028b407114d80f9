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
