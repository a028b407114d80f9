from pathlib import Path

import pytest

from meterlog.instruments.virtual.assembly import bench_keys
from meterlog.instruments.virtual.bench_options import read_links, read_plan, read_probes
from meterlog.instruments.virtual.probe import place
from meterlog.model import EventKind
from meterlog.model.errors import UsageError
from meterlog.profile import load_meter


@pytest.fixture
def profiles():
    return [load_meter(name) for name in ("hand-meter", "line-logger", "hand-meter")]


def test_meters_are_named_after_their_profiles_and_counted(profiles):
    assert bench_keys(profiles) == ("hand-meter", "line-logger", "hand-meter-2")


def test_a_probe_names_its_meter_where_several_have_the_channel(profiles):
    keys = bench_keys(profiles)
    found = read_probes(["feed=battery", "hand-meter-2.volts=motor-return"], keys, profiles)
    assert found == {
        "hand-meter": {},
        "line-logger": {"feed": "battery"},
        "hand-meter-2": {"volts": "motor-return"},
    }


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("volts=battery", "'volts' may be a channel of hand-meter or hand-meter-2"),
        ("watts=battery", "no meter has a channel 'watts'"),
        ("panel.volts=battery", "there is no meter 'panel'"),
        ("volts", "has no '='"),
    ],
)
def test_a_probe_that_is_not_clear_is_refused(profiles, text, words):
    with pytest.raises(UsageError, match=words):
        read_probes([text], bench_keys(profiles), profiles)


def test_with_one_meter_its_name_may_stand_there_or_not(profiles):
    one = profiles[:1]
    for text in ("volts=battery", "hand-meter.volts=battery"):
        assert read_probes([text], ["hand-meter"], one) == {"hand-meter": {"volts": "battery"}}
    # What is no channel of it is left to be told by what connects it.
    wrong = read_probes(["feed=battery"], ["hand-meter"], one)["hand-meter"]
    with pytest.raises(UsageError, match="channel feed: this meter has no such channel"):
        place(one[0].channels, wrong)


def test_a_clamp_goes_on_a_channel_that_reads_volts_and_on_no_other(profiles):
    assert place(profiles[0].channels, {"volts": "clamp-10mv-per-a"}) == ("clamp-10mv-per-a",)
    with pytest.raises(UsageError, match="reads current"):
        place(load_meter("hand-meter-amps").channels, {"amps": "clamp-10mv-per-a"})


def test_links_are_named_for_their_meters():
    assert read_links(["/tmp/a"], ["one"]) == {"one": Path("/tmp/a")}
    assert read_links(["one=/tmp/a"], ["one"]) == {"one": Path("/tmp/a")}
    both = read_links(["two=/tmp/b", "one=/tmp/a"], ["one", "two"])
    assert both == {"one": Path("/tmp/a"), "two": Path("/tmp/b")}
    for wrong in (["/tmp/a"], ["three=/tmp/a"], ["one="]):
        with pytest.raises(UsageError, match="does not say which meter's"):
            read_links(wrong, ["one", "two"])
    with pytest.raises(UsageError, match="names one twice"):
        read_links(["one=/tmp/a", "one=/tmp/b"], ["one", "two"])


def test_a_plan_is_split_into_what_is_done_to_the_fan_and_to_the_meters():
    fan, meters = read_plan([("2", "tap"), ("1.5", "off one"), ("3", "speed 2")], 4, ["one"])
    assert [(h.elapsed_s, h.kind, h.value) for h in fan] == [
        (2.0, EventKind.TAP, ""),
        (3.0, EventKind.SPEED, "2"),
    ]
    assert [(t.elapsed_s, t.meter, t.kind) for t in meters] == [(1.5, "one", "off")]


@pytest.mark.parametrize(
    ("pair", "words"),
    [
        (("soon", "tap"), "'soon' is no time"),
        (("-1", "tap"), "'-1' is no time"),
        (("nan", "tap"), "'nan' is no time"),
        (("1", "speed 9"), "is no order. There are: speed 0 to speed 4"),
        (("1", "quit"), "quit can't be planned"),
    ],
)
def test_a_plan_that_can_not_be_is_refused(pair, words):
    with pytest.raises(UsageError, match=words):
        read_plan([pair], 4, ["one"])
