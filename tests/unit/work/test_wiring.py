"""Words about meters and roles become choices, or a sentence about what is wrong."""

from datetime import UTC, datetime

import pytest

from meterlog.model import Channel, Quantity, Role, Sensor, SensorKind, Zero
from meterlog.model.errors import ProfileError, UsageError
from meterlog.work import KeptZeros, SensorWords, Wiring, choose_meters
from meterlog.work.sensing import sensed
from meterlog.work.zeros import ZeroKey

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


SCPI = "bench-scpi@COM3"
AMPS = ["motor-current=volts"]


def behind(meter=SCPI, roles=AMPS, scales=None, **said):
    words = SensorWords(**{name: tuple(texts) for name, texts in said.items()})
    (choice,) = choose_meters(Wiring([meter], roles, scales or {}, sensors=words))
    return next(channel for channel in choice.channels if channel.role is not Role.OTHER)


@pytest.mark.parametrize(
    ("clamp", "factor"),
    [
        ("10mV/A", 100.0),
        ("10 mV/A", 100.0),
        ("1mV/A", 1000.0),
        ("100 mV/A", 10.0),
        ("0.1V/A", 10.0),
        ("1 mV/10 mA", 10.0),
        ("10MV/a", 100.0),
    ],
)
def test_a_clamp_is_read_as_its_maker_writes_it(clamp, factor):
    channel = behind(clamps=[f"motor-current={clamp}"])
    assert channel.scale == pytest.approx(factor, rel=1e-12)
    assert channel.quantity is Quantity.CURRENT
    assert channel.sensor.kind is SensorKind.CLAMP


@pytest.mark.parametrize(
    ("shunt", "factor"),
    [
        ("100A/60mV", 100.0 / 0.060),
        ("100 A / 60 mV", 100.0 / 0.060),
        ("75mV/50A", 50.0 / 0.075),
        ("0.6mOhm", 1.0 / 0.0006),
        ("0.0006 ohm", 1.0 / 0.0006),
        ("600 µΩ", 1.0 / 0.0006),
    ],
)
def test_a_shunt_is_read_by_its_rating_or_its_resistance(shunt, factor):
    # trade data: 100 A/60 mV is 0.6 milliohm (U = R I)
    channel = behind(shunts=[f"motor-current={shunt}"])
    assert channel.scale == pytest.approx(factor, rel=1e-12)
    assert channel.unit == "A"


def test_turns_divide_what_the_clamp_reads_and_inverting_changes_the_sign():
    channel = behind(
        clamps=["motor-current=10mV/A"], turns=["motor-current=4"], inverted=["motor-current"]
    )
    assert channel.scale == pytest.approx(-25.0)
    assert str(channel.sensor) == "clamp 10 mV/A, 4 turns, inverted"
    # A worse last digit of the meter is divided by the turns too; and never becomes negative.
    plain = behind(clamps=["motor-current=10mV/A"])
    assert channel.accuracy.resolution == pytest.approx(plain.accuracy.resolution / 4.0)
    assert [one.top for one in channel.ranges] == [one.top / 4.0 for one in plain.ranges]


def test_a_clamp_meter_that_shows_amperes_takes_turns_alone():
    channel = behind(LOGGER, ["motor-current=current"], turns=["motor-current=2"])
    assert channel.scale == pytest.approx(0.5)
    assert channel.quantity is Quantity.CURRENT


def test_a_divider_makes_more_volts_of_a_voltage():
    channel = behind(roles=["motor-feed=volts"], dividers=["motor-feed=10:1"])
    assert (channel.scale, channel.quantity) == (pytest.approx(10.0), Quantity.VOLTAGE)


def test_a_negative_scale_is_an_inverted_one():
    channel = behind(scales={Role.MOTOR_CURRENT: -100.0})
    assert channel.scale == pytest.approx(-100.0)
    assert channel.sensor.inverted


def test_the_sensors_own_accuracy_is_added_to_the_meters_in_every_range():
    said = {"clamps": ["motor-current=10mV/A"]}
    plain = behind(**said)
    both = behind(**said, accuracies=["motor-current=1.5+0.3"])
    for value in (0.0, 5.0, 16.0):
        own = value * 0.015 + 0.3
        assert both.accuracy.half_width(value) == pytest.approx(
            plain.accuracy.half_width(value) + own
        )
        assert both.accuracy_at(value).half_width(value) == pytest.approx(
            plain.accuracy_at(value).half_width(value) + own
        )
    assert "linear sum" in both.accuracy.basis
    assert both.top == plain.top  # nobody said how far the clamp goes
    assert "own error not in" in plain.accuracy.basis


@pytest.mark.parametrize(
    "words", ["1.5+0.3 up to 40", "1.5 % + 0.3 A up to 40 A", "1.5+0.3 to 40", "1.5+0.3 bis 40 A"]
)
@pytest.mark.parametrize("turns", [1, 4])
def test_how_far_a_clamp_goes_counts_for_all_that_goes_through_it(words, turns):
    channel = behind(
        clamps=["motor-current=10mV/A"],
        turns=[f"motor-current={turns}"],
        accuracies=[f"motor-current={words}"],
    )
    assert (channel.sensor.own_percent, channel.sensor.own_floor) == (1.5, 0.3)
    assert channel.sensor.own_top == 40.0
    assert channel.top == 40.0 / turns
    assert "up to 40 A" in channel.accuracy.basis


