import pytest

from meterlog.instruments.virtual.trouble import trouble
from meterlog.model.errors import UsageError

BOTH = ("hand-meter", "hand-meter-2", "line-logger")


@pytest.mark.parametrize(
    ("line", "meter", "kind", "value"),
    [
        ("unplug hand-meter 2.5", "hand-meter", "unplug", "2.5"),
        ("unplug hand-meter-2", "hand-meter-2", "unplug", ""),
        ("PLUG line-logger", "line-logger", "plug", ""),
        ("off hand-meter", "hand-meter", "off", ""),
        ("on  hand-meter ", "hand-meter", "on", ""),
        ("dial hand-meter a", "hand-meter", "dial", "A"),
        ("hold hand-meter", "hand-meter", "hold", "on"),
        ("hold hand-meter off", "hand-meter", "hold", "off"),
        ("battery-low hand-meter-2", "hand-meter-2", "battery-low", "on"),
        ("clamp-dead line-logger OFF", "line-logger", "clamp-dead", "off"),
        ("garble line-logger 12", "line-logger", "garble", "12"),
        ("stall line-logger 0.5", "line-logger", "stall", "0.5"),
        ("range hand-meter", "hand-meter", "range", "next"),
        ("range hand-meter auto", "hand-meter", "range", "auto"),
    ],
)
def test_a_line_orders_a_trouble_of_one_meter(line, meter, kind, value):
    found = trouble(line, 7.5, BOTH)
    assert (found.elapsed_s, found.meter, found.kind, found.value) == (7.5, meter, kind, value)


def test_the_meter_may_be_left_out_where_there_is_but_one():
    assert trouble("stall 2", 0.0, ("line-logger",)).meter == "line-logger"
    assert trouble("unplug", 0.0, ("line-logger",)).value == ""
    assert trouble("dial OHM", 0.0, ("my meter",)).value == "OHM"
    assert trouble("dial my meter OHM", 0.0, ("my meter",)).value == "OHM"


def test_of_two_names_of_which_one_begins_the_other_the_longer_is_meant():
    for names in (("my", "my meter"), ("my meter", "my")):
        found = trouble("stall my meter 2", 0.0, names)
        assert (found.meter, found.value) == ("my meter", "2")


@pytest.mark.parametrize("line", ["unplug 2", "off", "hold panel-meter", "stall hand-meter-3 1"])
def test_of_several_meters_one_must_be_named(line):
    with pytest.raises(UsageError, match=r"does not say which meter\..*METER is hand-meter or"):
        trouble(line, 0.0, BOTH)


@pytest.mark.parametrize(
    "line",
    [
        "unplug line-logger soon",
        "unplug line-logger -1",
        "unplug line-logger nan",
        "unplug line-logger 1e9",
        "off line-logger 3",
        "dial line-logger W",
        "dial line-logger",
        "hold line-logger maybe",
        "garble line-logger",
        "garble line-logger 0",
        "garble line-logger 65537",
        "garble line-logger 1.5",
        "stall line-logger",
        "range line-logger 3",
    ],
)
def test_a_rest_that_the_order_does_not_take_is_refused_with_its_form(line):
    with pytest.raises(UsageError, match=r"is not understood\. Expected " + line.split()[0]):
        trouble(line, 0.0, BOTH)


def test_other_lines_are_none_of_its_business():
    for line in ("speed 3", "tap", "note unplug it", "quit", "unplugged", ""):
        assert trouble(line, 0.0, BOTH) is None
