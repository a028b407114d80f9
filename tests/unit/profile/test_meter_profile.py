"""Meter profiles: what is read, and what is refused with file and key named."""

import pytest

from meterlog.model import Accuracy, Quantity
from meterlog.model.errors import ProfileError
from meterlog.profile import load_meter, meter_profile

LOGGER = """
title = "A logger"
dialect = "ascii-lines"
interval_s = 0.02
integration_s = 0.01
[link]
baud = 115200
parity = "even"
[lines]
delimiter = ";"
decimal = ","
columns = ["time", "a", "-", "b"]
[[channels]]
name = "a"
quantity = "voltage"
scale = 11.0
[channels.accuracy]
percent_of_reading = 0.5
digits = 2
resolution = 0.01
basis = "typical, from memory"
[[channels]]
name = "b"
quantity = "current"
"""


def refused(text: str) -> str:
    with pytest.raises(ProfileError) as caught:
        meter_profile("p", text, "p.toml")
    assert caught.value.subject.startswith("p.toml")
    return str(caught.value)


def test_a_whole_profile_is_read():
    profile = meter_profile("p", LOGGER, "p.toml")
    assert (profile.name, profile.dialect) == ("p", "ascii-lines")
    assert (profile.link.baud, profile.link.parity) == (115200, "even")
    assert profile.lines.columns == ("time", "a", "-", "b")
    a, b = profile.channels
    assert (a.quantity, a.scale, a.interval_s, a.integration_s) == (
        Quantity.VOLTAGE,
        11.0,
        0.02,
        0.01,
    )
    assert a.accuracy == Accuracy(0.5, 2.0, 0.01, 0.0, "typical, from memory")
    assert b.accuracy is None
    assert profile.text == LOGGER


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("interval_s = 0.02\n", "", "interval_s is missing"),
        ("interval_s = 0.02", "interval_s = 0", "interval_s is 0"),
        ("interval_s = 0.02", "interval_s = nan", "interval_s is nan"),
        ("interval_s", "intervall_s", "interval_s is missing"),
        ('"ascii-lines"', '"ascii-line"', "Did you mean 'ascii-lines'?"),
        ("baud = 115200", "bauds = 115200", "link.bauds is not known"),
        ('"voltage"', '"volts"', "channels[0].quantity"),
        ("scale = 11.0", "scale = 0", "channels[0].scale is 0"),
        ('name = "b"', 'name = "a"', "channels[1].name repeats a name: a, a"),
        ('"-", "b"]', '"-"]', "Every channel needs exactly one column"),
        ('"-", "b"]', '"b", "b"]', "Every channel needs exactly one column"),
        ('delimiter = ";"', 'delimiter = ","', "lines.decimal equals the delimiter"),
        ('delimiter = ";"', 'delimiter = ";;"', "lines.delimiter is ';;'"),
        ("title", "title = ", "is not valid TOML"),
        ("resolution = 0.01\n", "", "channels[0].accuracy.resolution is missing"),
    ],
)
def test_a_wrong_profile_is_refused_and_the_key_is_named(old, new, said):
    assert old in LOGGER
    assert said in refused(LOGGER.replace(old, new, 1))


@pytest.mark.parametrize(
    ("name", "channels"),
    [
        ("line-logger", ("feed", "return", "current")),
        ("line-logger-timed", ("feed", "return", "current")),
        ("bench-scpi", ("volts",)),
        ("bench-scpi-2ch", ("volts", "amps")),
    ],
)
def test_the_examples_find_the_channels_that_they_name(name, channels):
    assert tuple(channel.name for channel in load_meter(name).channels) == channels


def test_an_unknown_name_suggests_the_nearest():
    with pytest.raises(ProfileError, match="Did you mean 'line-logger'"):
        load_meter("line-loger")


def test_a_profile_of_ones_own_is_loaded_by_its_path(tmp_path):
    own = tmp_path / "mine.toml"
    own.write_text(LOGGER, encoding="utf-8")
    assert load_meter(str(own)).name == "mine"
    with pytest.raises(ProfileError, match="no such file"):
        load_meter(str(tmp_path / "other.toml"))


def test_a_profile_that_is_no_text_is_refused(tmp_path):
    (tmp_path / "odd.toml").write_bytes(b"\xff\xfe")
    with pytest.raises(ProfileError, match="not UTF-8"):
        load_meter(str(tmp_path / "odd.toml"))
