import dataclasses

import pytest

from meterlog.instruments.virtual.line_voice import LineVoice
from meterlog.instruments.virtual.meter import MeterModel
from meterlog.instruments.virtual.play import Play
from meterlog.instruments.virtual.scenarios import find_scenario
from meterlog.instruments.virtual.simulate import plain_meter
from meterlog.instruments.virtual.voice import BANNER
from meterlog.model import Quantity
from meterlog.profile import LineFormat


def lines(seconds, quiet_s=0.0, greet_s=0.0, top=None, **layout):
    layout.setdefault("columns", ("feed", "return", "current"))
    profile = dataclasses.replace(plain_meter(0.1, 0.1), lines=LineFormat(**layout))
    play = Play(find_scenario("healthy-new"), 1, scripted=False)
    meter = MeterModel(profile, "healthy-new", 1)
    if top is not None:
        meter.set_range(Quantity.VOLTAGE, top)
    voice = LineVoice(play, meter, quiet_s)
    play.advance(play.steps_at(greet_s))
    voice.greet(greet_s)
    play.advance(play.steps_at(seconds))
    return b"".join(voice.say(seconds)).decode().split("\r\n")[:-1]


def test_the_banner_comes_first_and_says_that_all_is_simulated():
    said = lines(1.0)
    assert said[0] == f"# {BANNER}"
    assert "simulated" in said[0]
    assert len(said) == 11
    feed, back, current = (float(field) for field in said[1].split(","))
    assert (feed, back) == pytest.approx((12.47, 12.47), abs=0.1)
    assert current == pytest.approx(0.0, abs=0.1)


def test_the_banner_is_repeated_now_and_then():
    said = lines(12.0)
    assert [line.startswith("#") for line in said].count(True) == 3
    assert len(said) == 123


def test_header_lines_come_after_the_banner_and_before_the_rows():
    said = lines(0.3, header_lines=2)
    assert said[1:3] == ["feed,return,current"] * 2
    assert len(said) == 6


def test_without_a_comment_sign_there_is_no_banner():
    assert len(lines(0.3, comment="")) == 3


def test_own_time_is_scenario_time_in_the_profiles_unit():
    columns = ("time", "feed", "return", "current")
    said = lines(0.5, columns=columns, time_unit_s=0.001)
    assert [line.split(",")[0] for line in said[1:]] == ["100", "200", "300", "400", "500"]
    said = lines(0.3, columns=columns)
    assert [line.split(",")[0] for line in said[1:]] == ["0.100", "0.200", "0.300"]


def test_delimiter_decimal_and_skipped_columns_are_the_profiles():
    said = lines(0.1, columns=("-", "current", "feed", "return"), delimiter=";", decimal=",")
    fields = said[1].split(";")
    assert fields[0] == "0"
    assert fields[2].startswith("12,")


def test_overload_is_the_profiles_word():
    said = lines(0.1, top=1.0, overload_texts=("OVER",))
    assert said[1].split(",")[:2] == ["OVER", "OVER"]


def test_it_keeps_quiet_for_a_moment_after_opening():
    assert len(lines(1.0, quiet_s=0.25)) == 1 + 8


def test_a_client_that_comes_later_gets_no_old_rows():
    assert len(lines(2.0, greet_s=1.55)) == 1 + 5


def test_a_slow_logger_says_that_it_is_virtual_long_before_its_first_row():
    profile = dataclasses.replace(plain_meter(2.0, 0.1), lines=LineFormat(columns=("feed",)))
    play = Play(find_scenario("healthy-new"), 1, scripted=False)
    voice = LineVoice(play, MeterModel(profile, "healthy-new", 1), quiet_s=0.05)
    voice.greet(0.3)
    assert voice.due_s() == pytest.approx(0.35)
    play.advance(play.steps_at(1.0))
    assert voice.say(0.34) == []
    assert voice.say(0.35) == [f"# {BANNER}\r\n".encode()]
    assert voice.due_s() == pytest.approx(2.0)