@pytest.mark.parametrize(
    ("roles", "said", "words"),
    [
        (AMPS, {"clamps": ["motor-current=10"]}, "such as 10mV/A"),
        (AMPS, {"clamps": ["motor-current=0mV/A"]}, "not possible"),
        (AMPS, {"clamps": ["motor-current=10,5mV/A"]}, "point as decimal mark"),
        (AMPS, {"clamps": ["motor-current"]}, "does not say for which role"),
        (AMPS, {"clamps": ["motor-curent=10mV/A"]}, "Did you mean 'motor-current'"),
        (AMPS, {"clamps": ["motor-current=1mV/A", "motor-current=10mV/A"]}, "twice"),
        (AMPS, {"shunts": ["motor-current=100A"]}, "100A/60mV"),
        (AMPS, {"shunts": ["motor-current=0,6mOhm"]}, "point as decimal mark"),
        (
            AMPS,
            {"clamps": ["motor-current=10mV/A"], "shunts": ["motor-current=1mOhm"]},
            "also behind clamp 10 mV/A",
        ),
        (
            AMPS,
            {"shunts": ["motor-current=1mOhm"], "turns": ["motor-current=2"]},
            "not through a shunt",
        ),
        (AMPS, {"clamps": ["motor-current=10mV/A"], "turns": ["motor-current=1.5"]}, "whole"),
        (AMPS, {"clamps": ["motor-current=10mV/A"], "turns": ["motor-current=0"]}, "whole"),
        (AMPS, {"dividers": ["motor-current=10"]}, "needs a current"),
        (["motor-feed=volts"], {"clamps": ["motor-feed=10mV/A"]}, "needs a voltage"),
        (["motor-feed=volts"], {"turns": ["motor-feed=2"]}, "turns go through a clamp"),
        (["motor-feed=volts"], {"dividers": ["motor-feed=0.1"]}, "not possible"),
        (
            AMPS,
            {"clamps": ["motor-current=10mV/A"], "accuracies": ["motor-current=1,5+0,3"]},
            "point as decimal mark",
        ),
        (
            AMPS,
            {"clamps": ["motor-current=10mV/A"], "accuracies": ["motor-current=0+0"]},
            "not possible",
        ),
        (
            AMPS,
            {"clamps": ["motor-current=10mV/A"], "accuracies": ["motor-current=1.5+0.3 up to 0.2"]},
            "no further than its own error",
        ),
        (
            AMPS,
            {"clamps": ["motor-current=10mV/A"], "accuracies": ["motor-current=1.5+0.3 up to 4 V"]},
            "motor-current is told in A",
        ),
        (
            AMPS,
            {"clamps": ["motor-current=10mV/A"], "accuracies": ["motor-current=1.5+0.3 up to"]},
            "1.5+0.3 up to 40",
        ),
        (AMPS, {"inverted": ["battery"]}, "needs a current"),
        (["battery=volts"], {"clamps": ["motor-current=10mV/A"]}, "no channel plays this role"),
    ],
)
def test_what_contradicts_itself_is_refused_with_words(roles, said, words):
    with pytest.raises(UsageError) as caught:
        behind(roles=roles, **said)
    assert words in str(caught.value)


def test_a_clamp_before_a_channel_that_reads_amperes_is_refused():
    with pytest.raises(UsageError, match="reads amperes itself"):
        behind(LOGGER, ["motor-current=current"], clamps=["motor-current=10mV/A"])


def test_a_scale_and_a_clamp_for_one_role_are_refused():
    with pytest.raises(UsageError, match="one of --clamp"):
        behind(clamps=["motor-current=10mV/A"], scales={Role.MOTOR_CURRENT: 100.0})


def test_a_kept_zero_becomes_the_offset_and_stays_with_the_recording(tmp_path):
    kept = KeptZeros(tmp_path)
    wiring = Wiring(
        [SCPI],
        AMPS,
        sensors=SensorWords(clamps=("motor-current=10mV/A",)),
        kept_zeros=(Role.MOTOR_CURRENT,),
    )
    with pytest.raises(UsageError, match="--take-zero motor-current"):
        choose_meters(wiring, kept)
    zero = Zero(0.21, 0.02, 30, datetime(2030, 1, 2, tzinfo=UTC), 6.0)
    channel = behind(clamps=["motor-current=10mV/A"])
    assert kept.keep(ZeroKey.of("bench-scpi", "", channel), zero)
    (choice,) = choose_meters(wiring, kept)
    assert choice.channels[0].offset == 0.21
    assert choice.channels[0].zero == zero


def test_a_typed_zero_is_one_of_which_nobody_knows_the_age():
    (choice,) = choose_meters(Wiring([LOGGER], FAN, {}, {Role.MOTOR_CURRENT: -0.12}))
    assert choice.channels[2].zero == Zero(-0.12)


def test_an_offset_of_the_profile_is_one_of_the_meters_reading():
    volts = Channel("in", Quantity.VOLTAGE, scale=2.0, offset=0.01)
    sensor = Sensor(SensorKind.CLAMP, 100.0, words="10 mV/A")
    amps = sensed(volts, Role.MOTOR_CURRENT, sensor)
    # 0.03 raw is 0.06 V less 0.01 V: 0.05 V, which is 5 A
    assert 0.03 * amps.scale - amps.offset == pytest.approx(5.0)
