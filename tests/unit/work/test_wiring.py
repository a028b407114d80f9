"""Words about meters and roles become choices, or a sentence about what is wrong."""

import pytest

from meterlog.model import Quantity, Role
from meterlog.model.errors import ProfileError, UsageError
from meterlog.work import Wiring, choose_meters

LOGGER = "line-logger@/dev/pts/9"
FAN = ("motor-feed=line-logger.feed", "motor-current=line-logger.current")


def roles(choice):
    return {channel.name: channel.role for channel in choice.channels}


def test_roles_go_to_the_channels_named():
    (choice,) = choose_meters(Wiring([LOGGER], FAN))
    assert choice.key == "line-logger"
    assert choice.url == "/dev/pts/9"
    assert roles(choice) == {
        "feed": Role.MOTOR_FEED,
        "return": Role.OTHER,
        "current": Role.MOTOR_CURRENT,
    }


def test_the_port_begins_after_the_first_at_sign():
    (choice,) = choose_meters(Wiring(["line-logger@socket://user@host:1234"]))
    assert choice.url == "socket://user@host:1234"


def test_the_second_meter_of_a_profile_is_named_apart():
    first, second = choose_meters(
        Wiring(
            ["line-logger@COM3", "line-logger@COM4"],
            ["motor-feed=line-logger.feed", "battery=line-logger-2.feed"],
        )
    )
    assert (first.key, second.key) == ("line-logger", "line-logger-2")
    assert roles(first)["feed"] is Role.MOTOR_FEED
    assert roles(second)["feed"] is Role.BATTERY


def test_a_channel_name_is_enough_where_it_is_the_only_one():
    (choice,) = choose_meters(Wiring([LOGGER], ["motor-return=return"]))
    assert roles(choice)["return"] is Role.MOTOR_RETURN


@pytest.mark.parametrize(
    ("meters", "assign", "words"),
    [
        ([], ["motor-feed=line-logger.feed"], "line-logger.feed"),
        (["line-logger"], [], "Expected PROFILE@PORT"),
        (["@/dev/ttyUSB0"], [], "Expected PROFILE@PORT"),
        (["line-logger@"], [], "Expected PROFILE@PORT"),
        ([LOGGER], ["motor-fed=line-logger.feed"], "Did you mean 'motor-feed'"),
        ([LOGGER], ["motor-feed=line-logger.fed"], "Did you mean 'line-logger.feed'"),
        ([LOGGER], ["motor-feed=linelogger.feed"], "Did you mean 'line-logger.feed'"),
        ([LOGGER], ["motor-feed"], "Expected ROLE=PROFILE.CHANNEL"),
        ([LOGGER], ["motor-feed=line-logger.current"], "needs a voltage"),
        ([LOGGER], ["motor-current=line-logger.feed"], "--scale motor-current"),
        ([LOGGER], ["motor-feed=line-logger.feed", "motor-feed=line-logger.return"], "twice"),
        ([LOGGER], ["motor-feed=line-logger.feed", "battery=line-logger.feed"], "already plays"),
        ([LOGGER, LOGGER], ["motor-feed=feed"], "Say which"),
    ],
)
def test_what_is_wrong_is_said(meters, assign, words):
    with pytest.raises(UsageError) as caught:
        choose_meters(Wiring(meters, assign))
    assert words in str(caught.value)


def test_an_unknown_profile_suggests_the_nearest():
    with pytest.raises(ProfileError, match="Did you mean 'line-logger'"):
        choose_meters(Wiring(["line-loger@COM3"]))


def test_a_clamp_on_a_voltage_input_becomes_a_current():
    wiring = Wiring(["bench-scpi@COM3"], ["motor-current=volts"], {Role.MOTOR_CURRENT: 100.0})
    (choice,) = choose_meters(wiring)
    (channel,) = choice.channels
    assert channel.quantity is Quantity.CURRENT
    assert channel.unit == "A"
    assert channel.scale == 100.0
    plain = choose_meters(Wiring(["bench-scpi@COM3"]))[0].channels[0]
    # 10 mV/A: 50 mV read is 5 A; the meter's own error grows by the same 100, per cent stays.
    assert channel.accuracy.half_width(5.0) == pytest.approx(
        100.0 * plain.accuracy.half_width(0.05)
    )


def test_a_zero_is_kept_as_the_offset():
    wiring = Wiring([LOGGER], FAN, {}, {Role.MOTOR_CURRENT: -0.12})
    (choice,) = choose_meters(wiring)
    assert [channel.offset for channel in choice.channels] == [0.0, 0.0, -0.12]


@pytest.mark.parametrize("field", ["scales", "zeros"])
def test_a_scale_or_zero_for_an_absent_role_is_refused(field):
    with pytest.raises(UsageError, match="no channel plays this role"):
        choose_meters(Wiring([LOGGER], FAN, **{field: {Role.BATTERY: 2.0}}))


def test_a_scale_of_nothing_is_refused():
    with pytest.raises(UsageError, match="can't be 0"):
        choose_meters(Wiring([LOGGER], FAN, {Role.MOTOR_CURRENT: 0.0}))
